"""Ten thousand cases of each level: `python -m tests.benchmarks.fault_cases [COUNT]`.

Counts the cases in which a finding ruled out the truth, or all readings together leave more than one suspect;
and of every tenth one, the minutes and readings that the program of most information needs.
"""

import sys

from solver.fault.acts import CHECK
from solver.fault.case import LEVELS, fault_case
from solver.fault.finding import finding
from solver.fault.model import Model
from solver.fault.review import sure_way

__all__ = ["main"]


def main(count: int) -> int:
    """Try so many cases of each level; how many went wrong."""
    wrong = 0
    for level in LEVELS:
        lost = unclear = minutes = readings = missed = 0
        tenth = range(0, count, 10)
        for seed in range(count):
            case = fault_case(level, ("us", "si")[seed % 2], seed)
            model = Model(case)
            for checked in (False, True):
                found = [finding(case, act, checked) for act in case.acts if act != CHECK]
                left = model.left(found)
                lost += case.fault not in left
            unclear += len(left) != 1
            if seed in tenth:
                way = sure_way(str(case.code))
                minutes, readings = minutes + way.minutes, readings + len(way.taken)
                missed += way.names != (case.fault,)
        print(
            f"level {level}: {count} cases, truth ruled out in {lost}, unclear in {unclear}; "
            f"the program missed {missed} of {len(tenth)}, {minutes / len(tenth):.1f} minutes, "
            f"{readings / len(tenth):.1f} readings"
        )
        wrong += lost + unclear + missed
    return wrong


if __name__ == "__main__":
    sys.exit(bool(main(int(sys.argv[1]) if sys.argv[1:] else 10_000)))

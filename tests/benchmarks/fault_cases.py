"""Ten thousand cases of each level: `python -m tests.benchmarks.fault_cases [COUNT [FIRST]]`.

Counts the cases in which a finding ruled out the truth, or all readings together leave more than one suspect;
and of every tenth one, the minutes and readings that the program of most information needs. FIRST is the number
of the first case, so that ten thousand can be tried a slice at a time.
"""

import sys
from collections.abc import Sequence

from solver.fault.acts import CHECK
from solver.fault.case import LEVELS, fault_case
from solver.fault.finding import finding
from solver.fault.model import Model
from solver.fault.review import sure_way

__all__ = ["main"]

EVERY = 10  # so many cases to one whose way is looked for


def main(seeds: Sequence[int]) -> int:
    """Try these cases of each level; how many went wrong."""
    wrong = 0
    for level in LEVELS:
        lost = unclear = missed = 0
        ways = []
        for seed in seeds:
            case = fault_case(level, ("us", "si")[seed % 2], seed)
            model = Model(case)
            for checked in (False, True):
                found = [finding(case, act, checked) for act in case.acts if act != CHECK]
                left = model.left(found)
                lost += case.fault not in left
            unclear += len(left) != 1
            if seed % EVERY == 0:
                ways.append(sure_way(str(case.code)))
                missed += ways[-1].names != (case.fault,)
        many = max(len(ways), 1)
        print(
            f"level {level}: {len(seeds):,} cases from {seeds[0]}, truth ruled out in {lost}, unclear in {unclear}; "
            f"the program missed {missed} of {len(ways)}, {sum(w.minutes for w in ways) / many:.1f} minutes, "
            f"{sum(len(w.taken) for w in ways) / many:.1f} readings",
            flush=True,
        )
        wrong += lost + unclear + missed
    return wrong


if __name__ == "__main__":
    asked = [int(text) for text in sys.argv[1:3]]
    count, first = asked + [10_000, 0][len(asked) :]
    sys.exit(bool(main(range(first, first + count))))

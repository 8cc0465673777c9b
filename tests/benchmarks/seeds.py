"""Rates by chapter over many seeds: `python -m tests.benchmarks.seeds 10000`.

Each family, level and system is drawn at that many seeds; then its solution is put in words, and its own
answer and one mistake of each case are graded. Rates are of the processor's time, one core's.
"""

import sys
import time
from collections import defaultdict

from solver import draw, grade
from solver.render.text import steps_text
from tests.solver.drawn import PROBLEMS, seeds, typed


def timed(problem, many: list[int]) -> tuple[float, float, float, int]:
    """Seconds to draw, to put in words and to grade, and answers graded, for one problem."""
    family, level, units = problem
    start = time.process_time()
    cases = [draw(family, seed, units, level) for seed in many]
    drawn = time.process_time()
    for case in cases:
        steps_text(case.steps, case.known, case.given, case.units)
    worded = time.process_time()
    answers = [
        (case, typed(value, "" if case.choices else case.unit, 4))
        for case in cases
        for value in (case.answer, *(mistake.value for mistake in case.mistakes[:1]))
    ]
    typed_out = time.process_time()
    for case, text in answers:
        grade(case, text)
    return drawn - start, worded - drawn, time.process_time() - typed_out, len(answers)


def main(count: int) -> None:
    """Time every problem and print one line a chapter, the chapters together last."""
    many, totals = seeds(count), defaultdict(lambda: [0, 0.0, 0.0, 0.0, 0])
    for problem in PROBLEMS:
        drawing, wording, grading, answers = timed(problem, many)
        for name in (problem[0].chapter, "all"):
            row = totals[name]
            for at, more in enumerate((len(many), drawing, wording, grading, answers)):
                row[at] += more
    for name in sorted(totals, key="all".__eq__):
        cases, drawing, wording, grading, answers = totals[name]
        print(
            f"{name:12} {cases:10,} cases, {cases / drawing:8,.0f} a second, "
            f"{cases / (drawing + wording):8,.0f} with their solution in words; "
            f"{answers:10,} answers, {answers / grading:8,.0f} a second"
        )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 300)

"""What the solver's tests share: every family, level and system, and answers as people type them."""

import functools
import os
from collections.abc import Callable, Sequence
from decimal import ROUND_HALF_UP, Decimal

import pytest

from solver import FAMILIES, Family
from solver.algebra.formula import Formula
from solver.engine.code import MOST_SEED
from solver.topics.formulas import FORMULAS
from tests.in_one import try_all

__all__ = [
    "EQUATIONS",
    "JUDGEMENTS",
    "NUMERIC",
    "ORDERS",
    "PROBLEMS",
    "SEEDS",
    "each",
    "equation",
    "named",
    "rounded",
    "rounded_half_up",
    "seeds",
    "typed",
]

Problem = tuple[Family, int, str]

# Every problem there is: a family at one level in one system of units.
PROBLEMS: tuple[Problem, ...] = tuple(
    (family, level, units)
    for family in FAMILIES
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
)
NUMERIC = tuple(problem for problem in PROBLEMS if problem[0].judge is None)
JUDGEMENTS = tuple(problem for problem in PROBLEMS if problem[0].asked == "choice")
ORDERS = tuple(problem for problem in PROBLEMS if problem[0].asked == "order")
# Each kind and level in one of the two systems, in turn: for what hangs little on the system.
IN_TURN = tuple(problem for number, problem in enumerate(PROBLEMS) if number % 4 in (0, 3))
NUMERIC_IN_TURN = tuple(problem for problem in IN_TURN if problem[0].judge is None)
# Every formula in each system of units that it has.
EQUATIONS = tuple((formula, units) for formula in FORMULAS for units in formula.systems)
SEEDS = int(os.environ.get("W2W_SEEDS", "5"))
_GOLDEN_STEP = 618_033_989  # shares no factor with the count of seeds, so none repeats


def named(problem: Problem) -> str:
    """What a test's name calls a problem."""
    family, level, units = problem
    return f"{family.name}-{level}-{units}"


def equation(row: tuple[Formula, str]) -> str:
    """What a note calls a formula in one system of units."""
    formula, units = row
    return f"{formula.result} in {units}: {formula.expr}"


def each(problems: Sequence[Problem]) -> Callable[[Callable[[Problem], None]], Callable]:
    """A test for each kind of problem, of all its levels and systems; a note says which one failed.

    One for each level and system would be thirty thousand tests more, which take longer to tell of
    than to run.
    """
    of_kind: dict[str, list[Problem]] = {}
    for problem in problems:
        of_kind.setdefault(problem[0].name, []).append(problem)

    def tested(test: Callable[[Problem], None]) -> Callable:
        @functools.wraps(test)
        def over(kind: str) -> None:
            try_all(test, of_kind[kind], named)

        del over.__wrapped__  # whose argument is none that pytest knows
        return pytest.mark.parametrize("kind", of_kind, scope="module")(over)

    return tested


def seeds(count: int) -> list[int]:
    """The lowest seeds, the highest, and others spread evenly between them."""
    few = [*range(min(count, 20)), MOST_SEED]
    spread = (number * _GOLDEN_STEP % (MOST_SEED + 1) for number in range(1, count))
    return [*few, *spread][:count]


def rounded(value: float, figures: int) -> float:
    """A value to so many significant figures, as a calculator's display has it."""
    return float(f"{value:.{figures}g}")


def rounded_half_up(value: float, figures: int) -> float:
    """The same, with a last 5 always rounded up, as it is taught at school."""
    shown = Decimal(repr(value))
    last = Decimal(1).scaleb(shown.adjusted() - figures + 1)
    return float(shown.quantize(last, ROUND_HALF_UP))


def typed(value: float, unit: str, figures: int | None = None) -> str:
    """An answer as a person types it: $1,234.5 or 12,300 gpm or 82.4%; all of it unless told."""
    number = f"{value:,.17g}" if figures is None else f"{rounded(value, figures):,.15g}"
    if unit.startswith("$"):
        sign = "-" * number.startswith("-")
        return f"{sign}${number.removeprefix('-')}{unit[1:]}"
    return f"{number}%" if unit == "%" else f"{number} {unit}".strip()

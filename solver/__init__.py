"""The solver of Wire to Water: problems, worked solutions, mistakes and grading.

>>> from solver import draw, grade
>>> case = draw("water_power", seed=7)
>>> grade(case, f"{case.answer:.3g} hp").status
'right'
"""

from .case import Case, Mistake, Step
from .case import draw as _draw
from .code import case_from_code
from .errors import BadCode, BadDefinition, NotSolvable, SolverError, Unreadable
from .families import FAMILIES, family_named
from .family import Family
from .grading import Verdict, grade

__all__ = [
    "FAMILIES",
    "BadCode",
    "BadDefinition",
    "Case",
    "Family",
    "Mistake",
    "NotSolvable",
    "SolverError",
    "Step",
    "Unreadable",
    "Verdict",
    "case_from_code",
    "draw",
    "family_named",
    "grade",
]


def draw(family: Family | str, seed: int, units: str = "us", level: int = 1) -> Case:
    """Problem number `seed` of a family (itself or its name), in "us" or "si", from level 1 up.

    The same arguments give the same Case on any machine, operating system and Python version.

    >>> draw("brake_power", 3, "si", level=2).unit
    'kW'
    """
    return _draw(family_named(family) if isinstance(family, str) else family, seed, units, level)

"""The solver of Wire to Water: problems, worked solutions, mistakes and grading.

>>> from solver import draw, grade
>>> case = draw("water_power", seed=7)
>>> grade(case, f"{case.answer:.3g} hp").status
'right'
"""

from .case import Case
from .errors import BadCode, BadDefinition, NotSolvable, SolverError, Unreadable
from .families import FAMILIES
from .family import Family
from .grading import Verdict, grade
from .library import case_from_code, draw, family_named
from .mistake import Mistake
from .steps import Step

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

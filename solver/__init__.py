"""The solver of Wire to Water: problems, worked solutions, mistakes and grading.

>>> from solver import draw, grade
>>> case = draw("water_power", seed=7)
>>> grade(case, f"{case.answer:.3g} hp").status
'right'
"""

from .engine.case import Case
from .engine.family import Family
from .engine.grading import Verdict, grade
from .engine.mistake import Mistake
from .engine.steps import Step
from .errors import BadCode, BadDefinition, NotSolvable, SolverError, Unreadable
from .topics.library import case_from_code, draw, family_named
from .topics.problems import FAMILIES

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

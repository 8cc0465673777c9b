"""The solver of Wire to Water: problems, worked solutions, mistakes and grading.

>>> from solver import draw, grade
>>> case = draw("water_power", seed=7)
>>> grade(case, f"{case.answer:.3g} hp").status
'right'

DEVELOPERS.md has the rooms. Beside them:

| file | what is in it |
|---|---|
| `errors.py` | what the solver refuses with, each with a sentence to act on |
| `vocabulary.py` | every quantity by its name, and a sentence with the names of quantities in it |
| `scenario.py` | the pumps, stations and people of every example |
| `__main__.py` | the `python -m solver` commands |
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

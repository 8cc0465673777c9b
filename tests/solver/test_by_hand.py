"""Every numeric answer, against the same sum worked by hand in plain numbers.

A topic's `by_hand.py` has `BY_HAND`: for each numeric family, by its name, what its answer comes
to from the plain numbers given and the system of units, without the solver's formulas.
"""

import ast
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path
from pkgutil import iter_modules

import pytest

from solver import draw, topics

from .drawn import NUMERIC, SEEDS, each, seeds

# A velocity is worked from the area of the pipe there, which the trade's 0.4085 rounds.
NEAR = {"head": 0.0015}


def modules():
    folders = [f"{topics.__name__}.{m.name}" for m in iter_modules(topics.__path__) if m.ispkg]
    return [import_module(f"{f}.by_hand") for f in folders if find_spec(f"{f}.by_hand")]


WORKED = [item for module in modules() for item in module.BY_HAND.items()]
BY_HAND = dict(WORKED)
HELD = [problem for problem in NUMERIC if problem[0].name in BY_HAND]


@each(HELD)
def test_the_answer_is_the_one_worked_by_hand(problem):
    family, level, units = problem
    for seed in seeds(SEEDS):
        case = draw(family, seed, units, level)
        expected = BY_HAND[family.name](dict(case.given), units)
        near = NEAR.get(family.chapter, 1e-9)
        assert expected == pytest.approx(case.answer, rel=near), case.code


@pytest.mark.parametrize("module", modules(), ids=lambda module: module.__name__.split(".")[-2])
def test_a_sum_by_hand_uses_nothing_of_the_solver_but_tables_and_other_sums(module):
    tree = ast.parse(Path(module.__file__).read_text("utf-8"))
    used = {node.module for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
    allowed = (".by_hand", ".topics.tables")
    assert [] == [n for n in used if n.startswith("solver") and not n.endswith(allowed)]


def test_every_numeric_family_has_one_sum_by_hand():
    names = {family.name for family, _, _ in NUMERIC}
    for name in names - BY_HAND.keys():
        pytest.fail(f'write "{name}": lambda given, units: ... into by_hand.py of its topic')
    assert names == set(BY_HAND), "a sum by hand is of no family: give it the family's name"
    assert len(BY_HAND) == len(WORKED), "two topics work one family"

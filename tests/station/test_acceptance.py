"""How often what is drawn for a problem makes a fair one: in half of the draws or more, of every kind.

A family says what it needs of its station so that its problems come out of it. A need left out shows here
as a level whose draws are thrown away. The lowest shares are printed when the run ends.
"""

import pytest

from solver.engine.posing import tried
from solver.errors import Unfit
from tests.solver.drawn import PROBLEMS, SEEDS, named

from .conftest import SHARE

LEAST = 0.5
DRAWS = max(60, SEEDS)
FEW = DRAWS // 3
PLAIN = 0.8  # a share that, of few draws, needs no more of them


def is_fair(family, level, units, seed) -> bool:
    try:
        tried(family, level, units, seed)
    except Unfit:
        return False
    return True


def share_of(problem, draws: int) -> float:
    return sum(is_fair(*problem, seed) for seed in range(draws)) / draws


@pytest.mark.parametrize("problem", PROBLEMS, ids=named)  # each has its share in the summary
def test_half_of_the_draws_of_a_level_or_more_make_a_fair_problem(problem, record_property):
    share = share_of(problem, FEW)
    if share < PLAIN:
        share = share_of(problem, DRAWS)
    record_property(SHARE, share)
    assert share >= LEAST

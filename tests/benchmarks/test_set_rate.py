"""How fast the problems of a set are drawn, which marking a class waits for.

    python -m pytest tests/benchmarks/test_set_rate.py --benchmark-enable

What is asserted is ratios of one run: a set adds little to the draws it consists of, and neither
one question alone nor the ranges of a plant make a whole set be drawn.
"""

import time
from statistics import median

import pytest

from solver.sets.own_plant import plant_of
from solver.sets.work_set import case_for, cases_for, set_of
from solver.topics.library import draw

KEYS = {"chapters": ("horsepower", "head", "efficiency", "cost"), "count": 12, "seed": 5}
WORK = set_of(**KEYS)
PUMP = {"name": "Pump 2", "station": "the Quarry Road lift station"}
RANGES = {"flow": [300, 900], "head": [30, 90]}
PLANT = plant_of({"name": "Marlow Bend", "pumps": [PUMP | {"ranges": RANGES}]})
OWN = set_of(**KEYS, plant=PLANT)
PEOPLE = [f"p{number:03}" for number in range(200)]


def seconds(*works) -> list[float]:
    """The median time of each for one person, person by person in turn, after a first round."""
    times: list[list[float]] = [[] for _ in works]
    for turn in range(5):
        for person in PEOPLE:
            for work, spent in zip(works, times, strict=True):
                started = time.perf_counter()
                work(person)
                if turn:
                    spent.append(time.perf_counter() - started)
    return [median(spent) for spent in times]


def rate(one: float) -> str:
    return f"{1000 * one:10.2f} ms a person {WORK.count / one:10,.0f} problems a second"


@pytest.mark.benchmark(group="set")
@pytest.mark.parametrize(
    ("work", "name"),
    [(WORK, "twelve problems of a person"), (OWN, "twelve within a pump's ranges")],
    ids=["plain", "ranges"],
)
def test_a_set_takes_little_more_than_the_draws_it_consists_of(table, work, name):
    """Which seeds keep the ranges is known from the first round on."""
    drawn = {
        person: [(c.family, c.seed, c.units, c.level) for c in cases_for(work, person)]
        for person in PEOPLE
    }
    whole, bare = seconds(
        lambda person: cases_for(work, person),
        lambda person: [draw(*each) for each in drawn[person]],
    )
    table[name] = rate(whole)
    assert whole < 1.5 * bare


@pytest.mark.benchmark(group="set")
def test_one_question_alone_takes_a_third_of_twelve_at_most():
    one, whole = seconds(
        lambda person: case_for(WORK, person, 12), lambda person: cases_for(WORK, person)
    )
    assert one < whole / 3

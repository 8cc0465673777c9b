"""How fast a station is drawn and read, as ratios to a case of a problem drawn in the same run."""

import pytest

from solver import draw
from solver.engine.draw import Draw
from solver.station.drawn import draw_station
from tests.solver.drawn import seeds

SEEDS = seeds(300)
MEDIANS: dict[str, float] = {}  # seconds for one, by name


def measured(benchmark, work, name: str) -> float:
    """The median of many rounds, as seconds for one."""
    benchmark.pedantic(work, rounds=15, iterations=1, warmup_rounds=2)
    MEDIANS[name] = benchmark.stats.stats.median / len(SEEDS)
    return MEDIANS[name]


@pytest.mark.benchmark(group="station")
def test_a_case_is_drawn(benchmark, table):
    one = measured(benchmark, lambda: [draw("motor_power", s, "us", 2) for s in SEEDS], "case")
    table["a case, beside stations"] = f"{1 / one:10,.0f} a second"


@pytest.mark.benchmark(group="station")
def test_a_station_costs_less_than_four_cases(benchmark, table):
    one = measured(benchmark, lambda: [draw_station(Draw(f"s{s}"), "us") for s in SEEDS], "station")
    table["a station that could exist"] = f"{1 / one:10,.0f} a second"
    assert MEDIANS["station"] < 4 * MEDIANS["case"]


@pytest.mark.benchmark(group="station")
def test_a_reading_costs_a_twentieth_of_its_station(benchmark, table):
    made = [draw_station(Draw(f"s{s}"), "us") for s in SEEDS]
    for station in made:
        station.reading("brake_power")  # the pump is found at work once

    one = measured(benchmark, lambda: [s.reading("input_power") for s in made], "reading")
    table["a reading of one"] = f"{1 / one:10,.0f} a second"
    assert MEDIANS["reading"] < MEDIANS["station"] / 20

"""The wet well, against published worked examples and design rules."""

import pytest

from solver.engine.plan import find_plan
from solver.topics.formulas import FORMULAS
from solver.topics.limits import MOTOR_CYCLE

from .published import CONSTANT, Row, every, worked

EI = "US Army Corps of Engineers EI 11C201 (1997), ch. 7"
MIL = "MIL-HDBK-1005/9A, 2.5.3.6"
OPERATORS_MATH = "an operators' magazine, math problems (August 2019)"
INSTALLERS_MATH = "an installers' magazine, arithmetic (August 2017), at 7.5 gal a cubic foot"
KENTUCKY = "Kentucky Operator Certification Program, time to pump out a tank (2012)"
PRACTICE = "an operators' practice problems, answers"
SPELLMAN = "Mathematics and Statistics for the Environment, Ex 14.31"


def by_level(diameter: float, name: str, inches: float, minutes: float) -> dict[str, float]:
    """A round well whose level moved so many inches in so many minutes."""
    return {
        "well_diameter": diameter, f"{name}_read": inches, f"{name}_time": 60 * minutes,
    }  # fmt: skip


ROWS = [
    # Volumes
    Row(
        "430848", "well_volume", "us",
        {"well_length": 80, "well_width": 40, "water_depth": 18}, KENTUCKY, "R",
    ),
    Row(
        "203458", "well_volume", "us", {"well_diameter": 50, "water_depth": 13.86}, PRACTICE, "R",
    ),
    Row(
        "1166", "well_volume", "us", {"well_diameter": 6, "water_depth": 5.5}, INSTALLERS_MATH, "R",
        CONSTANT,
    ),
    Row(
        "29359", "working_volume", "us", {"well_diameter": 25, "working_depth": 8},
        f"{KENTUCKY}: 3,925 ft3 times 7.48", "R",
    ),
    # A pump by drawdown
    Row("146.8", "drawdown_rate", "us", by_level(10, "drawdown", 6, 2), OPERATORS_MATH, "R"),
    Row("29.36", "rise_rate", "us", by_level(20, "rise", 3, 20), OPERATORS_MATH, "R"),
    Row(
        "134.64", "drawdown_rate", "us",
        {"well_length": 15, "well_width": 12, "drawdown_level": 3, "drawdown_time": 1800},
        OPERATORS_MATH, "R",
    ),
    Row(
        "5385.6", "drawdown_volume", "us",
        {"well_length": 15, "well_width": 12, "drawdown_level": 4}, PRACTICE, "R",
    ),
    Row(
        "180", "flow", "us", {"drawdown_volume": 5385.6, "drawdown_time": 1800, "inflow": 0},
        PRACTICE, "R",
    ),
    Row(
        "700", "drawdown_rate", "us", {"drawdown_volume": 21_000, "drawdown_time": 1800},
        SPELLMAN, "R",
    ),
    Row(
        "400", "flow", "us", {"drawdown_rate": 250, "inflow": 150},
        "pump rate = drawdown rate + inflow, any operators' course", "C",
    ),
    # Cycles
    Row(
        "5.333", "cycle_time", "us", {"working_volume": 500, "flow": 400, "inflow": 150},
        f"{MIL}, equation 1", "R",
    ),
    Row("3.333", "fill_time", "us", {"working_volume": 500, "inflow": 150}, MIL, "R"),
    Row(
        "2.0", "pump_down_time", "us", {"working_volume": 500, "flow": 400, "inflow": 150},
        MIL, "R",
    ),
    Row("1250", "least_volume", "us", {"least_cycle": 10, "flow": 500}, f"{EI}: V = t q / 4", "R"),
    Row(
        "1250", "least_volume", "us", {"least_cycle": 10, "flow": 500}, f"{MIL}, equation 2", "R",
    ),
    Row(
        "10", "shortest_cycle", "us", {"working_volume": 1250, "flow": 500}, f"{MIL}: t = 4 V / D",
        "R",
    ),
    Row(
        "6.750", "least_volume", "si", {"least_cycle": 10, "flow": 45},
        f"{EI}: 600 s times 45 L/s over 4 is 6,750 L", "R",
    ),
    Row(
        "625", "least_volume", "us", {"most_starts": 6, "alternating_pumps": 2, "flow": 500},
        f"{EI}: alternating two pumps halves the volume", "R",
    ),
    # Without power
    Row(
        "203", "storage_time", "us", {"storage_volume": 45_000, "inflow": 320_000 / 1440},
        f"{KENTUCKY}: 3 hours 23 minutes", "R", 0.001,
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_result(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


@pytest.mark.parametrize("inflow", [40, 110, 200, 290, 360])
def test_the_cycle_is_that_of_the_handbooks_equation(inflow):
    # MIL-HDBK-1005/9A (R): t = (V/D) [1 / (1 - Q/D) + 1 / (Q/D)], written out here.
    volume, pump = 500, 400
    expected = volume / pump * (1 / (1 - inflow / pump) + 1 / (inflow / pump))
    row = Row(
        "0", "cycle_time", "us", {"working_volume": volume, "flow": pump, "inflow": inflow},
        MIL, "R",
    )  # fmt: skip
    assert expected == pytest.approx(worked(row))


def test_no_inflow_makes_a_shorter_cycle_than_half_the_pump_rate():
    def cycle(inflow):
        given = {"working_volume": 500.0, "flow": 400.0, "inflow": float(inflow)}
        return find_plan(tuple(given), "cycle_time", FORMULAS, "us").run(given)["cycle_time"]

    shortest = min(range(1, 400), key=cycle)
    assert 200 == shortest
    assert 4 * 500 / 400 == pytest.approx(cycle(200))


@pytest.mark.parametrize(
    ("units", "size", "least"),
    [
        ("us", 7.5, (10, 15)),
        ("us", 15, (10, 15)),
        ("us", 25, (15, 20)),
        ("us", 75, (15, 20)),
        ("us", 125, (20, 30)),
        ("us", 200, (20, 30)),
        ("si", 11, (10, 15)),
        ("si", 18.5, (15, 20)),
        ("si", 55, (15, 20)),
        ("si", 90, (20, 30)),
        ("si", 160, (20, 30)),
    ],
)
def test_least_times_between_starts_are_those_of_the_table(units, size, least):
    # EI 11C201 Table 7-1 (R): under 20 hp (15 kW) 10 to 15 min, to 100 hp (75 kW) 15 to 20, to
    # 250 hp (185 kW) 20 to 30.
    given = {"motor_size": float(size)}
    found = [
        find_plan(("motor_size",), name, FORMULAS, units).run(given)[name]
        for name in MOTOR_CYCLE[1:3]
    ]
    assert list(least) == found


def test_a_motor_larger_than_the_table_has_its_maker_to_ask():
    # EI 11C201 Table 7-1 (R): over 250 hp (185 kW) as recommended by the manufacturer.
    plan = find_plan(("motor_size",), "cycle_floor", FORMULAS, "us")
    with pytest.raises(LookupError, match="ask the motor's manufacturer"):
        plan.run({"motor_size": 300.0})

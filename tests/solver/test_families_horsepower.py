"""The three horsepowers, against the same sums done here by hand and in plain numbers.

Water horsepower is gpm x ft / 3960 (Alabama Extension ANR-0548); in kilowatts it is L/s x m / 102
(Merkley & Allen, Utah State University, p. 123). One horsepower is 0.746 kW, a pound per square
inch holds up 2.31 ft and a kilopascal 0.102 m of water (common practice; NIST SP 811 has the
exact values, which tests/references holds these to).
"""

import re

import pytest

from solver import draw, grade
from solver.topics.horsepower.problems import HORSEPOWER
from solver.units.spoken import spoken

from .drawn import named, seeds

PROBLEMS = [
    (family, level, units)
    for family in HORSEPOWER
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]
NUMERIC = [problem for problem in PROBLEMS if problem[0].judge is None]


def by_hand(asked: str, given: dict[str, float], units: str) -> float:
    """What is asked, from whichever readings are given, in plain numbers."""
    us = units == "us"
    has = given.get
    share = {part: has(f"{part}_efficiency", 100) / 100 for part in ("pump", "motor")}
    flow, head, constant = has("flow"), has("head"), 3960 if us else 102
    if "pressure" in given:
        head = given["pressure"] * (2.31 if us else 0.102)
    if "daily_flow" in given:
        flow = given["daily_flow"] * 694.4 if us else given["daily_flow"] / 86.4
    motor = has("input_power", 0) / (0.746 if us else 1) or has("motor_power", 0)
    brake = has("brake_power", 0) or motor * share["motor"]
    water = has("water_power", 0) or brake * share["pump"] or flow * head / constant
    brake = brake or water / share["pump"]
    return {
        "water_power": lambda: water,
        "brake_power": lambda: brake,
        "motor_power": lambda: motor or brake / share["motor"],
        "flow": lambda: water * constant / head,
        "head": lambda: water * constant / flow,
    }[asked]()


@pytest.mark.parametrize("problem", NUMERIC, ids=named)
def test_the_answer_is_the_one_worked_by_hand(problem):
    family, level, units = problem
    for seed in seeds(60):
        case = draw(family, seed, units, level)
        expected = by_hand(case.asked, dict(case.given), units)
        assert expected == pytest.approx(case.answer, rel=1e-12), case.code


def powers(text: str, units: str) -> tuple[float, ...]:
    """Water, brake and motor power of one set, as the option writes them."""
    names = [spoken(f"{{{name}_power:short}}", units) for name in ("water", "brake", "motor")]
    found = re.fullmatch(", ".join(rf"{name} ([\d.,]+) \w+" for name in names), text)
    return tuple(float(part.replace(",", "")) for part in found.groups())


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize(("name", "fine"), [("which_power", True), ("impossible_powers", False)])
def test_just_one_set_is_as_asked_and_it_is_the_right_one(name, fine, units):
    """A set is possible when motor is at least brake and brake at least water power."""
    for seed in seeds(60):
        case = draw(name, seed, units)
        sets = [powers(choice, units) for choice in case.choices]
        fitting = [
            number
            for number, (water, brake, motor) in enumerate(sets, 1)
            if (motor >= brake >= water) is fine
        ]
        assert [case.answer] == fitting, case.code
        assert "right" == grade(case, str(fitting[0])).status


@pytest.mark.parametrize("units", ["us", "si"])
def test_the_impossible_report_is_below_the_water_power(units):
    for seed in seeds(60):
        case = draw("impossible_powers", seed, units, level=2)
        water = by_hand("water_power", dict(case.given), units)
        below = [
            number
            for number, choice in enumerate(case.choices, 1)
            if float(choice.split()[0].replace(",", "")) < water
        ]
        assert [case.answer] == below, case.code

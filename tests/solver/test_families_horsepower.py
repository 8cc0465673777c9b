"""The three horsepowers: the sets and reports that can't be right."""

import re

import pytest

from solver import draw, grade
from solver.topics.horsepower.by_hand import water as water_by_hand
from solver.vocabulary import spoken

from .drawn import seeds


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
        water = water_by_hand(dict(case.given), units)
        below = [
            number
            for number, choice in enumerate(case.choices, 1)
            if float(choice.split()[0].replace(",", "")) < water
        ]
        assert [case.answer] == below, case.code

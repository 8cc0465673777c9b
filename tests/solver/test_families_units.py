"""Units for pump work: what is to be judged, against pint and plain numbers.

Water is 8.34 lb a gallon or 1,000 kg a cubic metre; a psi holds up 2.31 ft of it and a kilopascal
0.102 m (common practice; tests/references holds these to the exact values).
"""

import re
from math import prod

import pytest

from solver import draw
from solver.units.in_pint import quantity
from solver.units.unit import convert

from .drawn import seeds

TRADE = 0.0015  # what the trade's figures differ by from the exact ones: 8.34, 2.31, 0.102, 0.746
UNITS = {"flow_per_second": ("cfs", "m3/s"), "daily_flow": ("MGD", "m3/day")}


def value_of(chain: str) -> float:
    """A chain such as "2.5 ft³/s × (7.48 gal / 1 ft³)", its numbers alone."""
    numbers = [
        [
            float(n.replace(",", ""))
            for n in re.findall(r"(?:^|(?<=\())[\d.,]+|(?<= / )[\d.,]+", part)
        ]
        for part in chain.split(" × ")
    ]
    return prod(over / (under[0] if under else 1) for over, *under in numbers)


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2, 3])
def test_just_one_chain_comes_to_the_true_value(level, units):
    """The other chains are off by far more than a rounding, or end in another unit."""
    for seed in seeds(60):
        case = draw("conversion_chain", seed, units, level)
        given = dict(case.given)
        if level == 3:
            power = quantity(given["flow"], "gpm" if units == "us" else "L/s") * quantity(
                given["head"], "ft" if units == "us" else "m"
            )
            true = (power * quantity(62.4, "lbf/ft3")).to("kilowatt").magnitude
        else:
            ((name, value),) = given.items()
            which = ("us", "si").index(units)
            wanted = {1: ("gpm", "L/s"), 2: ("MGD", "ML/day")}[level][which]
            true = convert(value, UNITS[name][which], wanted)
        near = [
            number
            for number, choice in enumerate(case.choices, 1)
            if value_of(choice) == pytest.approx(true, rel=TRADE)
        ]
        assert [case.answer] == near, (case.code, case.choices, true)


READING = r"([\d.,]+) ([A-Za-z³/0-9-]+)"


def is_true(statement: str, units: str) -> bool:
    """Whether a statement such as "450 gpm is 0.648 MGD" holds, by pint and plain numbers."""
    seen = [
        (float(n.replace(",", "")), u.replace("³", "3")) for n, u in re.findall(READING, statement)
    ]
    (value, start), *_, (claimed, end) = seen
    if "of head puts" in statement:
        per_unit = 3960 if units == "us" else 102
        true = value * seen[1][0] / per_unit
    elif "weighs" in statement:
        factor = {"gpm": 8.34, "L/s": 9.81, "gal": 8.34, "m3": 1000}[start]
        true = value * factor
    elif "holds up" in statement:
        true = value * (2.31 if units == "us" else 0.102)
    else:
        true = convert(value, start, end)
    return claimed == pytest.approx(true, rel=0.01)


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2, 3])
def test_just_one_statement_is_wrong_and_by_far(level, units):
    for seed in seeds(100):
        case = draw("wrong_by_a_factor", seed, units, level)
        false = [n for n, text in enumerate(case.choices, 1) if not is_true(text, units)]
        assert [case.answer] == false, (case.code, case.choices)

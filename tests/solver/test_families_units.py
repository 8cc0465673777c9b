"""Units for pump work, against the same conversions done here by pint and in plain numbers.

Water is 8.34 lb a gallon or 1,000 kg a cubic metre; a psi holds up 2.31 ft of it and a kilopascal
0.102 m (common practice; tests/references holds these to the exact values).
"""

import re
from math import prod

import pytest

from solver import draw
from solver.topics.conversions.problems import CONVERSIONS
from solver.units.in_pint import quantity
from solver.units.unit import convert, unit

from .drawn import named, seeds

PROBLEMS = [
    (family, level, units)
    for family in CONVERSIONS
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]
NUMERIC = [problem for problem in PROBLEMS if problem[0].judge is None]
TRADE = 0.0015  # what the trade's figures differ by from the exact ones: 8.34, 2.31, 0.102, 0.746
UNITS = {
    "flow": ("gpm", "L/s"),
    "flow_per_hour": ("gph", "m3/h"),
    "flow_per_second": ("cfs", "m3/s"),
    "daily_flow": ("MGD", "m3/day"),
    "flow_per_day": ("gpd", "ML/day"),
    "gauge_pressure": ("psi", "kPa"),
    "second_scale": ("kPa", "bar"),
    "water_volume": ("gal", "m3"),
    "volume_converted": ("ft3", "L"),
    "horsepower_rating": ("hp", "hp"),
    "kilowatt_rating": ("kW", "kW"),
    "shaft_work": ("ft-lb/min", "W"),
}


def drop(given: dict[str, float], us: bool) -> float:
    lost = given.get("flow_drop") or given["earlier_flow"] - given["flow"]
    return 100 * lost / given["earlier_flow"]


def work(given: dict[str, float], us: bool) -> float:
    head = given.get("head") or given["pressure"] * (2.31 if us else 0.102)
    return (given.get("weight_flow") or given["flow"] * (8.34 if us else 9.81)) * head


def height(given: dict[str, float], us: bool) -> float:
    if "tank_depth" in given:
        return given["tank_depth"] - given["tap_height"]
    if "water_height" in given:
        return given["water_height"]
    gauge = given.get("gauge_pressure") or as_pint(given, "gauge_pressure", us)
    return gauge * (2.31 if us else 0.102)


def gauge(given: dict[str, float], us: bool) -> float:
    return height(given, us) / (2.31 if us else 0.102)


def second(given: dict[str, float], us: bool) -> float:
    psi_or_kpa = given.get("gauge_pressure") or gauge(given, us)
    return psi_or_kpa * 6.895 if us else psi_or_kpa / 100


def volume(given: dict[str, float], us: bool) -> float:
    if "water_weight" in given:
        return given["water_weight"] / (8.34 if us else 1000)
    if "percent_full" in given:
        return given["tank_volume"] * given["percent_full"] / 100
    if "empty_volume" in given:
        return given["tank_volume"] - given["empty_volume"]
    return as_pint({n: v for n, v in given.items() if n != "tank_volume"}, "water_volume", us)


HAND = {
    "flow_drop_share": drop,
    "lifting_work": work,
    "water_height": height,
    "gauge_pressure": gauge,
    "second_scale": second,
    "water_volume": volume,
    "water_weight": lambda given, us: volume(given, us) * (8.34 if us else 1000),
    "percent_full": lambda given, us: 100 * volume(given, us) / given["tank_volume"],
}


def as_pint(given: dict[str, float], asked: str, us: bool) -> float:
    """The one reading given, in the unit of what is asked, as pint converts it."""
    which = 0 if us else 1
    ((name, value),) = given.items()
    target = unit(UNITS[asked][which]).pint
    return quantity(value, UNITS[name][which]).to(target).magnitude


@pytest.mark.parametrize("problem", NUMERIC, ids=named)
def test_the_answer_is_the_one_worked_by_hand_or_by_pint(problem):
    family, level, units = problem
    for seed in seeds(60):
        case = draw(family, seed, units, level)
        given, us = dict(case.given), units == "us"
        hand = HAND.get(case.asked)
        expected = hand(given, us) if hand else as_pint(given, case.asked, us)
        assert expected == pytest.approx(case.answer, rel=TRADE), case.code


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

"""The families of phase balance: what is right is judged here by hand, in plain numbers."""

from itertools import pairwise
from statistics import mean

import pytest

from solver import draw, grade
from solver.topics.balance.by_hand import (
    current_unbalance,
    derated_power,
    deviation,
    highest,
    unbalance,
    voltage_unbalance,
)
from solver.topics.balance.problems import BALANCE
from solver.topics.tables import motor_sizes

from .drawn import named, seeds, typed

SEEDS = seeds(60)
PROBLEMS = [
    (family, level, units)
    for family in BALANCE
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]


def problems(*names: str, given: str = ""):
    """Every level and system of some families, or only the levels with one quantity given."""
    chosen = [
        (family, level, units)
        for family, level, units in PROBLEMS
        if family.name in names and (not given or given in family.levels[level - 1].given)
    ]
    assert {family.name for family, _, _ in chosen} == set(names)
    return pytest.mark.parametrize("problem", chosen, ids=named)


def cases(problem):
    family, level, units = problem
    return [draw(family, seed, units, level) for seed in SEEDS]


def amps(given, turn=""):
    return [given[f"amps_{leg}{turn}"] for leg in "abc"]


def spread(readings):
    """Percent, as the field has it: highest less lowest over the average."""
    return 100 * (max(readings) - min(readings)) / mean(readings)


def zone(size, low, high):
    return (size > low) + (size > high)


def current_zone(given):
    return ("good", "acceptable", "investigate")[zone(current_unbalance(given, ""), 5, 10)]


def voltage_zone(given):
    return ("full_load", "derate", "stop")[zone(voltage_unbalance(given, ""), 1, 5)]


def load_zone(given):
    where = zone(given["brake_power"], derated_power(given, ""), given["motor_size"])
    return ("carries", "over_derated", "over_nameplate")[where]


def nameplate_zone(given):
    limit = given["full_load_amps"]
    where = zone(highest(given), limit, limit * given["service_factor"])
    return ("within", "in_margin", "overloaded")[where]


def cause(given):
    """Where the highest leg stays, the supply; where it goes on to the next leg, the motor."""
    high = [
        max(range(3), key=amps(given, turn).__getitem__)
        for turn in ("", "_2", "_3")
        if f"amps_a{turn}" in given
    ]
    moves = {(b - a) % 3 for a, b in pairwise(high)}
    return {(0,): "supply", (1,): "motor"}[tuple(moves)]


def best(given):
    def percent(turn):
        if "amps_a" in given:
            return unbalance(amps(given, turn))
        return 100 * given[f"amps_deviation{turn}"] / given[f"amps_average{turn}"]

    return {"": "as_found", "_2": "rolled_once", "_3": "rolled_twice"}[
        min(("", "_2", "_3"), key=percent)
    ]


JUDGED_BY_HAND = {
    "current_limits": current_zone,
    "voltage_limits": voltage_zone,
    "derated_load": load_zone,
    "amps_check": nameplate_zone,
    "rolled_leads": cause,
    "best_connection": best,
}


@problems(*JUDGED_BY_HAND)
def test_the_right_choice_is_the_one_judged_by_hand(problem):
    family, level, _ = problem
    judge = JUDGED_BY_HAND[family.name]
    if (family.name, level) == ("current_limits", 3):

        def judge(given):
            return "over_manual" if current_unbalance(given, "") > 5 else "within_manual"

    drawn = [(case, {mistake.id for mistake in case.mistakes}) for case in cases(problem)]
    every_id = set().union(*(wrong for _, wrong in drawn))
    for case, wrong in drawn:
        assert {judge(case.given)} == every_id - wrong, case.code


@problems("current_limits", "voltage_limits", "derated_load", "amps_check", "rolled_leads")
def test_every_choice_of_a_judgement_comes_to_be_the_right_one(problem):
    family, level, units = problem
    right = {c.choices[int(c.answer) - 1] for c in (draw(family, s, units, level) for s in SEEDS)}
    always_wrong = {"rolled_leads": 1, "current_limits": 1 if level == 3 else 0}
    assert 3 - always_wrong.get(family.name, 0) == len(right)


@problems("current_unbalance", "current_spread", given="amps_a")
def test_the_other_definition_is_named_whichever_is_asked(problem):
    family, _, _ = problem
    other, named_as = {
        "current_unbalance": (spread, "amps_deviation.spread_for_deviation"),
        "current_spread": (unbalance, "amps_range.deviation_for_spread"),
    }[family.name]
    for case in cases(problem):
        answer = typed(other(amps(case.given)), "%")
        assert named_as == grade(case, answer).mistake, case.code


@problems("current_unbalance", "current_spread", "voltage_unbalance", "current_limits")
def test_every_question_on_unbalance_says_which_definition_it_means(problem):
    says = ("largest deviation from the average", "highest minus lowest, divided by the average")
    for case in cases(problem):
        assert any(words in case.question for words in says), case.question


@problems("rolled_leads")
def test_the_high_leg_stands_clear_of_the_others_in_every_connection(problem):
    for case in cases(problem):
        for turn in ("", "_2", "_3"):
            if f"amps_a{turn}" in case.given:
                low, middle, high = sorted(amps(case.given, turn))
                assert high - middle > middle - low, case.code
                assert high - mean((low, middle, high)) == pytest.approx(
                    deviation((low, middle, high))
                ), case.code


def turns_as_before(text):
    """Whether "T2 on A, T3 on B, T1 on C" has the order of T1, T2, T3: an even permutation."""
    leads = [int(part.split()[0][1:]) for part in text.split(", ")]
    crossings = sum(a > b for i, a in enumerate(leads) for b in leads[i + 1 :])
    return crossings % 2 == 0


@problems("roll_rotation")
def test_rotation_is_kept_by_rolling_three_leads_and_reversed_by_swapping_two(problem):
    _, level, _ = problem
    for case in cases(problem):
        asked_to_keep = level == 1
        fits = [n for n, c in enumerate(case.choices, 1) if turns_as_before(c) is asked_to_keep]
        assert [case.answer] == fits, case.code


@problems("rolled_leads", "best_connection", "roll_rotation")
def test_whoever_moves_leads_reads_of_the_lockout_and_of_rotation(problem):
    for case in cases(problem):
        why = case.steps[-1].why
        for words in ("qualified person", "locked out", "tested dead", "rotation"):
            assert words in why.lower(), case.code


@problems("derated_power", "derated_load")
def test_motors_come_from_the_table_of_the_system(problem):
    units = problem[2]
    sizes = {case.given["motor_size"] for case in cases(problem)}
    assert sizes <= set(motor_sizes(units))
    assert len(sizes) > 5


@problems("voltage_unbalance", "voltage_limits", "derated_power", "unbalanced_rise")
def test_volts_stand_near_a_supply_that_exists(problem):
    supplies = {"us": (460, 230, 208, 575), "si": (400,)}[problem[2]]
    for case in cases(problem):
        readings = [v for name, v in case.given.items() if name.startswith("volts_") and v > 100]
        for reading in readings:
            assert min(abs(reading - s) / s for s in supplies) < 0.11, case.code

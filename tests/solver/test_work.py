"""A reader's own numbers: the answer with its work, what is missing, or what cannot be true."""

from math import isclose

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from solver import SolverError, Unreadable, draw
from solver.algebra.tree import compiled
from solver.own.work import work
from solver.units.show import exact, with_unit
from solver.units.unit import convert, unit, units
from solver.vocabulary import QUANTITIES, quantity_named

from .drawn import NUMERIC, NUMERIC_IN_TURN, each, named, seeds

every_numeric_problem = each(NUMERIC_IN_TURN)


def drawn(problem, count: int = 3):
    family, level, system = problem
    return [draw(family, seed, system, level) for seed in seeds(count)]


def as_text(case) -> dict[str, str]:
    """A case's givens as a reader types them."""
    names = {name: quantity_named(name).unit(case.units) for name in case.given}
    return {n: with_unit(exact(case.given[n], u), u) for n, u in names.items()}


@every_numeric_problem
def test_the_givens_of_a_problem_give_its_answer(problem):
    for case in drawn(problem):
        found = work(as_text(case), case.asked, case.units)
        assert case.low <= found.answer <= case.high, case.code
        assert case.unit == found.unit
        assert ((), ()) == (found.missing, found.contradictions), case.code


@every_numeric_problem
def test_the_steps_lead_from_the_givens_to_the_answer(problem):
    for case in drawn(problem):
        found = work(case.given, case.asked, case.units)
        known = dict(found.given)
        for step in found.steps:
            known[step.name] = compiled(step.expr, case.units)(known)
            assert known[step.name] == step.value
        assert found.answer == known[case.asked]


@every_numeric_problem
def test_every_unit_of_a_givens_kind_gives_the_same_answer(problem):
    (case,) = drawn(problem, 1)
    expected = work(case.given, case.asked, case.units).answer
    for name, value in case.given.items():
        own = quantity_named(name).unit(case.units)
        if own in ("", "%") or own.startswith("$"):
            continue  # these have one way to be written, or are read with marks of their own
        for other in units().values():
            if other.kind == unit(own).kind:
                text = f"{convert(value, own, other)!r} {other.name}"
                found = work(case.given | {name: text}, case.asked, case.units)
                assert isclose(expected, found.answer, rel_tol=1e-9), text


def test_text_with_units_and_plain_numbers_may_be_mixed():
    found = work({"flow": "0.648 MGD", "head": 62}, "water_power")
    assert 450 * 62 / 3960 == pytest.approx(found.answer, rel=1e-4)


def test_us_readings_are_worked_in_metric_where_that_is_wanted():
    found = work({"flow": "450 gpm", "head": "62 ft"}, "water_power", "si")
    litres, metres = 450 * 3.785411784 / 60, 62 * 0.3048
    assert "kW" == found.unit
    assert litres * metres / 102 == pytest.approx(found.answer)


def test_a_percentage_may_be_typed_as_a_decimal():
    percent = work({"water_power": "12 hp", "pump_efficiency": "75%"}, "brake_power")
    decimal = work({"water_power": "12 hp", "pump_efficiency": ".75"}, "brake_power")
    assert 16 == pytest.approx(percent.answer) == pytest.approx(decimal.answer)


def test_the_outcome_is_said_with_the_unit():
    assert (
        "The water horsepower is 7.045 hp." == work({"flow": 450, "head": 62}, "water_power").says
    )


def test_what_is_missing_is_named_by_label_and_by_name():
    found = work({"flow": "450 gpm"}, "water_power")
    assert (None, ()) == (found.answer, found.steps)
    assert ("head",) in found.missing
    assert "The water horsepower can't be calculated yet. Add the" in found.says
    assert "head (head)" in found.says


# What is missing hangs on the formulas alone: neither on the system of units nor on the level below.
@pytest.mark.parametrize(
    "problem", [p for p in NUMERIC if p[1:] == (len(p[0].levels), "us")], ids=named
)
def test_any_one_missing_given_is_named_and_each_way_out_really_unlocks_the_answer(problem):
    (case,) = drawn(problem, 1)
    for name in case.given:
        left = {n: v for n, v in case.given.items() if n != name}
        found = work(left, case.asked, case.units)
        if found.answer is not None:
            continue  # it was not needed, or another formula does without it
        assert found.missing, f"{case.code} without {name}"
        for way in found.missing:
            added = {n: case.known.get(n, quantity_named(n).typical(case.units)) for n in way}
            again = work(left | added, case.asked, case.units)
            assert again.answer is not None, f"{case.code} without {name}, with {way}"


def test_a_pump_of_130_percent_is_a_contradiction_and_its_limit_is_named():
    found = work({"water_power": "13 hp", "brake_power": "10 hp"}, "pump_efficiency")
    (problem,) = found.contradictions
    assert "The pump efficiency comes to 130%. It can't be above 100%." in problem
    assert "motor horsepower ≥ brake horsepower ≥ water horsepower" in problem
    assert "common practice, no source" in problem
    assert 130 == pytest.approx(found.answer)


@pytest.mark.parametrize(
    ("readings", "find"),
    [
        ({"brake_power": 10, "motor_power": 8}, "motor_efficiency"),
        ({"water_power": 10, "motor_power": 8}, "overall_efficiency"),
        ({"flow": 450, "head": 620, "brake_power": 10}, "water_power"),
        ({"flow": 450, "head": 620, "brake_power": 10}, "input_power"),
    ],
)
def test_more_out_than_in_is_a_contradiction_wherever_in_the_chain_it_is(readings, find):
    assert any("can't be above 100%" in text for text in work(readings, find).contradictions)


def test_a_reading_below_nothing_is_a_contradiction():
    (problem,) = work({"flow": -450, "head": 62}, "head").contradictions
    assert "The flow comes to -450 gpm. It can't be below 0 gpm." == problem


def test_of_limits_broken_one_after_another_only_the_first_is_told():
    # More comes in than the pump moves: the times that follow would be below zero as well.
    readings = {"flow": 100, "inflow": 120, "working_volume": 500}
    problems = work(readings, "starts_per_hour").contradictions
    assert ("The drawdown rate comes to -20 gpm. It can't be below 0 gpm.",) == tuple(problems)


def test_two_ways_to_one_quantity_that_disagree_are_both_shown():
    readings = {"flow": 450, "head": 62, "water_power": 9}
    (problem,) = work(readings, "brake_power").contradictions
    assert "Two ways to get the water horsepower disagree: 9 hp and 7.045 hp." in problem


def test_a_reading_of_what_is_asked_is_held_against_the_worked_value():
    fits = work({"flow": 450, "head": 62, "water_power": "7.1 hp"}, "water_power")
    differs = work({"flow": 450, "head": 62, "water_power": "9 hp"}, "water_power")
    assert 450 * 62 / 3960 == pytest.approx(fits.answer) == pytest.approx(differs.answer)
    assert () == fits.contradictions
    assert "Two ways to get the water horsepower disagree" in differs.contradictions[0]


def test_readings_that_are_only_rounded_do_not_disagree():
    assert () == work({"flow": 450, "head": 62, "water_power": 7}, "brake_power").contradictions


def test_an_unusual_value_is_remarked_on_and_still_worked():
    found = work({"flow": "450 gpm", "head": "900 ft"}, "water_power")
    assert 450 * 900 / 3960 == pytest.approx(found.answer)
    (notice,) = found.notices
    assert "900 ft is unusual for the total dynamic head. Most are 5 ft to 500 ft" in notice


def test_ordinary_values_are_not_remarked_on():
    assert () == work({"flow": "450 gpm", "head": "62 ft"}, "water_power").notices


@pytest.mark.parametrize("text", ["62 psi", "sixty", "6,2", ""])
def test_a_value_that_cannot_be_read_is_named_by_its_quantity(text):
    with pytest.raises(Unreadable, match=r"^total dynamic head: "):
        work({"flow": "450 gpm", "head": text}, "water_power")


@pytest.mark.parametrize(
    ("name", "hint"),
    [
        ("watr_power", "Did you mean water_power"),
        ("zzz", "Type a name such as flow, head or water_power"),
    ],
)
def test_a_quantity_that_is_not_known_is_answered_with_the_nearest_ones(name, hint):
    with pytest.raises(SolverError, match=f"No quantity is called “{name}”. {hint}"):
        work({"flow": 450}, name)
    with pytest.raises(SolverError, match=f"No quantity is called “{name}”. {hint}"):
        work({name: 450}, "water_power")


def test_units_are_us_or_si():
    with pytest.raises(SolverError, match="Units are “us” or “si”; you gave “metric”"):
        work({"flow": 450}, "water_power", "metric")


def test_nothing_given_says_what_would_do():
    found = work({}, "water_power")
    assert ("flow", "head") in found.missing
    assert "Add" in found.says


def test_what_makes_most_of_the_readings_there_are_is_named_first():
    assert ("amps_b", "amps_c") == work({"amps_a": 20}, "current_unbalance").missing[0]
    assert ("head",) == work({"flow": 450}, "water_power").missing[0]
    assert ("pump_efficiency",) == work({"flow": 450, "head": 62}, "brake_power").missing[0]


def test_no_way_out_asks_for_more_than_another_does():
    for find in ("motor_load", "npsh_available", "current_unbalance", "head"):
        ways = [set(way) for way in work({"flow": 450}, find).missing]
        assert ways
        assert not [(one, other) for one in ways for other in ways if one < other]


def test_what_a_table_does_not_hold_is_told_in_its_own_words():
    found = work({"brake_power": "5000 hp"}, "motor_size")
    assert (None, ()) == (found.answer, found.missing)
    assert "The nameplate horsepower can't be calculated: a load of 5000 is above" in found.says


def test_a_division_by_nothing_is_said_and_nothing_is_asked_for_in_its_place():
    found = work({"flow": 0, "input_power": 10}, "energy_per_volume")
    assert (None, ()) == (found.answer, found.missing)
    assert "can't be calculated: its formula would divide by zero" in found.says


def test_a_load_that_is_just_a_standard_size_is_carried_by_that_size():
    """21 hp over 70 % is 30 hp, though a float has it at 30.000000000000004."""
    assert 30 == work({"water_power": 21, "pump_efficiency": 70}, "motor_size").answer


def test_a_larger_motor_than_the_load_needs_is_no_contradiction():
    readings = {"brake_power": 28, "motor_size": 50, "motor_efficiency": 93}
    assert () == work(readings, "motor_power").contradictions


NAMES = st.sampled_from(sorted(QUANTITIES))
VALUES = st.one_of(
    st.floats(-1e9, 1e9, allow_nan=False), st.sampled_from([0.0, 1e-300, 1e15, 100.0])
)


@given(st.dictionaries(NAMES, VALUES, max_size=6), NAMES, st.sampled_from(["us", "si"]))
@settings(max_examples=150)
def test_any_readings_get_an_answer_or_a_sentence_on_what_to_add(readings, find, system):
    found = work(readings, find, system)
    assert (found.answer is None) or isinstance(found.answer, float)
    assert found.says.endswith(".")
    quantity = QUANTITIES[find]
    opens = f"The {quantity.label(system)} {quantity.be(system)} "
    assert (found.answer is None) == (not found.says.startswith(opens))
    assert find not in {name for way in found.missing for name in way}
    assert all(text.endswith(".") for text in (*found.contradictions, *found.notices))

"""Mistakes come from the shape of a chain: exactly these, with these wrong answers, in these words.

The wrong answers are worked here in bare numbers. That these are the mistakes people make is
common practice, no source.
"""

import re

import pytest

from solver import draw
from solver.algebra.expression import (
    Constant,
    Exponential,
    Figure,
    Fraction,
    Known,
    Largest,
    Lookup,
    Mean,
    Number,
    Power,
    Smallest,
)
from solver.algebra.formula import Formula, Slip
from solver.engine.changes import mistaken_changes
from solver.engine.plan import find_plan

from .drawn import JUDGEMENTS, NUMERIC_IN_TURN, SEEDS, each

water, brake, motor = map(Known, ("water_power", "brake_power", "motor_power"))
pump, motor_share = (Fraction(Known(f"{part}_efficiency")) for part in ("pump", "motor"))
legs = tuple(map(Known, ("amps_a", "amps_b", "amps_c")))
TO_KW = Constant(
    "to_kw", "kilowatts per horsepower", Figure(0.746, "kW / hp"), Figure(1, ""), "a handbook"
)


def formula(result: str, expr, **more) -> Formula:
    return Formula(result, expr, "a handbook", "It is so.", **more)


def wrong_answers(given: dict[str, float], asked: str, *formulas: Formula, units: str = "us"):
    """Every mistake of a chain by its id, with the answer it gives."""
    plan = find_plan(tuple(given), asked, formulas, units)
    known = plan.run(given)
    found = {}
    for change in mistaken_changes(plan):
        assert change.id not in found, f"{change.id} is derived twice"
        found[change.id] = plan.follow(known, change.at, change.compute(known))[asked]
    return found


BRAKE = formula("brake_power", water / pump)
MOTOR = formula("motor_power", brake / motor_share)
METER = formula("input_power", motor * TO_KW)


def test_an_efficiency_below_the_line():
    assert {
        "brake_power.percent_as_whole.pump_efficiency": 12 / 75,
        "brake_power.multiplied_by.pump_efficiency": 12 * 0.75,
        "brake_power.left_out.pump_efficiency": 12,
    } == pytest.approx(
        wrong_answers({"water_power": 12, "pump_efficiency": 75}, "brake_power", BRAKE)
    )


def test_an_efficiency_above_the_line_when_the_same_formula_is_turned_round():
    assert {
        "water_power.percent_as_whole.pump_efficiency": 16 * 75,
        "water_power.divided_by.pump_efficiency": 16 / 0.75,
        "water_power.left_out.pump_efficiency": 16,
    } == pytest.approx(
        wrong_answers({"brake_power": 16, "pump_efficiency": 75}, "water_power", BRAKE)
    )


def test_a_ratio_as_percent():
    assert {
        "pump_efficiency.upside_down.water_power": 16 / 12 * 100,
        "pump_efficiency.left_as_decimal": 12 / 16,
    } == pytest.approx(
        wrong_answers({"brake_power": 16, "water_power": 12}, "pump_efficiency", BRAKE)
    )


def test_a_chain_of_two_steps_has_the_mistakes_of_both_and_stopping_between():
    given = {"water_power": 12, "pump_efficiency": 75, "motor_efficiency": 90}
    assert {
        "brake_power.percent_as_whole.pump_efficiency": 12 / 75 / 0.9,
        "brake_power.multiplied_by.pump_efficiency": 12 * 0.75 / 0.9,
        "brake_power.left_out.pump_efficiency": 12 / 0.9,
        "motor_power.percent_as_whole.motor_efficiency": 12 / 0.75 / 90,
        "motor_power.multiplied_by.motor_efficiency": 12 / 0.75 * 0.9,
        "motor_power.left_out.motor_efficiency": 12 / 0.75,
        "motor_power.stopped_at.brake_power": 12 / 0.75,
    } == pytest.approx(wrong_answers(given, "motor_power", BRAKE, MOTOR))


def test_a_conversion_forgotten_or_done_backwards():
    assert {
        "input_power.divided_by.to_kw": 10 / 0.746,
        "input_power.left_out.to_kw": 10,
    } == pytest.approx(wrong_answers({"motor_power": 10}, "input_power", METER))
    assert {
        "motor_power.multiplied_by.to_kw": 10 * 0.746,
        "motor_power.left_out.to_kw": 10,
    } == pytest.approx(wrong_answers({"input_power": 10}, "motor_power", METER))


def test_a_conversion_that_is_one_in_this_system_is_no_mistake_to_make():
    assert {} == wrong_answers({"motor_power": 10}, "input_power", METER, units="si")


def test_a_step_that_only_renames_is_not_where_somebody_stops():
    given = {"brake_power": 9, "motor_efficiency": 90}
    us = wrong_answers(given, "input_power", MOTOR, METER)
    si = wrong_answers(given, "input_power", MOTOR, METER, units="si")
    assert 10 == pytest.approx(us["input_power.stopped_at.motor_power"])
    assert not any("stopped_at" in name for name in si)


def test_hours_left_out_or_divided_by():
    assert {
        "energy.divided_by.run_time": 30 / 8,
        "energy.left_out.run_time": 30,
    } == pytest.approx(
        wrong_answers(
            {"input_power": 30, "run_time": 8},
            "energy",
            formula("energy", Known("input_power") * Known("run_time")),
        )
    )


def test_a_term_added_that_is_taken_away():
    gap = formula("price_gap", Known("on_peak_price") - Known("off_peak_price"))
    assert {"price_gap.added.off_peak_price": 0.30} == pytest.approx(
        wrong_answers({"on_peak_price": 0.2, "off_peak_price": 0.1}, "price_gap", gap)
    )


def test_a_term_left_out_of_a_sum_of_three():
    bill = formula("bill", Known("energy_cost") + Known("demand_charge") + Known("fixed_charge"))
    given = {"energy_cost": 100, "demand_charge": 40, "fixed_charge": 7}
    assert {
        "bill.left_out.energy_cost": 47,
        "bill.left_out.demand_charge": 107,
        "bill.left_out.fixed_charge": 140,
    } == pytest.approx(wrong_answers(given, "bill", bill))


def test_an_average_not_divided():
    average = formula("amps_average", Mean(legs))
    given = {"amps_a": 40, "amps_b": 42, "amps_c": 47}
    assert {"amps_average.not_divided": 129} == pytest.approx(
        wrong_answers(given, "amps_average", average)
    )


def test_an_exponent_left_out_also_inside_a_product():
    rule = Constant("rule", "2 of the rule", Figure(2, "/ %"), Figure(2, "/ %"), "a handbook")
    heat = formula("extra_rise", rule * Power(Known("voltage_unbalance"), 2))
    assert {
        "extra_rise.divided_by.rule": 9 / 2,
        "extra_rise.left_out.rule": 9,
        "extra_rise.power_left_out.voltage_unbalance": 2 * 3,
    } == pytest.approx(wrong_answers({"voltage_unbalance": 3}, "extra_rise", heat))


def test_an_exponent_of_the_wrong_sign_or_not_divided():
    degrees = Known("winding_temperature") / Known("winding_temperature_before")
    halved = formula("insulation_at_40", Known("insulation") * Exponential(0.5, degrees))
    given = {"insulation": 80, "winding_temperature": 30, "winding_temperature_before": 10}
    assert {
        "insulation_at_40.wrong_way": 80 * 2**3,
        "insulation_at_40.upside_down.winding_temperature": 80 * 0.5 ** (1 / 3),
    } == pytest.approx(wrong_answers(given, "insulation_at_40", halved))


def test_the_sides_of_a_triangle_added_or_the_root_not_taken():
    """Kilovars stand square on kilowatts, as horsepower does here on horsepower."""
    side = formula("water_power", Power(Power(motor, 2) - Power(brake, 2), 0.5))
    given = {"motor_power": 5, "brake_power": 4}
    assert {
        "water_power.added.brake_power": 41**0.5,
        "water_power.power_left_out": 9,
    } == pytest.approx(wrong_answers(given, "water_power", side))
    plan = find_plan(tuple(given), "water_power", (side,), "us")
    says = {change.id: change.says for change in mistaken_changes(plan)}
    assert says["water_power.power_left_out"].startswith("You left out the square root. ")
    added = says["water_power.added.brake_power"]
    assert re.match(r"You added the brake (horse)?power\. Subtract it\. ", added)


def test_the_extremes_taken_the_wrong_way_are_told_from_each_other():
    spread = formula("amps_range", Largest(legs) - Smallest(legs))
    given = {"amps_a": 40, "amps_b": 42, "amps_c": 47}
    assert {"amps_range.added.lowest": 87} == pytest.approx(
        wrong_answers(given, "amps_range", spread)
    )


def test_a_mistake_before_a_table_goes_through_the_table():
    table = Lookup(brake, lambda load, units: 10 * load, "ten times", ("hp", "kW"), ("hp", "kW"))
    given = {"water_power": 12, "pump_efficiency": 75}
    found = wrong_answers(given, "motor_size", BRAKE, formula("motor_size", table))
    assert 90 == pytest.approx(found["brake_power.multiplied_by.pump_efficiency"])
    assert 16 == pytest.approx(found["motor_size.stopped_at.brake_power"])


def test_a_slip_of_a_formula_counts_as_defined_and_not_turned_round():
    slip = Slip("used_twice", water / pump / pump, "The pump efficiency went in twice.")
    slipped = formula("brake_power", water / pump, slips=(slip,))
    given = {"water_power": 12, "pump_efficiency": 75}
    found = wrong_answers(given, "brake_power", slipped)
    assert 12 / 0.75**2 == pytest.approx(found["brake_power.used_twice"])
    given = {"brake_power": 16, "pump_efficiency": 75}
    assert "used_twice" not in " ".join(wrong_answers(given, "water_power", slipped))


def test_a_slip_that_needs_what_the_chain_does_not_know_is_left_out():
    slip = Slip("by_motor", water / motor_share, "This takes the motor efficiency.")
    slipped = formula("brake_power", water / pump, slips=(slip,))
    given = {"water_power": 12, "pump_efficiency": 75}
    assert "brake_power.by_motor" not in wrong_answers(given, "brake_power", slipped)
    given["motor_efficiency"] = 90
    assert 12 / 0.9 == pytest.approx(
        wrong_answers(given, "brake_power", slipped)["brake_power.by_motor"]
    )


def test_a_number_of_the_equation_itself_is_not_moved():
    half = formula("water_power", brake / Number(2))
    assert {} == wrong_answers({"brake_power": 10}, "water_power", half)


def sentences(text: str) -> list[str]:
    """A text's sentences; a decimal point or "1," does not end one."""
    return re.split(r"(?<=[.?:])\s+(?=[A-Z])", text)


def faults(says: str) -> str:
    """What is wrong with what a learner is told; nothing where it is as it should be."""
    longest = max(sentences(says), key=lambda sentence: len(sentence.split()))
    found = []
    if len(longest.split()) >= 20:
        found.append(f"{len(longest.split())} words: {longest}")
    if "!" in says or "  " in says:
        found.append("an exclamation mark or a double space")
    if not says.endswith(".") or not says[0].isupper():
        found.append("not whole sentences")
    return "; ".join(found)


@each(NUMERIC_IN_TURN)
def test_a_mistake_is_told_in_short_plain_sentences(problem):
    family, level, units = problem
    given = family.level(level)
    plan = find_plan(given.given, family.asks(given), family.formulas, units)
    for change in mistaken_changes(plan):
        assert "" == faults(change.says), f"{change.id}: {change.says}"
        assert 1 == len(sentences(change.did)), f"{change.id}: {change.did}"
        assert change.why, f"{change.id} has no reason"


@each(JUDGEMENTS)
def test_a_wrong_choice_is_told_in_short_plain_sentences(problem):
    family, level, units = problem
    for seed in range(12):
        case = draw(family, seed, units, level)
        for says in (case.steps[-1].why, *(mistake.says for mistake in case.mistakes)):
            assert "" == faults(says), f"{case.code}: {says}"


@each(NUMERIC_IN_TURN)
def test_every_numeric_problem_has_mistakes_to_learn_from(problem):
    family, level, units = problem
    for seed in range(SEEDS):
        assert draw(family, seed, units, level).mistakes

"""The families of the nameplate: what is right is judged here by hand, in plain numbers."""

import pytest

from solver import draw, grade
from solver.topics.nameplate.by_hand import (
    BY_HAND,
    first_percent,
    load_by_amps,
    load_by_slip,
    shaft,
)
from solver.topics.nameplate.problems import NAMEPLATE
from solver.topics.tables import motor_sizes

from .drawn import named, seeds, typed

SEEDS = seeds(60)
PROBLEMS = [
    (family, level, units)
    for family in NAMEPLATE
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]


def problems(*names: str):
    chosen = [problem for problem in PROBLEMS if problem[0].name in names]
    assert {family.name for family, _, _ in chosen} == set(names)
    return pytest.mark.parametrize("problem", chosen, ids=named)


def cases(problem):
    family, level, units = problem
    return [draw(family, seed, units, level) for seed in SEEDS]


def zone(size, low, high):
    return (size > low) + (size > high)


def method_zone(g, units):
    return ("too_low", "fair", "over")[zone(load_by_amps(g, units), 50, 100)]


def slip_zone(g, units):
    share = load_by_slip(g, units)
    if share < 0:
        return "above"
    return ("light", "full", "heavy")[zone(share, 90, 110)]


def setting_zone(g, units):
    low = g.get("overload_limit") or g["full_load_amps"] * first_percent(g) / 100
    high = g.get("raised_limit") or g["full_load_amps"] * (first_percent(g) + 15) / 100
    where = zone(g["overload_setting"], low, high)
    return ("allowed", "if_it_will_not_start", "never")[where]


def service_zone(g, units):
    carried = g.get("brake_power") or shaft(g, units)
    where = zone(carried, g["motor_size"], g["motor_size"] * g["service_factor"])
    return ("within", "in_margin", "overloaded")[where]


def poles(g, units):
    speed = g.get("rated_speed") or g["running_speed"]
    fitting = [p for p in (8, 6, 4, 2) if 60 * g["frequency"] / (p / 2) > speed]
    return f"poles_{fitting[0]}"


LEAST = {"D": 4.0, "E": 4.5, "F": 5.0, "G": 5.6, "H": 6.3, "J": 7.1, "K": 8.0, "L": 9.0}


def letter(g, units):
    per_horsepower = g.get("starting_kva_per_hp")
    if per_horsepower is None:
        per_horsepower = BY_HAND["starting_kva"](g, units) / g["motor_size"]
        per_horsepower *= 1 if units == "us" else 0.746
    return [each for each, least in LEAST.items() if per_horsepower >= least][-1]


JUDGED_BY_HAND = {
    "load_method": method_zone,
    "slip_tells": slip_zone,
    "overload_setting": setting_zone,
    "service_load": service_zone,
    "pole_count": poles,
    "code_letter": letter,
}


@problems(*JUDGED_BY_HAND)
def test_the_right_choice_is_the_one_judged_by_hand(problem):
    family, _, units = problem
    drawn = [(case, {mistake.id for mistake in case.mistakes}) for case in cases(problem)]
    every_id = set().union(*(wrong for _, wrong in drawn))
    for case, wrong in drawn:
        expected = JUDGED_BY_HAND[family.name](case.given, units)
        assert expected in every_id - wrong, case.code


@problems("load_method", "overload_setting", "service_load")
def test_every_choice_of_three_comes_to_be_the_right_one(problem):
    right = {case.choices[int(case.answer) - 1] for case in cases(problem)}
    assert 3 == len(right)


@problems("names_of_powers")
def test_kva_is_the_largest_and_the_power_factor_ties_it_to_the_kilowatts(problem):
    for case in cases(problem):
        fitting = []
        for number, choice in enumerate(case.choices, 1):
            apparent, working, idle = (float(part.split()[0]) for part in choice.split(", "))
            near = working / apparent == pytest.approx(case.given["power_factor"], rel=0.01)
            if near and apparent > max(working, idle):
                fitting.append(number)
        assert [case.answer] == fitting, case.code


@problems("table_or_nameplate")
def test_the_overload_goes_by_the_nameplate_and_the_wiring_by_the_table(problem):
    _, level, _ = problem
    for case in cases(problem):
        chosen = case.choices[int(case.answer) - 1]
        g = case.given
        overload = "overload" in case.question.rpartition(". ")[2]
        if level == 1:
            assert ("nameplate" in chosen) is overload, case.code
            assert ("table" in chosen) is not overload, case.code
        else:
            factor = first_percent(g) if overload else 125
            base = g["full_load_amps"] if overload else g["table_amps"]
            shown = float(chosen.split()[0].replace(",", ""))
            assert factor * base / 100 == pytest.approx(shown, rel=0.005), case.code


@problems("apparent_power")
def test_root_three_left_out_or_used_as_three_is_named(problem):
    for case in cases(problem):
        if "line_volts" in case.given:
            for wrong, name in (
                (case.answer / 1.732, "apparent_power.left_out.root_three"),
                (case.answer / 1.732 * 3, "apparent_power.three_for_root_three"),
            ):
                assert name == grade(case, typed(wrong, "kVA")).mistake, case.code


@problems("three_phase_kilowatts")
def test_kva_taken_as_kilowatts_and_the_power_factor_used_twice_are_named(problem):
    for case in cases(problem):
        factor = case.given["power_factor"]
        taken = grade(case, typed(case.answer / factor, "kW")).mistake
        twice = grade(case, typed(case.answer * factor, "kW")).mistake
        assert "input_power.factor_used_twice" == twice, case.code
        assert "input_power.left_out.power_factor" == taken, case.code


@problems("slip")
def test_slip_over_the_running_speed_is_named(problem):
    for case in cases(problem):
        wrong = case.answer / (1 - case.answer / 100)
        assert "slip.over_running_speed" == grade(case, typed(wrong, "%")).mistake, case.code


@problems("overload_limit", "overload_setting", "table_or_nameplate")
def test_who_sets_an_overload_reads_that_the_local_code_decides(problem):
    family, _, _ = problem
    for case in cases(problem):
        if family.judge is None:
            assert "your local code decides" in "".join(f.source for f in used(case))
        else:
            assert "local code" in case.steps[-1].why + case.steps[-1].rule, case.code


def used(case):
    return [f for f in case.family.formulas if f.result in {step.name for step in case.steps}]


@problems("apparent_power", "motor_load", "load_by_amps", "service_load", "load_method")
def test_whoever_reads_live_parts_is_a_qualified_person(problem):
    for case in cases(problem):
        if "line_volts" in case.given and "line_amps" in case.given:
            assert "qualified person" in case.question, case.code


@problems("motor_load", "service_load", "starting_kva", "code_letter")
def test_motors_come_from_the_table_of_the_system(problem):
    units = problem[2]
    sizes = {case.given["motor_size"] for case in cases(problem) if "motor_size" in case.given}
    assert sizes <= set(motor_sizes(units))


@problems("starting_kva", "locked_rotor_amps", "code_letter")
def test_motors_start_with_what_the_code_expects_of_their_size(problem):
    """NEC Table 430.251(B), designs B, C and D: under 12.5 kVA per hp at 1.5 hp, about 5.8 from 15 hp up."""
    _, _, units = problem
    for case in cases(problem):
        per_hp = case.known.get("starting_kva_per_hp")
        if per_hp and "motor_size" in case.given:
            hp = case.given["motor_size"] * (1 if units == "us" else 1 / 0.746)
            assert 5.0 <= per_hp <= (10.5 if hp < 15 else 7.5), case.code


@problems("service_load")
def test_running_in_the_service_factor_is_allowed_and_costs_life(problem):
    says = {t.says for case in cases(problem) for t in case.mistakes}
    whys = {case.steps[-1].why for case in cases(problem)}
    assert any("even all day" in text and "won't last as long" in text for text in says | whys)


@problems("apparent_power", "amps_from_power", "motor_load", "load_by_amps")
def test_volts_stand_near_a_supply_that_exists(problem):
    supplies = {"us": (600, 480, 240, 208), "si": (400,)}[problem[2]]
    for case in cases(problem):
        if "line_volts" in case.given:
            volts = case.given["line_volts"]
            assert min(abs(volts - s) / s for s in supplies) < 0.12, case.code

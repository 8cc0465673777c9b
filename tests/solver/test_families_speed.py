"""The families of speed and impeller: what is right is judged here by hand, in plain numbers."""

import pytest

from solver import draw, grade
from solver.topics.speed.by_hand import added, crossing, ratio, specific_speed, static
from solver.topics.speed.problems import SPEED

from .drawn import named, seeds, typed

SEEDS = seeds(60)
PROBLEMS = [
    (family, level, units)
    for family in SPEED
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]


def cases(problem):
    family, level, units = problem
    return [draw(family, seed, units, level) for seed in SEEDS]


def problems(*names: str, given: str = ""):
    chosen = [
        problem
        for problem in PROBLEMS
        if problem[0].name in names and (not given or given in problem[0].level(problem[1]).given)
    ]
    assert {problem[0].name for problem in chosen} == set(names)
    return pytest.mark.parametrize("problem", chosen, ids=named)


def zone(size, low, high):
    return (size > low) + (size > high)


def cube_choice(given, units):
    if static(given) > given["shutoff_head"] * ratio(given) ** 2:
        return "no_water"
    return "allowed" if static(given) < 0.05 * given["head"] else "not_allowed"


def gain_choice(given, units):
    one = given["flow"] if "flow" in given else crossing(given)
    return ("hardly", "some", "nearly_double")[zone(added(given) / one, 0.2, 0.8)]


def duty_choice(given, units):
    """On its curve less flow is more head; off it both are less; the gauge at rest tells the lift."""
    if given["flow"] > given["rated_flow"]:
        return "opened"
    if given["head"] < given["rated_head"]:
        return "worn"
    rose = given.get("static_now", 0) > 1.02 * given.get("static_head", 1)
    return "lifted" if rose else "restricted"


def shape_choice(given, units):
    low, high = {"us": (4000, 9000), "si": (80, 175)}[units]
    size = given.get("specific_speed") or specific_speed(given, units)
    return ("radial", "mixed", "axial")[zone(size, low, high)]


JUDGED_BY_HAND = {
    "cube_law": cube_choice,
    "two_pumps": gain_choice,
    "duty_change": duty_choice,
    "impeller_type": shape_choice,
}


@problems(*JUDGED_BY_HAND)
def test_the_right_choice_is_the_one_judged_by_hand(problem):
    family, _, units = problem
    drawn = [(case, {mistake.id for mistake in case.mistakes}) for case in cases(problem)]
    every_id = set().union(*(wrong for _, wrong in drawn))
    for case, wrong in drawn:
        assert {JUDGED_BY_HAND[family.name](case.given, units)} == every_id - wrong, case.code


@problems(*JUDGED_BY_HAND)
def test_every_choice_comes_to_be_the_right_one(problem):
    drawn = cases(problem)
    right = {case.choices[int(case.answer) - 1] for case in drawn}
    assert len(drawn[0].choices) == len(right)


@problems("slowed_power", "slowing_saves", "slowed_energy_per_volume", given="static_head")
def test_the_cube_law_used_where_water_is_lifted_is_named(problem):
    for case in cases(problem):
        given, share = case.given, case.given["new_flow"] / case.given["flow"]
        wrong = {
            "slowed_power": lambda g, r: g["input_power"] * r**3,
            "slowing_saves": lambda g, r: g["input_power"] * (1 - r**3) * g["yearly_hours"],
            "slowed_energy_per_volume": lambda g, r: g["energy_per_volume"] * r**2,
        }[problem[0].name](given, share)
        verdict = grade(case, typed(wrong, case.unit))
        assert "system_head.cube_law" == verdict.mistake, case.code
        assert "holds only with no static head" in verdict.says


@problems("new_flow", "new_head", "new_shaft_power", "power_cut", "slowed_power", "slowing_saves")
def test_wherever_a_law_of_affinity_is_used_its_limit_is_said(problem):
    for case in cases(problem):
        if "static_head" in case.given:
            continue
        assert "All of its head is friction" in case.question, case.code
        why = " ".join(step.why for step in case.steps)
        assert "no static head" in why, case.code


@problems("new_flow", "new_head", "new_shaft_power", "power_cut", "slowed_power")
def test_a_pump_without_static_head_does_not_stand_at_a_lift_station(problem):
    for case in cases(problem):
        assert "static_head" in case.given or "lift station" not in case.question, case.code


@problems("new_flow", "new_head", "new_shaft_power", "new_speed", "power_cut", "slowed_power")
def test_no_pump_is_sped_up_and_the_step_says_what_comes_first_where_one_would_be(problem):
    for case in cases(problem):
        speeds = [case.given.get(name) for name in ("pump_speed", "new_speed")]
        assert None in speeds or speeds[1] < speeds[0], case.code
        for step in case.steps:
            if step.name == "speed_ratio" and None not in speeds:
                assert "the maker's limit, the motor's size and the drive's amps" in step.why


@problems("slowed_power", "slowing_saves", "slowed_energy_per_volume", given="static_head")
def test_how_friction_goes_with_the_flow_is_said(problem):
    for case in cases(problem):
        assert "Friction changes with the square of the flow" in case.question, case.code


@problems("parallel_flow")
def test_two_pumps_are_never_said_to_move_twice_as_much(problem):
    """Now and then another mistake comes to the same number, and is told instead."""
    named = [
        grade(case, typed(2 * crossing(case.given), case.unit)).mistake for case in cases(problem)
    ]
    assert all(named)
    assert named.count("parallel_flow.doubled") > 0.9 * len(named)


@problems("new_diameter")
def test_impellers_are_trimmed_by_fifteen_percent_at_the_most(problem):
    for case in cases(problem):
        assert 0.845 < case.answer / case.given["impeller_diameter"] < 1, case.code

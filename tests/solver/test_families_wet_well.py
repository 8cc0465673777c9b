"""The families of the wet well: what is right is judged here by hand, in plain numbers.

The least times between starts are those of EI 11C201 (1997) chapter 7.
"""

import pytest

from solver import draw, grade
from solver.topics.tables import motor_sizes
from solver.topics.wet_well.by_hand import comes_in, cycle, fill, minutes, pumps, rises, working
from solver.topics.wet_well.problems import WET_WELL

from .drawn import each, named, seeds, typed

SEEDS = seeds(60)
PROBLEMS = [
    (family, level, units)
    for family in WET_WELL
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]


def cases(problem):
    family, level, units = problem
    return [draw(family, seed, units, level) for seed in SEEDS]


def problems(*names: str):
    chosen = [problem for problem in PROBLEMS if problem[0].name in names]
    assert {problem[0].name for problem in chosen} == set(names)
    return pytest.mark.parametrize("problem", chosen, ids=named)


def zone(size, low, high):
    return (size > low) + (size > high)


def starts_zone(g, u):
    """EI 11C201 Table 7-1: under 20 hp (15 kW) 10 to 15 min, to 100 hp (75 kW) 15 to 20, above 30."""
    small, middle = {"us": (20, 100), "si": (15, 75)}[u]
    size = g["motor_size"]
    low, high = (10, 15) if size < small else (15, 20) if size < middle else (20, 30)
    between = g.get("motor_cycle") or cycle(g, u) * g["alternating_pumps"]
    return ("too_often", "maker_decides", "seldom_enough")[zone(between, low, high)]


def share_zone(g, u):
    return ("low", "as_rated", "high")[zone(pumps(g, u) / g["rated_flow"], 0.9, 1.1)]


def source_zone(g, u):
    share = 1 - comes_in(g, u) / rises(g, u)
    return ("inflow", "both", "check_valve")[zone(share, 0.1, 0.5)]


def leaking(g, u):
    """A closed valve that slows the rise by a tenth or more stopped its own check valve's leak."""
    if "rise_rate" in g:
        rates = [g[f"rise_rate{which}"] for which in ("", "_1", "_2")]
    else:
        rates = [1 / g[f"rise_time{which}"] for which in ("", "_1", "_2")]
    slowed = tuple(rate <= 0.9 * rates[0] for rate in rates[1:])
    return {(0, 0): "neither", (1, 0): "pump_1", (0, 1): "pump_2", (1, 1): "both"}[slowed]


def cause(g, u):
    """On its curve, less flow is more head; off it, both are less."""
    if pumps(g, u) > g["rated_flow"]:
        return "opened"
    return "worn" if g["head"] < g["rated_head"] else "restricted"


JUDGED_BY_HAND = {
    "starts_limit": starts_zone,
    "drawdown_check": share_zone,
    "rise_source": source_zone,
    "leaking_valve": leaking,
    "drawdown_cause": cause,
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


@problems("drawdown_flow", "pump_down_time", "cycle_time")
def test_an_inflow_forgotten_is_named(problem):
    _, _, units = problem
    if "fill_time" in problem[0].level(problem[1]).given:
        return
    for case in cases(problem):
        wrong = {
            "drawdown_flow": lambda g, u: pumps(g, u) - comes_in(g, u),
            "pump_down_time": lambda g, u: minutes(working(g, u), g["flow"], u),
            "cycle_time": lambda g, u: fill(g, u) + minutes(working(g, u), g["flow"], u),
        }[problem[0].name](case.given, units)
        others = [m for m in case.mistakes if "inflow_forgotten" not in m.id]
        if not any(mistake.low <= wrong <= mistake.high for mistake in others):
            assert "inflow_forgotten" in grade(case, typed(wrong, case.unit)).mistake, case.code


@problems("well_volume", "volume_per_depth", "storage_time", "fill_time")
def test_a_diameter_put_in_for_the_radius_is_named(problem):
    for case in cases(problem):
        if "well_diameter" in case.given:
            factor = 4
            wrong = typed(case.answer * factor, case.unit)
            assert "well_area.diameter_for_radius" == grade(case, wrong).mistake, case.code


@problems("drawdown_flow", "inflow", "leakage", "rise_source", "leaking_valve")
def test_whoever_measures_a_level_reads_that_it_is_done_from_outside(problem):
    for case in cases(problem):
        if any(name.endswith("_read") for name in case.given):
            why = " ".join(step.why for step in case.steps)
            assert "Measure from outside" in why, case.code
            assert "permit-required confined space" in why, case.code


@each(PROBLEMS)
def test_no_wet_well_stands_at_a_booster_station(problem):
    assert not any("booster" in case.question for case in cases(problem))


@problems("starts_limit")
def test_motors_come_from_the_table_of_the_system(problem):
    sizes = {case.given["motor_size"] for case in cases(problem)}
    assert sizes <= set(motor_sizes(problem[2]))
    assert len(sizes) > 4


@problems("drawdown_flow", "inflow", "leakage")
def test_levels_are_read_and_timed_as_a_tape_and_a_watch_allow(problem):
    for case in cases(problem):
        for name, value in case.given.items():
            if name.endswith(("_read", "_time")):
                assert value == round(value), f"{case.code}: {name}"

"""The families of speed and impeller, against the same sums done here by hand.

Nothing here uses the solver's formulas. Flow, head and power go with the ratio of speeds or of
diameters, its square and its cube (Solberg, Ex 9.10); the last holds only with no static head (US
DOE Tip Sheet 11). Curves are parabolas, so where they cross is found here by halving an interval.
"""

import pytest

from solver import draw, grade
from solver.topics.speed.problems import SPEED

from .drawn import named, seeds, typed

SEEDS = seeds(60)
PROBLEMS = [
    (family, level, units)
    for family in SPEED
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]
NUMERIC = [problem for problem in PROBLEMS if problem[0].judge is None]


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


def ratio(given):
    """What the speed, the diameter or the flow is now, over what it was."""
    if "speed_cut" in given:
        return 1 - given["speed_cut"] / 100
    for now, before, root in (
        ("new_speed", "pump_speed", 1),
        ("new_diameter", "impeller_diameter", 1),
        ("new_flow", "flow", 1),
        ("new_head", "head", 2),
        ("new_shaft_power", "brake_power", 3),
    ):
        if now in given and before in given:
            return (given[now] / given[before]) ** (1 / root)
    raise AssertionError(f"no ratio in {given}")


def static(given):
    if "static_head" in given:
        return given["static_head"]
    return given["discharge_elevation"] - given["suction_elevation"]


def slowed_head(given):
    """The head at the new flow: the static part stays, the rest goes with the square."""
    lift = static(given)
    return lift + (given["head"] - lift) * (given["new_flow"] / given["flow"]) ** 2


def slowed_power(given):
    if "static_head" in given:
        share = given["new_flow"] / given["flow"] * slowed_head(given) / given["head"]
        return given["input_power"] * share
    return given["input_power"] * ratio(given) ** 3


def slowed_energy(given):
    if "static_head" in given:
        return given["energy_per_volume"] * slowed_head(given) / given["head"]
    return given["energy_per_volume"] * ratio(given) ** 2


def friction(given, flow):
    known = "known" if "known_friction" in given else "rated"
    return given[f"{known}_friction"] * (flow / given[f"{known}_flow"]) ** 2


def crossing(given, pumps=1):
    """The flow at which the pumps give what the system asks, by halving."""

    def spare(flow):
        fall = given["shutoff_head"] - given["rated_head"]
        gives = given["shutoff_head"] - fall * (flow / pumps / given["rated_flow"]) ** 2
        return gives - static(given) - friction(given, flow)

    low, high = 0.0, 20 * given["rated_flow"]
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if spare(middle) > 0 else (low, middle)
    return low


def system_head(given):
    flow = given["flow"] if "flow" in given else crossing(given)
    return static(given) + friction(given, flow)


def added(given):
    if "parallel_flow" in given:
        return given["parallel_flow"] - given["flow"]
    return crossing(given, 2) - crossing(given)


def shape(given, units):
    if "specific_speed" in given:
        return given["specific_speed"]
    head = given.get("head") or given["pressure"] * {"us": 2.31, "si": 0.102}[units]
    head /= given.get("stages", 1)
    flow = given["flow"] / {"us": 1, "si": 1000}[units]
    return given["pump_speed"] * flow**0.5 / head**0.75


BY_HAND = {
    "new_flow": lambda g: g["flow"] * ratio(g),
    "new_head": lambda g: g["head"] * ratio(g) ** 2,
    "new_shaft_power": lambda g: g["brake_power"] * ratio(g) ** 3,
    "new_speed": lambda g: g["pump_speed"] * ratio(g),
    "new_diameter": lambda g: g["impeller_diameter"] * ratio(g),
    "power_cut": lambda g: 100 * (1 - ratio(g) ** 3),
    "slowed_power": slowed_power,
    "slowing_saves": lambda g: (g["input_power"] - slowed_power(g)) * g["yearly_hours"],
    "slowed_energy_per_volume": slowed_energy,
    "least_speed": lambda g: g["pump_speed"] * (static(g) / g["shutoff_head"]) ** 0.5,
    "operating_flow": crossing,
    "operating_head": system_head,
    "parallel_flow": lambda g: crossing(g, 2),
    "second_pump": added,
}


@pytest.mark.parametrize("problem", NUMERIC, ids=named)
def test_the_answer_is_the_one_worked_by_hand(problem):
    family, _, units = problem
    for case in cases(problem):
        if family.name == "specific_speed":
            expected = shape(case.given, units)
        else:
            expected = BY_HAND[family.name](case.given)
        assert expected == pytest.approx(case.answer, rel=1e-9), case.code


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
    return ("radial", "mixed", "axial")[zone(shape(given, units), low, high)]


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
    assert not any("lift station" in case.question for case in cases(problem))


@problems("parallel_flow")
def test_two_pumps_are_never_said_to_move_twice_as_much(problem):
    for case in cases(problem):
        doubled = typed(2 * crossing(case.given), case.unit)
        assert "parallel_flow.doubled" == grade(case, doubled).mistake, case.code


@problems("new_diameter")
def test_impellers_are_trimmed_by_a_fifth_at_the_most(problem):
    for case in cases(problem):
        assert 0.79 < case.answer / case.given["impeller_diameter"] < 1, case.code

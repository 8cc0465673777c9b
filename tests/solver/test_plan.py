"""The chain from what is known to what is asked: the shortest, in order, nothing in it for nothing."""

from itertools import combinations

import pytest

from solver.algebra.expression import Fraction, Known, Percent
from solver.algebra.formula import Formula
from solver.algebra.tree import compiled, names
from solver.engine.plan import find_plan, reachable
from solver.errors import NotSolvable, SolverError
from solver.topics.formulas import FORMULAS
from solver.vocabulary import QUANTITIES

from .drawn import NUMERIC_IN_TURN, each

water, brake = Known("water_power"), Known("brake_power")
pump, motor_share, overall = (
    Fraction(Known(f"{part}_efficiency")) for part in ("pump", "motor", "overall")
)


def formula(result: str, expr, **more) -> Formula:
    return Formula(result, expr, "a handbook", "It is so.", **more)


BRAKE = formula("brake_power", water / pump)
MOTOR = formula("motor_power", brake / motor_share)
STRAIGHT = formula("motor_power", water / overall)
WHOLE = formula("overall_efficiency", Percent(pump * motor_share))
LIBRARY = (BRAKE, MOTOR, WHOLE, STRAIGHT)


def targets(plan) -> list[str]:
    return [link.target for link in plan.links]


def test_the_chain_runs_from_the_givens_to_what_is_asked():
    plan = find_plan(("water_power", "pump_efficiency", "motor_efficiency"), "motor_power",
                     (MOTOR, BRAKE), "us")  # fmt: skip
    assert ["brake_power", "motor_power"] == targets(plan)
    expected = 12 / 0.6 / 0.9
    given = {"water_power": 12.0, "pump_efficiency": 60.0, "motor_efficiency": 90.0}
    assert expected == pytest.approx(plan.run(given)["motor_power"], rel=1e-15)


def test_the_shortest_chain_is_taken():
    given = ("water_power", "pump_efficiency", "motor_efficiency", "overall_efficiency")
    assert ["motor_power"] == targets(find_plan(given, "motor_power", LIBRARY, "us"))


def test_of_two_chains_of_one_length_the_formula_that_stands_first_is_used():
    by_pump, by_whole = BRAKE, formula("brake_power", water / overall)
    given = ("water_power", "pump_efficiency", "overall_efficiency")
    for library in ((by_pump, by_whole), (by_whole, by_pump)):
        (link,) = find_plan(given, "brake_power", library, "us").links
        assert library[0] is link.formula


def test_a_formula_is_turned_round_where_its_result_is_known():
    (link,) = find_plan(("brake_power", "water_power"), "pump_efficiency", (BRAKE,), "us").links
    assert not link.as_defined
    work = compiled(link.expr, "us")
    assert 75 == pytest.approx(work({"brake_power": 20.0, "water_power": 15.0}))


def test_a_step_that_the_answer_does_not_need_is_left_out():
    given = ("water_power", "pump_efficiency", "motor_efficiency")
    assert ["brake_power"] == targets(find_plan(given, "brake_power", LIBRARY, "us"))


def test_a_quantity_already_given_is_not_worked_again():
    given = ("water_power", "pump_efficiency", "motor_efficiency", "brake_power")
    assert ["motor_power"] == targets(find_plan(given, "motor_power", (BRAKE, MOTOR), "us"))


def test_what_cannot_be_worked_is_named_with_what_was_known():
    with pytest.raises(NotSolvable, match="motor horsepower can't be calculated from flow, head"):
        find_plan(("flow", "head"), "motor_power", LIBRARY, "us")
    with pytest.raises(NotSolvable, match="motor horsepower can't be calculated from nothing"):
        find_plan((), "motor_power", LIBRARY, "us")


def test_not_solvable_is_both_the_solvers_own_error_and_a_lookup_error():
    assert issubclass(NotSolvable, SolverError)
    assert issubclass(NotSolvable, LookupError)


def test_a_quantity_that_rules_a_formula_out_does_so_when_it_is_given():
    no_drive = formula("motor_power", brake / motor_share, unless=("drive_efficiency",))
    given = ("brake_power", "motor_efficiency")
    assert ["motor_power"] == targets(find_plan(given, "motor_power", (no_drive,), "us"))
    with pytest.raises(NotSolvable, match="motor horsepower can't be calculated"):
        find_plan((*given, "drive_efficiency"), "motor_power", (no_drive,), "us")


def test_a_formula_yields_to_one_that_makes_more_of_what_is_given():
    straight = formula("motor_power", water / overall, yields_to=("pump_efficiency",))
    library = (straight, BRAKE, MOTOR)
    given = ("water_power", "overall_efficiency", "motor_efficiency")
    assert ["motor_power"] == targets(find_plan(given, "motor_power", library, "us"))
    plan = find_plan((*given, "pump_efficiency"), "motor_power", library, "us")
    assert ["brake_power", "motor_power"] == targets(plan)


def test_a_formula_of_one_system_is_not_used_in_the_other():
    only_us = formula("brake_power", water / pump, systems=("us",))
    given = ("water_power", "pump_efficiency")
    assert "brake_power" in reachable(given, (only_us,), "us")
    assert "brake_power" not in reachable(given, (only_us,), "si")


def test_a_changed_step_is_followed_to_the_end_and_nothing_before_it_moves():
    given = {"water_power": 12.0, "pump_efficiency": 60.0, "motor_efficiency": 90.0}
    plan = find_plan(tuple(given), "motor_power", (BRAKE, MOTOR), "us")
    followed = plan.follow(plan.run(given), 0, 18.0)
    assert given | {"brake_power": 18.0, "motor_power": 18.0 / 0.9} == pytest.approx(followed)


@pytest.mark.parametrize(("units", "expected"), [("us", False), ("si", True)])
def test_motor_power_and_meter_power_are_one_thing_in_metric_only(units, expected):
    plan = find_plan(("motor_power",), "input_power", FORMULAS, units)
    assert expected is plan.only_renames(0)


@each(NUMERIC_IN_TURN)
def test_a_familys_chain_uses_only_what_is_known_by_then_and_needs_every_step(problem):
    family, level, units = problem
    given = family.level(level)
    plan = find_plan(given.given, family.asks(given), family.formulas, units)
    known = set(plan.given)
    for link in plan.links:
        assert set(names(link.expr)) <= known, link.target
        assert link.target not in known
        known.add(link.target)
    used = {plan.asked}.union(*(names(link.expr) for link in plan.links))
    assert set(targets(plan)) <= used


@each(NUMERIC_IN_TURN)
def test_a_familys_chain_uses_every_given_or_leaves_it_as_a_distractor_on_purpose(problem):
    """A given that no step needs may stand only where its being there is the lesson."""
    family, level, units = problem
    given = family.level(level)
    plan = find_plan(given.given, family.asks(given), family.formulas, units)
    used = set().union(*(names(link.expr) for link in plan.links))
    idle = set(plan.given) - used
    slips = {n for link in plan.links for slip in link.formula.slips for n in names(slip.expr)}
    assert idle <= slips, f"{idle - slips} are given for nothing"


def fewest_links(given: tuple[str, ...], asked: str, library, units: str) -> int:
    """The fewest formulas that lead from the givens to the answer, by trying every set."""
    for count in range(len(library) + 1):
        for chosen in combinations(library, count):
            if asked in reachable(given, chosen, units):
                return count
    raise AssertionError(f"{asked} cannot be reached")


@pytest.mark.parametrize(
    "given",
    [
        ("water_power", "pump_efficiency", "motor_efficiency"),
        ("water_power", "overall_efficiency", "motor_efficiency"),
        ("brake_power", "pump_efficiency", "overall_efficiency"),
        ("brake_power", "pump_efficiency", "motor_efficiency"),
    ],
)
def test_no_smaller_set_of_formulas_reaches_the_answer(given):
    plan = find_plan(given, "motor_power", LIBRARY, "us")
    assert fewest_links(given, "motor_power", LIBRARY, "us") == len(plan.links)


@pytest.mark.parametrize("units", ["us", "si"])
def test_every_quantity_of_the_vocabulary_stands_in_some_formula(units):
    used = {name for f in FORMULAS if units in f.systems for name in f.names}
    assert set(QUANTITIES) == used

"""A reader's two gauges, each sum done by hand: heights above and below the pump, vacuum, speed.

The factors are the trade's: 2.31 ft a psi, 0.102 m a kPa, 1.133 ft an inch of mercury, 0.4085 for
the velocity and 32.2 ft/s2.
"""

import pytest

from solver.own.work import work

PRESSURES = {"discharge_gauge": 36, "suction_gauge": 4}
VACUUM = {"discharge_gauge": 36, "suction_vacuum": 10}
PIPES = {"flow": 500, "discharge_diameter": 6, "suction_diameter": 8}


def heights(discharge: float | None = None, suction: float | None = None) -> dict[str, float]:
    both = {"discharge_gauge_height": discharge, "suction_gauge_height": suction}
    return {name: height for name, height in both.items() if height is not None}


def velocity_head(diameter: float) -> float:
    return (0.4085 * 500 / diameter**2) ** 2 / (2 * 32.2)


@pytest.mark.parametrize(
    ("readings", "head"),
    [
        (PRESSURES, 32 * 2.31),
        (PRESSURES | heights(2, 1), 32 * 2.31 + 2 - 1),
        (PRESSURES | heights(2, -1.5), 32 * 2.31 + 2 + 1.5),
        (PRESSURES | heights(-0.5, -1.5), 32 * 2.31 - 0.5 + 1.5),
        (VACUUM, 36 * 2.31 + 10 * 1.133),
        (VACUUM | heights(2, 1), 36 * 2.31 + 10 * 1.133 + 2 - 1),
        (VACUUM | heights(2, -1), 36 * 2.31 + 10 * 1.133 + 2 + 1),
        (VACUUM | PIPES, 36 * 2.31 + 10 * 1.133 + velocity_head(6) - velocity_head(8)),
        (
            VACUUM | PIPES | heights(2, -1),
            36 * 2.31 + 10 * 1.133 + 2 + 1 + velocity_head(6) - velocity_head(8),
        ),
        # A lift and its loss are what a gauge at the pump would show as a vacuum.
        (
            {"discharge_gauge": 36, "suction_lift": 10, "suction_loss": 3} | heights(2),
            36 * 2.31 + 2 + 10 + 3,
        ),
    ],
)
def test_gauges_and_their_heights_give_the_head(readings, head):
    found = work(readings, "head")
    assert head == pytest.approx(found.answer, rel=1e-9)
    assert ((), ()) == (found.contradictions, found.notices)


def test_a_vacuum_and_heights_give_the_head_in_metric():
    readings = {"discharge_gauge": 250, "suction_vacuum": 30} | heights(0.6, -0.4)
    assert 280 * 0.102 + 0.6 + 0.4 == pytest.approx(work(readings, "head", "si").answer)


@pytest.mark.parametrize("suction", [PRESSURES, VACUUM])
@pytest.mark.parametrize(("given", "more"), [(heights(discharge=2), 2), (heights(suction=1), -1)])
def test_a_gauge_without_a_height_counts_as_level_and_its_step_says_so(suction, given, more):
    level = work(suction, "head").answer
    found = work(suction | given, "head")
    assert level + more == pytest.approx(found.answer)
    said = {step.name: step.why for step in found.steps}
    assert said["head"].endswith(
        "With no gauge height given, count the gauge as level with the pump."
    )


def test_a_discharge_gauge_is_worked_back_from_the_head_with_heights_below_zero():
    found = work({"head": 80, "suction_gauge": 4} | heights(2, -1.5), "discharge_gauge")
    assert (80 + 4 * 2.31 - 1.5 - 2) / 2.31 == pytest.approx(found.answer)


def test_one_pipe_alone_is_no_measure_of_speed_so_the_other_is_asked_for():
    readings = PRESSURES | {"flow": 500, "discharge_diameter": 6}
    found = work(readings, "head")
    assert found.answer is None
    assert ("suction_diameter",) in found.missing
    assert work(readings | {"suction_diameter": 8}, "head").answer is not None


def test_a_pressure_and_a_vacuum_on_one_suction_disagree():
    (problem,) = work(PRESSURES | {"suction_vacuum": 3}, "head").contradictions
    assert "Two ways to get the suction gauge as head disagree: 9.24 ft and -3.399 ft." in problem


def test_a_suction_gauge_below_zero_is_a_vacuum_and_agrees_with_one():
    in_psi = -10 * 1.133 / 2.31
    found = work(VACUUM | {"suction_gauge": in_psi}, "head")
    assert 36 * 2.31 + 10 * 1.133 == pytest.approx(found.answer)
    assert ((), ()) == (found.contradictions, found.notices)


def test_the_lift_at_the_pump_is_less_than_a_vacuum_gauge_above_it_shows():
    assert 10 * 1.133 == pytest.approx(work(VACUUM, "dynamic_suction_lift").answer)
    above = work(VACUUM | heights(suction=1.5), "dynamic_suction_lift")
    below = work(VACUUM | heights(suction=-0.5), "dynamic_suction_lift")
    assert 10 * 1.133 - 1.5 == pytest.approx(above.answer)
    assert 10 * 1.133 + 0.5 == pytest.approx(below.answer)
    air = {"atmospheric_head": 33, "vapor_head": 0.8}
    found = work(VACUUM | heights(suction=1.5) | air, "npsh_available")
    assert 33 - 0.8 - (10 * 1.133 - 1.5) == pytest.approx(found.answer)

"""Pump and system curves, and where they cross, against scipy's root finder."""

from math import inf, isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from solver.errors import NotSolvable, SolverError
from solver.topics.speed.curves import Curve, crossing, points, pump_curve, system_curve

heads = st.floats(5, 400)
shares = st.floats(0.05, 0.95)
flows = st.floats(5, 5000)


@st.composite
def on_a_system(draw):
    """A pump's curve and a system's that it can lift water on."""
    shutoff, flow = draw(heads), draw(flows)
    pump = pump_curve(shutoff, flow, shutoff * draw(shares))
    return pump, system_curve(shutoff * draw(st.floats(0, 0.95)), flow, draw(st.floats(0, 500)))


def root(pump: Curve, system: Curve, pumps: int = 1) -> float:
    """The flow at which so many pumps and the system have one head, as scipy finds it."""

    def over(flow):
        return pump.head_at(flow / pumps) - system.head_at(flow)

    return brentq(over, 0, pumps * pump.runout + 1, xtol=1e-10, rtol=1e-14)


@given(on_a_system())
def test_the_curves_cross_where_scipy_finds_it(curves):
    pump, system = curves
    at = crossing(pump, system)
    assert isclose(root(pump, system), at.flow, rel_tol=1e-9)
    assert isclose(pump.head_at(at.flow), at.head, rel_tol=1e-9, abs_tol=1e-9)
    assert isclose(system.head_at(at.flow), at.head, rel_tol=1e-9)


@given(on_a_system(), st.integers(2, 5))
def test_pumps_in_parallel_cross_where_each_carries_its_share(curves, pumps):
    pump, system = curves
    at = crossing(pump.in_parallel(pumps), system)
    assert isclose(root(pump, system, pumps), at.flow, rel_tol=1e-9)
    alone = crossing(pump, system).flow
    assert alone * (1 - 1e-9) <= at.flow <= pumps * alone * (1 + 1e-9)


@given(on_a_system(), st.floats(0.3, 1.5), flows)
def test_a_new_speed_moves_every_point_by_the_affinity_laws(curves, ratio, flow):
    pump, _ = curves
    moved = pump.at_speed(ratio)
    assert isclose(
        ratio**2 * pump.head_at(flow), moved.head_at(ratio * flow), rel_tol=1e-9, abs_tol=1e-9
    )


def test_without_static_head_the_flow_goes_with_the_speed():
    pump, system = pump_curve(90, 500, 60), system_curve(0, 500, 55)
    full, half = crossing(pump, system), crossing(pump.at_speed(0.5), system)
    assert (full.flow / 2, full.head / 4) == pytest.approx(half)


def test_with_static_head_the_flow_falls_faster_than_the_speed():
    pump, system = pump_curve(90, 500, 60), system_curve(40, 500, 20)
    full, slowed = crossing(pump, system), crossing(pump.at_speed(0.8), system)
    assert slowed.flow < 0.8 * full.flow


def test_without_friction_two_pumps_move_twice_as_much():
    pump, system = pump_curve(90, 500, 60), system_curve(40, 500, 0)
    one, two = crossing(pump, system), crossing(pump.in_parallel(2), system)
    assert (2 * one.flow, one.head) == pytest.approx(two)


@pytest.mark.parametrize("static", [80, 80.001, 300])
def test_a_pump_that_cannot_hold_the_static_head_moves_no_water_and_says_so(static):
    with pytest.raises(NotSolvable, match="it moves no water; give it more speed or less static"):
        crossing(pump_curve(80, 400, 60), system_curve(static, 400, 20))


@pytest.mark.parametrize(
    ("shutoff", "flow", "head"), [(80, 400, 80), (80, 400, 90), (80, 0, 60), (80, 400, -1)]
)
def test_a_pump_curve_that_does_not_fall_is_refused_with_its_numbers(shutoff, flow, head):
    with pytest.raises(SolverError, match=f"got {shutoff} at no flow and {head} at {flow}"):
        pump_curve(shutoff, flow, head)


@pytest.mark.parametrize(("flow", "friction"), [(0, 20), (-5, 20), (400, -1)])
def test_a_system_curve_that_makes_no_sense_is_refused_with_its_numbers(flow, friction):
    with pytest.raises(SolverError, match=f"got {friction} at {flow}"):
        system_curve(30, flow, friction)


def test_points_are_even_lie_on_the_curve_and_end_at_the_runout():
    pump = pump_curve(80, 400, 60)
    drawn = points(pump, 5000, 9)
    assert 9 == len(drawn)
    assert 800 == pytest.approx(pump.runout)
    assert [100.0 * n for n in range(9)] == pytest.approx([point.flow for point in drawn])
    assert all(pump.head_at(point.flow) == point.head for point in drawn)
    assert 0 == pytest.approx(drawn[-1].head)


def test_a_system_curve_has_no_end_of_its_own():
    system = system_curve(30, 400, 20)
    assert inf == system.runout
    assert 5000 == points(system, 5000)[-1].flow


def test_one_point_is_no_curve():
    with pytest.raises(SolverError, match="two points or more; got 1"):
        points(pump_curve(80, 400, 60), 400, 1)

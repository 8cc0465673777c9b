"""A pump's curve, a system's curve, and where they cross: in any units of flow and head.

Both are taken as parabolas. A pump gives `at_zero` head at no flow, and loses head with the square
of the flow; a system asks its static head at no flow, and more with the square of the flow. That
is a usual fit near the best point; the maker's own curve comes first.
"""

from dataclasses import dataclass
from math import inf, sqrt
from typing import NamedTuple

from solver.errors import NotSolvable, SolverError

__all__ = ["Curve", "Point", "crossing", "points", "pump_curve", "system_curve"]


class Point(NamedTuple):
    """A flow with its head, in the units the curve was made with."""

    flow: float
    head: float


@dataclass(frozen=True, slots=True)
class Curve:
    """Head against flow: `at_zero` plus `bend` times the square of the flow."""

    at_zero: float
    bend: float

    def head_at(self, flow: float) -> float:
        """The head at a flow."""
        return self.at_zero + self.bend * flow**2

    @property
    def runout(self) -> float:
        """The flow at which a pump's curve comes down to no head; infinite for a system's."""
        return sqrt(-self.at_zero / self.bend) if self.bend < 0 else inf

    def at_speed(self, ratio: float) -> "Curve":
        """A pump's curve at `ratio` times its speed, or with its impeller trimmed to that ratio.

        By the affinity laws flow goes with the ratio and head with its square, so each point
        slides down a parabola; the bend stays.

        >>> pump_curve(80, 400, 60).at_speed(0.5).head_at(200)
        15.0
        """
        return Curve(self.at_zero * ratio**2, self.bend)

    def in_parallel(self, pumps: int) -> "Curve":
        """The curve of so many such pumps side by side: at each head their flows add.

        >>> pump_curve(80, 400, 60).in_parallel(2).head_at(800)
        60.0
        """
        return Curve(self.at_zero, self.bend / pumps**2)


def pump_curve(shutoff_head: float, flow: float, head: float) -> Curve:
    """A pump's curve from its shutoff head and one point, such as its rated one.

    Raises:
        SolverError: the head does not fall with the flow.
    """
    if not (flow > 0 and 0 <= head < shutoff_head):
        raise SolverError(
            f"A pump's head falls from shutoff; got {shutoff_head:g} at no flow and {head:g} at "
            f"{flow:g}. Give a flow above zero, with less head than at shutoff."
        )
    return Curve(shutoff_head, (head - shutoff_head) / flow**2)


def system_curve(static_head: float, flow: float, friction: float) -> Curve:
    """A system's curve from its static head and its friction at one flow.

    Raises:
        SolverError: friction is below zero, or its flow is not above zero.
    """
    if not (flow > 0 and friction >= 0):
        raise SolverError(
            f"Friction is zero or more, at a flow above zero; got {friction:g} at {flow:g}."
        )
    return Curve(static_head, friction / flow**2)


def crossing(pump: Curve, system: Curve) -> Point:
    """Where a pump works on a system: the flow at which it gives just the head that is asked.

    Raises:
        NotSolvable: the pump cannot lift water at all.

    >>> at = crossing(pump_curve(80, 400, 60), system_curve(30, 400, 30))
    >>> round(at.flow, 6), round(at.head, 6)
    (400.0, 60.0)
    """
    spare = pump.at_zero - system.at_zero
    if spare <= 0:
        raise NotSolvable(
            f"the pump gives {pump.at_zero:.4g} at shutoff and the static head is "
            f"{system.at_zero:.4g}: it moves no water; give it more speed or less static head"
        )
    flow = sqrt(spare / (system.bend - pump.bend))
    return Point(flow, system.head_at(flow))


def points(curve: Curve, most_flow: float, count: int = 41) -> tuple[Point, ...]:
    """Points of a curve at even steps of flow, from none to `most_flow`, for drawing it.

    A pump's curve ends at its runout, where no head is left.

    Raises:
        SolverError: fewer points than two are asked for.

    >>> points(pump_curve(80, 400, 60), 400, 3)
    (Point(flow=0.0, head=80.0), Point(flow=200.0, head=75.0), Point(flow=400.0, head=60.0))
    """
    if count < 2:
        raise SolverError(f"A curve needs two points or more; got {count}.")
    end = min(most_flow, curve.runout)
    flows = [end * step / (count - 1) for step in range(count)]
    return tuple(Point(flow, curve.head_at(flow)) for flow in flows)

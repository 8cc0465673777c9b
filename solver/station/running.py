"""A pump at work: where its curve crosses what the main asks, and how fast the loaded motor turns it."""

from collections.abc import Callable
from dataclasses import dataclass
from math import pow

from .drive import Drive
from .main import EXPONENT, Main
from .motor import Load, Motor
from .pump import Pump
from .suction import Suction
from .supply import Supply

__all__ = ["Running", "crossing", "operate"]

NEAR = 1e-7  # of a flow or a speed
SAME_HEAD = 1e-7


@dataclass(frozen=True, slots=True)
class Running:
    """A pump at work.

    `flow` into the main and `pumped` through the pump (gpm | L/s), total `head` (ft | m), `shaft` power
    (hp | kW), speeds of pump and motor (rpm), and what the motor takes.
    """

    flow: float
    pumped: float
    head: float
    shaft: float
    speed: float
    motor_speed: float
    load: Load


def crossing(spare: Callable[[float], float], start: float, head: float) -> float:
    """The flow at which a falling function of the flow comes to nothing; 0 where it starts below.

    `spare` is the head a pump has over what is asked, `start` and `head` a point near the answer.
    """
    at_start, near = spare(start), SAME_HEAD * head
    if abs(at_start) <= near:
        return start
    other = start * (1 + min(max(at_start / head, -1.0), 0.5))  # most often on the other side of it
    there = spare(other)
    if at_start > 0:
        low, above, high, below = start, at_start, other, there
        while below > 0:
            low, above, high = high, below, 1.5 * high
            below = spare(high)
    else:
        low, above, high, below = other, there, start, at_start
        if above <= 0:
            low, above, high, below = 0.0, spare(0.0), low, above
        if above <= 0:
            return 0.0
    side = 0
    for _ in range(100):  # the Illinois way of false position
        middle = (low * below - high * above) / (below - above)
        value = spare(middle)
        if abs(value) <= near or high - low <= NEAR * start:
            return middle
        if value > 0:
            low, above = middle, value
            below = below / 2 if side == 1 else below
            side = 1
        else:
            high, below = middle, value
            above = above / 2 if side == -1 else above
            side = -1
    return (low + high) / 2


def operate(
    pump: Pump,
    motor: Motor,
    drive: Drive,
    supply: Supply,
    main: Main,
    suction: Suction | None,
    fall: float,
    rated: tuple[float, float],
) -> Running:
    """Run a pump; `fall` is how much lower the water is than the main's static head says (ft | m).

    `rated` is a point near the answer (gpm, ft | L/s, m): its duty when new.
    """
    lift = main.lift + fall

    def kept(flow: float, head: float) -> float:
        """What goes into the main of what the pump moves."""
        return max(flow - main.seat * max(head, 0.0) ** 0.5, 0.0) if main.seat else flow

    rubbed, stirred = main.law()
    before = suction.law() if suction else (0.0, 0.0)

    def spare(flow: float) -> float:
        head = curve(flow)
        into = kept(flow, head)
        asked = lift + rubbed * pow(into, EXPONENT) + stirred * into**2
        return head - asked - before[0] * pow(flow, EXPONENT) - before[1] * flow**2

    speed, flow = pump.speed, rated[0]
    for _ in range(50):
        curve = pump.curve(speed)
        flow = crossing(spare, flow or rated[0], rated[1])
        shaft = pump.power_at(flow, speed)
        given = shaft / (1 if drive.is_variable else drive.efficiency)
        load = motor.at(given, supply, drive.turned)
        turning = motor.synchronous_speed * drive.turned * (1 - load.slip)
        settled = abs(turning * drive.ratio - speed) <= NEAR * speed
        speed = turning * drive.ratio
        if settled:
            break
    head = pump.head_at(flow, speed)
    return Running(kept(flow, head), flow, head, shaft, speed, turning, load)

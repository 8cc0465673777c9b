"""Head, worked by hand in plain numbers; the tests hold answers to it.

A psi holds up 2.31 ft of water, an inch of mercury 1.133 ft and a kilopascal 0.102 m; a velocity
is the flow over the area of the pipe; velocity head is v squared over twice gravity (common
practice). Hazen-Williams is 1050 in gpm, inches and ft per 100 ft, and 1.212 x 10^12 in L/s, mm
and m per 100 m (Keller & Bliesner, from memory).
"""

from collections.abc import Callable, Mapping
from math import pi, pow

from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import CONSTANT, PER_PRESSURE

__all__ = ["BY_HAND", "PER_PRESSURE", "Hand"]

GRAVITY = {"us": 32.2, "si": 9.81}
PER_VACUUM = {"us": 1.133, "si": 0.102}


class Hand:
    """The sums of one problem, from whichever readings are given.

    A quantity that isn't given is worked by the method of its name: `_velocity` for `velocity`.
    """

    def __init__(self, given: Mapping[str, float], units: str):
        self.given, self.units = given, units

    def __getattr__(self, name: str) -> float:
        if name in self.given:
            return self.given[name]
        worked: float = getattr(self, f"_{name}")()
        return worked

    def _flow(self) -> float:
        return self.daily_flow * 694.4 if self.units == "us" else self.daily_flow / 86.4

    def _velocity(self) -> float:
        if self.units == "us":
            return self.flow / 448.8 / (pi / 4 * (self.pipe_diameter / 12) ** 2)
        return self.flow / 1000 / (pi / 4 * (self.pipe_diameter / 1000) ** 2)

    def _velocity_head(self) -> float:
        return self.velocity**2 / 2 / GRAVITY[self.units]

    def _friction_rate(self) -> float:
        if "friction_head" in self.given:
            return self.friction_head / self.pipe_length * 100
        constant = 1050 if self.units == "us" else 1.212e12
        return constant * pow(self.flow / self.c_factor, 1.852) / pow(self.pipe_diameter, 4.87)

    def _friction_head(self) -> float:
        if "pipe_length" in self.given:
            return self.friction_rate * self.pipe_length / 100
        return self.head - self.static_head

    def _c_factor(self) -> float:
        constant = 1050 if self.units == "us" else 1.212e12
        return self.flow * pow(
            constant / self.friction_rate / pow(self.pipe_diameter, 4.87), 1 / 1.852
        )

    def _loss_coefficient(self) -> float:
        fittings = ("check_valve", "gate_valve", "outlet")
        rest = sum(self.given[f"{fitting}_coefficient"] for fitting in fittings)
        return self.elbows * self.elbow_coefficient + rest

    def _minor_loss(self) -> float:
        return self.loss_coefficient * self.velocity_head

    def _static_head(self) -> float:
        if "discharge_elevation" in self.given:
            return self.discharge_elevation - self.suction_elevation
        below = self.given.get("suction_lift") or -self.static_suction_head
        return self.static_discharge_head + below

    def _water_power(self) -> float:
        if "brake_power" in self.given:
            return self.brake_power * self.pump_efficiency / 100
        return self.flow * self.head / CONSTANT[self.units]

    def _brake_power(self) -> float:
        return self.water_power / self.pump_efficiency * 100

    def _head(self) -> float:
        if "discharge_gauge" in self.given:
            return self._head_of_gauges()
        if "water_power" in self.given or "brake_power" in self.given:
            return self.water_power * CONSTANT[self.units] / self.flow
        extra = self.given.get("minor_loss", 0)
        extra += self.given.get("outlet_velocity", 0) ** 2 / 2 / GRAVITY[self.units]
        extra += self.given.get("delivery_pressure", 0) * PER_PRESSURE[self.units]
        return self.static_head + self.friction_head + extra

    def _height_and_speed(self) -> float:
        """What the gauges do not show: discharge less suction."""
        has = self.given.get
        ends = ("gauge_height", "velocity_head")
        return sum(has(f"discharge_{end}", 0) - has(f"suction_{end}", 0) for end in ends)

    def _head_of_gauges(self) -> float:
        suction = -self.given.get("suction_vacuum", 0) * PER_VACUUM[self.units]
        suction += self.given.get("suction_gauge", 0) * PER_PRESSURE[self.units]
        shown = self.discharge_gauge * PER_PRESSURE[self.units] - suction
        return shown + self._height_and_speed()

    def _discharge_gauge(self) -> float:
        over_suction = (self.head - self._height_and_speed()) / PER_PRESSURE[self.units]
        return over_suction + self.suction_gauge

    def _dynamic_suction_lift(self) -> float:
        if "suction_vacuum" in self.given:
            return self.suction_vacuum * PER_VACUUM[self.units]
        return self.suction_lift + self.suction_loss

    def _suction_loss(self) -> float:
        return self.dynamic_suction_lift - self.suction_lift

    def _npsh_available(self) -> float:
        if "static_suction_head" in self.given:
            lift = self.suction_loss - self.static_suction_head
        else:
            lift = self.dynamic_suction_lift
        return self.atmospheric_head - self.vapor_head - lift

    def _greatest_lift(self) -> float:
        left = self.atmospheric_head - self.vapor_head - self.suction_loss
        return left - self.npsh_required - self.npsh_margin


def worked(asked: str) -> Callable[[Given, str], float]:
    """The sum for one quantity."""
    return lambda given, units: float(getattr(Hand(given, units), asked))


BY_HAND: ByHand = {
    "static_head": worked("static_head"),
    "velocity": worked("velocity"),
    "velocity_head": worked("velocity_head"),
    "friction_head": worked("friction_head"),
    "c_factor": worked("c_factor"),
    "minor_loss": worked("minor_loss"),
    "total_head": worked("head"),
    "power_for_head": worked("brake_power"),
    "friction_from_power": worked("friction_head"),
    "gauges_to_head": worked("head"),
    "expected_gauge": worked("discharge_gauge"),
    "dynamic_suction_lift": worked("dynamic_suction_lift"),
    "suction_loss": worked("suction_loss"),
    "npsh_available": worked("npsh_available"),
    "greatest_lift": worked("greatest_lift"),
}

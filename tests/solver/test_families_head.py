"""Head, against the same sums done here by hand and in plain numbers.

A psi holds up 2.31 ft of water, an inch of mercury 1.133 ft and a kilopascal 0.102 m; a velocity
is the flow over the area of the pipe; velocity head is v squared over twice gravity (common
practice). Hazen-Williams is 1050 in gpm, inches and ft per 100 ft, and 1.212 x 10^12 in L/s, mm
and m per 100 m (Keller & Bliesner, from memory). tests/references holds all of these to others.
"""

import re
from math import pi

import pytest

from solver import draw
from solver.topics.head.problems import HEAD
from solver.topics.tables import named_rows

from .drawn import named, seeds

PROBLEMS = [
    (family, level, units)
    for family in HEAD
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]
NUMERIC = [problem for problem in PROBLEMS if problem[0].judge is None]
GRAVITY = {"us": 32.2, "si": 9.81}
PER_PRESSURE = {"us": 2.31, "si": 0.102}
PER_VACUUM = {"us": 1.133, "si": 0.102}


class Hand:
    """The sums of one problem, from whichever readings are given."""

    def __init__(self, given: dict[str, float], units: str):
        self.given, self.units = given, units

    def __getattr__(self, name: str) -> float:
        if name in self.given:
            return self.given[name]
        return getattr(self, f"_{name}")()

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
        return constant * (self.flow / self.c_factor) ** 1.852 / self.pipe_diameter**4.87

    def _friction_head(self) -> float:
        if "pipe_length" in self.given:
            return self.friction_rate * self.pipe_length / 100
        return self.head - self.static_head

    def _c_factor(self) -> float:
        constant = 1050 if self.units == "us" else 1.212e12
        return self.flow * (constant / self.friction_rate / self.pipe_diameter**4.87) ** (1 / 1.852)

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
        return self.flow * self.head / (3960 if self.units == "us" else 102)

    def _brake_power(self) -> float:
        return self.water_power / self.pump_efficiency * 100

    def _head(self) -> float:
        if "discharge_gauge" in self.given:
            return self._head_of_gauges()
        if "water_power" in self.given or "brake_power" in self.given:
            return self.water_power * (3960 if self.units == "us" else 102) / self.flow
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


@pytest.mark.parametrize("problem", NUMERIC, ids=named)
def test_the_answer_is_the_one_worked_by_hand(problem):
    family, level, units = problem
    for seed in seeds(60):
        case = draw(family, seed, units, level)
        given = {name: value for name, value in case.given.items() if name != case.asked}
        expected = getattr(Hand(given, units), case.asked)
        assert expected == pytest.approx(case.answer, rel=1e-3), case.code


def right_text(case) -> str:
    return case.choices[int(case.answer) - 1]


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
def test_two_gauges_are_judged_by_which_of_them_moved(level, units):
    """Discharge up and rise up: shut; suction down: blocked; closer: worn; alike: deeper water."""
    words = {
        "shut": "blocks the discharge|closed discharge",
        "blocked": "blocks the suction|blocked suction",
    }
    words |= {"worn": "worn", "deeper": "higher"}
    for seed in seeds(100):
        case = draw("gauges_story", seed, units, level)
        usual = case.given["discharge_gauge"], case.given["suction_gauge"]
        if level == 1:
            now = case.given["discharge_gauge_now"], case.given["suction_gauge_now"]
            said = right_text(case)
        else:
            now = tuple(map(float, re.findall(r"(\d+) (?:psi|kPa)", right_text(case))))
            said = case.question
        (discharge, suction), rise = now, (now[0] - now[1]) / (usual[0] - usual[1])
        if suction < usual[1]:
            found = "blocked"
        elif rise > 1.1:
            found = "shut"
        else:
            found = "worn" if rise < 0.92 else "deeper"
        assert re.search(words[found], said), (case.code, said, now)
        assert found != "shut" or discharge > usual[0]


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
def test_the_part_left_out_is_what_the_figure_is_short_of(level, units):
    for seed in seeds(100):
        case = draw("missing_part", seed, units, level)
        given = dict(case.given)
        parts = {
            "The static head": given["static_head"],
            "The friction loss": given["friction_head"],
            "The minor losses": given.get("minor_loss"),
            "The pressure at the end": given.get("delivery_pressure", 0) * PER_PRESSURE[units],
        }
        total = sum(filter(None, parts.values()))
        short = pytest.approx(total - given["head"], abs=0.006 * total)
        assert [right_text(case)] == [name for name, size in parts.items() if size == short]


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
def test_a_pipe_is_told_by_the_row_its_c_stands_in(level, units):
    for seed in seeds(100):
        case = draw("which_pipe", seed, units, level)
        found = Hand(dict(case.given), units).c_factor
        rows = {name[:1].upper() + name[1:]: row for name, row in named_rows("c_factors").items()}
        low, high = rows[right_text(case)]
        assert low - 2 <= found <= high + 2, case.code
        for choice in set(case.choices) - {right_text(case)}:
            low, high = rows[choice]
            assert not low - 2 <= found <= high + 2, case.code


LIMITS = {
    # Ten States Standards, cleansing velocity (M); common practice above it.
    "velocity_check": {"us": (2, 8), "si": (0.6, 2.4)},
    # Common practice at sea level, no source.
    "suction_limit": {"us": (15, 22), "si": (4.5, 6.7)},
}
ZONES = {
    "velocity_check": ("Too slow", "About right", "Too fast"),
    "suction_limit": ("No:", "Maybe:", "Yes:"),
    "npsh_check": ("Yes:", "Barely:", "No:"),
}


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
@pytest.mark.parametrize("name", LIMITS)
def test_a_reading_is_judged_by_the_limits_it_lies_between(name, level, units):
    asked = {"velocity_check": "velocity", "suction_limit": "dynamic_suction_lift"}[name]
    seen = set()
    for seed in seeds(100):
        case = draw(name, seed, units, level)
        size = getattr(Hand(dict(case.given), units), asked)
        zone = sum(size > limit for limit in LIMITS[name][units])
        assert right_text(case).startswith(ZONES[name][zone]), case.code
        seen.add(zone)
    assert {0, 1, 2} == seen


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
def test_npsh_is_enough_only_where_the_margin_is_kept(level, units):
    for seed in seeds(100):
        case = draw("npsh_check", seed, units, level)
        hand = Hand(dict(case.given), units)
        available = hand.npsh_available
        needed = hand.npsh_required
        zone = (needed > available - hand.npsh_margin) + (needed > available)
        assert right_text(case).startswith(ZONES["npsh_check"][zone]), case.code

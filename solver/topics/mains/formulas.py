"""Force mains: their volume and time, and the surge when water is stopped; `MAINS` has all of the chapter."""

from solver.algebra.expression import Constant, Figure, Known, Number
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import (
    CIRCLE_IN_SQUARE,
    GALLONS_PER_CUBIC_FOOT,
    HEAD_PER_PRESSURE,
    INCHES_PER_FOOT,
    NONE,
)
from solver.topics.head.formulas_pipes import GRAVITY
from solver.topics.wet_well.formulas_drawdown import minutes

from .formulas_measuring import MEASURING

__all__ = ["MAINS"]

SQUARE = Constant(
    "square_millimetres",
    "square millimeters in a square meter",
    us=NONE,
    si=Figure(1e6, "mm2 / m2", exact=1e6),
    source="definition of the millimeter",
)
HOLDS = "geometry: the area of a round pipe times its length"
ARITHMETIC = "arithmetic: a volume over a flow is a time"
WAVE = "Daugherty & Franzini, Fluid Mechanics, Ex 13.4: the wave runs to the far end and back"
JOUKOWSKY = (
    "Joukowsky, in Daugherty & Franzini, Fluid Mechanics, Ex 13.4: wave speed times velocity over g"
)
SLOW = "Daugherty & Franzini, Fluid Mechanics, Ex 13.4: in proportion to the wave's time over the closing time"

diameter, length, flow = map(Known, ("pipe_diameter", "pipe_length", "flow"))
volume, wave_speed, velocity = map(Known, ("main_volume", "wave_speed", "velocity"))
wave_time, closing, surge = map(Known, ("wave_time", "closing_time", "surge_pressure"))
feet = diameter / INCHES_PER_FOOT
cubic_feet = CIRCLE_IN_SQUARE * feet**2 * length
FULL = "The main is a long round tank: its area times its length."

VOLUME = (
    Formula(
        "main_volume",
        cubic_feet * GALLONS_PER_CUBIC_FOOT,
        f"{HOLDS}; {GALLONS_PER_CUBIC_FOOT.source}",
        FULL,
        slips=(
            Slip("cubic_feet", cubic_feet, "You stopped at cubic feet. Each one holds 7.48 gallons."),
            Slip(
                "radius_for_diameter",
                cubic_feet * GALLONS_PER_CUBIC_FOOT / Number(4),
                "You squared the radius. With 0.785, square the diameter.",
            ),
        ),
        systems=("us",),
    ),
    Formula(
        "main_volume",
        CIRCLE_IN_SQUARE * diameter**2 * length / SQUARE,
        HOLDS,
        FULL,
        slips=(
            Slip(
                "radius_for_diameter",
                CIRCLE_IN_SQUARE * diameter**2 * length / SQUARE / Number(4),
                "You squared the radius. With 0.785, square the diameter.",
            ),
        ),
        systems=("si",),
    ),
    *minutes(
        "main_time", volume, flow, ARITHMETIC,
        "What goes in at one end pushes out what is in the main.",
    ),
    Formula(
        "clearing_cycles",
        volume / Known("cycle_volume"),
        "arithmetic: the main's volume over that of a cycle",
        "Each cycle pushes its own volume out at the far end.",
    ),
)  # fmt: skip

SURGE = (
    Formula(
        "wave_time",
        Number(2) * length / wave_speed,
        WAVE,
        "The wave runs to the far end and comes back, so it goes twice the length.",
        slips=(
            Slip(
                "one_way",
                length / wave_speed,
                "You took the way there. The wave has to come back too.",
            ),
        ),
    ),
    Formula(
        "surge_head",
        wave_speed * velocity / GRAVITY,
        JOUKOWSKY,
        "When water is stopped at once, its velocity becomes pressure, at the speed of the wave.",
        slips=(
            Slip(
                "two_g",
                wave_speed * velocity / (Number(2) * GRAVITY),
                "You divided by 2g. That is for velocity head; here it is g alone.",
            ),
        ),
    ),
    Formula(
        "surge_pressure",
        Known("surge_head") / HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "The gauge shows head as a pressure.",
    ),
    Formula(
        "slow_surge",
        surge * wave_time / closing,
        SLOW,
        "The wave is back before the valve is closed, and takes away part of the surge.",
        slips=(
            Slip(
                "full_surge",
                surge,
                "You used the full surge. This valve closes slower than the wave comes back.",
            ),
        ),
    ),
    Formula(
        "closing_ratio",
        closing / wave_time,
        "arithmetic: one time over the other",
        "Up to 1, the valve is closed before the wave is back.",
    ),
)

MAINS = (*VOLUME, *SURGE, *MEASURING)

"""Signals of 4 to 20 mA, and what they stand for: a level, a share of a range, the speed of a drive."""

from solver.algebra.expression import Constant, Figure, Fraction, Known, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import HEAD_PER_PRESSURE

__all__ = ["SIGNALS"]

current = Known("loop_current")
span, zero = map(Known, ("signal_span", "signal_zero"))
least, most = Known("least_frequency"), Known("most_frequency")

SIGNAL = "ISA 50.00.01: signals of 4 to 20 mA"


def milliamps(name: str, label: str, value: float) -> Constant:
    """A fixed end of the signal, or its span."""
    figure = Figure(value, "mA", exact=value)
    return Constant(name, label, figure, figure, SIGNAL)


BOTTOM = milliamps("signal_bottom", "4 mA, the bottom of the signal", 4.0)
RANGE = milliamps("signal_range", "16 mA from bottom to top", 16.0)
TOP = milliamps("signal_top", "20 mA, the top of the signal", 20.0)
share = Fraction(Known("signal_percent"))

SIGNALS = (
    Formula(
        "signal_percent",
        Percent((current - BOTTOM) / RANGE),
        SIGNAL,
        "The signal starts at 4 mA, so take off 4 and divide by the 16 mA of its range.",
        slips=(
            Slip(
                "from_zero",
                Percent(current / TOP),
                "You divided by 20 mA. The signal starts at 4 mA, not at 0: take off 4, divide by 16.",
            ),
            Slip(
                "four_forgotten",
                Percent(current / RANGE),
                "You forgot to take off the 4 mA that the signal starts at.",
            ),
            Slip(
                "range_of_twenty",
                Percent((current - BOTTOM) / TOP),
                "You divided by 20 mA. From 4 to 20 the range is 16 mA.",
            ),
        ),
        back="The signal starts at 4 mA and has 16 mA to go up.",
    ),
    Formula(
        "signal_level",
        zero + share * span,
        f"{SIGNAL}; the transmitter's range",
        "The range starts above the floor, so add the level at 4 mA to the share of the range.",
        slips=(
            Slip(
                "zero_forgotten",
                share * span,
                "You left out the level at 4 mA. The range starts from there.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "signal_level",
        share * span,
        f"{SIGNAL}; the transmitter's range",
        "Level goes up evenly with the signal, so take the same share of the range.",
        unless=("signal_zero",),
        back="The level is a share of the range, and the signal is at the same share.",
    ),
    Formula(
        "signal_pressure",
        share * Known("pressure_span"),
        f"{SIGNAL}; the transmitter's range",
        "Pressure goes up evenly with the signal, so take the same share of the range.",
        turns=(),
    ),
    Formula(
        "signal_level",
        Known("signal_pressure") * HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "The transmitter feels the height of water above it as pressure.",
        turns=(),
    ),
    Formula(
        "drive_frequency",
        least + share * (most - least),
        f"{SIGNAL}; the drive's own scaling",
        "The drive goes evenly from its low end at 4 mA to its high end at 20 mA.",
        slips=(
            Slip(
                "from_standstill",
                share * most,
                "You scaled from 0 Hz. This drive starts at its low end and goes up from there.",
            ),
            Slip(
                "low_end_forgotten",
                share * (most - least),
                "You forgot to add the low end, which the drive runs at when the signal is 4 mA.",
            ),
        ),
        back="The signal is at the same share of its range as the drive is of its own.",
    ),
    Formula(
        "drive_frequency",
        share * most,
        f"{SIGNAL}; the drive's own scaling",
        "The drive goes evenly from 0 Hz at 4 mA to its high end at 20 mA.",
        unless=("least_frequency",),
        turns=(),
    ),
)

"""Synchronous speed and slip, and two quick ways to judge a motor's load with their limits."""

from ..constant import Constant, Figure
from ..expression import Known, Percent
from ..formula import Formula, Slip

__all__ = ["SLIP", "SPEED_CONSTANT"]

TIP_SHEET_9 = "US DOE Motor Systems Tip Sheet 9 (DOE/GO-102012-3736)"
HUBERT = "Hubert, Electric Machines, Ex 4.3: slip over synchronous speed"
FACT_SHEET = "US DOE fact sheet, Determining Electric Motor Load and Efficiency (GO-10097-517)"

SPEED_CONSTANT = Constant(
    "speed_constant",
    "120 of the speed formula",
    us=Figure(120, "rpm / Hz", exact=120),
    si=Figure(120, "rpm / Hz", exact=120),
    source="arithmetic: 60 seconds a minute, two poles a pair",
)

frequency, poles, synchronous, running, slip_speed = map(
    Known, ("frequency", "poles", "synchronous_speed", "running_speed", "slip_speed")
)
rated_speed, rated_slip = Known("rated_speed"), Known("rated_slip_speed")
volts, amps, rated_volts, rated_amps = map(
    Known, ("line_volts", "line_amps", "rated_volts", "full_load_amps")
)

SLIP = (
    Formula(
        "synchronous_speed",
        SPEED_CONSTANT * frequency / poles,
        TIP_SHEET_9,
        "The field turns once for each pair of poles and cycle, 60 times a minute.",
        slips=(
            Slip(
                "pairs_for_poles",
                SPEED_CONSTANT * frequency / (poles * 2),
                "This counts the poles as pairs. With 120 the poles are counted singly.",
            ),
            Slip(
                "poles_for_pairs",
                SPEED_CONSTANT * frequency * 2 / poles,
                "This counts pairs of poles. With 120 the poles are counted singly.",
            ),
        ),
    ),
    Formula(
        "slip_speed",
        synchronous - running,
        HUBERT,
        "The rotor turns a little slower than the field; that difference drives it.",
    ),
    Formula(
        "slip",
        Percent(slip_speed / synchronous),
        HUBERT,
        "Slip is set against the speed of the field, not of the shaft.",
        slips=(
            Slip(
                "over_running_speed",
                Percent(slip_speed / running),
                "This divides by the running speed. Divide by the synchronous speed.",
            ),
            Slip(
                "running_for_slip",
                Percent(running / synchronous),
                "This is the running speed as a share. Slip is what is missing from 100%.",
            ),
        ),
    ),
    Formula(
        "rated_slip_speed",
        synchronous - rated_speed,
        FACT_SHEET,
        "At full load the motor slips this much.",
    ),
    Formula(
        "load_by_slip",
        Percent(slip_speed / rated_slip),
        FACT_SHEET,
        "Slip grows about evenly with load. Nameplate speeds are rounded, so trust it to 20%.",
        slips=(
            Slip(
                "speed_over_speed",
                Percent(running / rated_speed),
                "This compares the speeds. Compare the slips: both speeds are nearly the same.",
            ),
        ),
    ),
    Formula(
        "load_by_amps",
        Percent(amps / rated_amps * (volts / rated_volts)),
        FACT_SHEET,
        "Amps follow the load above half load only; a motor with no load draws amps too.",
        slips=(
            Slip(
                "volts_left_out",
                Percent(amps / rated_amps),
                "This takes the amps alone. Higher volts need fewer amps for the same load.",
            ),
            Slip(
                "volts_upside_down",
                Percent(amps / rated_amps * (rated_volts / volts)),
                "The volts are upside down. Measured volts stand above the line.",
            ),
        ),
    ),
)

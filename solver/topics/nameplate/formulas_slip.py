"""Synchronous speed and slip, and two quick ways to judge a motor's load with their limits."""

from solver.algebra.expression import Constant, Figure, Known, Percent
from solver.algebra.formula import Formula, Slip

__all__ = ["SLIP", "SPEED_CONSTANT"]

TIP_SHEET_9 = "US DOE Motor Systems Tip Sheet 9 (DOE/GO-102012-3736)"
HUBERT = "Hubert, Electric Machines, Ex 4.3: slip over synchronous speed"
FACT_SHEET = "US DOE fact sheet, Determining Electric Motor Load and Efficiency (GO-10097-517)"

SPEED_CONSTANT = Constant(
    "speed_constant",
    "120 in the speed formula",
    us=Figure(120, "rpm / Hz", exact=120),
    si=Figure(120, "rpm / Hz", exact=120),
    source="arithmetic: 60 seconds per minute, two poles per pair",
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
        "More cycles turn the field faster, and more poles turn it slower.",
        slips=(
            Slip(
                "pairs_for_poles",
                SPEED_CONSTANT * frequency / (poles * 2),
                "You counted the poles as pairs. With the 120, count every pole.",
            ),
            Slip(
                "poles_for_pairs",
                SPEED_CONSTANT * frequency * 2 / poles,
                "You used pairs of poles. With the 120, count every pole.",
            ),
        ),
    ),
    Formula(
        "slip_speed",
        synchronous - running,
        HUBERT,
        "The rotor turns a little slower than the field, and slip is the difference.",
        back="The shaft turns slower than the field by the slip.",
    ),
    Formula(
        "slip",
        Percent(slip_speed / synchronous),
        HUBERT,
        "Slip is a percent of synchronous speed, not of shaft speed.",
        back="Slip is a percent of synchronous speed, so take that percent of it.",
        slips=(
            Slip(
                "over_running_speed",
                Percent(slip_speed / running),
                "You divided by the running speed. Divide by the synchronous speed, because slip is "
                "a percent of that.",
            ),
            Slip(
                "running_for_slip",
                Percent(running / synchronous),
                "You found the running speed as a percent. Slip is the rest, up to 100%.",
            ),
        ),
    ),
    Formula(
        "rated_slip_speed",
        synchronous - rated_speed,
        FACT_SHEET,
        "Synchronous speed minus nameplate speed is how much the motor slips at full load.",
    ),
    Formula(
        "load_by_slip",
        Percent(slip_speed / rated_slip),
        FACT_SHEET,
        "Slip grows about evenly with load. Nameplate speeds are rounded, so trust it to about 20%.",
        slips=(
            Slip(
                "speed_over_speed",
                Percent(running / rated_speed),
                "You compared the speeds, and they are nearly the same. Compare the slips.",
            ),
        ),
    ),
    Formula(
        "load_by_amps",
        Percent(amps / rated_amps * (volts / rated_volts)),
        FACT_SHEET,
        "Amps follow the load only above half load, because a motor with no load draws amps too.",
        slips=(
            Slip(
                "volts_left_out",
                Percent(amps / rated_amps),
                "You used the amps alone. Correct for the volts: higher volts take fewer amps for the "
                "same load.",
            ),
            Slip(
                "volts_upside_down",
                Percent(amps / rated_amps * (rated_volts / volts)),
                "You have the volts upside down. Measured volts go on top: more volts at the same "
                "amps means more load.",
            ),
        ),
    ),
)

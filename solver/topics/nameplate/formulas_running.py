"""What a running motor shows: its three powers, its speed and slip, and the load that they tell."""

from solver.algebra.expression import Constant, Expr, Figure, Known, Mean, Percent
from solver.algebra.formula import Formula, Slip

__all__ = ["ROOT_THREE", "SLIP", "THREE_PHASE", "VA_PER_KVA"]

FACT_SHEET = "US DOE fact sheet, Determining Electric Motor Load and Efficiency (GO-10097-517)"
LINES = f"{FACT_SHEET}: kW = V x A x PF x root 3 / 1000"
TRIANGLE = "arithmetic: the power triangle, kVA squared = kW squared + kvar squared"
TIP_SHEET_9 = "US DOE Motor Systems Tip Sheet 9 (DOE/GO-102012-3736)"
HUBERT = "Hubert, Electric Machines, Ex 4.3: slip over synchronous speed"

ROOT_THREE = Constant(
    "root_three",
    "root three",
    us=Figure(1.732, "", also=(1.73, 1.7321), exact=1.7320508),
    si=Figure(1.732, "", also=(1.73, 1.7321), exact=1.7320508),
    source="arithmetic: volts between two lines are root three times volts to neutral",
)

VA_PER_KVA = Constant(
    "va_per_kva",
    "1,000 volt-amps per kVA",
    us=Figure(1000, "V A / kVA", exact=1000),
    si=Figure(1000, "V A / kVA", exact=1000),
    source="arithmetic: kilo is a thousand",
)

SPEED_CONSTANT = Constant(
    "speed_constant",
    "120 in the speed formula",
    us=Figure(120, "rpm / Hz", exact=120),
    si=Figure(120, "rpm / Hz", exact=120),
    source="arithmetic: 60 seconds per minute, two poles per pair",
)

volts, amps = Known("line_volts"), Known("line_amps")

apparent, kilowatts, factor, kvar = map(
    Known, ("apparent_power", "input_power", "power_factor", "reactive_power")
)

corrected, corrected_factor, corrected_kvar = map(
    Known, ("corrected_apparent_power", "corrected_power_factor", "corrected_reactive_power")
)


def side(longest: Known, other: Known) -> Expr:
    """The third side of the power triangle."""
    return (longest**2 - other**2) ** 0.5


THREE_PHASE = (
    Formula(
        "line_amps",
        Mean(tuple(map(Known, ("amps_a", "amps_b", "amps_c")))),
        "common practice, no source: use the average when the three legs are close",
        "The formula takes one current, so use the average of the three legs.",
    ),
    Formula(
        "line_volts",
        Mean(tuple(map(Known, ("volts_ab", "volts_bc", "volts_ca")))),
        "common practice, no source: use the average when the three pairs are close",
        "The formula takes one voltage, so use the average of the three line-to-line readings.",
    ),
    Formula(
        "apparent_power",
        ROOT_THREE * volts * amps / VA_PER_KVA,
        LINES,
        "With line-to-line volts, three-phase power takes a factor of 1.732, the square root of 3. "
        "The 1,000 turns volt-amperes into kVA.",
        back="The same 1.732 and 1,000 go with line-to-line volts when you work back from kVA.",
        slips=(
            Slip(
                "three_for_root_three",
                volts * amps * 3 / VA_PER_KVA,
                "You multiplied by 3. Line-to-line volts take 1.732; the 3 goes with line-to-neutral "
                "volts.",
            ),
        ),
    ),
    Formula(
        "input_power",
        apparent * factor,
        LINES,
        "Only part of the kVA does work, and the power factor tells you how big a part.",
        back="Only part of the kVA does work, so the kVA are never less than the kW.",
        slips=(
            Slip(
                "factor_used_twice",
                apparent * factor * factor,
                "You used the power factor twice. Use it once, to go from kVA to kW.",
            ),
        ),
    ),
    Formula(
        "reactive_power",
        side(apparent, kilowatts),
        TRIANGLE,
        "The kW and the kvar are at a right angle, so subtract the squares and take the root.",
        slips=(
            Slip(
                "plain_difference",
                apparent - kilowatts,
                "You subtracted kW from kVA. They are sides of a right triangle: subtract their "
                "squares, then take the square root.",
            ),
        ),
    ),
    Formula(
        "corrected_apparent_power",
        kilowatts / corrected_factor,
        TRIANGLE,
        "The motor does the same work, so the kW stay the same and the kVA go down.",
    ),
    Formula(
        "corrected_reactive_power",
        side(corrected, kilowatts),
        TRIANGLE,
        "The kW and the kvar are at a right angle. This is how many kvar the line still carries after "
        "the correction.",
    ),
    Formula(
        "capacitor_kvar",
        kvar - corrected_kvar,
        TRIANGLE,
        "The capacitor supplies the kvar the line no longer carries. It holds a charge, so a "
        "qualified person discharges it before anyone touches it.",
        slips=(
            Slip(
                "all_the_kvar",
                kvar,
                "You counted all the kvar, which takes the power factor to 1. Subtract the kvar that "
                "stay on the line.",
            ),
            Slip(
                "kvar_that_stay",
                corrected_kvar,
                "You found the kvar that stay on the line. The capacitor supplies the rest.",
            ),
            Slip(
                "kva_saved",
                apparent - corrected,
                "You found the kVA saved. A capacitor is sized by kvar, so work with the kvar.",
            ),
        ),
    ),
)

frequency, poles, synchronous, running, slip_speed = map(
    Known, ("frequency", "poles", "synchronous_speed", "running_speed", "slip_speed")
)

rated_speed, rated_slip = Known("rated_speed"), Known("rated_slip_speed")
rated_volts, rated_amps = Known("rated_volts"), Known("full_load_amps")

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

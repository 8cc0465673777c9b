"""Three-phase power: kilovolt-amperes, kilowatts, kilovars, and the power factor between them."""

from solver.algebra.expression import Constant, Figure, Known, Mean, Power
from solver.algebra.formula import Formula, Slip

__all__ = ["ROOT_THREE", "THREE_PHASE", "VA_PER_KVA"]

LINES = (
    "US DOE fact sheet, Determining Electric Motor Load and Efficiency (GO-10097-517): "
    "kW = V x A x PF x root 3 / 1000"
)
TRIANGLE = "arithmetic: the power triangle, kVA squared = kW squared + kvar squared"

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

volts, amps = Known("line_volts"), Known("line_amps")
apparent, kilowatts, factor, kvar = map(
    Known, ("apparent_power", "input_power", "power_factor", "reactive_power")
)
corrected, corrected_factor, corrected_kvar = map(
    Known, ("corrected_apparent_power", "corrected_power_factor", "corrected_reactive_power")
)


def side(longest: Known, other: Known) -> Power:
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

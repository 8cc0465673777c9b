"""Three-phase power: kilovolt-amperes, kilowatts, kilovars, and the power factor between them."""

from ..constant import Constant, Figure
from ..expression import Known, Mean, Power
from ..formula import Formula, Slip

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
    "1,000 volt-amperes in a kVA",
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
        "common practice, no source: three legs that differ little count as their average",
        "The formula wants one current, so take the average of the three lines.",
    ),
    Formula(
        "line_volts",
        Mean(tuple(map(Known, ("volts_ab", "volts_bc", "volts_ca")))),
        "common practice, no source: three pairs that differ little count as their average",
        "The formula wants one voltage, so take the average of the three pairs.",
    ),
    Formula(
        "apparent_power",
        ROOT_THREE * volts * amps / VA_PER_KVA,
        LINES,
        "Volts between two lines carry root three in them, so one root three stands here.",
        slips=(
            Slip(
                "three_for_root_three",
                volts * amps * 3 / VA_PER_KVA,
                "Volts between lines take 1.732. A 3 goes with volts to neutral.",
            ),
        ),
    ),
    Formula(
        "input_power",
        apparent * factor,
        LINES,
        "The power factor says what share of the kVA does work.",
        slips=(
            Slip(
                "factor_used_twice",
                apparent * factor * factor,
                "The power factor went in twice. It goes in once, from kVA to kW.",
            ),
        ),
    ),
    Formula(
        "reactive_power",
        side(apparent, kilowatts),
        TRIANGLE,
        "Kilovars stand at a right angle to kilowatts, so squares are taken.",
        slips=(
            Slip(
                "plain_difference",
                apparent - kilowatts,
                "This is kVA less kW. They stand at an angle: subtract their squares.",
            ),
        ),
    ),
    Formula(
        "corrected_apparent_power",
        kilowatts / corrected_factor,
        TRIANGLE,
        "The motor does the same work, so the kilowatts stay and the kVA shrink.",
    ),
    Formula(
        "corrected_reactive_power",
        side(corrected, kilowatts),
        TRIANGLE,
        "These are the kilovars that the line may still carry.",
    ),
    Formula(
        "capacitor_kvar",
        kvar - corrected_kvar,
        TRIANGLE,
        "The capacitor gives what the line no longer carries. It holds its charge: discharge first.",
        slips=(
            Slip(
                "all_the_kvar",
                kvar,
                "This takes the power factor to 1. Some kilovars stay on the line.",
            ),
            Slip(
                "kvar_that_stay",
                corrected_kvar,
                "These kilovars stay on the line. The capacitor gives the others.",
            ),
            Slip(
                "kva_saved",
                apparent - corrected,
                "This is the kVA saved. The capacitor is sized by the kilovars.",
            ),
        ),
    ),
)

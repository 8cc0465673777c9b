"""What the nameplate and the code's tables say: full-load amps, overload, service factor, starting."""

from bisect import bisect_right

from ..errors import NotSolvable
from ..expression import Constant, Figure, Fraction, Known, Lookup, Percent
from ..formula import Formula, Slip
from ..tables import motors, table_rows, table_source
from .speed import SPEED
from .three_phase import ROOT_THREE, THREE_PHASE, VA_PER_KVA

__all__ = ["NAMEPLATE", "code_letter", "full_load_amps"]

SERVICE = "NEMA MG 1 14.37: the service factor multiplies the rated load"
OVERLOAD = "NEC (NFPA 70) 430.32(A)(1); your local code decides"
RAISED = "NEC (NFPA 70) 430.32(C); your local code decides"
STARTING = table_source("code_letters")
LETTERS = "ABCDEFGHJKLMNPRSTUV"
TABLE_VOLTS = {"us": 460, "si": 400}
LOW_RISE = 40  # °C: a motor that warms so little may be set as one with a service factor

KW_PER_HP = Constant(
    "kilowatts_in_a_horsepower",
    "0.746 kW in a horsepower",
    us=Figure(1, "", exact=1.0),
    si=Figure(0.746, "kW / hp", also=(0.7457,), exact=0.74569987),
    source="NIST SP 811 App. B (745.6999 W; the electric horsepower is 746 W exactly)",
)

motor_size, rated_volts, table_amps, nameplate_amps, service_factor = map(
    Known, ("motor_size", "rated_volts", "table_amps", "full_load_amps", "service_factor")
)
locked_rotor_amps, starting_kva = Known("locked_rotor_amps"), Known("starting_kva")


def full_load_amps(size: float, volts: float, units: str) -> float:
    """Full-load amps of the code's table for a standard motor (hp | kW) at its nameplate volts.

    >>> full_load_amps(10, 230, "us"), full_load_amps(10, 460, "us")
    (28.0, 14.0)
    """
    if (units, volts) == ("us", 460):
        found = {motor.size: motor.amps for motor in motors(units)}
    else:
        rows = table_rows(f"full_load_amps_{units}")
        found = {row["size"]: row[f"{volts:g}"] for row in rows if f"{volts:g}" in row}
    if size not in found:
        raise NotSolvable(
            f"the table of full-load amps has no motor of {size:g} at {volts:g} V: "
            "use the nameplate, or ask the motor's maker"
        )
    return found[size]


def code_letter(kva_per_hp: float) -> str:
    """The letter of NEC Table 430.7(B) for starting kVA per horsepower.

    >>> code_letter(5.6), code_letter(6.29), code_letter(6.3)
    ('G', 'G', 'H')
    """
    least = [row["least"] for row in table_rows("code_letters")]
    return LETTERS[bisect_right(least, kva_per_hp) - 1]


def overload(column: str, factor: float, *, other: bool = False) -> float:
    """Percent of nameplate amps from the row of a service factor, or from the other row."""
    low, high = table_rows("overload")
    return (high if (factor >= high["service_factor"]) != other else low)[column]


def at_factor(column: str, *, other: bool = False) -> Lookup:
    """The overload table read at the service factor."""

    def read(factor: float, units: str) -> float:
        return overload(column, factor, other=other)

    return Lookup(service_factor, read, "the overload table at a service factor of", ("", ""), ("%", "%"))


def at_rise(*, other: bool = False) -> Lookup:
    """The overload table read at the nameplate's temperature rise, without a service factor."""

    def read(rise: float, units: str) -> float:
        return overload("percent", 1.15 if rise <= LOW_RISE else 1.0, other=other)

    gives = ("%", "%")
    return Lookup(
        Known("rated_rise"), read, "the overload table at", ("°C rise", "°C rise"), gives
    )


AMPS = (
    Formula(
        "table_amps",
        Lookup(
            motor_size,
            lambda size, units: full_load_amps(size, TABLE_VOLTS[units], units),
            "the table of full-load amps at",
            ("hp", "kW"),
            ("A", "A"),
        ),
        "NEC (NFPA 70) Table 430.250, 460 V; in metric, " + table_source("full_load_amps_si"),
        "The table has a round figure for any motor of this size.",
    ),
    Formula(
        "nameplate_share",
        Percent(nameplate_amps / table_amps),
        "NEC (NFPA 70) 430.6(A): the table for the wiring, the nameplate for the overload",
        "A motor draws what its own nameplate says; the table is for the wiring.",
    ),
    Formula(
        "service_power",
        motor_size * service_factor,
        SERVICE,
        "The service factor is a margin over nameplate power, for short times only.",
    ),
)


def wrong_amps(percent: Fraction) -> Slip:
    """The table's amps, where the overload goes by the nameplate's."""
    return Slip(
        "from_the_table",
        table_amps * percent,
        "This takes the table's amps. The overload guards this motor, by its nameplate.",
    )


WRONG_ROW = "This is the percent of the other row. Look at the service factor and the rise again."
OVERLOADS = (
    Formula(
        "overload_percent",
        at_factor("percent"),
        OVERLOAD,
        "A motor with a margin may be set higher: 125% against 115%.",
        slips=(Slip("other_row", at_factor("percent", other=True), WRONG_ROW),),
    ),
    Formula(
        "overload_percent",
        at_rise(),
        OVERLOAD,
        "A motor that warms 40 °C or less may be set higher: 125% against 115%.",
        slips=(Slip("other_row", at_rise(other=True), WRONG_ROW),),
        unless=("service_factor",),
    ),
    Formula(
        "overload_limit",
        nameplate_amps * Fraction(Known("overload_percent")),
        OVERLOAD,
        "The limit is a share of the motor's own full-load amps.",
        slips=(
            wrong_amps(Fraction(Known("overload_percent"))),
            Slip(
                "service_factor_for_percent",
                nameplate_amps * service_factor,
                "This multiplies by the service factor. It only says which percent holds.",
            ),
        ),
    ),
    Formula(
        "raised_percent",
        at_factor("raised"),
        RAISED,
        "Only where the first limit will not let it start: 140% against 130%.",
        slips=(Slip("other_row", at_factor("raised", other=True), WRONG_ROW),),
    ),
    Formula(
        "raised_limit",
        nameplate_amps * Fraction(Known("raised_percent")),
        RAISED,
        "No setting may be above this; a motor that still trips has another trouble.",
        slips=(
            wrong_amps(Fraction(Known("raised_percent"))),
            Slip(
                "first_limit",
                nameplate_amps * Fraction(at_factor("percent")),
                "This is the first limit. The most allowed is 140% or 130%.",
            ),
        ),
    ),
)

START = (
    Formula(
        "starting_kva",
        ROOT_THREE * rated_volts * locked_rotor_amps / VA_PER_KVA,
        STARTING,
        "At the first moment the rotor stands still, and the line feels all these kVA.",
    ),
    Formula(
        "starting_kva_per_hp",
        starting_kva * KW_PER_HP / motor_size,
        STARTING,
        "The code letter goes by kVA for each horsepower of the nameplate.",
    ),
)

NAMEPLATE = (*THREE_PHASE, *SPEED, *AMPS, *OVERLOADS, *START)

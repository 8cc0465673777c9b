"""What the nameplate and the code's tables say: full-load amps, service factor, overload, starting.

`NAMEPLATE` has every formula of the chapter; those of a running motor are in
`formulas_running.py`.
"""

from bisect import bisect_right

from solver.algebra.expression import Expr, Fraction, Known, Lookup, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.station.motor import LOW_RISE, MARGIN
from solver.topics.constants import KW_PER_HP
from solver.topics.tables import full_load_amps, named_rows, table_rows, table_source

from .formulas_running import ROOT_THREE, SLIP, THREE_PHASE, VA_PER_KVA

__all__ = ["NAMEPLATE", "TABLE_VOLTS", "code_letter"]

SERVICE = "NEMA MG 1 14.37: the service factor multiplies the rated load"
STARTING = table_source("code_letters")
TABLE_VOLTS = {"us": 460, "si": 400}
OVERLOAD = "NEC (NFPA 70) 430.32(A)(1); your local code decides"
RAISED = "NEC (NFPA 70) 430.32(C); your local code decides"
READ_AT = "the percent in NEC 430.32 for"

motor_size, rated_volts, table_amps, nameplate_amps, service_factor = map(
    Known, ("motor_size", "rated_volts", "table_amps", "full_load_amps", "service_factor")
)
locked_rotor_amps, per_horsepower = Known("locked_rotor_amps"), Known("starting_kva_per_hp")


def code_letter(kva_per_hp: float) -> str:
    """The letter of NEC Table 430.7(B) for starting kVA per horsepower, 0 or more.

    >>> code_letter(5.6), code_letter(6.29), code_letter(6.3)
    ('G', 'G', 'H')
    """
    letters = named_rows("code_letters")
    least = [row[0] for row in letters.values()]
    return tuple(letters)[bisect_right(least, kva_per_hp) - 1]


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
        "The table lists one figure for any motor of this size.",
    ),
    Formula(
        "nameplate_share",
        Percent(nameplate_amps / table_amps),
        "NEC (NFPA 70) 430.6(A): the table for the wiring, the nameplate for the overload",
        "The nameplate is for this one motor, so divide its amps by the table's.",
        slips=(
            Slip(
                "service_factor_in",
                Percent(nameplate_amps * service_factor / table_amps),
                "You multiplied by the service factor. Compare the full-load amps alone, without it.",
            ),
        ),
    ),
    Formula(
        "service_power",
        motor_size * service_factor,
        SERVICE,
        "The service factor is a margin above the nameplate rating, so it multiplies the rating.",
    ),
)


def overload(column: str, factor: float, *, other: bool = False) -> float:
    """Percent of nameplate amps from the row of a service factor, or from the other row."""
    low, high = table_rows("overload")
    return (high if (factor >= high["service_factor"]) != other else low)[column]


def at_factor(column: str, *, other: bool = False) -> Lookup:
    """The overload table read at the service factor."""

    def read(factor: float, units: str) -> float:
        return overload(column, factor, other=other)

    return Lookup(service_factor, read, READ_AT, ("", ""), ("%", "%"))


def at_rise(*, other: bool = False) -> Lookup:
    """The overload table read at the nameplate's temperature rise, without a service factor."""

    def read(rise: float, units: str) -> float:
        return overload("percent", MARGIN if rise <= LOW_RISE * (1 + 1e-9) else 1.0, other=other)

    gives = ("%", "%")
    return Lookup(Known("rated_rise"), read, READ_AT, ("°C rise", "°C rise"), gives)


def wrong_amps(percent: Fraction) -> Slip:
    """The table's amps, where the overload goes by the nameplate's."""
    return Slip(
        "from_the_table",
        table_amps * percent,
        "You used the table amps. The overload protects this one motor, so use its nameplate amps.",
    )


WRONG_ROW = "You used the percent for the other kind of motor. Check the service factor, or the temperature rise."

OVERLOADS = (
    Formula(
        "overload_percent",
        at_factor("percent"),
        OVERLOAD,
        "A motor with a service factor of 1.15 or more has a margin: 125% instead of 115%.",
        slips=(Slip("other_row", at_factor("percent", other=True), WRONG_ROW),),
    ),
    Formula(
        "overload_percent",
        at_rise(),
        OVERLOAD,
        "A motor with a rise of 40 °C or less has a margin: 125% instead of 115%.",
        slips=(Slip("other_row", at_rise(other=True), WRONG_ROW),),
        unless=("service_factor",),
    ),
    Formula(
        "overload_limit",
        nameplate_amps * Fraction(Known("overload_percent")),
        OVERLOAD,
        "The limit is a percent of the motor's own full-load amps.",
        slips=(
            wrong_amps(Fraction(Known("overload_percent"))),
            Slip(
                "service_factor_for_percent",
                nameplate_amps * service_factor,
                "You multiplied by the service factor. It only tells you which percent to use.",
            ),
        ),
    ),
    Formula(
        "setting_share",
        Percent(Known("overload_setting") / nameplate_amps),
        OVERLOAD,
        "The code gives the limit as a percent of the motor's own full-load amps.",
    ),
    Formula(
        "raised_percent",
        at_factor("raised"),
        RAISED,
        "Only if the motor won't start at the first limit: 140% with a margin, 130% without.",
        slips=(Slip("other_row", at_factor("raised", other=True), WRONG_ROW),),
    ),
    Formula(
        "raised_limit",
        nameplate_amps * Fraction(Known("raised_percent")),
        RAISED,
        "You can't set it above this, so a motor that still trips has another problem.",
        slips=(
            wrong_amps(Fraction(Known("raised_percent"))),
            Slip(
                "first_limit",
                nameplate_amps * Fraction(at_factor("percent")),
                "You found the first limit, 125% or 115%. For a motor that won't start, use 140% or "
                "130%.",
            ),
        ),
    ),
    Formula(
        "conductor_amps",
        table_amps * Number(1.25),
        "NEC (NFPA 70) 430.22; your local code decides",
        "The wiring has to suit any motor this size, so it goes by the table, plus 25%.",
    ),
)


def by_letter(system: str, horsepower: Expr) -> Formula:
    """Starting kVA by the code letter, whose table counts by the horsepower."""
    return Formula(
        "starting_kva",
        per_horsepower * horsepower,
        STARTING,
        "Each nameplate horsepower takes this many kVA while the rotor is still.",
        slips=(
            Slip(
                "root_three_again",
                per_horsepower * horsepower * ROOT_THREE,
                "You multiplied by 1.732 as well. That goes with volts and amps; the kVA already include it.",
            ),
            Slip(
                "divided",
                horsepower / per_horsepower,
                "You divided. Each horsepower takes this many kVA, so multiply.",
            ),
        ),
        systems=(system,),
        back="Starting kVA is counted for each nameplate horsepower.",
    )


START = (
    Formula(
        "starting_kva",
        ROOT_THREE * rated_volts * locked_rotor_amps / VA_PER_KVA,
        STARTING,
        "Three-phase kVA is 1.732 × volts × amps over 1,000, and starting takes locked-rotor amps.",
        back="The same 1.732 and 1,000 go with volts and amps when you work back from kVA.",
    ),
    by_letter("us", motor_size),
    by_letter("si", motor_size / KW_PER_HP),
)

NAMEPLATE = (*THREE_PHASE, *SLIP, *AMPS, *OVERLOADS, *START)

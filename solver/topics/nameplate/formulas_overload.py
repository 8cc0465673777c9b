"""How high an overload may be set: by nameplate amps, service factor and temperature rise."""

from solver.algebra.expression import Fraction, Known, Lookup, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.tables import table_rows

__all__ = ["OVERLOADS"]

OVERLOAD = "NEC (NFPA 70) 430.32(A)(1); your local code decides"
RAISED = "NEC (NFPA 70) 430.32(C); your local code decides"
LOW_RISE = 40  # °C: a motor that warms so little may be set as one with a service factor
READ_AT = "the percent in NEC 430.32 for"

table_amps, nameplate_amps, service_factor = map(
    Known, ("table_amps", "full_load_amps", "service_factor")
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
        return overload("percent", 1.15 if rise <= LOW_RISE else 1.0, other=other)

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

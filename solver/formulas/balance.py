"""Three legs held against their average: unbalance, spread, derating and nameplate amps."""

from ..expression import Abs, Fraction, Known, Largest, Lookup, Mean, Number, Percent, Smallest
from ..formula import Formula, Slip
from ..tables import derating_factor, table_source

__all__ = ["BALANCE"]

NEMA = "NEMA MG 1: largest deviation from the average over the average"
FIELD = "common practice, no source: highest less lowest over the average"
NAMEPLATE = "NEMA MG 1 14.37: the service factor multiplies the rated load, and roughly the amps"


def balance(kind: str, legs: tuple[str, ...], unbalance: str) -> tuple[Formula, ...]:
    """Average, largest deviation and unbalance of three readings (`kind` is "amps" or "volts")."""
    readings = tuple(map(Known, legs))
    average, deviation = Known(f"{kind}_average"), Known(f"{kind}_deviation")
    spread = Largest(readings) - Smallest(readings)
    return (
        Formula(
            average.name,
            Mean(readings),
            NEMA,
            "All three readings count the same, so add them and divide by three.",
            slips=(
                Slip(
                    "middle_of_extremes",
                    Mean((Largest(readings), Smallest(readings))),
                    "Only the highest and lowest are averaged. The average takes all three readings.",
                ),
            ),
        ),
        Formula(
            deviation.name,
            Largest(tuple(Abs(reading - average) for reading in readings)),
            NEMA,
            "The reading furthest from the average counts, whether it is above or below.",
            slips=(
                Slip(
                    "spread_for_deviation",
                    spread,
                    "This is highest less lowest. Here the largest deviation from the average counts.",
                ),
                Slip(
                    "smallest_deviation",
                    Smallest(tuple(Abs(reading - average) for reading in readings)),
                    "This is the reading nearest the average. Take the one furthest from it.",
                ),
            ),
        ),
        Formula(
            unbalance,
            Percent(deviation / average),
            NEMA,
            "The deviation is set against the average, so large and small motors compare.",
            slips=(
                Slip(
                    "over_the_highest",
                    Percent(deviation / Largest(readings)),
                    "This divides by the highest reading. Divide by the average of the three.",
                ),
            ),
        ),
    )


AMPS = ("amps_a", "amps_b", "amps_c")
legs = tuple(map(Known, AMPS))
amps_average, full_load_amps = Known("amps_average"), Known("full_load_amps")

BALANCE = (
    *balance("amps", AMPS, "current_unbalance"),
    *balance("volts", ("volts_ab", "volts_bc", "volts_ca"), "voltage_unbalance"),
    Formula(
        "amps_range",
        Largest(legs) - Smallest(legs),
        FIELD,
        "This definition sets the highest leg against the lowest.",
        slips=(
            Slip(
                "deviation_for_spread",
                Largest(tuple(Abs(leg - amps_average) for leg in legs)),
                "This is the largest deviation from the average. Here highest less lowest counts.",
            ),
        ),
    ),
    Formula(
        "current_spread",
        Percent(Known("amps_range") / amps_average),
        FIELD,
        "The range is set against the average of the three legs.",
    ),
    Formula(
        "derating",
        Lookup(
            Known("voltage_unbalance"),
            derating_factor,
            "the derating graph read at",
            ("%", "%"),
            ("%", "%"),
        ),
        table_source("derating"),
        "Unbalanced volts heat the windings, so the motor may carry less.",
    ),
    Formula(
        "derated_power",
        Known("motor_size") * Fraction(Known("derating")),
        table_source("derating"),
        "The motor may carry only this share of its nameplate power.",
        slips=(
            Slip(
                "unbalance_taken_off",
                Known("motor_size") * (Number(1) - Fraction(Known("voltage_unbalance"))),
                "The unbalance itself is taken off. The graph gives a larger reduction.",
            ),
        ),
    ),
    Formula(
        "service_factor_amps",
        full_load_amps * Known("service_factor"),
        NAMEPLATE,
        "The service factor is the margin over nameplate load, for short times only.",
    ),
    Formula(
        "amps_highest",
        Largest(legs),
        "common practice, no source: the highest leg heats its winding most",
        "The leg that carries most is the one that overheats first.",
        slips=(
            Slip(
                "average_for_highest",
                Mean(legs),
                "This uses the average. The highest leg is the one that overheats first.",
            ),
        ),
    ),
    Formula(
        "load_amps",
        Percent(Known("amps_highest") / full_load_amps),
        "common practice, no source: highest leg against nameplate full-load amps",
        "This says how much of the nameplate amps the motor draws.",
    ),
)

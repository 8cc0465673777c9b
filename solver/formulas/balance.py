"""Three legs held against their average: unbalance, spread and nameplate amps."""

from ..expression import Abs, Expr, Known, Largest, Mean, Percent, Smallest
from ..formula import Formula, Slip
from .heating import HEATING

__all__ = ["BALANCE", "balance"]

NEMA = "NEMA MG 1: largest deviation from the average over the average"
FIELD = "common practice, no source: highest less lowest over the average"
UNBALANCED = {"amps": "current", "volts": "voltage", "ohms": "resistance"}
NAMEPLATE = "NEMA MG 1 14.37: the service factor multiplies the rated load, and roughly the amps"


def over_the_highest(part: Expr, readings: tuple[Known, ...]) -> Slip:
    """The highest reading under the line, where the average belongs."""
    return Slip(
        "over_the_highest",
        Percent(part / Largest(readings)),
        "This divides by the highest reading. Divide by the average of the three.",
    )


def over_the_nameplate(part: Expr) -> Slip:
    """The nameplate's amps under the line, where the average belongs."""
    return Slip(
        "over_the_nameplate",
        Percent(part / Known("full_load_amps")),
        "This divides by the nameplate amps. Divide by the average of the three readings.",
    )


def balance(
    kind: str,
    legs: tuple[str, ...],
    turn: str = "",
    slips: tuple[Slip, ...] = (),
    source: str = NEMA,
) -> tuple[Formula, ...]:
    """Average, largest deviation and unbalance of three readings: "amps", "volts" or "ohms".

    `turn` tells later readings of the same motor apart; `slips` are those of the last formula.
    """
    readings = tuple(map(Known, legs))
    average, deviation = Known(f"{kind}_average{turn}"), Known(f"{kind}_deviation{turn}")
    deviations = tuple(Abs(reading - average) for reading in readings)
    return (
        Formula(
            average.name,
            Mean(readings),
            source,
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
            Largest(deviations),
            source,
            "The reading furthest from the average counts, whether it is above or below.",
            slips=(
                Slip(
                    "spread_for_deviation",
                    Largest(readings) - Smallest(readings),
                    "This is highest less lowest. Here the largest deviation from the average counts.",
                ),
                Slip(
                    "smallest_deviation",
                    Smallest(deviations),
                    "This is the reading nearest the average. Take the one furthest from it.",
                ),
            ),
        ),
        Formula(
            f"{UNBALANCED[kind]}_unbalance{turn}",
            Percent(deviation / average),
            source,
            "The deviation is set against the average, so large and small motors compare.",
            slips=slips,
        ),
    )


legs = tuple(map(Known, ("amps_a", "amps_b", "amps_c")))
amps_average, amps_range, amps_highest, full_load_amps, service_factor = map(
    Known, ("amps_average", "amps_range", "amps_highest", "full_load_amps", "service_factor")
)
amps_deviation = Known("amps_deviation")

UNBALANCE = (
    *balance(
        "amps",
        tuple(leg.name for leg in legs),
        slips=(over_the_highest(amps_deviation, legs), over_the_nameplate(amps_deviation)),
    ),
    *(f for t in ("_2", "_3") for f in balance("amps", tuple(f"{x.name}{t}" for x in legs), t)),
    # Volts differ by a few percent at most: over the highest would be the same answer, rounded.
    *balance("volts", ("volts_ab", "volts_bc", "volts_ca")),
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
        Percent(amps_range / amps_average),
        FIELD,
        "What lies between highest and lowest is set against the average of the three.",
        slips=(
            over_the_highest(amps_range, legs),
            Slip(
                "over_the_lowest",
                Percent(amps_range / Smallest(legs)),
                "This divides by the lowest reading. Divide by the average of the three.",
            ),
            over_the_nameplate(amps_range),
        ),
    ),
)

AGAINST_NAMEPLATE = (
    Formula(
        "service_factor_amps",
        full_load_amps * service_factor,
        NAMEPLATE,
        "The service factor is a margin over nameplate load, for short times only.",
        slips=(
            Slip(
                "factor_added",
                full_load_amps + service_factor,
                "The service factor is added. It multiplies the full-load amps.",
            ),
        ),
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
            Slip(
                "lowest_for_highest",
                Smallest(legs),
                "This uses the lowest leg. The highest leg is the one that overheats first.",
            ),
        ),
    ),
    Formula(
        "load_amps",
        Percent(amps_highest / full_load_amps),
        "common practice, no source: highest leg against nameplate full-load amps",
        "This says how much of the nameplate amps the motor draws.",
        slips=(
            Slip(
                "over_service_factor_amps",
                Percent(amps_highest / (full_load_amps * service_factor)),
                "This divides by the service-factor amps. Divide by the full-load amps.",
            ),
        ),
    ),
)

BALANCE = UNBALANCE + HEATING + AGAINST_NAMEPLATE

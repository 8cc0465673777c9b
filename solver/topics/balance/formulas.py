"""Three legs held against their average: unbalance, spread and nameplate amps."""

from solver.algebra.expression import Abs, Expr, Known, Largest, Mean, Percent, Smallest
from solver.algebra.formula import Formula, Slip

from .formulas_heating import HEATING

__all__ = ["BALANCE", "balance"]

NEMA = "NEMA MG 1, for volts: largest deviation from the average, divided by the average"
FIELD = "common practice, no source: highest minus lowest, divided by the average"
UNBALANCED = {"amps": "current", "volts": "voltage", "ohms": "resistance"}
NAMEPLATE = "NEMA MG 1 14.37: the service factor multiplies the rated load, and roughly the amps"


def over_the_highest(part: Expr, readings: tuple[Known, ...]) -> Slip:
    """The highest reading under the line, where the average belongs."""
    return Slip(
        "over_the_highest",
        Percent(part / Largest(readings)),
        "You divided by the highest reading. Divide by the average of the three, because that is "
        "what the legs are compared with.",
    )


def over_the_nameplate(part: Expr) -> Slip:
    """The nameplate's amps under the line, where the average belongs."""
    return Slip(
        "over_the_nameplate",
        Percent(part / Known("full_load_amps")),
        "You divided by the nameplate amps. Divide by the average of the three readings. "
        "Unbalance compares the legs with each other.",
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
            "All three readings count the same, so add them up and divide by 3.",
            slips=(
                Slip(
                    "middle_of_extremes",
                    Mean((Largest(readings), Smallest(readings))),
                    "You averaged only the highest and the lowest. The average takes all three "
                    "readings: add them up and divide by 3.",
                ),
            ),
        ),
        Formula(
            deviation.name,
            Largest(deviations),
            source,
            "The reading farthest from the average counts, whether it is above or below.",
            slips=(
                Slip(
                    "spread_for_deviation",
                    Largest(readings) - Smallest(readings),
                    "You took highest minus lowest. This method takes the largest deviation from "
                    "the average.",
                ),
                Slip(
                    "smallest_deviation",
                    Smallest(deviations),
                    "You took the reading closest to the average. Take the one farthest from it: "
                    "that one shows how uneven the readings are.",
                ),
            ),
        ),
        Formula(
            f"{UNBALANCED[kind]}_unbalance{turn}",
            Percent(deviation / average),
            source,
            "Unbalance is a percent of the average, so you can compare large and small motors.",
            back="The percent is of the average, so work back from that percent.",
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
        "Spread is the gap between the highest leg and the lowest.",
        slips=(
            Slip(
                "deviation_for_spread",
                Largest(tuple(Abs(leg - amps_average) for leg in legs)),
                "You took the largest deviation from the average. Spread is highest minus lowest.",
            ),
        ),
    ),
    Formula(
        "current_spread",
        Percent(amps_range / amps_average),
        FIELD,
        "Spread is a percent of the average, so you can compare large and small motors.",
        slips=(
            over_the_highest(amps_range, legs),
            Slip(
                "over_the_lowest",
                Percent(amps_range / Smallest(legs)),
                "You divided by the lowest reading. Divide by the average of the three, because "
                "that is what the legs are compared with.",
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
        "The service factor is a margin above the nameplate rating, so it multiplies the amps.",
        slips=(
            Slip(
                "factor_added",
                full_load_amps + service_factor,
                "You added the service factor. Multiply by it: 1.15 means 15% more than full-load "
                "amps.",
            ),
        ),
    ),
    Formula(
        "amps_highest",
        Largest(legs),
        "common practice, no source: the highest leg heats its winding most",
        "The leg that carries the most amps overheats first, so judge the motor by it.",
        slips=(
            Slip(
                "average_for_highest",
                Mean(legs),
                "You used the average. Use the highest leg, because it overheats first.",
            ),
            Slip(
                "lowest_for_highest",
                Smallest(legs),
                "You used the lowest leg. Use the highest leg, because it overheats first.",
            ),
        ),
    ),
    Formula(
        "load_amps",
        Percent(amps_highest / full_load_amps),
        "common practice, no source: highest leg against nameplate full-load amps",
        "Full-load amps are the 100% mark for the highest leg.",
        back="Full-load amps are the 100% mark, so work back from the percent.",
        slips=(
            Slip(
                "over_service_factor_amps",
                Percent(amps_highest / (full_load_amps * service_factor)),
                "You divided by the service-factor amps. Divide by the full-load amps, because "
                "they are the 100% mark.",
            ),
        ),
    ),
)

BALANCE = UNBALANCE + HEATING + AGAINST_NAMEPLATE

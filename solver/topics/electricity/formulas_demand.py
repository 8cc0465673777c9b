"""How demand is billed: by the kVA, by the power factor, and the load factor."""

from solver.algebra.expression import Constant, Figure, Known, Percent
from solver.algebra.formula import Formula, Slip

__all__ = ["DEMAND"]

factor, peak = map(Known, ("power_factor", "peak_demand"))
BILLING = "US DOE Motor Systems Tip Sheet 8 (DOE/GO-102012-3732): demand and power factor"
FACTOR = "Turner (ed.), Energy Management Handbook: average load over peak load"
HOURS_PER_DAY = Constant(
    "hours_per_day_of_a_bill",
    "hours in a day",
    us=Figure(24, "h / day", exact=24.0),
    si=Figure(24, "h / day", exact=24.0),
    source="definition of the day",
)

DEMAND = (
    Formula(
        "billed_kva",
        peak / factor,
        BILLING,
        "The kVA are never less than the kilowatts: divide by the power factor.",
        slips=(
            Slip(
                "multiplied",
                peak * factor,
                "You multiplied by the power factor. From kilowatts to kVA you divide.",
            ),
        ),
    ),
    Formula(
        "kva_charge",
        Known("billed_kva") * Known("kva_price"),
        BILLING,
        "The price is for each kVA of the peak.",
        slips=(
            Slip(
                "by_kilowatts",
                peak * Known("kva_price"),
                "You multiplied the price by kilowatts. This utility charges for kVA.",
            ),
        ),
    ),
    Formula(
        "adjusted_demand",
        peak * Known("required_power_factor") / factor,
        BILLING,
        "The utility bills the kilowatts you would have had with the same kVA at its power factor.",
        slips=(
            Slip(
                "turned_around",
                peak * factor / Known("required_power_factor"),
                "You turned the ratio upside down. A low power factor makes the bill go up, not down.",
            ),
            Slip(
                "to_unity",
                peak / factor,
                "You divided by the power factor and stopped. That's kVA: multiply by the required power factor.",
            ),
        ),
    ),
    Formula(
        "period_hours",
        HOURS_PER_DAY * Known("days"),
        "arithmetic: a day has 24 hours",
        "The meter ran day and night, so count 24 hours for each day of the bill.",
    ),
    Formula(
        "average_demand",
        Known("energy") / Known("period_hours"),
        FACTOR,
        "Spread the kilowatt-hours over every hour of the period to get the average kilowatts.",
        back="Average kilowatts, kept up every hour of the period, make the kilowatt-hours.",
    ),
    Formula(
        "load_factor",
        Percent(Known("average_demand") / peak),
        FACTOR,
        "Load factor is the average demand as a percent of the peak.",
        slips=(
            Slip(
                "upside_down",
                Percent(peak / Known("average_demand")),
                "You divided the peak by the average. The average goes on top, so it can't pass 100%.",
            ),
        ),
        back="Load factor is the average as a percent of the peak.",
    ),
)

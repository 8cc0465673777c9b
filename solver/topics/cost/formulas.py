"""Kilowatt-hours and what they cost, for a time and by the volume.

`COST` has every formula of the chapter; those of upgrades and of bills are in `formulas_upgrades.py` and
`formulas_bills.py`.
"""

from solver.algebra.expression import Known, Number
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import HOURLY_VOLUME

from .formulas_bills import ARITHMETIC, BILLS
from .formulas_upgrades import SAVING

__all__ = ["COST"]

input_power, flow, volume_pumped = map(Known, ("input_power", "flow", "volume_pumped"))
run_time, hours_per_day, days = map(Known, ("run_time", "hours_per_day", "days"))
energy, energy_price = map(Known, ("energy", "energy_price"))

ENERGY = (
    Formula(
        "run_time",
        hours_per_day * days,
        ARITHMETIC,
        "The bill counts every hour the pump runs, so multiply hours per day by days.",
        slips=(
            Slip(
                "all_day",
                Number(24) * days,
                "You counted all 24 hours of each day. Count only the hours the pump runs.",
            ),
        ),
    ),
    Formula(
        "energy",
        input_power * run_time,
        ARITHMETIC,
        "One kilowatt for one hour is one kilowatt-hour, so multiply kilowatts by hours.",
    ),
    Formula(
        "energy_cost",
        energy * energy_price,
        ARITHMETIC,
        "Every kilowatt-hour costs the same, so multiply the kilowatt-hours by the price.",
    ),
    Formula(
        "volume_pumped",
        flow * run_time / HOURLY_VOLUME,
        HOURLY_VOLUME.source,
        "Flow is how much water moves each minute or second. Over the run time it adds up.",
    ),
)


def per_volume(
    system: str, volume: str, an_hour: str, in_an_hour: int, unit: str
) -> tuple[Formula, ...]:
    """Energy per volume in one system, from a meter's total or from a flow.

    The flow `an_hour` pumps a `volume` in one hour, which has so many of its `unit`.
    """
    return (
        Formula(
            "energy_per_volume",
            energy / volume_pumped,
            ARITHMETIC,
            f"Divide the energy by the volume to get the kilowatt-hours for each {volume}.",
            systems=(system,),
        ),
        Formula(
            "energy_per_volume",
            input_power * HOURLY_VOLUME / flow,
            HOURLY_VOLUME.source,
            f"At {an_hour}, it takes one hour to pump one {volume}. A smaller flow takes longer.",
            slips=(
                Slip(
                    "time_not_in_hours",
                    input_power * HOURLY_VOLUME * Number(in_an_hour) / flow,
                    f"You used the pumping time in {unit}s. For kilowatt-hours it must be in hours.",
                ),
            ),
            systems=(system,),
        ),
    )


PER_VOLUME = (
    *per_volume("us", "million gallons (MG)", "16,667 gpm", 60, "minute"),
    *per_volume("si", "thousand cubic meters (ML)", "277.8 L/s", 3600, "second"),
    Formula(
        "cost_per_volume",
        Known("energy_per_volume") * energy_price,
        ARITHMETIC,
        "Multiply the kilowatt-hours it takes by the price of one kilowatt-hour.",
    ),
)

COST = (*ENERGY, *PER_VOLUME, *SAVING, *BILLS)

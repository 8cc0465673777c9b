"""Kilowatt-hours, what they cost, what a volume of water costs to move, and bills.

`COST` has what upgrades save too (formulas_saving.py).
"""

from solver.algebra.expression import Known, Number
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import HOURLY_VOLUME

from .formulas_saving import SAVING

__all__ = ["COST"]

ARITHMETIC = "arithmetic: a rate times the time or the amount it applies to"
TIP_SHEET_8 = "US DOE Motor Systems Tip Sheet 8 (DOE/GO-102012-3732): energy and demand charges"

input_power, flow, volume_pumped = map(Known, ("input_power", "flow", "volume_pumped"))
run_time, hours_per_day, days = map(Known, ("run_time", "hours_per_day", "days"))
energy, energy_price, energy_cost, bill = map(
    Known, ("energy", "energy_price", "energy_cost", "bill")
)
peak_demand, demand_price, demand_charge, fixed_charge = map(
    Known, ("peak_demand", "demand_price", "demand_charge", "fixed_charge")
)
on_peak_energy, off_peak_energy, on_peak_price, off_peak_price, energy_moved = map(
    Known,
    ("on_peak_energy", "off_peak_energy", "on_peak_price", "off_peak_price", "energy_moved"),
)

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

WITH_DEMAND = (
    Formula(
        "demand_charge",
        peak_demand * demand_price,
        TIP_SHEET_8,
        "The demand charge is for the highest kilowatts of the month, no matter how long they last.",
    ),
    Formula(
        "bill",
        energy_cost + demand_charge + fixed_charge,
        TIP_SHEET_8,
        "The bill adds up the energy cost, the demand charge and the fixed charge.",
        slips=(
            Slip(
                "demand_by_hours",
                energy_cost + energy * demand_price + fixed_charge,
                "You multiplied the demand price by the kilowatt-hours. It goes with the peak "
                "kilowatts.",
            ),
            Slip(
                "prices_swapped",
                energy * demand_price + peak_demand * energy_price + fixed_charge,
                "You switched the two prices. The demand price goes with the peak kilowatts.",
            ),
        ),
    ),
    Formula(
        "average_price",
        bill / energy,
        ARITHMETIC,
        "Divide the whole bill by the kilowatt-hours to see what each one really costs.",
        slips=(
            Slip(
                "energy_price_alone",
                energy_price,
                "You gave the energy price alone. The demand charge and the fixed charge are on the "
                "bill too.",
            ),
        ),
    ),
)

BY_THE_HOUR = (
    Formula(
        "on_peak_energy",
        input_power * Known("on_peak_hours"),
        ARITHMETIC,
        "Count only the on-peak hours here, because they have their own price.",
    ),
    Formula(
        "off_peak_energy",
        input_power * Known("off_peak_hours"),
        ARITHMETIC,
        "Count only the off-peak hours here, because they have their own price.",
    ),
    Formula(
        "on_peak_cost",
        on_peak_energy * on_peak_price,
        ARITHMETIC,
        "On-peak energy gets the on-peak price.",
    ),
    Formula(
        "off_peak_cost",
        off_peak_energy * off_peak_price,
        ARITHMETIC,
        "Off-peak energy gets the off-peak price.",
    ),
    Formula(
        "time_of_use_bill",
        Known("on_peak_cost") + Known("off_peak_cost"),
        ARITHMETIC,
        "On-peak and off-peak energy have different prices. Find each cost, then add them.",
        slips=(
            Slip(
                "one_price_on",
                (on_peak_energy + off_peak_energy) * on_peak_price,
                "You used the on-peak price for all the energy. Off-peak energy has its own price.",
            ),
            Slip(
                "one_price_off",
                (on_peak_energy + off_peak_energy) * off_peak_price,
                "You used the off-peak price for all the energy. On-peak energy has its own price.",
            ),
            Slip(
                "prices_swapped",
                on_peak_energy * off_peak_price + off_peak_energy * on_peak_price,
                "You switched the two prices. On-peak energy gets the higher price.",
            ),
        ),
    ),
)

MOVED = (
    Formula(
        "energy_moved",
        input_power * Known("hours_moved"),
        ARITHMETIC,
        "Only the energy used in the hours you move changes its price.",
    ),
    Formula(
        "price_gap",
        on_peak_price - off_peak_price,
        ARITHMETIC,
        "Each kilowatt-hour you move saves the difference between the two prices.",
    ),
    Formula(
        "shift_saving",
        energy_moved * Known("price_gap"),
        ARITHMETIC,
        "Multiply the energy you move by what each kilowatt-hour saves.",
        slips=(
            Slip(
                "whole_price_saved",
                energy_moved * on_peak_price,
                "You counted the whole on-peak price as savings. You still pay the off-peak price, so "
                "you save only the difference.",
            ),
            Slip(
                "new_cost_for_saving",
                energy_moved * off_peak_price,
                "You found what the moved energy costs off-peak. You save the difference between "
                "the two prices.",
            ),
        ),
    ),
)

BILLS = (*WITH_DEMAND, *BY_THE_HOUR, *MOVED)

COST = (*ENERGY, *PER_VOLUME, *SAVING, *BILLS)

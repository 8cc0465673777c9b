"""Bills with demand and fixed charges, and prices that go by the hour."""

from ..expression import Known
from ..formula import Formula, Slip

__all__ = ["BILLS"]

ARITHMETIC = "arithmetic: a rate times the time or the amount it applies to"
TIP_SHEET_8 = "US DOE Motor Systems Tip Sheet 8 (DOE/GO-102012-3732): energy and demand charges"

input_power, energy, energy_price, energy_cost, bill = map(
    Known, ("input_power", "energy", "energy_price", "energy_cost", "bill")
)
peak_demand, demand_price, demand_charge, fixed_charge = map(
    Known, ("peak_demand", "demand_price", "demand_charge", "fixed_charge")
)
on_peak_energy, off_peak_energy, on_peak_price, off_peak_price, energy_moved = map(
    Known,
    ("on_peak_energy", "off_peak_energy", "on_peak_price", "off_peak_price", "energy_moved"),
)

WITH_DEMAND = (
    Formula(
        "demand_charge",
        peak_demand * demand_price,
        TIP_SHEET_8,
        "The demand charge is for the highest kilowatts in the month, not for the hours.",
    ),
    Formula(
        "bill",
        energy_cost + demand_charge + fixed_charge,
        TIP_SHEET_8,
        "The bill adds the energy, the peak and the fixed charge.",
        slips=(
            Slip(
                "demand_by_hours",
                energy_cost + energy * demand_price + fixed_charge,
                "The demand price went on the kilowatt-hours. It goes on the peak kilowatts.",
            ),
            Slip(
                "prices_swapped",
                energy * demand_price + peak_demand * energy_price + fixed_charge,
                "The two prices are swapped. The demand price goes with the peak kilowatts.",
            ),
        ),
    ),
    Formula(
        "average_price",
        bill / energy,
        ARITHMETIC,
        "The whole bill is shared out over the kilowatt-hours.",
        slips=(
            Slip(
                "energy_price_alone",
                energy_price,
                "This is the energy price alone. Demand and the fixed charge are paid too.",
            ),
        ),
    ),
)

BY_THE_HOUR = (
    Formula(
        "on_peak_energy",
        input_power * Known("on_peak_hours"),
        ARITHMETIC,
        "The hours in the dear period are counted by themselves.",
    ),
    Formula(
        "off_peak_energy",
        input_power * Known("off_peak_hours"),
        ARITHMETIC,
        "The hours in the cheap period are counted by themselves.",
    ),
    Formula(
        "on_peak_cost",
        on_peak_energy * on_peak_price,
        ARITHMETIC,
        "On-peak energy has its own price.",
    ),
    Formula(
        "off_peak_cost",
        off_peak_energy * off_peak_price,
        ARITHMETIC,
        "Off-peak energy has its own price.",
    ),
    Formula(
        "time_of_use_bill",
        Known("on_peak_cost") + Known("off_peak_cost"),
        ARITHMETIC,
        "Each period has its own price; the bill adds the two.",
        slips=(
            Slip(
                "one_price_on",
                (on_peak_energy + off_peak_energy) * on_peak_price,
                "All the energy is charged the on-peak price. Off-peak energy has its own price.",
            ),
            Slip(
                "one_price_off",
                (on_peak_energy + off_peak_energy) * off_peak_price,
                "All the energy is charged the off-peak price. On-peak energy has its own price.",
            ),
            Slip(
                "prices_swapped",
                on_peak_energy * off_peak_price + off_peak_energy * on_peak_price,
                "The two prices are swapped. The dear price goes with the on-peak energy.",
            ),
        ),
    ),
)

MOVED = (
    Formula(
        "energy_moved",
        input_power * Known("hours_moved"),
        ARITHMETIC,
        "Only the energy of the hours that move changes its price.",
    ),
    Formula(
        "price_gap",
        on_peak_price - off_peak_price,
        ARITHMETIC,
        "Each kilowatt-hour moved saves the difference between the two prices.",
    ),
    Formula(
        "shift_saving",
        energy_moved * Known("price_gap"),
        ARITHMETIC,
        "The saving is the energy moved times what each kilowatt-hour gains.",
        slips=(
            Slip(
                "whole_price_saved",
                energy_moved * on_peak_price,
                "The moved energy still costs the off-peak price. Only the difference is saved.",
            ),
            Slip(
                "new_cost_for_saving",
                energy_moved * off_peak_price,
                "This is what the moved energy costs off peak. The saving is the difference.",
            ),
        ),
    ),
)

BILLS = (*WITH_DEMAND, *BY_THE_HOUR, *MOVED)

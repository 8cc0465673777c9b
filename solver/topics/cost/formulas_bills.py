"""The electric bill: demand, fixed charges, the average price, and prices by the hour."""

from solver.algebra.expression import Known
from solver.algebra.formula import Formula, Slip

__all__ = ["ARITHMETIC", "BILLS"]

input_power = Known("input_power")
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

ARITHMETIC = "arithmetic: a rate times the time or the amount it applies to"
TIP_SHEET_8 = "US DOE Motor Systems Tip Sheet 8 (DOE/GO-102012-3732): energy and demand charges"

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

"""Kilowatt-hours and what they cost: by the volume, on a bill, and what an upgrade saves."""

from solver.algebra.expression import Expr, Fraction, Known, Number
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import HOURLY_VOLUME, KW_PER_HP

__all__ = ["COST"]

ARITHMETIC = "arithmetic: a rate times the time or the amount it applies to"
TIP_SHEET_7 = "US DOE Motor Systems Tip Sheet 7 (DOE/GO-102012-3733)"
TIP_SHEET_2 = "US DOE Motor Systems Tip Sheet 2 (DOE/GO-102012-3734): size times load"
PAYBACK = "common practice, no source: cost divided by yearly savings, no interest"
SAME_WORK = "The work stays the same, so multiply by the old efficiency and divide by the new one."
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

water_power, brake_power = map(Known, ("water_power", "brake_power"))
new_brake_power, new_motor_power, new_input_power = map(
    Known, ("new_brake_power", "new_motor_power", "new_input_power")
)
saved_power, saved_energy, yearly_saving = map(
    Known, ("saved_power", "saved_energy", "yearly_saving")
)
pump, motor, new_pump, new_motor = (
    Fraction(Known(f"{machine}_efficiency"))
    for machine in ("pump", "motor", "new_pump", "new_motor")
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


def points_times_power(machine: str, old: Expr, new: Expr) -> Slip:
    """The points between two efficiencies taken as the share that is saved."""
    return Slip(
        f"{machine}_points_saved",
        input_power * (new - old),
        f"You took the difference in {machine} efficiency as the percent you save. Find the "
        f"kilowatts with each {machine}, then subtract.",
    )


NEW_MACHINE = (
    Formula(
        "brake_power",
        Known("motor_size") * Fraction(Known("motor_load")),
        TIP_SHEET_2,
        "Motor load is the percent of its nameplate rating that the motor delivers at the shaft.",
        back="Motor load is the shaft power as a percent of the nameplate rating.",
    ),
    Formula(
        "new_brake_power",
        water_power / new_pump,
        TIP_SHEET_7,
        "The water needs the same power. A more efficient pump gives it that with less at the shaft.",
    ),
    Formula(
        "new_motor_power",
        new_brake_power / motor,
        TIP_SHEET_7,
        "The same motor now carries a smaller shaft load, so it takes in less.",
        unless=("new_motor_efficiency",),
    ),
    Formula(
        "new_motor_power",
        brake_power / new_motor,
        TIP_SHEET_7,
        "The shaft load stays the same, and a more efficient motor takes in less to carry it.",
        unless=("new_pump_efficiency",),
    ),
    Formula(
        "new_motor_power",
        new_brake_power / new_motor,
        TIP_SHEET_7,
        "The more efficient motor now carries a smaller shaft load.",
    ),
    Formula(
        "new_input_power",
        new_motor_power * KW_PER_HP,
        KW_PER_HP.source,
        "The meter reads kilowatts: 0.746 kW for each horsepower.",
        systems=("us",),
    ),
    Formula(
        "new_input_power",
        new_motor_power,
        "the same quantity, already in kilowatts",
        "The meter reads what goes into the motor. Both are in kilowatts.",
        systems=("si",),
    ),
    Formula(
        "new_input_power",
        input_power * pump / new_pump,
        TIP_SHEET_7,
        SAME_WORK,
        unless=("new_motor_efficiency",),
    ),
    Formula(
        "new_input_power",
        input_power * motor / new_motor,
        TIP_SHEET_7,
        SAME_WORK,
        unless=("new_pump_efficiency",),
    ),
)

SAVED = (
    Formula(
        "saved_power",
        input_power - new_input_power,
        TIP_SHEET_7,
        "You save what the old one draws minus what the new one draws.",
        slips=(
            points_times_power("pump", pump, new_pump),
            points_times_power("motor", motor, new_motor),
            Slip(
                "all_of_the_old",
                input_power,
                "You counted everything the old one draws. The new one draws power too, so subtract "
                "it.",
            ),
            Slip(
                "all_of_the_new",
                new_input_power,
                "You counted what the new one draws. You save the old minus the new.",
            ),
        ),
    ),
    Formula(
        "saved_energy",
        saved_power * Known("yearly_hours"),
        TIP_SHEET_7,
        "You save energy only in the hours that the pump runs.",
        slips=(
            Slip(
                "all_year",
                saved_power * Number(8760),
                "You counted all 8,760 hours of the year. Count only the hours the pump runs.",
            ),
        ),
    ),
    Formula(
        "yearly_saving",
        saved_energy * energy_price,
        TIP_SHEET_7,
        "Each kilowatt-hour you don't use saves its price.",
    ),
    Formula(
        "simple_payback",
        Known("installed_cost") / yearly_saving,
        PAYBACK,
        "Divide the cost by what you save in one year to get the years it takes.",
    ),
)

SAVING = (*NEW_MACHINE, *SAVED)

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

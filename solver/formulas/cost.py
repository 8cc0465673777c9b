"""Kilowatt-hours, what they cost, and what a better machine or a better hour saves."""

from ..expression import Fraction, Known
from ..formula import Formula, Slip
from .constants import HOURLY_VOLUME, HP_TO_KW

__all__ = ["COST"]

ARITHMETIC = "arithmetic: a rate times the time or the amount it applies to"
SAVING = "US DOE Motor Systems Tip Sheet 7 (DOE/GO-102012-3733)"
BILLING = "US DOE Motor Systems Tip Sheet 8 (DOE/GO-102012-3732): energy and demand charges"
SAME_HEAD = "Each machine is worked the same way; only the new efficiency goes in."


def known(*names: str) -> tuple[Known, ...]:
    return tuple(map(Known, names))


input_power, run_time, energy, energy_price, energy_cost = known(
    "input_power", "run_time", "energy", "energy_price", "energy_cost"
)
hours_per_day, days, flow, volume = known("hours_per_day", "days", "flow", "volume_pumped")
energy_per_volume = Known("energy_per_volume")
water_power, brake_power = known("water_power", "brake_power")
new_pump, new_motor = (Fraction(Known(f"new_{part}_efficiency")) for part in ("pump", "motor"))
new_brake_power, new_motor_power, new_input_power = known(
    "new_brake_power", "new_motor_power", "new_input_power"
)
saved_power, yearly_hours, saved_energy, yearly_saving = known(
    "saved_power", "yearly_hours", "saved_energy", "yearly_saving"
)

ENERGY = (
    Formula(
        "run_time",
        hours_per_day * days,
        ARITHMETIC,
        "The bill counts all the hours, so hours a day times days.",
    ),
    Formula(
        "energy",
        input_power * run_time,
        ARITHMETIC,
        "A kilowatt-hour is one kilowatt for one hour.",
    ),
    Formula(
        "energy_cost",
        energy * energy_price,
        ARITHMETIC,
        "Every kilowatt-hour is charged the same price.",
    ),
    Formula(
        "volume_pumped",
        flow * run_time / HOURLY_VOLUME,
        HOURLY_VOLUME.source,
        "Flow is volume for each minute or second; the hours turn it into a volume.",
    ),
    Formula(
        "energy_per_volume",
        energy / volume,
        ARITHMETIC,
        "This shares the energy out over the volume it moved.",
    ),
    Formula(
        "energy_per_volume",
        input_power * HOURLY_VOLUME / flow,
        HOURLY_VOLUME.source,
        "Moving one volume unit takes this many hours at the drawn kilowatts.",
    ),
    Formula(
        "cost_per_volume",
        energy_per_volume * energy_price,
        ARITHMETIC,
        "Each volume unit costs its own kilowatt-hours times the price.",
    ),
)

COMPARED = (
    Formula(
        "new_brake_power",
        water_power / new_pump,
        SAVING,
        "The water still needs the same power; a better pump needs less at the shaft.",
    ),
    Formula(
        "new_motor_power", new_brake_power / Fraction(Known("motor_efficiency")), SAVING, SAME_HEAD
    ),
    Formula(
        "new_motor_power",
        brake_power / new_motor,
        SAVING,
        "The shaft load stays the same; a better motor draws less for it.",
        unless=("new_pump_efficiency",),
    ),
    Formula(
        "new_input_power",
        new_motor_power * HP_TO_KW,
        HP_TO_KW.source,
        "The meter counts kilowatts.",
    ),
    Formula(
        "saved_power",
        input_power - new_input_power,
        SAVING,
        "The saving is what the old machine draws less what the new one draws.",
    ),
    Formula(
        "saved_energy",
        saved_power * yearly_hours,
        SAVING,
        "The saving counts only in the hours that the pump runs.",
    ),
    Formula(
        "yearly_saving",
        saved_energy * energy_price,
        SAVING,
        "Each kilowatt-hour not drawn saves its price.",
    ),
    Formula(
        "simple_payback",
        Known("installed_cost") / yearly_saving,
        "common practice, no source: cost over yearly saving, no interest",
        "It is the number of years of saving that add up to the cost.",
    ),
)

on_peak_energy, off_peak_energy, on_peak_price, off_peak_price = known(
    "on_peak_energy", "off_peak_energy", "on_peak_price", "off_peak_price"
)

BILLS = (
    Formula(
        "demand_charge",
        Known("peak_demand") * Known("demand_price"),
        BILLING,
        "The demand charge is for the highest kilowatts in the month, not for the hours.",
        slips=(
            Slip(
                "demand_by_hours",
                Known("energy") * Known("demand_price"),
                "The demand price is applied to the kilowatt-hours. It applies to the peak kilowatts.",
            ),
        ),
    ),
    Formula(
        "bill",
        energy_cost + Known("demand_charge") + Known("fixed_charge"),
        BILLING,
        "The bill adds the energy, the peak and the fixed charge.",
    ),
    Formula(
        "average_price",
        Known("bill") / energy,
        ARITHMETIC,
        "The whole bill is shared out over the kilowatt-hours.",
    ),
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
        "on_peak_cost", on_peak_energy * on_peak_price, ARITHMETIC, "On-peak energy has its price."
    ),
    Formula(
        "off_peak_cost",
        off_peak_energy * off_peak_price,
        ARITHMETIC,
        "Off-peak energy has its price.",
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
        Known("energy_moved") * Known("price_gap"),
        ARITHMETIC,
        "The saving is the energy moved times what each kilowatt-hour gains.",
        slips=(
            Slip(
                "whole_price_saved",
                Known("energy_moved") * on_peak_price,
                "The moved energy still costs the off-peak price. Only the difference is saved.",
            ),
        ),
    ),
)

COST = ENERGY + COMPARED + BILLS

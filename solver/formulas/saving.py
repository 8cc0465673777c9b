"""Two pumps or two motors compared: the kilowatts, the yearly saving, the simple payback."""

from ..expression import Expr, Fraction, Known, Number
from ..formula import Formula, Slip
from .constants import KW_PER_HP

__all__ = ["SAVING"]

TIP_SHEET_7 = "US DOE Motor Systems Tip Sheet 7 (DOE/GO-102012-3733)"
TIP_SHEET_2 = "US DOE Motor Systems Tip Sheet 2 (DOE/GO-102012-3734): size times load"
PAYBACK = "common practice, no source: cost over yearly saving, no interest"
SAME_WORK = "The work stays the same, so the kilowatts go with old efficiency over new."

water_power, brake_power, input_power = map(Known, ("water_power", "brake_power", "input_power"))
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


def points_times_power(machine: str, old: Expr, new: Expr) -> Slip:
    """The points between two efficiencies taken as the share that is saved."""
    return Slip(
        f"{machine}_points_saved",
        input_power * (new - old),
        f"The difference in {machine} efficiency is not the share saved. "
        "Work out the kilowatts of each, then take the difference.",
    )


NEW_MACHINE = (
    Formula(
        "brake_power",
        Known("motor_size") * Fraction(Known("motor_load")),
        TIP_SHEET_2,
        "The load says what share of its size the motor gives at the shaft.",
    ),
    Formula(
        "new_brake_power",
        water_power / new_pump,
        TIP_SHEET_7,
        "The water still needs the same power; a better pump needs less at the shaft.",
    ),
    Formula(
        "new_motor_power",
        new_brake_power / motor,
        TIP_SHEET_7,
        "The same motor now carries less.",
        unless=("new_motor_efficiency",),
    ),
    Formula(
        "new_motor_power",
        brake_power / new_motor,
        TIP_SHEET_7,
        "The shaft load stays the same; a better motor draws less for it.",
        unless=("new_pump_efficiency",),
    ),
    Formula(
        "new_motor_power",
        new_brake_power / new_motor,
        TIP_SHEET_7,
        "The better motor carries the smaller shaft load.",
    ),
    Formula(
        "new_input_power",
        new_motor_power * KW_PER_HP,
        KW_PER_HP.source,
        "The meter counts the new machine in kilowatts too.",
        systems=("us",),
    ),
    Formula(
        "new_input_power",
        new_motor_power,
        "the same quantity, already in kilowatts",
        "The meter counts the new machine in kilowatts too.",
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
        "The saving is what the old machine draws less what the new one draws.",
        slips=(
            points_times_power("pump", pump, new_pump),
            points_times_power("motor", motor, new_motor),
            Slip(
                "all_of_the_old",
                input_power,
                "This is all that the old machine draws. The new one draws power too: subtract it.",
            ),
            Slip(
                "all_of_the_new",
                new_input_power,
                "This is what the new machine draws. The saving is the old less the new.",
            ),
        ),
    ),
    Formula(
        "saved_energy",
        saved_power * Known("yearly_hours"),
        TIP_SHEET_7,
        "The saving counts only in the hours that the pump runs.",
        slips=(
            Slip(
                "all_year",
                saved_power * Number(8760),
                "All 8,760 hours of a year are counted. Take only the hours that the pump runs.",
            ),
        ),
    ),
    Formula(
        "yearly_saving",
        saved_energy * Known("energy_price"),
        TIP_SHEET_7,
        "Each kilowatt-hour not drawn saves its price.",
    ),
    Formula(
        "simple_payback",
        Known("installed_cost") / yearly_saving,
        PAYBACK,
        "It is the number of years of saving that add up to the cost.",
    ),
)

SAVING = (*NEW_MACHINE, *SAVED)

"""What a more efficient pump or motor saves, and how soon it pays back."""

from solver.algebra.expression import Expr, Fraction, Known, Number
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import KW_PER_HP

__all__ = ["SAVING"]

input_power = Known("input_power")
energy_price = Known("energy_price")

water_power, brake_power = map(Known, ("water_power", "brake_power"))
new_brake_power, new_motor_power, new_input_power = map(
    Known, ("new_brake_power", "new_motor_power", "new_input_power")
)
saved_power, saved_energy, yearly_saving = map(
    Known, ("saved_power", "saved_energy", "yearly_saving")
)
TIP_SHEET_7 = "US DOE Motor Systems Tip Sheet 7 (DOE/GO-102012-3733)"
TIP_SHEET_2 = "US DOE Motor Systems Tip Sheet 2 (DOE/GO-102012-3734): size times load"
PAYBACK = "common practice, no source: cost divided by yearly savings, no interest"
SAME_WORK = "The work stays the same, so multiply by the old efficiency and divide by the new one."
pump, motor, new_pump, new_motor = (
    Fraction(Known(f"{machine}_efficiency"))
    for machine in ("pump", "motor", "new_pump", "new_motor")
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

"""Kilowatt-hours and cost: what a pump's hours cost, and what would cost less."""

from ..family import Family, Level, Scene
from ..formulas import COST, POWER
from .judged_cost import judge_energy, judge_payback, judge_price, judge_upgrade
from .scenes_cost import YEAR, better_motor, better_pump, demand_bill, duty, time_of_use

__all__ = ["COST_CHAPTER"]

CHAPTER = "cost"
FORMULAS = (*POWER, *COST)


def numeric(name: str, tag: str, title: str, asked: str, scene: Scene, *levels: Level) -> Family:
    return Family(name, tag, CHAPTER, title, asked, levels, scene, FORMULAS)


ENERGY = (
    numeric(
        "input_power",
        "KW",
        "Kilowatts at the meter",
        "input_power",
        duty(),
        Level(
            ("brake_power", "motor_efficiency"),
            "The shaft of {place} needs {brake_power}. The motor efficiency is "
            "{motor_efficiency}. What input power does the meter show?",
        ),
        Level(
            ("water_power", "pump_efficiency", "motor_efficiency"),
            "{place} gives the water {water_power}. The pump efficiency is {pump_efficiency} "
            "and the motor efficiency {motor_efficiency}. "
            "What input power does the meter show?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "motor_efficiency"),
            "{place} moves {flow} against {head} of head. The pump efficiency is "
            "{pump_efficiency} and the motor efficiency {motor_efficiency}. "
            "What input power does the meter show?",
        ),
    ),
    numeric(
        "energy_used",
        "KH",
        "Kilowatt-hours for a run time",
        "energy",
        duty(),
        Level(
            ("input_power", "run_time"),
            "{place} draws {input_power} and ran {run_time} today. What energy did it use?",
        ),
        Level(
            ("input_power", "hours_per_day", "days"),
            "{place} draws {input_power} and runs {hours_per_day} for {days}. "
            "What energy does it use?",
        ),
        Level(
            ("brake_power", "motor_efficiency", "hours_per_day", "days"),
            "The shaft of {place} needs {brake_power}. The motor efficiency is "
            "{motor_efficiency}. It runs {hours_per_day} for {days}. What energy does it use?",
        ),
    ),
    numeric(
        "energy_cost",
        "EC",
        "The cost of a day, a month or a year",
        "energy_cost",
        duty(),
        Level(
            ("input_power", "run_time", "energy_price"),
            "{place} draws {input_power} and ran {run_time} today. Energy is {energy_price}. "
            "What did the day cost?",
        ),
        Level(
            ("input_power", "hours_per_day", "days", "energy_price"),
            "{place} draws {input_power} and runs {hours_per_day} for {days}. Energy is "
            "{energy_price}. What does the month cost?",
        ),
        Level(
            ("brake_power", "motor_efficiency", "hours_per_day", "days", "energy_price"),
            "The shaft of {place} needs {brake_power}. The motor efficiency is "
            "{motor_efficiency}. It runs {hours_per_day} for {days}. Energy is "
            "{energy_price}. What does the year cost?",
            scene=duty(YEAR),
        ),
    ),
    numeric(
        "cost_per_volume",
        "CV",
        "The cost of a volume pumped",
        "cost_per_volume",
        duty(),
        Level(
            ("energy", "volume_pumped", "energy_price"),
            "{place} used {energy} in a month and pumped {volume_pumped}. Energy is "
            "{energy_price}. What is the cost per volume pumped?",
        ),
        Level(
            ("input_power", "flow", "energy_price"),
            "{place} draws {input_power} while it moves {flow}. Energy is {energy_price}. "
            "What is the cost per volume pumped?",
        ),
        Level(
            ("flow", "head", "overall_efficiency", "energy_price"),
            "{place} moves {flow} against {head} of head. The wire-to-water efficiency is "
            "{overall_efficiency}. Energy is {energy_price}. "
            "What is the cost per volume pumped?",
        ),
    ),
)

UPGRADES = (
    numeric(
        "pump_saving",
        "PS",
        "What a better pump saves in a year",
        "yearly_saving",
        better_pump,
        Level(
            ("input_power", "new_input_power", "yearly_hours", "energy_price"),
            "{place} draws {input_power}. A new pump would draw {new_input_power} for the "
            "same work. It runs {yearly_hours}, and energy is {energy_price}. "
            "What does the new pump save in a year?",
        ),
        Level(
            (
                "input_power",
                "pump_efficiency",
                "new_pump_efficiency",
                "yearly_hours",
                "energy_price",
            ),
            "{place} draws {input_power} at a pump efficiency of {pump_efficiency}. A new pump "
            "would have {new_pump_efficiency}. It runs {yearly_hours}, and energy is "
            "{energy_price}. What does the new pump save in a year?",
        ),
        Level(
            (
                "water_power",
                "pump_efficiency",
                "new_pump_efficiency",
                "motor_efficiency",
                "yearly_hours",
                "energy_price",
            ),
            "{place} gives the water {water_power}. Its pump efficiency is {pump_efficiency}; "
            "a new pump would have {new_pump_efficiency}. The motor efficiency stays "
            "{motor_efficiency}. It runs {yearly_hours}, and energy is {energy_price}. "
            "What does the new pump save in a year?",
        ),
    ),
    numeric(
        "motor_saving",
        "MC",
        "What a better motor saves in a year",
        "yearly_saving",
        better_motor,
        Level(
            (
                "input_power",
                "motor_efficiency",
                "new_motor_efficiency",
                "yearly_hours",
                "energy_price",
            ),
            "{place} draws {input_power} at a motor efficiency of {motor_efficiency}. A new "
            "motor would have {new_motor_efficiency}. It runs {yearly_hours}, and energy is "
            "{energy_price}. What does the new motor save in a year?",
        ),
        Level(
            (
                "brake_power",
                "motor_efficiency",
                "new_motor_efficiency",
                "yearly_hours",
                "energy_price",
            ),
            "The shaft of {place} needs {brake_power}. The motor efficiency is "
            "{motor_efficiency}; a new motor would have {new_motor_efficiency}. It runs "
            "{yearly_hours}, and energy is {energy_price}. "
            "What does the new motor save in a year?",
        ),
        Level(
            (
                "motor_size",
                "motor_load",
                "motor_efficiency",
                "new_motor_efficiency",
                "yearly_hours",
                "energy_price",
            ),
            "The {motor_size} motor of {place} is loaded to {motor_load}. Its efficiency is "
            "{motor_efficiency}; a new motor would have {new_motor_efficiency}. It runs "
            "{yearly_hours}, and energy is {energy_price}. "
            "What does the new motor save in a year?",
        ),
    ),
    numeric(
        "simple_payback",
        "SP",
        "Simple payback of a better machine",
        "simple_payback",
        better_pump,
        Level(
            ("installed_cost", "saved_energy", "energy_price"),
            "A new pump at {station} costs {installed_cost} installed and saves {saved_energy}. "
            "Energy is {energy_price}. What is the simple payback?",
        ),
        Level(
            (
                "installed_cost",
                "input_power",
                "new_input_power",
                "yearly_hours",
                "energy_price",
            ),
            "{place} draws {input_power}. A new pump would draw {new_input_power} for the same "
            "work and costs {installed_cost} installed. It runs {yearly_hours}, and energy is "
            "{energy_price}. What is the simple payback?",
        ),
        Level(
            (
                "installed_cost",
                "input_power",
                "motor_efficiency",
                "new_motor_efficiency",
                "yearly_hours",
                "energy_price",
            ),
            "{place} draws {input_power} at a motor efficiency of {motor_efficiency}. A new "
            "motor would have {new_motor_efficiency} and costs {installed_cost} installed. It "
            "runs {yearly_hours}, and energy is {energy_price}. What is the simple payback?",
            scene=better_motor,
        ),
    ),
)

BILLS = (
    numeric(
        "bill",
        "BI",
        "A bill with energy, demand and fixed charges",
        "bill",
        demand_bill,
        Level(
            ("energy_cost", "peak_demand", "demand_price", "fixed_charge"),
            "Energy at {station} cost {energy_cost} this month. The peak was {peak_demand} "
            "at {demand_price}, and the fixed charge is {fixed_charge}. What is the bill?",
        ),
        Level(
            ("energy", "energy_price", "peak_demand", "demand_price", "fixed_charge"),
            "The pumps at {station} used {energy} at {energy_price} this month. The peak was {peak_demand} "
            "at {demand_price}, and the fixed charge is {fixed_charge}. What is the bill?",
        ),
        Level(
            (
                "input_power",
                "hours_per_day",
                "days",
                "energy_price",
                "peak_demand",
                "demand_price",
                "fixed_charge",
            ),
            "{place} draws {input_power} and runs {hours_per_day} for {days}. Energy is "
            "{energy_price}. The station's peak was {peak_demand} at {demand_price}, and its "
            "fixed charge is {fixed_charge}. What is the bill?",
        ),
    ),
    numeric(
        "average_price",
        "PK",
        "The average price of a kilowatt-hour",
        "average_price",
        demand_bill,
        Level(
            ("bill", "energy"),
            "The month's bill for {station} is {bill}, for {energy}. "
            "What is the average price of a kilowatt-hour?",
        ),
        Level(
            ("energy", "energy_cost", "demand_charge", "fixed_charge"),
            "The bill for {station} shows {energy}, which cost {energy_cost}. It adds a demand charge of "
            "{demand_charge} and a fixed charge of {fixed_charge}. "
            "What is the average price of a kilowatt-hour?",
        ),
        Level(
            ("energy", "energy_price", "peak_demand", "demand_price", "fixed_charge"),
            "The pumps at {station} used {energy} at {energy_price} this month. The peak was {peak_demand} "
            "at {demand_price}, and the fixed charge is {fixed_charge}. "
            "What is the average price of a kilowatt-hour?",
        ),
    ),
    numeric(
        "time_of_use_bill",
        "TU",
        "A time-of-use bill",
        "time_of_use_bill",
        time_of_use,
        Level(
            ("on_peak_energy", "off_peak_energy", "on_peak_price", "off_peak_price"),
            "{place} used {on_peak_energy} on peak at {on_peak_price} and {off_peak_energy} "
            "off peak at {off_peak_price}. What is the time-of-use bill?",
        ),
        Level(
            (
                "input_power",
                "on_peak_hours",
                "off_peak_hours",
                "on_peak_price",
                "off_peak_price",
            ),
            "{place} draws {input_power}. This month it ran {on_peak_hours} on peak at "
            "{on_peak_price} and {off_peak_hours} off peak at {off_peak_price}. "
            "What is the time-of-use bill?",
        ),
        Level(
            (
                "brake_power",
                "motor_efficiency",
                "on_peak_hours",
                "off_peak_hours",
                "on_peak_price",
                "off_peak_price",
            ),
            "The shaft of {place} needs {brake_power}. The motor efficiency is "
            "{motor_efficiency}. This month it ran {on_peak_hours} on peak at "
            "{on_peak_price} and {off_peak_hours} off peak at {off_peak_price}. "
            "What is the time-of-use bill?",
        ),
    ),
    numeric(
        "shift_saving",
        "SH",
        "What moving hours off peak saves",
        "shift_saving",
        time_of_use,
        Level(
            ("energy_moved", "on_peak_price", "off_peak_price"),
            "{person} can move {energy_moved} a month off peak at {station}. The price is "
            "{on_peak_price} on peak and {off_peak_price} off peak. What does the move save?",
        ),
        Level(
            ("input_power", "hours_moved", "on_peak_price", "off_peak_price"),
            "{place} draws {input_power}. {person} can move {hours_moved} a month off peak. "
            "The price is {on_peak_price} on peak and {off_peak_price} off peak. "
            "What does the move save?",
        ),
        Level(
            (
                "brake_power",
                "motor_efficiency",
                "hours_moved",
                "on_peak_price",
                "off_peak_price",
            ),
            "The shaft of {place} needs {brake_power}. The motor efficiency is "
            "{motor_efficiency}. {person} can move {hours_moved} a month off peak. The price "
            "is {on_peak_price} on peak and {off_peak_price} off peak. "
            "What does the move save?",
        ),
    ),
)

JUDGED = (
    Family(
        "pays_back_first",
        "PF",
        CHAPTER,
        "Which offer pays back first",
        "choice",
        (
            Level(
                (),
                "Three offers came in for a better pump at {station}. Which pays back first?",
            ),
            Level(
                ("yearly_hours", "energy_price"),
                "Three offers came in for a better pump at {station}. The pump runs {yearly_hours}, "
                "and energy is {energy_price}. Which offer pays back first?",
                judge=judge_upgrade,
            ),
        ),
        better_pump,
        FORMULAS,
        judge_payback,
    ),
    Family(
        "cheaper_pump",
        "CP",
        CHAPTER,
        "Which pump is cheaper to run",
        "choice",
        (
            Level(
                (),
                "Any of three pumps at {station} can fill the same tank. "
                "Which uses the least energy to fill it?",
            ),
            Level(
                (),
                "Any of three pumps at {station} can fill the same tank, each in its own hours. "
                "Which fills it for the least money?",
                judge=judge_price,
            ),
        ),
        duty(),
        FORMULAS,
        judge_energy,
    ),
)

COST_CHAPTER = (*ENERGY, *UPGRADES, *BILLS, *JUDGED)

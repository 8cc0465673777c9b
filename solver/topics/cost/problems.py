"""Kilowatt-hours and cost: what a pump's hours cost, what an upgrade saves, and bills.

`COST` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Family, Level
from solver.topics.scenes import DIRECT

from .judgments import judge_energy, judge_payback, judge_price, judge_upgrade
from .stations import (
    BETTER_PUMP,
    BILLED,
    CHAPTER,
    DAY,
    MOTOR_BY_INPUT,
    MOTOR_BY_LOAD,
    MOTOR_BY_SHAFT,
    OFFERED,
    PUMP_BY_INPUT,
    SHIFTED,
    TO_A_TANK,
    YEAR,
)

__all__ = ["COST"]

ENERGY = (
    CHAPTER.numeric(
        "input_power",
        "KW",
        "Kilowatts at the meter",
        "input_power",
        DIRECT,
        Level(
            ("brake_power", "motor_efficiency"),
            "{place} needs {brake_power} at its shaft. The motor efficiency is "
            "{motor_efficiency}. How many kilowatts does the power meter read?",
        ),
        Level(
            ("water_power", "pump_efficiency", "motor_efficiency"),
            "The {water_power:full} of {place} is {water_power}. The pump efficiency is "
            "{pump_efficiency} and the motor efficiency is {motor_efficiency}. How many kilowatts "
            "does the power meter read?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "motor_efficiency"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. The pump "
            "efficiency is {pump_efficiency} and the motor efficiency is {motor_efficiency}. How "
            "many kilowatts does the power meter read?",
        ),
    ),
    CHAPTER.numeric(
        "energy_used",
        "KH",
        "Kilowatt-hours from kilowatts and hours",
        "energy",
        DIRECT,
        Level(
            ("input_power", "run_time"),
            "{place} draws {input_power} and ran for {run_time} today. How many kilowatt-hours did "
            "it use?",
            scene=DAY,
        ),
        Level(
            ("input_power", "hours_per_day", "days"),
            "{place} draws {input_power} and runs {hours_per_day} for {days}. "
            "How many kilowatt-hours does it use?",
        ),
        Level(
            ("brake_power", "motor_efficiency", "hours_per_day", "days"),
            "{place} needs {brake_power} at its shaft. The motor efficiency is "
            "{motor_efficiency}. The pump runs {hours_per_day} for {days}. How many kilowatt-hours "
            "does it use?",
        ),
    ),
    CHAPTER.numeric(
        "energy_cost",
        "EC",
        "The energy cost of a day, a month or a year",
        "energy_cost",
        DIRECT,
        Level(
            ("input_power", "run_time", "energy_price"),
            "{place} draws {input_power} and ran for {run_time} today. Energy costs "
            "{energy_price}. How much did today's energy cost?",
            scene=DAY,
        ),
        Level(
            ("input_power", "hours_per_day", "days", "energy_price"),
            "{place} draws {input_power} and runs {hours_per_day} for {days}. Energy costs "
            "{energy_price}. How much does the month's energy cost?",
        ),
        Level(
            ("brake_power", "motor_efficiency", "hours_per_day", "days", "energy_price"),
            "{place} needs {brake_power} at its shaft. The motor efficiency is "
            "{motor_efficiency}. The pump runs {hours_per_day} for {days}. Energy costs "
            "{energy_price}. How much does the year's energy cost?",
            scene=YEAR,
        ),
    ),
    CHAPTER.numeric(
        "cost_per_volume",
        "CV",
        "The energy cost per volume pumped",
        "cost_per_volume",
        DIRECT,
        Level(
            ("energy", "volume_pumped", "energy_price"),
            "{place} used {energy} in a month and pumped {volume_pumped}. Energy costs "
            "{energy_price}. What is the energy {cost_per_volume:name}?",
        ),
        Level(
            ("input_power", "flow", "energy_price"),
            "{place} draws {input_power} while it moves {flow}. Energy costs {energy_price}. "
            "What is the energy {cost_per_volume:name}?",
        ),
        Level(
            ("flow", "head", "overall_efficiency", "energy_price"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. The wire-to-water "
            "efficiency is {overall_efficiency}. Energy costs {energy_price}. What is the energy "
            "{cost_per_volume:name}?",
        ),
    ),
)

UPGRADES = (
    CHAPTER.numeric(
        "pump_saving",
        "PS",
        "What a more efficient pump saves in a year",
        "yearly_saving",
        BETTER_PUMP,
        Level(
            ("input_power", "new_input_power", "yearly_hours", "energy_price"),
            "{place} draws {input_power}. A new pump would draw {new_input_power} for the "
            "same work. The pump runs {yearly_hours}, and energy costs {energy_price}. "
            "How much would the new pump save in a year?",
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
            "would run at {new_pump_efficiency}. The pump runs {yearly_hours}, and energy costs "
            "{energy_price}. How much would the new pump save in a year?",
            scene=PUMP_BY_INPUT,
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
            "The {water_power:full} of {place} is {water_power}. The pump efficiency is "
            "{pump_efficiency}, and a new pump would run at {new_pump_efficiency}. The motor "
            "efficiency stays at {motor_efficiency}. The pump runs {yearly_hours}, and energy "
            "costs {energy_price}. How much would the new pump save in a year?",
        ),
    ),
    CHAPTER.numeric(
        "motor_saving",
        "MC",
        "What a more efficient motor saves in a year",
        "yearly_saving",
        MOTOR_BY_INPUT,
        Level(
            (
                "input_power",
                "motor_efficiency",
                "new_motor_efficiency",
                "yearly_hours",
                "energy_price",
            ),
            "{place} draws {input_power} at a motor efficiency of {motor_efficiency}. A new "
            "motor would run at {new_motor_efficiency}. The motor runs {yearly_hours}, and energy "
            "costs {energy_price}. How much would the new motor save in a year?",
        ),
        Level(
            (
                "brake_power",
                "motor_efficiency",
                "new_motor_efficiency",
                "yearly_hours",
                "energy_price",
            ),
            "{place} needs {brake_power} at its shaft. The motor efficiency is "
            "{motor_efficiency}, and a new motor would run at {new_motor_efficiency}. The motor runs "
            "{yearly_hours}, and energy costs {energy_price}. "
            "How much would the new motor save in a year?",
            scene=MOTOR_BY_SHAFT,
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
            "The {motor_size} motor of {place} runs at {motor_load} load. The motor efficiency is "
            "{motor_efficiency}, and a new motor would run at {new_motor_efficiency}. The motor runs "
            "{yearly_hours}, and energy costs {energy_price}. "
            "How much would the new motor save in a year?",
            scene=MOTOR_BY_LOAD,
        ),
    ),
    CHAPTER.numeric(
        "simple_payback",
        "SP",
        "Simple payback of a more efficient pump or motor",
        "simple_payback",
        BETTER_PUMP,
        Level(
            ("installed_cost", "saved_energy", "energy_price"),
            "A new pump at {station} costs {installed_cost} installed and saves {saved_energy}. "
            "Energy costs {energy_price}. What is the simple payback in years?",
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
            "work and cost {installed_cost} installed. The pump runs {yearly_hours}, and energy "
            "costs {energy_price}. What is the simple payback in years?",
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
            "motor would run at {new_motor_efficiency} and cost {installed_cost} installed. The motor "
            "runs {yearly_hours}, and energy costs {energy_price}. What is the simple payback in "
            "years?",
            scene=MOTOR_BY_INPUT,
        ),
    ),
)

BILLS = (
    CHAPTER.numeric(
        "bill",
        "BI",
        "A bill with energy, demand and fixed charges",
        "bill",
        BILLED,
        Level(
            ("energy_cost", "peak_demand", "demand_price", "fixed_charge"),
            "This month's energy at {station} cost {energy_cost}. The peak demand was {peak_demand} "
            "at {demand_price}, and the fixed charge is {fixed_charge}. What is the electric bill?",
        ),
        Level(
            ("energy", "energy_price", "peak_demand", "demand_price", "fixed_charge"),
            "The pumps at {station} used {energy} this month at {energy_price}. The peak demand was "
            "{peak_demand} at {demand_price}, and the fixed charge is {fixed_charge}. What is the "
            "electric bill?",
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
            "{place} draws {input_power} and runs {hours_per_day} for {days}. Energy costs "
            "{energy_price}. The station's peak demand was {peak_demand} at {demand_price}, and its "
            "fixed charge is {fixed_charge}. What is the electric bill?",
        ),
    ),
    CHAPTER.numeric(
        "average_price",
        "PK",
        "The average price per kilowatt-hour",
        "average_price",
        BILLED,
        Level(
            ("bill", "energy"),
            "This month's bill for {station} is {bill} for {energy}. What is the average price per "
            "kilowatt-hour?",
        ),
        Level(
            ("energy", "energy_cost", "demand_charge", "fixed_charge"),
            "The bill for {station} shows {energy}, which cost {energy_cost}. It also has a demand "
            "charge of {demand_charge} and a fixed charge of {fixed_charge}. "
            "What is the average price per kilowatt-hour?",
        ),
        Level(
            ("energy", "energy_price", "peak_demand", "demand_price", "fixed_charge"),
            "The pumps at {station} used {energy} this month at {energy_price}. The peak demand was "
            "{peak_demand} at {demand_price}, and the fixed charge is {fixed_charge}. "
            "What is the average price per kilowatt-hour?",
        ),
    ),
    CHAPTER.numeric(
        "time_of_use_bill",
        "TU",
        "A time-of-use bill",
        "time_of_use_bill",
        SHIFTED,
        Level(
            ("on_peak_energy", "off_peak_energy", "on_peak_price", "off_peak_price"),
            "{place} used {on_peak_energy} on-peak at {on_peak_price} and {off_peak_energy} "
            "off-peak at {off_peak_price}. What is the time-of-use bill?",
        ),
        Level(
            (
                "input_power",
                "on_peak_hours",
                "off_peak_hours",
                "on_peak_price",
                "off_peak_price",
            ),
            "{place} draws {input_power}. This month it ran {on_peak_hours} on-peak at "
            "{on_peak_price} and {off_peak_hours} off-peak at {off_peak_price}. "
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
            "{place} needs {brake_power} at its shaft. The motor efficiency is "
            "{motor_efficiency}. This month the pump ran {on_peak_hours} on-peak at "
            "{on_peak_price} and {off_peak_hours} off-peak at {off_peak_price}. "
            "What is the time-of-use bill?",
        ),
    ),
    CHAPTER.numeric(
        "shift_saving",
        "SH",
        "Savings from moving hours off-peak",
        "shift_saving",
        SHIFTED,
        Level(
            ("energy_moved", "on_peak_price", "off_peak_price"),
            "At {station}, {person} can move {energy_moved} a month from on-peak to off-peak. The "
            "price is {on_peak_price} on-peak and {off_peak_price} off-peak. How much does this "
            "save each month?",
        ),
        Level(
            ("input_power", "hours_moved", "on_peak_price", "off_peak_price"),
            "{place} draws {input_power}. {person} can move {hours_moved} a month from on-peak to "
            "off-peak. The price is {on_peak_price} on-peak and {off_peak_price} off-peak. "
            "How much does this save each month?",
        ),
        Level(
            (
                "brake_power",
                "motor_efficiency",
                "hours_moved",
                "on_peak_price",
                "off_peak_price",
            ),
            "{place} needs {brake_power} at its shaft. The motor efficiency is "
            "{motor_efficiency}. {person} can move {hours_moved} a month from on-peak to off-peak. "
            "The price is {on_peak_price} on-peak and {off_peak_price} off-peak. "
            "How much does this save each month?",
        ),
    ),
)

JUDGED = (
    CHAPTER.judged(
        "pays_back_first",
        "PF",
        "Which offer pays back first",
        judge_payback,
        OFFERED,
        Level(
            (),
            "Three offers came in for a more efficient pump at {station}. Which one pays back first?",
        ),
        Level(
            ("yearly_hours", "energy_price"),
            "Three offers came in for a more efficient pump at {station}. The pump runs "
            "{yearly_hours}, and energy costs {energy_price}. Which one pays back first?",
            judge=judge_upgrade,
        ),
    ),
    CHAPTER.judged(
        "cheaper_pump",
        "CP",
        "Which pump is cheapest to run",
        judge_energy,
        TO_A_TANK,
        Level(
            (),
            "Any one of three pumps at {station} can fill the same tank. "
            "Which one uses the least energy to fill it?",
        ),
        Level(
            (),
            "Any one of three pumps at {station} can fill the same tank. Each runs at a time "
            "of day with a different price. Which one fills the tank for the least money?",
            judge=judge_price,
        ),
    ),
)

COST: tuple[Family, ...] = (*ENERGY, *UPGRADES, *BILLS, *JUDGED)

"""Kilowatt-hours and cost: what a pump's hours cost, and which offer or pump comes cheapest.

`COST` has the whole chapter, in the order of teaching; upgrades and bills are in `problems_upgrades.py` and
`problems_bills.py`.
"""

from solver.engine.family import Family, Level
from solver.topics.scenes import DIRECT

from .judgments import judge_energy, judge_payback, judge_price, judge_upgrade
from .problems_bills import BILLS
from .problems_upgrades import UPGRADES
from .stations import CHAPTER, DAY, OFFERED, TO_A_TANK, YEAR

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

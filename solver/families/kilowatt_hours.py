"""Kilowatts, kilowatt-hours and their cost: by the day, the month, the year and the volume."""

from ..family import Level
from .cost_family import numeric
from .scenes_cost import YEAR, duty

__all__ = ["ENERGY"]

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
            "{energy_price}. What is the cost per volume pumped, in {unit}?",
        ),
        Level(
            ("input_power", "flow", "energy_price"),
            "{place} draws {input_power} while it moves {flow}. Energy is {energy_price}. "
            "What is the cost per volume pumped, in {unit}?",
        ),
        Level(
            ("flow", "head", "overall_efficiency", "energy_price"),
            "{place} moves {flow} against {head} of head. The wire-to-water efficiency is "
            "{overall_efficiency}. Energy is {energy_price}. "
            "What is the cost per volume pumped, in {unit}?",
        ),
    ),
)

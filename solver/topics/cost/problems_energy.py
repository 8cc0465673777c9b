"""Kilowatts, kilowatt-hours and their cost: by the day, the month, the year and the volume."""

from solver.engine.family import Level

from .kinds import numeric
from .scenes import YEAR, duty

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
    numeric(
        "energy_used",
        "KH",
        "Kilowatt-hours from kilowatts and hours",
        "energy",
        duty(),
        Level(
            ("input_power", "run_time"),
            "{place} draws {input_power} and ran for {run_time} today. How many kilowatt-hours did "
            "it use?",
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
    numeric(
        "energy_cost",
        "EC",
        "The energy cost of a day, a month or a year",
        "energy_cost",
        duty(),
        Level(
            ("input_power", "run_time", "energy_price"),
            "{place} draws {input_power} and ran for {run_time} today. Energy costs "
            "{energy_price}. How much did today's energy cost?",
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
            scene=duty(YEAR),
        ),
    ),
    numeric(
        "cost_per_volume",
        "CV",
        "The energy cost per volume pumped",
        "cost_per_volume",
        duty(),
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

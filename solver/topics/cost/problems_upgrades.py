"""What a more efficient pump or motor saves, and how soon it pays back."""

from solver.engine.family import Level

from .stations import (
    BETTER_PUMP,
    CHAPTER,
    MOTOR_BY_INPUT,
    MOTOR_BY_LOAD,
    MOTOR_BY_SHAFT,
    PUMP_BY_INPUT,
)

__all__ = ["UPGRADES"]

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

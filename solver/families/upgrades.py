"""What a better pump or motor saves in a year, and how soon it has paid for itself."""

from ..family import Level
from .cost_family import numeric
from .scenes_cost import better_motor, better_pump

__all__ = ["UPGRADES"]

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

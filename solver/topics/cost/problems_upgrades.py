"""What a more efficient pump or motor saves and how soon it pays back; which is cheapest to run."""

from solver.engine.family import Level

from .judgments import judge_energy, judge_payback, judge_price, judge_upgrade
from .scenes import CHAPTER, better_motor, better_pump, duty

__all__ = ["JUDGED", "UPGRADES"]

UPGRADES = (
    CHAPTER.numeric(
        "pump_saving",
        "PS",
        "What a more efficient pump saves in a year",
        "yearly_saving",
        better_pump,
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
        ),
    ),
    CHAPTER.numeric(
        "simple_payback",
        "SP",
        "Simple payback of a more efficient pump or motor",
        "simple_payback",
        better_pump,
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
            scene=better_motor,
        ),
    ),
)

JUDGED = (
    CHAPTER.judged(
        "pays_back_first",
        "PF",
        "Which offer pays back first",
        judge_payback,
        better_pump,
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
        duty(),
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

"""Slowing a pump down: what it saves with friction alone, and where water is lifted."""

from ..family import Level
from .scenes_speed import on_a_system, slower, slower_lift
from .speed_family import FRICTION, numeric, without_lift

__all__ = ["SLOWING"]

LIFTED = "{static_head} of it static."

SLOWING = (
    without_lift(
        "power_cut",
        "SX",
        "The share of power that slowing saves",
        "power_cut",
        slower,
        Level(
            ("speed_cut",),
            f"{{person}} slows {{place}} by {{speed_cut}}. {FRICTION} "
            "What share of its power does that save?",
        ),
        Level(
            ("pump_speed", "new_speed"),
            f"{{place}} turned at {{pump_speed}} and now turns at {{new_speed}}. {FRICTION} "
            "What share of its power does that save?",
        ),
    ),
    without_lift(
        "slowed_power",
        "SW",
        "Input power of a slowed pump",
        "slowed_power",
        slower,
        Level(
            ("input_power", "pump_speed", "new_speed"),
            f"{{place}} draws {{input_power}} at {{pump_speed}}. {FRICTION} "
            "What does it draw at {new_speed}?",
        ),
        Level(
            ("input_power", "speed_cut"),
            f"{{place}} draws {{input_power}}. {FRICTION} Its drive slows it by {{speed_cut}}. "
            "What does it draw then?",
        ),
        Level(
            ("input_power", "flow", "new_flow", "head", "static_head"),
            f"{{place}} draws {{input_power}} and moves {{flow}} against {{head}}, {LIFTED} It is "
            "slowed until it moves {new_flow}, at the same efficiency. What does it draw then?",
            scene=slower_lift,
        ),
    ),
    without_lift(
        "slowing_saves",
        "SG",
        "Energy that slowing saves in a year",
        "saved_energy",
        slower,
        Level(
            ("input_power", "pump_speed", "new_speed", "yearly_hours"),
            f"{{place}} draws {{input_power}} at {{pump_speed}} and runs {{yearly_hours}}, at "
            f"whatever speed. {FRICTION} What does a speed of {{new_speed}} save in a year?",
        ),
        Level(
            ("input_power", "flow", "new_flow", "head", "static_head", "yearly_hours"),
            "{place} draws {input_power} and runs {yearly_hours}, at whatever speed. It moves "
            f"{{flow}} against {{head}}, {LIFTED} Slowed, at the same efficiency, it moves "
            "{new_flow}. What does that save in a year?",
            scene=slower_lift,
        ),
    ),
    without_lift(
        "slowed_energy_per_volume",
        "SV",
        "Energy per volume of a slowed pump",
        "new_energy_per_volume",
        slower,
        Level(
            ("energy_per_volume", "pump_speed", "new_speed"),
            f"{{place}} takes {{energy_per_volume}} at {{pump_speed}}. {FRICTION} "
            "What energy does a volume take at {new_speed}, in {unit}?",
        ),
        Level(
            ("energy_per_volume", "flow", "new_flow", "head", "static_head"),
            f"{{place}} takes {{energy_per_volume}} and moves {{flow}} against {{head}}, {LIFTED} "
            "Slowed, at the same efficiency, it moves {new_flow}. "
            "What energy does a volume take then, in {unit}?",
            scene=slower_lift,
        ),
    ),
    numeric(
        "least_speed",
        "SM",
        "The least speed that lifts water",
        "least_speed",
        on_a_system,
        Level(
            ("pump_speed", "shutoff_head", "static_head"),
            "{place} has a shutoff head of {shutoff_head} at {pump_speed}. The static head is "
            "{static_head}. Below what speed does it move no water?",
        ),
        Level(
            ("pump_speed", "shutoff_head", "suction_elevation", "discharge_elevation"),
            "{place} has a shutoff head of {shutoff_head} at {pump_speed}. It pumps from a level "
            "of {suction_elevation} to one of {discharge_elevation}. "
            "Below what speed does it move no water?",
        ),
    ),
)

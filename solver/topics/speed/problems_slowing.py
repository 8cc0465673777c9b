"""What slowing a pump down saves, with and without lift, and the slowest it can go."""

from solver.engine.family import Level

from .stations import CHAPTER, DRIVEN, FRICTION, LIFTS, SAVING, SAVING_LIFTED

__all__ = ["SLOWING"]

LIFTED = "{static_head} of it static."
BY_SQUARE = "Friction changes with the square of the flow."

SLOWING = (
    CHAPTER.numeric(
        "power_cut",
        "SX",
        "The share of power that slowing down saves",
        "power_cut",
        DRIVEN,
        Level(
            ("speed_cut",),
            f"{{person}} slows {{place}} down by {{speed_cut}}. {FRICTION} "
            "What percent of its power does that save?",
        ),
        Level(
            ("pump_speed", "new_speed"),
            f"{{place}} ran at {{pump_speed}} and now runs at {{new_speed}}. {FRICTION} "
            "What percent of its power does that save?",
        ),
    ),
    CHAPTER.numeric(
        "slowed_power",
        "SW",
        "Input power of a pump that is slowed down",
        "slowed_power",
        SAVING,
        Level(
            ("input_power", "pump_speed", "new_speed"),
            f"{{place}} draws {{input_power}} at {{pump_speed}}. {FRICTION} "
            "How much power does it draw at {new_speed}?",
        ),
        Level(
            ("input_power", "speed_cut"),
            f"{{place}} draws {{input_power}}. {FRICTION} Its drive slows it down by {{speed_cut}}. "
            "How much power does it draw then?",
        ),
        Level(
            ("input_power", "flow", "new_flow", "head", "static_head"),
            f"{{place}} draws {{input_power}} and moves {{flow}} against {{head}}, {LIFTED} It is "
            f"slowed down until it moves {{new_flow}}, at the same efficiency. {BY_SQUARE} "
            "How much power does it draw then?",
            scene=SAVING_LIFTED,
        ),
    ),
    CHAPTER.numeric(
        "slowing_saves",
        "SG",
        "Energy that slowing down saves in a year",
        "slowing_saved_energy",
        SAVING,
        Level(
            ("input_power", "pump_speed", "new_speed", "yearly_hours"),
            f"{{place}} draws {{input_power}} at {{pump_speed}} and runs {{yearly_hours}} at "
            f"either speed. {FRICTION} How much energy does running at {{new_speed}} save in a year?",
        ),
        Level(
            ("input_power", "flow", "new_flow", "head", "static_head", "yearly_hours"),
            "{place} draws {input_power} and runs {yearly_hours} at either speed. It moves {flow} "
            f"against {{head}}, {LIFTED} Slowed down, at the same efficiency, it moves {{new_flow}}. "
            f"{BY_SQUARE} How much energy does that save in a year?",
            scene=SAVING_LIFTED,
        ),
    ),
    CHAPTER.numeric(
        "slowed_energy_per_volume",
        "SV",
        "Energy per volume of a pump that is slowed down",
        "new_energy_per_volume",
        SAVING,
        Level(
            ("energy_per_volume", "pump_speed", "new_speed"),
            f"{{place}} uses {{energy_per_volume}} at {{pump_speed}}. {FRICTION} "
            "How much energy does it use at {new_speed}, in {unit}?",
        ),
        Level(
            ("energy_per_volume", "flow", "new_flow", "head", "static_head"),
            f"{{place}} uses {{energy_per_volume}} and moves {{flow}} against {{head}}, {LIFTED} "
            f"Slowed down, at the same efficiency, it moves {{new_flow}}. {BY_SQUARE} "
            "How much energy does it use then, in {unit}?",
            scene=SAVING_LIFTED,
        ),
    ),
    CHAPTER.numeric(
        "least_speed",
        "SM",
        "The minimum speed that moves water",
        "least_speed",
        LIFTS,
        Level(
            ("pump_speed", "shutoff_head", "static_head"),
            "{place} has a shutoff head of {shutoff_head} at {pump_speed}. The static head is "
            "{static_head}. Below what speed does it move no water?",
        ),
        Level(
            ("pump_speed", "shutoff_head", "suction_elevation", "discharge_elevation"),
            "{place} has a shutoff head of {shutoff_head} at {pump_speed}. It pumps from "
            "elevation {suction_elevation} to elevation {discharge_elevation}. "
            "Below what speed does it move no water?",
        ),
    ),
)

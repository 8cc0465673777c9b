"""Speed and impeller by numbers: the affinity laws, slowing down, curves that cross, the impeller.

What is to be judged is in `judgments*.py`. `SPEED` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level

from .judgments import CUBE_LAW, IMPELLER_TYPE, TWO_PUMPS
from .judgments_duty import DUTY_CHANGE
from .stations import (
    BEST,
    CHAPTER,
    CROSSING,
    DRIVEN,
    FRICTION,
    LIFTS,
    PUMP,
    PUMP_AT_BEST,
    SAVING,
    SAVING_LIFTED,
    SLOWED,
    SQUARES,
    STAGES,
    TRIMMED,
    TWINS,
    TWO_GAUGES,
)

__all__ = ["SPEED"]

TURNS = "{place} runs at {pump_speed}"
TRIM = "{place} has an impeller diameter of {impeller_diameter}"
TAKES = "takes {brake_power} at the shaft"

LAWS = (
    CHAPTER.numeric(
        "new_flow",
        "SF",
        "Flow at another speed or diameter",
        "new_flow",
        SLOWED,
        Level(
            ("flow", "pump_speed", "new_speed"),
            f"{TURNS} and moves {{flow}}. {FRICTION} What is its flow at {{new_speed}}?",
        ),
        Level(
            ("flow", "speed_cut"),
            f"{{place}} moves {{flow}}. {FRICTION} Its drive slows it down by {{speed_cut}}. "
            "What is its flow then?",
            scene=DRIVEN,
        ),
        Level(
            ("flow", "impeller_diameter", "new_diameter"),
            f"{TRIM} and moves {{flow}}. {FRICTION} "
            "What is its flow with the impeller trimmed to {new_diameter}?",
            scene=TRIMMED,
        ),
    ),
    CHAPTER.numeric(
        "new_head",
        "SD",
        "Head at another speed or diameter",
        "new_head",
        SLOWED,
        Level(
            ("head", "pump_speed", "new_speed"),
            f"{TURNS} and makes {{head}} of head. {FRICTION} What head does it make at {{new_speed}}?",
        ),
        Level(
            ("head", "impeller_diameter", "new_diameter"),
            f"{TRIM} and makes {{head}} of head. {FRICTION} "
            "What head does it make with the impeller trimmed to {new_diameter}?",
            scene=TRIMMED,
        ),
        Level(
            ("head", "flow", "new_flow"),
            f"{{place}} moves {{flow}} at {{head}} of head. {FRICTION} Its speed is changed until it "
            "moves {new_flow}. What head does it make then?",
        ),
    ),
    CHAPTER.numeric(
        "new_shaft_power",
        "SB",
        "Power at another speed or diameter",
        "new_shaft_power",
        SLOWED,
        Level(
            ("brake_power", "pump_speed", "new_speed"),
            f"{TURNS} and {TAKES}. {FRICTION} What is the {{brake_power:full}} at {{new_speed}}?",
        ),
        Level(
            ("brake_power", "impeller_diameter", "new_diameter"),
            f"{TRIM} and {TAKES}. {FRICTION} "
            "What is the {brake_power:full} with the impeller trimmed to {new_diameter}?",
            scene=TRIMMED,
        ),
        Level(
            ("brake_power", "flow", "new_flow"),
            f"{{place}} moves {{flow}} and {TAKES}. {FRICTION} Its speed is changed until it moves "
            "{new_flow}. What is the {brake_power:full} then?",
        ),
    ),
    CHAPTER.numeric(
        "new_speed",
        "SN",
        "The speed for a flow, a head or a power",
        "new_speed",
        SLOWED,
        Level(
            ("pump_speed", "flow", "new_flow"),
            f"{TURNS} and moves {{flow}}. {FRICTION} At what speed does it move {{new_flow}}?",
        ),
        Level(
            ("pump_speed", "head", "new_head"),
            f"{TURNS} and makes {{head}} of head. {FRICTION} "
            "At what speed does it make {new_head}?",
        ),
        Level(
            ("pump_speed", "brake_power", "new_shaft_power"),
            f"{TURNS} and {TAKES}. {FRICTION} "
            "At what speed does the shaft take {new_shaft_power}?",
        ),
    ),
    CHAPTER.numeric(
        "new_diameter",
        "SI",
        "The trim for a flow or a head",
        "new_diameter",
        TRIMMED,
        Level(
            ("impeller_diameter", "flow", "new_flow"),
            f"{TRIM} and moves {{flow}}. {FRICTION} What impeller diameter moves {{new_flow}}?",
        ),
        Level(
            ("impeller_diameter", "head", "new_head"),
            f"{TRIM} and makes {{head}} of head. {FRICTION} "
            "What impeller diameter makes {new_head}?",
        ),
    ),
)

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

CURVE = "{place} has a shutoff head of {shutoff_head} and makes {rated_head} at {rated_flow}. "

AT_RATED = (
    "The static head is {static_head}, and friction loss is {rated_friction} at {rated_flow}. "
)

AT_KNOWN = (
    "It pumps from elevation {suction_elevation} to {discharge_elevation}, and friction loss is "
    "{known_friction} at {known_flow}. "
)

LEVELS = ("suction_elevation", "discharge_elevation", "known_friction", "known_flow")

DUTY_POINTS = (
    CHAPTER.numeric(
        "operating_flow",
        "SO",
        "The flow where the curves cross",
        "flow",
        CROSSING,
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{CURVE}{AT_RATED}{SQUARES} What flow does it move?",
        ),
        Level(
            (*PUMP, *LEVELS),
            f"{CURVE}{AT_KNOWN}{SQUARES} What flow does it move?",
        ),
    ),
    CHAPTER.numeric(
        "operating_head",
        "SC",
        "The head where the curves cross",
        "head",
        CROSSING,
        Level(
            ("static_head", "rated_friction", "rated_flow", "flow"),
            "{place} works against a static head of {static_head}. Friction loss is {rated_friction} "
            "at {rated_flow} and changes with the square of the flow. The pump moves {flow}. "
            "What is the total dynamic head (TDH)?",
        ),
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{CURVE}{AT_RATED}{SQUARES} What head does it run at?",
        ),
    ),
    CHAPTER.numeric(
        "parallel_flow",
        "SQ",
        "Two pumps on one main",
        "parallel_flow",
        CROSSING,
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{TWINS}{SQUARES} What flow do the two move together?",
            table=(*PUMP, "static_head", "rated_friction"),
        ),
        Level(
            (*PUMP, *LEVELS),
            f"{TWINS}{SQUARES} What flow do the two move together?",
            table=(*PUMP, *LEVELS),
        ),
    ),
    CHAPTER.numeric(
        "second_pump",
        "SR",
        "The flow that a second pump adds",
        "added_flow",
        CROSSING,
        Level(
            ("flow", "parallel_flow"),
            "{place} moves {flow} alone. With a second pump just like it on the same main, the two "
            "move {parallel_flow} together. What flow does the second pump add?",
        ),
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{TWINS}{SQUARES} What flow does the second pump add?",
            table=(*PUMP, "static_head", "rated_friction"),
        ),
    ),
)

ASKED = (
    "US units use rpm, gpm and feet; metric uses rpm, m³/s and meters. What is its specific speed?"
)

SPECIFIC = CHAPTER.numeric(
    "specific_speed",
    "SS",
    "Specific speed",
    "specific_speed",
    PUMP_AT_BEST,
    Level(
        ("pump_speed", "flow", "head"),
        f"{BEST} {{flow}} against {{head}} of head at {{pump_speed}}. It has one stage. {ASKED}",
    ),
    Level(
        ("pump_speed", "flow", "head", "stages"),
        f"{BEST} {{flow}} against {{head}} of head at {{pump_speed}}. It has {{stages}} stages. {ASKED}",
        scene=STAGES,
    ),
    Level(
        ("pump_speed", "flow", "pressure"),
        f"{BEST} {{flow}} at {{pump_speed}}, and the gauges show a pressure rise of {{pressure}}. "
        f"It has one stage. {ASKED}",
        scene=TWO_GAUGES,
    ),
)

SPEED = (*LAWS, *SLOWING, CUBE_LAW, *DUTY_POINTS, TWO_PUMPS, DUTY_CHANGE, SPECIFIC, IMPELLER_TYPE)

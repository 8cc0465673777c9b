"""Speed and impeller by numbers: the affinity laws.

Slowing down is in `problems_slowing.py`, curves that cross in `problems_curves.py`, what is to be judged in
`judgments*.py`. `SPEED` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level

from .judgments import CUBE_LAW, IMPELLER_TYPE, TWO_PUMPS
from .judgments_duty import DUTY_CHANGE
from .problems_curves import DUTY_POINTS, SPECIFIC
from .problems_slowing import SLOWING
from .stations import CHAPTER, DRIVEN, FRICTION, SLOWED, TRIMMED

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

SPEED = (*LAWS, *SLOWING, CUBE_LAW, *DUTY_POINTS, TWO_PUMPS, DUTY_CHANGE, SPECIFIC, IMPELLER_TYPE)

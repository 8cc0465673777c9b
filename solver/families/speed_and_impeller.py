"""Speed and impeller: the affinity laws, both ways.

Slowing down is in slowing.py, curves that cross in duty_points.py, the shape of the impeller in
impeller.py, judgements in judged_speed.py.
`SPEED` has the whole chapter, in the order of teaching.
"""

from ..family import Level
from .duty_points import DUTY_POINTS
from .impeller import IMPELLER
from .judged_speed import CUBE_LAW, DUTY_CHANGE, TWO_PUMPS
from .scenes_speed import other_speed, slower, trimmed
from .slowing import SLOWING
from .speed_family import FRICTION, without_lift

__all__ = ["SPEED"]

TURNS = "{place} turns at {pump_speed}"
TRIM = "{place} has an impeller of {impeller_diameter}"

LAWS = (
    without_lift(
        "new_flow",
        "SF",
        "Flow at another speed or diameter",
        "new_flow",
        other_speed,
        Level(
            ("flow", "pump_speed", "new_speed"),
            f"{TURNS} and moves {{flow}}. {FRICTION} What flow does it move at {{new_speed}}?",
        ),
        Level(
            ("flow", "speed_cut"),
            f"{{place}} moves {{flow}}. {FRICTION} Its drive slows it by {{speed_cut}}. "
            "What flow does it move then?",
            scene=slower,
        ),
        Level(
            ("flow", "impeller_diameter", "new_diameter"),
            f"{TRIM} and moves {{flow}}. {FRICTION} "
            "What flow does it move with an impeller of {new_diameter}?",
            scene=trimmed,
        ),
    ),
    without_lift(
        "new_head",
        "SD",
        "Head at another speed or diameter",
        "new_head",
        other_speed,
        Level(
            ("head", "pump_speed", "new_speed"),
            f"{TURNS} against {{head}} of head. {FRICTION} What head has it at {{new_speed}}?",
        ),
        Level(
            ("head", "impeller_diameter", "new_diameter"),
            f"{TRIM} and gives {{head}} of head. {FRICTION} "
            "What head does it give with an impeller of {new_diameter}?",
            scene=trimmed,
        ),
        Level(
            ("head", "flow", "new_flow"),
            f"{{place}} moves {{flow}} against {{head}} of head. {FRICTION} Its speed is changed "
            "until it moves {new_flow}. What head has it then?",
        ),
    ),
    without_lift(
        "new_shaft_power",
        "SB",
        "Brake power at another speed or diameter",
        "new_shaft_power",
        other_speed,
        Level(
            ("brake_power", "pump_speed", "new_speed"),
            f"{TURNS} and its shaft takes {{brake_power}}. {FRICTION} "
            "What does the shaft take at {new_speed}?",
        ),
        Level(
            ("brake_power", "impeller_diameter", "new_diameter"),
            f"{TRIM} and its shaft takes {{brake_power}}. {FRICTION} "
            "What does the shaft take with an impeller of {new_diameter}?",
            scene=trimmed,
        ),
        Level(
            ("brake_power", "flow", "new_flow"),
            f"{{place}} moves {{flow}} and its shaft takes {{brake_power}}. {FRICTION} Its speed "
            "is changed until it moves {new_flow}. What does the shaft take then?",
        ),
    ),
    without_lift(
        "new_speed",
        "SN",
        "The speed for a flow, a head or a power",
        "new_speed",
        other_speed,
        Level(
            ("pump_speed", "flow", "new_flow"),
            f"{TURNS} and moves {{flow}}. {FRICTION} At what speed does it move {{new_flow}}?",
        ),
        Level(
            ("pump_speed", "head", "new_head"),
            f"{TURNS} against {{head}} of head. {FRICTION} At what speed has it {{new_head}}?",
        ),
        Level(
            ("pump_speed", "brake_power", "new_shaft_power"),
            f"{TURNS} and its shaft takes {{brake_power}}. {FRICTION} "
            "At what speed does the shaft take {new_shaft_power}?",
        ),
    ),
    without_lift(
        "new_diameter",
        "SI",
        "The trim for a flow or a head",
        "new_diameter",
        trimmed,
        Level(
            ("impeller_diameter", "flow", "new_flow"),
            f"{TRIM} and moves {{flow}}. {FRICTION} What diameter moves {{new_flow}}?",
        ),
        Level(
            ("impeller_diameter", "head", "new_head"),
            f"{TRIM} and gives {{head}} of head. {FRICTION} What diameter gives {{new_head}}?",
        ),
    ),
)

SPEED = (*LAWS, *SLOWING, CUBE_LAW, *DUTY_POINTS, TWO_PUMPS, DUTY_CHANGE, *IMPELLER)

"""Speed and impeller: the affinity laws, both ways.

Slowing down is in slowing.py, curves that cross in duty_points.py, the shape of the impeller in
impeller.py, judgements in judged_speed.py.
`SPEED` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level

from .judged import CUBE_LAW, DUTY_CHANGE, TWO_PUMPS
from .kinds import FRICTION, without_lift
from .problems_duty import DUTY_POINTS
from .problems_impeller import IMPELLER
from .problems_slowing import SLOWING
from .scenes import other_speed, slower, trimmed

__all__ = ["SPEED"]

TURNS = "{place} runs at {pump_speed}"
TRIM = "{place} has an impeller diameter of {impeller_diameter}"
TAKES = "takes {brake_power} at the shaft"

LAWS = (
    without_lift(
        "new_flow",
        "SF",
        "Flow at another speed or diameter",
        "new_flow",
        other_speed,
        Level(
            ("flow", "pump_speed", "new_speed"),
            f"{TURNS} and moves {{flow}}. {FRICTION} What is its flow at {{new_speed}}?",
        ),
        Level(
            ("flow", "speed_cut"),
            f"{{place}} moves {{flow}}. {FRICTION} Its drive slows it down by {{speed_cut}}. "
            "What is its flow then?",
            scene=slower,
        ),
        Level(
            ("flow", "impeller_diameter", "new_diameter"),
            f"{TRIM} and moves {{flow}}. {FRICTION} "
            "What is its flow with the impeller trimmed to {new_diameter}?",
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
            f"{TURNS} and makes {{head}} of head. {FRICTION} What head does it make at {{new_speed}}?",
        ),
        Level(
            ("head", "impeller_diameter", "new_diameter"),
            f"{TRIM} and makes {{head}} of head. {FRICTION} "
            "What head does it make with the impeller trimmed to {new_diameter}?",
            scene=trimmed,
        ),
        Level(
            ("head", "flow", "new_flow"),
            f"{{place}} moves {{flow}} at {{head}} of head. {FRICTION} Its speed is changed until it "
            "moves {new_flow}. What head does it make then?",
        ),
    ),
    without_lift(
        "new_shaft_power",
        "SB",
        "Power at another speed or diameter",
        "new_shaft_power",
        other_speed,
        Level(
            ("brake_power", "pump_speed", "new_speed"),
            f"{TURNS} and {TAKES}. {FRICTION} What is the {{brake_power:full}} at {{new_speed}}?",
        ),
        Level(
            ("brake_power", "impeller_diameter", "new_diameter"),
            f"{TRIM} and {TAKES}. {FRICTION} "
            "What is the {brake_power:full} with the impeller trimmed to {new_diameter}?",
            scene=trimmed,
        ),
        Level(
            ("brake_power", "flow", "new_flow"),
            f"{{place}} moves {{flow}} and {TAKES}. {FRICTION} Its speed is changed until it moves "
            "{new_flow}. What is the {brake_power:full} then?",
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
            f"{TURNS} and makes {{head}} of head. {FRICTION} "
            "At what speed does it make {new_head}?",
        ),
        Level(
            ("pump_speed", "brake_power", "new_shaft_power"),
            f"{TURNS} and {TAKES}. {FRICTION} "
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
            f"{TRIM} and moves {{flow}}. {FRICTION} What impeller diameter moves {{new_flow}}?",
        ),
        Level(
            ("impeller_diameter", "head", "new_head"),
            f"{TRIM} and makes {{head}} of head. {FRICTION} "
            "What impeller diameter makes {new_head}?",
        ),
    ),
)

SPEED = (*LAWS, *SLOWING, CUBE_LAW, *DUTY_POINTS, TWO_PUMPS, DUTY_CHANGE, *IMPELLER)

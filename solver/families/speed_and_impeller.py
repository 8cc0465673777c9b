"""Speed and impeller: the affinity laws, both ways, and the impeller's shape.

Slowing down is in slowing.py, curves that cross in duty_points.py, judgements in judged_speed.py.
`SPEED` has the whole chapter, in the order of teaching.
"""

from ..draw import Draw
from ..family import Level
from .duty_points import DUTY_POINTS
from .judged_speed import CUBE_LAW, DUTY_CHANGE, IMPELLER_TYPE, TWO_PUMPS
from .scenes import noted, pump
from .scenes_speed import SPEEDS, other_speed, slower, trimmed
from .slowing import SLOWING
from .speed_family import FRICTION, numeric, without_lift

__all__ = ["SPEED"]

TURNS = "{place} turns at {pump_speed}"
IMPELLER = "{place} has an impeller of {impeller_diameter}"


def staged(draw: Draw, units: str) -> dict[str, float]:
    """A pump of one to eight stages at the speed of its motor."""
    machine = pump(draw, units)
    return machine | {
        "pump_speed": float(draw.pick(SPEEDS[units])),
        "stages": float(draw.pick((2, 3, 4, 5, 6, 8))),
        "head": noted(machine["head"]),
    }


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
            f"{IMPELLER} and moves {{flow}}. {FRICTION} "
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
            f"{IMPELLER} and gives {{head}} of head. {FRICTION} "
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
            f"{IMPELLER} and its shaft takes {{brake_power}}. {FRICTION} "
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
            f"{IMPELLER} and moves {{flow}}. {FRICTION} What diameter moves {{new_flow}}?",
        ),
        Level(
            ("impeller_diameter", "head", "new_head"),
            f"{IMPELLER} and gives {{head}} of head. {FRICTION} What diameter gives {{new_head}}?",
        ),
    ),
)

SHAPE = (
    numeric(
        "specific_speed",
        "SS",
        "Specific speed",
        "specific_speed",
        staged,
        Level(
            ("pump_speed", "flow", "head"),
            "At its best point, {place} moves {flow} against {head} of head at {pump_speed}. It "
            "has one stage. What is its specific speed (in US units rpm, gpm and ft; in metric "
            "rpm, m³/s and m)?",
        ),
        Level(
            ("pump_speed", "flow", "head", "stages"),
            "At its best point, {place} moves {flow} against {head} of head at {pump_speed}. It "
            "has {stages} stages. What is its specific speed (in US units rpm, gpm and ft; in "
            "metric rpm, m³/s and m)?",
        ),
        Level(
            ("pump_speed", "flow", "pressure"),
            "At its best point, {place} moves {flow} at {pump_speed}, and the gauges show a "
            "pressure rise of {pressure}. It has one stage. What is its specific speed (in US "
            "units rpm, gpm and ft; in metric rpm, m³/s and m)?",
        ),
    ),
    IMPELLER_TYPE,
)

SPEED = (*LAWS, *SLOWING, CUBE_LAW, *DUTY_POINTS, TWO_PUMPS, DUTY_CHANGE, *SHAPE)

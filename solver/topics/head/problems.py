"""Head: what a pump must overcome, from water levels, from its parts, from gauges.

Pipes and the suction side are in `problems_pipes.py` and `problems_suction.py`, what is to be judged in
`problems_judged.py` and `judged_suction.py`. `HEAD` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Family, Level

from .problems_judged import GAUGES_STORY, MISSING_PART, PARTS, VELOCITY_CHECK, WHICH_PIPE
from .problems_pipes import PIPES
from .problems_suction import SUCTION_SIDE
from .stations import (
    ALL_LOSSES,
    APART,
    BOOSTER,
    CHAPTER,
    FLOODED,
    LEVEL_GAUGES,
    LIFT_STATION,
    LIFTING,
    MAIN,
    MOSTLY_FRICTION,
    NOZZLE,
    PIPE,
    TWO_SIZES,
    VACUUM,
    WELL,
)

__all__ = ["HEAD"]

TDH = "What is the total dynamic head (TDH)?"
GAUGES = (
    "The gauges on {place} read {discharge_gauge} on the discharge and {suction_gauge} on the "
    "suction."
)
LEVEL = "They are at the same level, on pipes of the same size."
HEIGHTS = (
    "The discharge gauge is {discharge_gauge_height} above the pump, and the suction gauge is "
    "{suction_gauge_height} above it."
)

LEVELS = (
    CHAPTER.numeric(
        "static_head",
        "HS",
        "Static head from levels",
        "static_head",
        WELL,
        Level(
            ("discharge_elevation", "suction_elevation"),
            "At {station}, the water in the wet well is at an elevation of {suction_elevation}. "
            "The force main discharges at {discharge_elevation}. What is the static head?",
        ),
        Level(
            ("static_discharge_head", "suction_lift"),
            "{place} is {suction_lift} above the water in the wet well. It discharges at a point "
            "{static_discharge_head} above the pump. What is the static head?",
            scene=LIFTING,
        ),
        Level(
            ("static_discharge_head", "static_suction_head"),
            "The water in the wet well is {static_suction_head} above {place}. The pump discharges at "
            "a point {static_discharge_head} above itself. What is the static head?",
            scene=FLOODED,
        ),
    ),
)

TOTAL = (
    CHAPTER.numeric(
        "total_head",
        "HP",
        "Total dynamic head from its parts",
        "head",
        WELL,
        Level(
            ("static_head", "friction_head", "minor_loss"),
            f"{PARTS} {TDH}",
            scene=LIFT_STATION,
        ),
        Level(
            ("static_discharge_head", "suction_lift", "friction_head", "outlet_velocity"),
            "{place} is {suction_lift} above the water in the wet well and discharges "
            "{static_discharge_head} above itself. Friction loss is {friction_head}. The water "
            "leaves the pipe at {outlet_velocity}. What is the total dynamic head (TDH), with the "
            "velocity head at the outlet?",
            scene=NOZZLE,
        ),
        Level(
            ("static_head", "friction_head", "minor_loss", "delivery_pressure"),
            f"{PARTS} The pressure at the end of the pipe must be {{delivery_pressure}}. {TDH}",
            scene=BOOSTER,
        ),
        Level(
            (
                "discharge_elevation",
                "suction_elevation",
                "flow",
                "pipe_length",
                "pipe_diameter",
                "c_factor",
            ),
            "At {station}, the water in the wet well is at elevation {suction_elevation}. The force main "
            f"discharges at elevation {{discharge_elevation}}. The pump sends {{flow}} {PIPE} "
            "Using Hazen-Williams, what is the total dynamic head (TDH)?",
        ),
    ),
    CHAPTER.numeric(
        "power_for_head",
        "HW",
        "From static head and friction loss to power",
        "brake_power",
        ALL_LOSSES,
        Level(
            ("flow", "static_head", "friction_head", "pump_efficiency"),
            "{place} pumps {flow} against a static head of {static_head} and a friction loss of "
            "{friction_head}. The pump efficiency is {pump_efficiency}. "
            "What is the {brake_power:full}?",
        ),
        Level(
            (
                "flow",
                "static_head",
                "pipe_length",
                "pipe_diameter",
                "c_factor",
                "pump_efficiency",
            ),
            f"{MAIN} The static head is {{static_head}}, and the pump efficiency is "
            "{pump_efficiency}. Using Hazen-Williams, what is the {brake_power:full}?",
        ),
    ),
    CHAPTER.numeric(
        "friction_from_power",
        "HB",
        "From power back to friction loss",
        "friction_head",
        MOSTLY_FRICTION,
        Level(
            ("head", "static_head"),
            "{place} works against a total dynamic head (TDH) of {head}. The static head is "
            "{static_head}, and the rest is friction loss. How much is the friction loss?",
        ),
        Level(
            ("water_power", "flow", "static_head"),
            "{place} puts {water_power} into the water at {flow}. The static head is {static_head}, "
            "and the rest of the head is friction loss. How much is the friction loss?",
        ),
        Level(
            ("brake_power", "pump_efficiency", "flow", "static_head"),
            "{place} takes {brake_power} at the shaft, and its pump efficiency is {pump_efficiency}. "
            "It pumps {flow} against a static head of {static_head}. The rest of the head is "
            "friction loss. How much is the friction loss?",
        ),
    ),
)

FROM_GAUGES = (
    CHAPTER.numeric(
        "gauges_to_head",
        "HT",
        "Total dynamic head from two gauges",
        "head",
        LEVEL_GAUGES,
        Level(
            ("discharge_gauge", "suction_gauge"),
            f"{GAUGES} {LEVEL} {TDH}",
        ),
        Level(
            (
                "discharge_gauge",
                "suction_gauge",
                "discharge_gauge_height",
                "suction_gauge_height",
            ),
            f"{GAUGES} {HEIGHTS} The pipes are the same size. {TDH}",
            scene=APART,
        ),
        Level(
            ("discharge_gauge", "suction_vacuum"),
            "The gauges on {place} read {discharge_gauge} on the discharge and a vacuum of "
            f"{{suction_vacuum}} on the suction. {LEVEL} {TDH}",
            scene=VACUUM,
        ),
        Level(
            (
                "discharge_gauge",
                "suction_gauge",
                "discharge_velocity_head",
                "suction_velocity_head",
            ),
            f"{GAUGES} Both are level with the pump. The velocity head is {{discharge_velocity_head}} "
            f"in the discharge pipe and {{suction_velocity_head}} in the larger suction pipe. {TDH}",
            scene=TWO_SIZES,
        ),
    ),
    CHAPTER.numeric(
        "expected_gauge",
        "HG",
        "What the discharge gauge should read",
        "discharge_gauge",
        LEVEL_GAUGES,
        Level(
            ("head", "suction_gauge"),
            "By its curve, {place} should make {head} of head right now. The suction gauge reads "
            "{suction_gauge} and is level with the discharge gauge. "
            "What should the discharge gauge read?",
        ),
        Level(
            ("head", "suction_gauge", "discharge_gauge_height", "suction_gauge_height"),
            "By its curve, {place} should make {head} of head right now. The suction gauge reads "
            f"{{suction_gauge}}. {HEIGHTS} What should the discharge gauge read?",
            scene=APART,
        ),
    ),
)

HEAD: tuple[Family, ...] = (
    *LEVELS,
    *PIPES,
    VELOCITY_CHECK,
    WHICH_PIPE,
    *TOTAL,
    MISSING_PART,
    *FROM_GAUGES,
    GAUGES_STORY,
    *SUCTION_SIDE,
)

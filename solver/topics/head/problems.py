"""Head: what a pump must overcome, from water levels, from pipes, from gauges, and the suction side.

What is to be judged is in `problems_judged` and `judged_suction`. `HEAD` has the whole chapter, in the order of
teaching.
"""

from solver.engine.family import Family, Level

from .judged_suction import NPSH_CHECK, SUCTION_LIMIT
from .problems_judged import GAUGES_STORY, MISSING_PART, PARTS, VELOCITY_CHECK, WHICH_PIPE
from .stations import (
    ALL_LOSSES,
    APART,
    BOOSTER,
    CHAPTER,
    CLOGGED,
    FLOODED,
    FULL_BORE,
    LEVEL_GAUGES,
    LIFT_STATION,
    LIFTING,
    MOSTLY_FRICTION,
    NOZZLE,
    ON_FLOODED_PIPES,
    PART_CLOGGED,
    PUMP_LEVEL,
    TESTED_MAIN,
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
AIR = (
    "Barometric pressure is {atmospheric_head} of water, and the water's vapor pressure is "
    "{vapor_head}."
)
LOSS = "Friction loss in the suction pipe is {suction_loss}."
NPSHA = "What is the net positive suction head available (NPSHa)?"
NPSHR = "The pump's net positive suction head required (NPSHr) is {npsh_required}, and you want a margin of {npsh_margin}."

PIPE = (
    "through {pipe_length} of pipe. The inside diameter is {pipe_diameter}, and the C factor is "
    "{c_factor}."
)
MAIN = f"{{place}} pumps {{flow}} {PIPE}"

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

PIPES = (
    CHAPTER.numeric(
        "velocity",
        "HY",
        "Velocity in a pipe",
        "velocity",
        WELL,
        Level(
            ("flow", "pipe_diameter"),
            "{place} pumps {flow} through a pipe with an inside diameter of {pipe_diameter}. "
            "What is the velocity in the pipe?",
        ),
        Level(
            ("daily_flow", "pipe_diameter"),
            "The pumps at {station} send a steady {daily_flow} through a pipe with an inside diameter "
            "of {pipe_diameter}. What is the velocity in the pipe?",
        ),
    ),
    CHAPTER.numeric(
        "velocity_head",
        "HK",
        "Velocity head",
        "velocity_head",
        WELL,
        Level(
            ("velocity",),
            "Water moves through the force main of {station} at {velocity}. "
            "What is the velocity head?",
        ),
        Level(
            ("flow", "pipe_diameter"),
            "{place} pumps {flow} through a pipe with an inside diameter of {pipe_diameter}. "
            "What is the velocity head?",
        ),
    ),
    CHAPTER.numeric(
        "friction_head",
        "HF",
        "Friction loss in a pipe",
        "friction_head",
        WELL,
        Level(
            ("friction_rate", "pipe_length"),
            "For the flow of {place}, the friction table gives a loss of {friction_rate}. The force "
            "main is {pipe_length} long. What is the friction loss?",
        ),
        Level(
            ("flow", "pipe_length", "pipe_diameter", "c_factor"),
            f"{MAIN} Using Hazen-Williams, what is the friction loss?",
        ),
        Level(
            ("daily_flow", "pipe_length", "pipe_diameter", "c_factor"),
            f"The pumps at {{station}} send a steady {{daily_flow}} {PIPE} "
            "Using Hazen-Williams, what is the friction loss?",
        ),
    ),
    CHAPTER.numeric(
        "c_factor",
        "HC",
        "The C factor of a force main",
        "c_factor",
        TESTED_MAIN,
        Level(
            ("flow", "pipe_diameter", "friction_rate"),
            "A test on the force main of {place} finds a friction loss of {friction_rate} at {flow}. "
            "The inside diameter is {pipe_diameter}. Using Hazen-Williams, what is the C factor?",
        ),
        Level(
            ("flow", "pipe_diameter", "pipe_length", "friction_head"),
            "A test on the force main of {place} finds {friction_head} of friction loss over "
            "{pipe_length} of pipe. The flow is {flow}, and the inside diameter is {pipe_diameter}. "
            "Using Hazen-Williams, what is the C factor?",
        ),
    ),
    CHAPTER.numeric(
        "minor_loss",
        "HM",
        "Minor losses in fittings and valves",
        "minor_loss",
        WELL,
        Level(
            ("loss_coefficient", "velocity_head"),
            "The K values of the fittings and valves on {place} add up to {loss_coefficient}. "
            "The velocity head is {velocity_head}. What are the minor losses?",
        ),
        Level(
            ("loss_coefficient", "velocity"),
            "The K values of the fittings and valves on {place} add up to {loss_coefficient}. "
            "The water moves at {velocity}. What are the minor losses?",
        ),
        Level(
            (
                "elbows",
                "elbow_coefficient",
                "check_valve_coefficient",
                "gate_valve_coefficient",
                "outlet_coefficient",
                "velocity",
            ),
            "The pipe of {place} has {elbows} elbows with a K of {elbow_coefficient} each. The check "
            "valve has a K of {check_valve_coefficient}, the gate valve {gate_valve_coefficient} "
            "and the pipe outlet {outlet_coefficient}. The water moves at {velocity}. "
            "What are the minor losses?",
            scene=FULL_BORE,
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

SUCTION_SIDE = (
    CHAPTER.numeric(
        "dynamic_suction_lift",
        "HV",
        "Dynamic suction lift",
        "dynamic_suction_lift",
        PUMP_LEVEL,
        Level(
            ("suction_vacuum",),
            "The suction gauge on {place} reads a vacuum of {suction_vacuum}. "
            "What is the dynamic suction lift?",
        ),
        Level(
            ("suction_lift", "suction_loss"),
            "{place} is {suction_lift} above the water in the wet well. "
            f"{LOSS} What is the dynamic suction lift?",
            scene=PART_CLOGGED,
        ),
    ),
    CHAPTER.numeric(
        "suction_loss",
        "HU",
        "Losses in the suction pipe",
        "suction_loss",
        CLOGGED,
        Level(
            ("dynamic_suction_lift", "suction_lift"),
            "{place} is {suction_lift} above the water in the wet well. Its dynamic suction lift is "
            "{dynamic_suction_lift}. What are the losses in the suction pipe?",
        ),
        Level(
            ("suction_vacuum", "suction_lift"),
            "{place} is {suction_lift} above the water in the wet well. Its suction gauge reads a "
            "vacuum of {suction_vacuum}. What are the losses in the suction pipe?",
        ),
    ),
    SUCTION_LIMIT,
    CHAPTER.numeric(
        "npsh_available",
        "HN",
        "Net positive suction head available",
        "npsh_available",
        PUMP_LEVEL,
        Level(
            ("atmospheric_head", "vapor_head", "suction_lift", "suction_loss"),
            f"{AIR} The pump is {{suction_lift}} above the water. {LOSS} {NPSHA}",
        ),
        Level(
            ("atmospheric_head", "vapor_head", "static_suction_head", "suction_loss"),
            f"{AIR} The water is {{static_suction_head}} above the pump. {LOSS} {NPSHA}",
            scene=ON_FLOODED_PIPES,
        ),
        Level(
            ("atmospheric_head", "vapor_head", "suction_vacuum"),
            f"{AIR} The suction gauge on {{place}} reads a vacuum of {{suction_vacuum}}. {NPSHA}",
        ),
    ),
    CHAPTER.numeric(
        "greatest_lift",
        "HI",
        "How far a pump can be above its water",
        "greatest_lift",
        LIFTING,
        Level(
            ("atmospheric_head", "vapor_head", "suction_loss", "npsh_required", "npsh_margin"),
            f"{AIR} {LOSS} {NPSHR} How far above the water can the pump be?",
        ),
        Level(
            (
                "atmospheric_head",
                "vapor_head",
                "suction_lift",
                "dynamic_suction_lift",
                "npsh_required",
                "npsh_margin",
            ),
            f"{AIR} Today the pump is {{suction_lift}} above the water, with a dynamic suction lift of "
            f"{{dynamic_suction_lift}}. {NPSHR} How far above the water can the pump be?",
        ),
    ),
    NPSH_CHECK,
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

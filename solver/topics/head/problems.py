"""Head: what a pump must overcome, from water levels, from gauges and from pipes.

The families here are levels, gauges and the suction side; those of pipes and totals are in
problems_pipes.py, and those to be judged in problems_judged.py. `HEAD` has the whole chapter, in
the order of teaching.
"""

from solver.engine.family import Family, Level

from .problems_judged import (
    GAUGES_STORY,
    MISSING_PART,
    NPSH_CHECK,
    SUCTION_LIMIT,
    VELOCITY_CHECK,
    WHICH_PIPE,
)
from .problems_pipes import PIPES, TDH, TOTAL
from .scenes import CHAPTER, flooded, gauges, low_lift_gauges, station, suction

__all__ = ["HEAD"]

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

LEVELS = (
    CHAPTER.numeric(
        "static_head",
        "HS",
        "Static head from levels",
        "static_head",
        station,
        Level(
            ("discharge_elevation", "suction_elevation"),
            "At {station}, the water in the wet well is at an elevation of {suction_elevation}. "
            "The force main discharges at {discharge_elevation}. What is the static head?",
        ),
        Level(
            ("static_discharge_head", "suction_lift"),
            "{place} is {suction_lift} above the water in the wet well. It discharges at a point "
            "{static_discharge_head} above the pump. What is the static head?",
        ),
        Level(
            ("static_discharge_head", "static_suction_head"),
            "The water in the wet well is {static_suction_head} above {place}. The pump discharges at "
            "a point {static_discharge_head} above itself. What is the static head?",
            scene=flooded,
        ),
    ),
)

FROM_GAUGES = (
    CHAPTER.numeric(
        "gauges_to_head",
        "HT",
        "Total dynamic head from two gauges",
        "head",
        low_lift_gauges,
        Level(
            ("discharge_gauge", "suction_gauge"),
            f"{GAUGES} {LEVEL} {TDH}",
            scene=gauges(),
        ),
        Level(
            (
                "discharge_gauge",
                "suction_gauge",
                "discharge_gauge_height",
                "suction_gauge_height",
            ),
            f"{GAUGES} {HEIGHTS} The pipes are the same size. {TDH}",
        ),
        Level(
            ("discharge_gauge", "suction_vacuum"),
            "The gauges on {place} read {discharge_gauge} on the discharge and a vacuum of "
            f"{{suction_vacuum}} on the suction. {LEVEL} {TDH}",
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
            scene=gauges(20, 38),
        ),
    ),
    CHAPTER.numeric(
        "expected_gauge",
        "HG",
        "What the discharge gauge should read",
        "discharge_gauge",
        gauges(),
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
            scene=low_lift_gauges,
        ),
    ),
)

SUCTION_SIDE = (
    CHAPTER.numeric(
        "dynamic_suction_lift",
        "HV",
        "Dynamic suction lift",
        "dynamic_suction_lift",
        suction((2, 5)),
        Level(
            ("suction_vacuum",),
            "The suction gauge on {place} reads a vacuum of {suction_vacuum}. "
            "What is the dynamic suction lift?",
        ),
        Level(
            ("suction_lift", "suction_loss"),
            "{place} is {suction_lift} above the water in the wet well. "
            f"{LOSS} What is the dynamic suction lift?",
        ),
    ),
    CHAPTER.numeric(
        "suction_loss",
        "HU",
        "Losses in the suction pipe",
        "suction_loss",
        suction((3.5, 8)),
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
        suction(),
        Level(
            ("atmospheric_head", "vapor_head", "suction_lift", "suction_loss"),
            f"{AIR} The pump is {{suction_lift}} above the water. {LOSS} {NPSHA}",
        ),
        Level(
            ("atmospheric_head", "vapor_head", "static_suction_head", "suction_loss"),
            f"{AIR} The water is {{static_suction_head}} above the pump. {LOSS} {NPSHA}",
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
        suction(),
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

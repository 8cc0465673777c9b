"""Velocity in a main, suction lift and NPSH, each judged against its limits."""

from ..draw import Draw
from ..family import Judge, Level
from ..limits import Limits
from .against import Zone, against
from .head_family import judged
from .scenes_head import FOOT, force_main, only, suction, worked

__all__ = ["NPSH_CHECK", "SUCTION_LIMIT", "VELOCITY_CHECK"]


def by_system(us: Limits, si: Limits, *zones: Zone) -> Judge:
    """A judge whose limits are round numbers in each system."""
    judges = {"us": against(us, us.rule, *zones), "si": against(si, si.rule, *zones)}
    return lambda values, units, draw: judges[units](values, units, draw)


CLEANSING = "Ten States Standards (from memory): at least 2 ft/s or 0.6 m/s in a force main"
SPEED = "slower than {} lets solids settle; over {} is hard on pipe and valves (common practice)"


def at_any_speed(draw: Draw, units: str) -> dict[str, float]:
    """A main that may be far too wide for its flow, or far too narrow."""
    seen = force_main(draw, units)
    target = draw.between(*draw.pick(((0.9, 1.8), (2.3, 7), (8.6, 12)))) * FOOT[units]
    flow = worked({**only(seen, "pipe_diameter"), "velocity": target}, "flow", units)
    flow = float(f"{flow:.2g}")
    daily = float(f"{worked({'flow': flow}, 'daily_flow', units):.2g}")
    return seen | {"flow": flow, "daily_flow": daily}


VELOCITY_CHECK = judged(
    "velocity_check",
    "HQ",
    "Does the water in a main run too slowly or too fast",
    by_system(
        Limits("velocity", 2, 8, SPEED.format("2 ft/s", "8 ft/s"), CLEANSING),
        Limits("velocity", 0.6, 2.4, SPEED.format("0.6 m/s", "2.4 m/s"), CLEANSING),
        (
            "too_slow",
            "Too slowly: solids settle in the main",
            "What settles narrows the main, and turns septic. Look at the flow, or flush it.",
        ),
        (
            "as_usual",
            "As it should: fast enough to carry solids, and not too fast",
            "Solids are carried along, and friction stays moderate.",
        ),
        (
            "too_fast",
            "Too fast: it wears the pipe, and a stop hammers",
            "Friction is high, and a sudden stop sends a heavy surge through the main.",
        ),
    ),
    at_any_speed,
    Level(
        ("flow", "pipe_diameter"),
        "{place} sends {flow} through a force main of {pipe_diameter} inside diameter. "
        "How does the water run?",
        find=("velocity",),
    ),
    Level(
        ("daily_flow", "pipe_diameter"),
        "The pumps at {station} send {daily_flow} at all hours through a force main of {pipe_diameter} inside "
        "diameter. How does the water run?",
        find=("flow", "velocity"),
    ),
)

LIFT = (
    "at sea level: up to {} is common practice; about {} is the practical limit "
    "(Engineering ToolBox, suction head and altitude)"
)
TOOLBOX = "common practice; Engineering ToolBox, suction head and altitude"


def any_lift(draw: Draw, units: str) -> dict[str, float]:
    """A dynamic suction lift within the usual, over it, or over what is practical."""
    seen = suction()(draw, units)
    total = draw.between(*draw.pick(((8, 14.5), (15.5, 21.5), (22.5, 27)))) * FOOT[units]
    step = 0.5 if units == "us" else 1
    vacuum = worked({"dynamic_suction_lift": total}, "suction_vacuum", units)
    lift = round(total - seen["suction_loss"], 1)
    return seen | {"suction_vacuum": round(vacuum / step) * step, "suction_lift": lift}


SUCTION_LIMIT = judged(
    "suction_limit",
    "HL",
    "Is the suction lift too high",
    by_system(
        Limits("dynamic_suction_lift", 15, 22, LIFT.format("15 ft", "22 ft"), TOOLBOX),
        Limits("dynamic_suction_lift", 4.5, 6.7, LIFT.format("4.5 m", "6.7 m"), TOOLBOX),
        (
            "usual",
            "No: it is within common practice",
            "Most pumps manage that. The maker's NPSH still has the last word.",
        ),
        (
            "check",
            "It may be: work the NPSH before it runs",
            "Some pumps manage that, others cavitate. Compare NPSH available and required.",
        ),
        (
            "too_high",
            "Yes: over the practical limit at sea level",
            "It will lose its prime or cavitate. Stop it, and look for a blocked suction.",
        ),
    ),
    any_lift,
    Level(
        ("suction_lift", "suction_loss"),
        "At sea level {place} stands {suction_lift} above the water it draws. Its suction pipe "
        "takes {suction_loss}. Is the dynamic suction lift too high?",
        find=("dynamic_suction_lift",),
    ),
    Level(
        ("suction_vacuum",),
        "At sea level the suction gauge of {place} shows a vacuum of {suction_vacuum}. "
        "Is the dynamic suction lift too high?",
        find=("dynamic_suction_lift",),
    ),
)


def any_need(draw: Draw, units: str) -> dict[str, float]:
    """A pump that needs less than is usable, part of the margin, or more than there is."""
    seen = suction()(draw, units)
    known = only(seen, "atmospheric_head", "vapor_head", "suction_lift", "suction_loss")
    available = round(worked(known, "npsh_available", units), 2 if units == "si" else 1)
    usable = available - seen["npsh_margin"]
    low, high = draw.pick(
        (
            (0.6 * usable, 0.95 * usable),
            (1.05 * usable, 0.96 * available),
            (1.05 * available, 1.4 * available),
        )
    )
    needed = round(draw.between(low, high), 1)
    return seen | {"npsh_available": available, "npsh_required": needed}


NPSH_CHECK = judged(
    "npsh_check",
    "HJ",
    "Is there enough NPSH",
    against(
        Limits("npsh_required", "npsh_usable", "npsh_available"),
        "NPSH available must be over NPSH required, by the margin that is wanted",
        (
            "enough",
            "Yes: the margin is kept",
            "The pump gets what it needs, with the margin left for a bad day.",
        ),
        (
            "in_margin",
            "Only just: the margin is not kept",
            "A warm day, a low level or a foul strainer makes it cavitate. Keep the margin.",
        ),
        (
            "cavitates",
            "No: the pump cavitates",
            "Water boils in the impeller, with a noise like gravel. Stop it and mend the suction.",
        ),
    ),
    any_need,
    Level(
        ("npsh_available", "npsh_margin", "npsh_required"),
        "{place} has {npsh_available} of NPSH available. Its curve asks for {npsh_required}, and "
        "{npsh_margin} is wanted as a margin. Is there enough?",
        find=("npsh_usable",),
    ),
    Level(
        (
            "atmospheric_head",
            "vapor_head",
            "suction_lift",
            "suction_loss",
            "npsh_margin",
            "npsh_required",
        ),
        "The atmosphere holds up {atmospheric_head} of water, whose vapor head is {vapor_head}. "
        "{place} stands {suction_lift} above it, and the suction pipe takes {suction_loss}. Its "
        "curve asks for {npsh_required} of NPSH, and {npsh_margin} is wanted as a margin. "
        "Is there enough?",
        find=("npsh_available", "npsh_usable"),
    ),
)

"""Velocity in a main, suction lift and NPSH, each judged against its limits."""

from solver.engine.draw import Draw
from solver.engine.family import Judge, Level
from solver.topics.limits import Limits, Zone, against

from .kinds import judged
from .scenes import FOOT, force_main, only, suction, worked

__all__ = ["NPSH_CHECK", "SUCTION_LIMIT", "VELOCITY_CHECK"]


def by_system(us: Limits, si: Limits, *zones: Zone) -> Judge:
    """A judge whose limits are round numbers in each system."""
    judges = {"us": against(us, us.rule, *zones), "si": against(si, si.rule, *zones)}
    return lambda values, units, draw: judges[units](values, units, draw)


CLEANSING = (
    "Ten States Standards (from memory): at least 2 ft/s or 0.6 m/s in a force main; the upper limit "
    "is common practice, no source"
)
SPEED = "slower than {}, solids settle; faster than {} is hard on the pipe and valves"


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
    "Velocity in a force main: too slow or too fast",
    by_system(
        Limits("velocity", 2, 8, SPEED.format("2 ft/s", "8 ft/s"), CLEANSING),
        Limits("velocity", 0.6, 2.4, SPEED.format("0.6 m/s", "2.4 m/s"), CLEANSING),
        (
            "too_slow",
            "Too slow: solids will settle in the main",
            "Solids that settle narrow the main and turn septic. Check the flow, or flush the main.",
        ),
        (
            "as_usual",
            "About right: solids keep moving without undue wear",
            "It is fast enough to carry the solids, and friction stays moderate.",
        ),
        (
            "too_fast",
            "Too fast: hard on the pipe, with water hammer at a stop",
            "Friction is high, and a sudden stop sends a heavy surge through the main.",
        ),
    ),
    at_any_speed,
    Level(
        ("flow", "pipe_diameter"),
        "{place} pumps {flow} through a force main with an inside diameter of {pipe_diameter}. "
        "What would you conclude about the velocity?",
        find=("velocity",),
    ),
    Level(
        ("daily_flow", "pipe_diameter"),
        "The pumps at {station} send a steady {daily_flow} through a force main with an inside diameter "
        "of {pipe_diameter}. What would you conclude about the velocity?",
        find=("flow", "velocity"),
    ),
)

LIFT = "at sea level, up to {} is usual, and about {} is the practical limit"
PRACTICE = "common practice, no source; a pump's own required NPSH decides"


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
        Limits("dynamic_suction_lift", 15, 22, LIFT.format("15 ft", "22 ft"), PRACTICE),
        Limits("dynamic_suction_lift", 4.5, 6.7, LIFT.format("4.5 m", "6.7 m"), PRACTICE),
        (
            "usual",
            "No: it is within the usual limit",
            "Most pumps can handle that. The NPSHr on the pump's curve still decides.",
        ),
        (
            "check",
            "Maybe: work out the NPSH before you run it",
            "Some pumps can handle that, and others cavitate. Compare NPSHa with NPSHr.",
        ),
        (
            "too_high",
            "Yes: it is over the practical limit at sea level",
            "The pump will lose its prime or cavitate. Stop it. It is too high above its water, or the "
            "suction is partly blocked.",
        ),
    ),
    any_lift,
    Level(
        ("suction_lift", "suction_loss"),
        "At sea level, {place} is {suction_lift} above the water in the wet well. Friction loss in the "
        "suction pipe is {suction_loss}. Is the dynamic suction lift too high?",
        find=("dynamic_suction_lift",),
    ),
    Level(
        ("suction_vacuum",),
        "At sea level, the suction gauge on {place} reads a vacuum of {suction_vacuum}. "
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
    "Is there enough NPSH for the pump",
    against(
        Limits("npsh_required", "npsh_usable", "npsh_available"),
        "NPSHa must be above NPSHr by the margin you want",
        (
            "enough",
            "Yes: the full margin is there",
            "The pump gets what it needs, with the margin left for a bad day.",
        ),
        (
            "in_margin",
            "Barely: it cuts into the margin",
            "A warm day, a low level or a dirty strainer would make it cavitate. Get the margin back.",
        ),
        (
            "cavitates",
            "No: the pump will cavitate",
            "The water boils in the impeller, and the pump sounds as if it were full of gravel. Stop "
            "the pump and fix the suction.",
        ),
    ),
    any_need,
    Level(
        ("npsh_available", "npsh_margin", "npsh_required"),
        "{place} has a net positive suction head available (NPSHa) of {npsh_available}. Its "
        "curve calls for an NPSHr of {npsh_required}, and you want a margin of {npsh_margin}. Is there enough?",
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
        "Barometric pressure is {atmospheric_head} of water, and vapor pressure is {vapor_head}. "
        "{place} is {suction_lift} above the water, and the suction pipe loses {suction_loss}. Its "
        "curve calls for an NPSHr of {npsh_required}, and you want a margin of {npsh_margin}. "
        "Is there enough NPSH?",
        find=("npsh_available", "npsh_usable"),
    ),
)

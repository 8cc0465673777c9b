"""What is to be judged about head: velocity, pipes, totals, gauges, suction lift and NPSH.

Each limit is said with its source; judgments.py has how the others are judged.
"""

from solver.engine.family import Judge, Level
from solver.topics.limits import Limits, Zone, against

from .judgments import judge_cause, judge_missing, judge_pair, judge_pipe, story
from .scenes import CHAPTER, any_lift, any_need, at_any_speed, left_out_of, old_or_new

__all__ = [
    "GAUGES_STORY",
    "MISSING_PART",
    "NPSH_CHECK",
    "PARTS",
    "SUCTION_LIMIT",
    "VELOCITY_CHECK",
    "WHICH_PIPE",
]

PARTS = (
    "{place} works against a static head of {static_head}. Friction loss in the pipe is "
    "{friction_head}, and minor losses are {minor_loss}."
)


def by_system(us: Limits, si: Limits, *zones: Zone) -> Judge:
    """A judge whose limits are round numbers in each system."""
    judges = {"us": against(us, us.rule, *zones), "si": against(si, si.rule, *zones)}
    return lambda values, units, draw: judges[units](values, units, draw)


CLEANSING = (
    "Ten States Standards (from memory): at least 2 ft/s or 0.6 m/s in a force main; the upper limit "
    "is common practice, no source"
)
SPEED = "slower than {}, solids settle; faster than {} is hard on the pipe and valves"

VELOCITY_CHECK = CHAPTER.judged(
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

WHICH_PIPE = CHAPTER.judged(
    "which_pipe",
    "HE",
    "Which kind of pipe has this C factor",
    judge_pipe,
    old_or_new,
    Level(
        ("flow", "pipe_diameter", "friction_rate"),
        "A test on the force main of {place} finds a friction loss of {friction_rate} at {flow}. The "
        "inside diameter is {pipe_diameter}. Going by Hazen-Williams, what kind of pipe is it most "
        "likely to be?",
        find=("c_factor",),
    ),
    Level(
        ("flow", "pipe_diameter", "pipe_length", "friction_head"),
        "A test on the force main of {place} finds {friction_head} of friction loss over "
        "{pipe_length} of pipe. The flow is {flow}, and the inside diameter is {pipe_diameter}. Going by "
        "Hazen-Williams, what kind of pipe is it most likely to be?",
        find=("friction_rate", "c_factor"),
    ),
)

THREE = ("static_head", "friction_head", "minor_loss")
FOUR = ("static_head", "friction_head", "delivery_head")

MISSING_PART = CHAPTER.judged(
    "missing_part",
    "HX",
    "Which part of the head was left out",
    judge_missing(*THREE),
    left_out_of(*THREE),
    Level(
        (*THREE, "head"),
        f"{PARTS} {{person}} wrote down a total dynamic head (TDH) of {{head}}. What was left out?",
    ),
    Level(
        ("static_head", "friction_head", "delivery_pressure", "head"),
        "{place} works against a static head of {static_head}. Friction loss is {friction_head}, and "
        "the pressure at the end of the pipe must be {delivery_pressure}. {person} wrote down a "
        "total dynamic head (TDH) of {head}. What was left out?",
        find=("delivery_head",),
        scene=left_out_of(*FOUR),
        judge=judge_missing(*FOUR),
    ),
)

GAUGES_STORY = CHAPTER.judged(
    "gauges_story",
    "HO",
    "What two gauges tell you",
    judge_cause,
    story,
    Level(
        ("discharge_gauge", "suction_gauge", "discharge_gauge_now", "suction_gauge_now"),
        "The gauges on {place} usually read {discharge_gauge} on the discharge and {suction_gauge} on "
        "the suction. Today they read {discharge_gauge_now} and {suction_gauge_now}. "
        "What would you conclude?",
        find=("pressure", "pressure_now"),
    ),
    Level(
        ("discharge_gauge", "suction_gauge"),
        "The gauges on {place} usually read {discharge_gauge} on the discharge and {suction_gauge} on "
        "the suction. {asks}",
        judge=judge_pair,
    ),
)

LIFT = "at sea level, up to {} is usual, and about {} is the practical limit"
PRACTICE = "common practice, no source; a pump's own required NPSH decides"

SUCTION_LIMIT = CHAPTER.judged(
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

NPSH_CHECK = CHAPTER.judged(
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

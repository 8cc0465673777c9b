"""What is to be judged about head: velocity, pipes, totals, gauges. `judged_suction` has the suction side.

Each limit is said with its source; `judgments` and `judgments_gauges` have how the others are judged.
"""

from dataclasses import replace

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.errors import NotSolvable
from solver.station.main import SIZES
from solver.station.need import Need
from solver.station.scene import Readings
from solver.station.station import Station
from solver.topics.zones import Limits

from .judged_suction import by_system
from .judgments import judge_missing, judge_pipe, left_out_of
from .judgments_gauges import judge_cause, judge_pair, story
from .stations import CHAPTER, TESTED_MAIN, one_level_pressed

__all__ = ["GAUGES_STORY", "MISSING_PART", "PARTS", "VELOCITY_CHECK", "WHICH_PIPE"]

PARTS = (
    "{place} works against a static head of {static_head}. Friction loss in the pipe is "
    "{friction_head}, and minor losses are {minor_loss}."
)


CLEANSING = (
    "Ten States Standards (from memory): at least 2 ft/s or 0.6 m/s in a force main; the upper limit "
    "is common practice, no source"
)
SPEED = "slower than {}, solids settle; faster than {} is hard on the pipe and valves"

VELOCITIES = ((0.9, 1.85), (2.2, 7.5), (8.5, 12))  # ft/s: too slow, about right, too fast


def resized(station: Station, draw: Draw) -> Station:
    """The same flow through a main too wide for it, about right, or too narrow.

    It is as much shorter as it is narrower, so that its friction stays what it was.
    """
    low, high = draw.pick(VELOCITIES)
    system, main, flow = station.system, station.main, station.rated[0]
    fitting = [
        size
        for size in SIZES[system.name]
        if low <= system.feet * system.velocity * flow / size**2 <= high
    ]
    if not fitting:
        raise NotSolvable("no size of pipe gives this velocity")
    other = replace(main, diameter=draw.pick(fitting))
    length = main.length * main.friction_rate(flow) / other.friction_rate(flow)
    return replace(station, main=replace(other, length=length))


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
    Readings(Need(well=True), resized),
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
    TESTED_MAIN,
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
    Readings(Need(kinds=("lift",), part=(35, 75), fittings=4.5), notes=left_out_of(*THREE)),
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
        scene=Readings(Need(kinds=("booster",)), notes=left_out_of(*FOUR)),
        judge=judge_missing(*FOUR),
    ),
)

GAUGES_STORY = CHAPTER.judged(
    "gauges_story",
    "HO",
    "What two gauges tell you",
    judge_cause,
    Readings(Need(kinds=("flooded",)), story),
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
        scene=Readings(Need(kinds=("flooded",)), one_level_pressed),
        judge=judge_pair,
    ),
)

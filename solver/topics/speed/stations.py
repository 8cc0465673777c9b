"""What the problems share: the stations they read, and what their questions say.

The laws of affinity are asked where all head is friction. Where water is lifted it ends free, so that static
head is all that stays at any flow. In a problem with curves the rated point is the pump's best one, as its
curve has it, and the pump runs a little to one side of it.
"""

from dataclasses import replace

from solver.engine.draw import Draw
from solver.errors import NotSolvable
from solver.station.main import SIZES
from solver.station.need import Need
from solver.station.scene import OneOf, Readings
from solver.station.site import round_flow
from solver.station.station import Station
from solver.topics.chapter import Chapter
from solver.topics.formulas import COST, HEAD, POWER, SPEED_AND_IMPELLER, WET_WELL
from solver.topics.readings import by

__all__ = [
    "BEST",
    "CHAPTER",
    "CROSSING",
    "CUBE_OR_NOT",
    "DRIVEN",
    "FRICTION",
    "LIFTS",
    "PUMP",
    "PUMP_AT_BEST",
    "SAVING",
    "SAVING_LIFTED",
    "SHAPES_OF",
    "SLOWED",
    "SQUARES",
    "STAGES",
    "TRIMMED",
    "TWINS",
    "TWO_GAUGES",
    "TWO_ON_ONE",
    "worked",
]

CHAPTER = Chapter("speed", (*SPEED_AND_IMPELLER, *HEAD, *POWER, *COST, *WET_WELL))
worked = by(CHAPTER.formulas)
BEST = "At its best efficiency point, {place} moves"
FRICTION = "All of its head is friction."
PUMP = ("shutoff_head", "rated_head", "rated_flow")
SQUARES = "Treat both curves as changing with the square of the flow."
TWINS = (
    "A second pump just like {place} runs with it on the same main. The table shows what one pump "
    "does alone, and the head that the main needs. "
)

FREE = ("lift", "flooded", "above", "low_lift")  # kinds whose main ends in the open
RADIAL = ("lift", "flooded", "above")
SLOWED = Readings(Need(static=False, change="speed"))
TRIMMED = Readings(Need(static=False, change="trim"))
DRIVEN = Readings(Need(static=False, drives=("variable",), change="speed"))
SAVING = Readings(Need(static=False, drives=("variable",), change="speed", sizes=(7.5, 500)))
SAVING_LIFTED = Readings(
    Need(kinds=FREE, drives=("variable",), change="speed", part=(25, 70), sizes=(7.5, 500))
)
LIFTS = Readings(Need(kinds=FREE))


def rated_at_best(station: Station, draw: Draw) -> Station:
    """Rated at the best point of its curve, to a round flow."""
    pump = station.pump
    flow = round_flow(pump.flow, station.system)
    return replace(station, rated=(flow, pump.head_at(flow, station.running.speed)))


CROSSING = Readings(Need(kinds=FREE, part=(20, 75)), rated_at_best)


def at_best(station: Station, draw: Draw) -> Station:
    """Running right at its best point."""
    flow, head = station.rated
    return replace(station, pump=replace(station.pump, flow=flow, head=head))


PUMP_AT_BEST = Readings(Need(stages=False), at_best)
TWO_GAUGES = Readings(Need(stages=False, level_gauges=True), at_best)
STAGES = Readings(Need(stages=True), at_best)


def shaped(*specific: tuple[float, float]) -> OneOf:
    """Pumps at their best point, of US specific speeds in one of these ranges."""
    return OneOf(tuple(Readings(Need(stages=False, specific=span), at_best) for span in specific))


SHAPES_OF = shaped((500, 3700), (4400, 8200), (9800, 11_500))  # radial, mixed flow, axial

RISE = (0.015, 0.04)  # of the head: hardly any static head
STEPS = {"us": (0.5, 1), "si": (0.05, 3)}  # ft | m, and how many at least


def hardly_lifting(station: Station, draw: Draw) -> Station:
    """Where all head was friction, the water now ends a little higher than where it comes from."""
    step, least = STEPS[station.system.name]
    steps = max(least, round(station.running.head * draw.between(*RISE) / step))
    lifted = round(step * steps, 2)
    return replace(station, main=replace(station.main, static=lifted))


# To be slowed: with hardly any static head, with some, or with too much to lift at that speed.
CUBE_OR_NOT = OneOf(
    (
        Readings(Need(static=False, change="speed"), hardly_lifting),
        Readings(Need(kinds=FREE, change="speed", part=(14, 50))),
        Readings(Need(kinds=RADIAL, change="stall", part=(60, 95))),
    )
)


def main_for_two(station: Station, draw: Draw) -> Station:
    """On a main that was sized for more than one pump: two sizes larger."""
    every = SIZES[station.system.name]
    place = every.index(station.main.diameter) + 2
    if place >= len(every):
        raise NotSolvable("no larger pipe is made")
    main = replace(station.main, diameter=every[place])
    return rated_at_best(replace(station, main=main), draw)


# A second pump hardly helps, helps some, or nearly doubles the flow.
TWO_ON_ONE = OneOf(
    (
        Readings(Need(kinds=RADIAL, part=(8, 38)), rated_at_best),
        Readings(Need(kinds=FREE, part=(62, 88)), rated_at_best),
        Readings(Need(kinds=FREE, part=(84, 97)), main_for_two),
    )
)

"""What stations the chapter reads its problems off, and the words that its questions share."""

from dataclasses import replace

from solver.engine.draw import Draw
from solver.errors import NotSolvable
from solver.station.need import Need
from solver.station.scene import Change, Readings
from solver.station.station import Station
from solver.topics.chapter import Chapter
from solver.topics.formulas import SPEED_AND_IMPELLER, WET_WELL
from solver.topics.readings import by

__all__ = [
    "ALONE",
    "ALONE_CORNERS",
    "ALONE_ROUND",
    "CHAPTER",
    "CORNERS",
    "FALLS",
    "LEAKING",
    "LOSES",
    "NIGHT",
    "PER_DEPTH",
    "ROUND",
    "ROUND_WELL",
    "TURNS",
    "TWO_PUMPS",
    "WELL",
    "night",
    "well_with",
    "worked",
]

CHAPTER = Chapter("wet_well", (*WET_WELL, *SPEED_AND_IMPELLER))
worked = by(CHAPTER.formulas)
ROUND = "The wet well of {station} is round and {well_diameter} across inside."
PER_DEPTH = "The wet well of {station} holds {volume_per_depth} of depth."
FALLS = "With one pump running, it takes {drawdown_time} for the level to drop {drawdown_read}."
LOSES = "While {place} runs, the falling level shows that the wet well loses {drawdown_rate}."
TURNS = "The {alternating_pumps} pumps at {station} alternate."

WELL = Readings(Need(well=True))
ROUND_WELL = Readings(Need(round_well=True))
CORNERS = Readings(Need(round_well=False))
ALONE = Readings(Need(pumps=1))
ALONE_ROUND = Readings(Need(pumps=1, round_well=True))
ALONE_CORNERS = Readings(Need(pumps=1, round_well=False))
TWO_PUMPS = Readings(Need(pumps=2))  # for which EI 11C201 halves the volume
NIGHT = (0.03, 0.09)  # of what a pump moves: what comes in when most people sleep


def well_with(station: Station, inflow: float) -> Station:
    """The station while so much comes in (gpm | L/s)."""
    if station.well is None:
        raise NotSolvable("it has no wet well")
    return replace(station, well=replace(station.well, inflow=inflow))


def night(*shares: tuple[float, float]) -> Change:
    """At night, when one of these shares of the rise is what leaks back through a check valve (percent)."""

    def change(station: Station, draw: Draw) -> Station:
        inflow = station.rated[0] * draw.between(*NIGHT)
        share = draw.between(*draw.pick(shares)) / 100
        back = inflow * share / (1 - share)
        main = replace(station.main, passing=back / station.static**0.5)
        return replace(well_with(station, inflow), main=main)

    return change


# A small leak beside a large inflow would drown in the rounding of the steps.
LEAKING = Readings(Need(well=True), night((45, 88)))

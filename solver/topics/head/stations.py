"""What stations the chapter reads its problems off, and the words that its questions share.

Their gauges, losses and suction are as each question has them.
"""

from collections.abc import Mapping
from dataclasses import replace

from solver.engine.draw import Draw
from solver.errors import NotSolvable
from solver.station.instruments import noted
from solver.station.main import SIZES
from solver.station.need import Need
from solver.station.scene import Change, Readings, station_in
from solver.station.station import Station
from solver.station.suction import Gauges, Suction
from solver.topics.chapter import Chapter
from solver.topics.formulas import HEAD, POWER
from solver.topics.readings import by
from solver.topics.tables import named_rows

__all__ = [
    "ALL_LOSSES",
    "APART",
    "BOOSTER",
    "CHAPTER",
    "CLOGGED",
    "FLOODED",
    "FULL_BORE",
    "LEVEL_GAUGES",
    "LIFTING",
    "LIFT_STATION",
    "MAIN",
    "MOSTLY_FRICTION",
    "NOZZLE",
    "ON_FLOODED_PIPES",
    "PART_CLOGGED",
    "PIPE",
    "PUMP_LEVEL",
    "TESTED_MAIN",
    "TWO_SIZES",
    "VACUUM",
    "WELL",
    "all_losses",
    "at_the_pump",
    "clog",
    "one_level_pressed",
    "suction_of",
    "worked",
]

CHAPTER = Chapter("head", (*POWER, *HEAD))
PIPE = (
    "through {pipe_length} of pipe. The inside diameter is {pipe_diameter}, and the C factor is "
    "{c_factor}."
)
MAIN = f"{{place}} pumps {{flow}} {PIPE}"
worked = by(CHAPTER.formulas)
FLOODED_KINDS = ("flooded", "booster", "recirculation")


def any_pipe(station: Station, draw: Draw) -> Station:
    """The same station with a main of one of the table's pipes, new or aged."""
    low, high = draw.pick(list(named_rows("c_factors").values()))
    return replace(station, main=replace(station.main, c_factor=draw.between(low, high)))


def suction_of(station: Station) -> Suction:
    """Its suction pipe; NotSolvable where the pump is in its water."""
    if station.suction is None:
        raise NotSolvable("its pump is in the water")
    return station.suction


def all_losses(values: Mapping[str, float], draw: Draw) -> Mapping[str, float]:
    """The friction loss noted with fittings and suction pipe in it, as the question tells of no other loss."""
    station = station_in(values)
    now = station.running
    lost = now.head - station.static - station.main.outlet_head(now.flow)
    return {"friction_head": noted("friction_head", lost, station.system.name)}


def both_pipes(values: Mapping[str, float], draw: Draw) -> Mapping[str, float]:
    """Friction and minor losses noted with those of the suction pipe in them."""
    station = station_in(values)
    suction, flow, units = suction_of(station), station.running.pumped, station.system.name
    there = suction.fittings * suction.velocity_head(flow)
    friction = station.reading("friction_head") + suction.lost(flow) - there
    minor = station.reading("minor_loss") + there
    return {
        "friction_head": noted("friction_head", friction, units),
        "minor_loss": noted("minor_loss", minor, units),
    }


def pressed(station: Station, draw: Draw) -> Station:
    """The station, where the suction gauge shows a pressure that can be read."""
    if station.reading("suction_gauge") < station.system.rounded(1.5, 10):
        raise NotSolvable("its suction gauge shows next to nothing")
    return station


def one_level(station: Station, draw: Draw) -> Station:
    """Both gauges at one height over the pump, on pipes of one size."""
    height = draw.step(0.5, 2, 0.5) if station.system.name == "us" else draw.step(0.1, 0.6, 0.1)
    return replace(station, gauges=Gauges(suction_of(station).diameter, height, height))


def one_level_pressed(station: Station, draw: Draw) -> Station:
    """The same on a flooded pump whose suction gauge can be read."""
    return pressed(one_level(station, draw), draw)


def apart(station: Station, draw: Draw) -> Station:
    """Gauges at two heights over the pump, on pipes of one size; the discharge gauge well above it."""
    us = station.system.name == "us"
    high, low = ((3, 8, 0.5), (1, 2, 0.5)) if us else ((0.9, 2.4, 0.1), (0.3, 0.6, 0.1))
    gauges = Gauges(suction_of(station).diameter, draw.step(*high), draw.step(*low))
    return pressed(replace(station, gauges=gauges), draw)


def at_the_pump(station: Station, draw: Draw) -> Station:
    """The suction gauge at the level of the pump."""
    return replace(station, gauges=replace(station.gauges, suction_height=0.0))


def two_sizes(station: Station, draw: Draw) -> Station:
    """Both gauges at the level of the pump, the discharge gauge at a nozzle narrower than the suction pipe."""
    system, suction, sizes = station.system, suction_of(station), SIZES[station.system.name]

    def between(low: float, high: float) -> list[float]:
        """Sizes with a velocity from and to (ft/s)."""
        through = system.feet * system.velocity * station.rated[0]
        return [size for size in sizes if low <= through / size**2 <= high]

    wide, narrow = between(5.5, 9), between(10, 16)
    if not (wide and narrow):
        raise NotSolvable("no nozzle is as narrow")
    suction = replace(suction, diameter=draw.pick(wide))
    return pressed(
        replace(station, suction=suction, gauges=Gauges(draw.pick(narrow), 0.0, 0.0)), draw
    )


def clog(station: Station, loss: float) -> Station:
    """The suction strainer so clogged that the suction pipe would lose so much (ft | m) at today's flow."""
    suction, flow = suction_of(station), station.running.pumped
    more = loss - suction.lost(flow)
    if more < 0:
        raise NotSolvable("the suction pipe alone loses more")
    blocked = suction.blocked + more / suction.velocity_head(flow)
    return replace(station, suction=replace(suction, blocked=blocked))


def clogged(low: float, high: float) -> Change:
    """A suction that loses so much (ft), while the pump still has the suction head it needs; gauge at the pump."""

    def change(station: Station, draw: Draw) -> Station:
        found = clog(at_the_pump(station, draw), draw.between(low, high) / station.system.feet)
        if found.reading("npsh_available") < found.reading("npsh_required"):
            raise NotSolvable("it would cavitate")
        return found

    return change


WELL = Readings(Need(well=True))
LIFT_STATION = Readings(Need(kinds=("lift",), fittings=2))
TESTED_MAIN = Readings(Need(well=True, part=(0, 75)), any_pipe)
FULL_BORE = Readings(Need(well=True, nozzle=False))
ALL_LOSSES = Readings(Need(well=True, nozzle=False), notes=all_losses)
MOSTLY_FRICTION = Readings(Need(well=True, part=(20, 70)))
FLOODED = Readings(Need(kinds=("flooded",)))
ON_FLOODED_PIPES = Readings(Need(kinds=FLOODED_KINDS))
LIFTING = Readings(Need(lift=True))
NOZZLE = Readings(Need(lift=True, nozzle=True, head=(20, 75)), notes=all_losses)
BOOSTER = Readings(Need(kinds=("booster",), fittings=2), notes=both_pipes)
LEVEL_GAUGES = Readings(Need(kinds=FLOODED_KINDS), one_level_pressed)
VACUUM = Readings(Need(lift=True), one_level)
APART = Readings(Need(kinds=FLOODED_KINDS, head=(12, 65)), apart)
TWO_SIZES = Readings(Need(kinds=("flooded", "recirculation"), head=(10, 35)), two_sizes)
PUMP_LEVEL = Readings(Need(lift=True), at_the_pump)
CLOGGED = Readings(Need(lift=True), clogged(3.5, 8))
PART_CLOGGED = Readings(Need(lift=True), clogged(1, 4))

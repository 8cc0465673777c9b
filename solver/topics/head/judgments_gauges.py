"""What two gauges tell: the discharge blocked, the suction blocked, a worn pump, or deeper water.

A pump gives more head as its flow falls. A blockage after it raises the discharge gauge, one before it
lowers the suction gauge, and wear lowers the discharge gauge alone. With deeper water the pump has less to
lift: it moves more at less head, so the suction gauge goes up and the discharge gauge hardly does.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.judgement import Judgement, Option
from solver.errors import NotSolvable
from solver.station.faults import with_fault
from solver.station.scene import station_in
from solver.station.station import Station
from solver.topics.readings import shown
from solver.units.show import figures

from .stations import clog, one_level_pressed, suction_of

__all__ = ["judge_cause", "judge_pair", "story"]

GAUGES = ("discharge_gauge", "suction_gauge")
NOW = ("discharge_gauge_now", "suction_gauge_now")
SEEN = {"us": 1.0, "si": 7.0}  # psi | kPa that a gauge must move before anyone says so
MORE, LESS = 1.06, 0.95  # times the pressure rise there was
LEAST = {"us": 2.5, "si": 0.8}  # ft | m that the level goes up
RULE = (
    "blocked after the pump: the discharge gauge goes up; blocked before it: the suction gauge drops; "
    "a worn or slow pump: the discharge gauge drops and the suction gauge doesn't; a higher level: the "
    "suction gauge goes up and the discharge gauge doesn't drop"
)


class Gauges(NamedTuple):
    """Two gauges at one time."""

    discharge: float
    suction: float

    @property
    def rise(self) -> float:
        """What the pump adds, in the unit of the gauges."""
        return self.discharge - self.suction


def gauges_of(station: Station) -> Gauges:
    """Both gauges as they are read."""
    return Gauges(*map(station.noted, GAUGES))


class Cause(NamedTuple):
    """What has changed: as an option, as a question asks for it, what it shows, and a change by it."""

    id: str
    text: str
    asked: str
    shows: str
    change: Callable[[Station, Draw], Station]
    then: str = ""


def closed(station: Station, draw: Draw) -> Station:
    """A discharge valve closed far enough for a gauge to show it."""
    return with_fault(station, "throttled_valve", draw.between(0.4, 1))


def blocked(station: Station, draw: Draw) -> Station:
    """A suction so clogged that most of what the suction gauge showed is gone, with no vacuum yet."""
    gauge = station.reading("suction_gauge") * station.system.head
    lost = suction_of(station).lost(station.running.pumped)
    return clog(station, lost + gauge * draw.between(0.6, 0.85))


def worn(station: Station, draw: Draw) -> Station:
    """A pump so worn that a gauge shows it."""
    return with_fault(station, draw.pick(("worn_rings", "worn_impeller")), draw.between(0.65, 1))


def deeper(station: Station, draw: Draw) -> Station:
    """The same pump with more water over it, still under the overflow."""
    well = station.well
    if well is None:
        raise NotSolvable("it has no wet well")
    rise = draw.between(0.75, 0.95) * (well.to_floor - well.depth - well.to_overflow)
    if rise < LEAST[station.system.name]:
        raise NotSolvable("its level can hardly go up")
    return replace(station, well=replace(well, fall=well.fall - rise))


CAUSES = (
    Cause(
        "closed",
        "Something blocks the discharge: a closed valve or a plugged main",
        "a closed discharge valve",
        "The discharge gauge goes up far more than the suction gauge.",
        closed,
        "Don't leave it running this way: the water in the pump heats up. Open the valve or stop "
        "the pump.",
    ),
    Cause(
        "blocked",
        "Something blocks the suction: a closed valve, a dirty strainer or rags",
        "a blocked suction",
        "The suction gauge drops and takes the discharge gauge down with it.",
        blocked,
        "Stop the pump before cavitation damages it. Lock it out before anyone opens the suction.",
    ),
    Cause(
        "worn",
        "The pump makes less head: a worn impeller or too low a speed",
        "a worn impeller",
        "The discharge gauge drops, and the suction gauge doesn't.",
        worn,
        "Check the pump's speed and amps against your records before anyone opens the pump.",
    ),
    Cause(
        "deeper",
        "The wet well level is higher: nothing is wrong with the pump",
        "a higher level in the wet well, with nothing wrong with the pump",
        "The suction gauge goes up with the water. The discharge gauge goes up less, or hardly at all.",
        deeper,
        "The pump has less to lift, so it moves a little more at a little less head.",
    ),
)
BY_ID = {cause.id: cause for cause in CAUSES}


def cause_of(usual: Gauges, now: Gauges, units: str) -> Cause | None:
    """What the two gauges show; None where they moved too little to say."""
    seen, rise = SEEN[units], now.rise / usual.rise
    discharge, suction = now.discharge - usual.discharge, now.suction - usual.suction
    if suction <= -seen:
        return BY_ID["blocked"]
    if discharge >= seen and rise >= MORE:
        return BY_ID["closed"]
    if discharge <= -seen and suction < seen and rise <= LESS:
        return BY_ID["worn"]
    if suction >= seen and discharge >= 0 and rise < 1:
        return BY_ID["deeper"]
    return None


def story(station: Station, draw: Draw) -> Station:
    """A station now, with one of the causes, beside itself as usual."""
    usual = one_level_pressed(station, draw)
    return replace(usual, now=draw.pick(CAUSES).change(usual, draw))


def judge_cause(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Which cause fits what the two gauges did."""
    usual, today = (Gauges(*(values[name] for name in names)) for names in (GAUGES, NOW))
    cause = cause_of(usual, today, units)
    if cause is None:
        return None
    rise, now = (shown(n, values[n], units, figures) for n in ("pressure", "pressure_now"))
    return Judgement(
        RULE,
        f"the pressure rise was {rise} and is now {now}",
        Option(cause.id, cause.text, f"{cause.shows} {cause.then}"),
        tuple(
            Option(
                other.id,
                other.text,
                f"That would look different: {other.shows[0].lower()}{other.shows[1:]}",
            )
            for other in CAUSES
            if other is not cause
        ),
    )


def judge_pair(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Which of four pairs of readings a cause gives, on the station that was read."""
    station = station_in(values)
    usual, asked = gauges_of(station), draw.pick(CAUSES)
    try:
        pairs = {cause.id: gauges_of(cause.change(station, draw)) for cause in CAUSES}
    except NotSolvable:
        return None
    if any(cause_of(usual, pair, units) is not BY_ID[id_] for id_, pair in pairs.items()):
        return None

    def said(gauges: Gauges) -> str:
        discharge, suction = (shown("pressure", reading, units) for reading in gauges)
        return f"discharge {discharge}, suction {suction}"

    return Judgement(
        RULE,
        f"usual: {said(usual)}",
        Option(asked.id, said(pairs[asked.id]), f"{asked.shows} {asked.then}"),
        tuple(
            Option(other.id, said(pairs[other.id]), f"That pair shows {other.asked}. {other.shows}")
            for other in CAUSES
            if other is not asked
        ),
        f"Which pair of readings shows {asked.asked}?",
    )

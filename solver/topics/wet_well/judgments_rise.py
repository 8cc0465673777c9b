"""Where the water comes from that rises with the pumps off: the sewer, or back through a check valve."""

from collections.abc import Mapping
from dataclasses import replace

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.station.instruments import noted
from solver.station.need import Need
from solver.station.scene import Readings, station_in
from solver.station.station import Station
from solver.topics.limits import LEAK_SHARE
from solver.topics.readings import shown
from solver.topics.zones import against
from solver.units.show import figures

from .stations import CHAPTER, NIGHT, PER_DEPTH, night, well_with, worked

__all__ = ["LEAKING_VALVE", "RISE_SOURCE"]

OPENED = "With the pumps off and locked out"

# Percent of the rise that closing one valve takes away: from the first on its check valve leaks,
# up to the second it holds, and between the two nobody can say.
LEAKING, HOLDING = 10, 5

RISE_SOURCE = CHAPTER.judged(
    "rise_source",
    "WX",
    "Where the water comes from with the pumps off",
    against(
        LEAK_SHARE,
        LEAK_SHARE.rule,
        (
            "inflow",
            "Nearly all from the sewer: the check valves hold",
            "Closing the valves hardly changed the rise, so hardly any water was coming back.",
        ),
        (
            "both",
            "Part of it from the sewer, part of it back from the force main",
            "A check valve is leaking. Find which one, and plan to open it, locked out.",
        ),
        (
            "check_valve",
            "Most of it back from the force main, through a check valve",
            "The pump moves the same water over and over. Find which valve leaks, and repair it, "
            "locked out.",
        ),
    ),
    Readings(Need(well=True), night((2, 8), (15, 42), (56, 85))),
    Level(
        ("rise_rate", "inflow"),
        f"{OPENED}, the wet well of {{station}} takes in {{rise_rate}}. With the discharge valves "
        "closed too, it takes in {inflow}. Where does the water come from?",
        find=("leakage", "leak_share"),
    ),
    Level(
        ("volume_per_depth", "rise_read", "rise_time", "closed_rise_read", "closed_rise_time"),
        f"{PER_DEPTH} {OPENED}, the level takes {{rise_time}} to rise {{rise_read}}. With the "
        "discharge valves closed too, it takes {closed_rise_time} to rise {closed_rise_read}. "
        "Where does the water come from?",
        find=("rise_rate", "inflow", "leakage", "leak_share"),
    ),
)

LEAKS = ((0, 0), (1, 0), (0, 1), (1, 1))  # which of two check valves leak


def night_with_two(station: Station, draw: Draw) -> Station:
    """A night when none, one or both of two check valves leak."""
    inflow, root = station.rated[0] * draw.between(*NIGHT), station.static**0.5
    passing, beside = (inflow * draw.between(0.6, 1.6) * leaks / root for leaks in draw.pick(LEAKS))
    main = replace(station.main, passing=passing, beside=beside)
    return replace(well_with(station, inflow), main=main)


def timed_anew(values: Mapping[str, float], draw: Draw) -> dict[str, float]:
    """Three rises, each timed with its own small error, as no two agree to the second."""
    station, seen = station_in(values), {}
    for which in ("", "_1", "_2"):
        off = draw.between(0.985, 1.015)
        for name, times in ((f"rise_rate{which}", off), (f"rise_time{which}", 1 / off)):
            seen[name] = noted(name, station.reading(name) * times, station.system.name)
    return seen


VALVES = {
    (False, False): ("neither", "Neither one: the water comes from the sewer"),
    (True, False): ("pump_1", "Pump 1's check valve"),
    (False, True): ("pump_2", "Pump 2's check valve"),
    (True, True): ("both", "Both check valves"),
}

REPAIR = "Lock out the pump, close the valves and drain the pipe before anyone opens a check valve."


def judge_valves(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Whose closed valve slowed the rise; None where the change is too small to say."""
    whole, *closed = (values[f"rise_rate{which}"] for which in ("", "_1", "_2"))
    one, two = (
        worked({"rise_rate": whole, "inflow": rate}, "leak_share", units) for rate in closed
    )
    if HOLDING < one < LEAKING or HOLDING < two < LEAKING:
        return None
    rates = [shown("rise_rate", rate, units, figures) for rate in (whole, *closed)]
    found = (one >= LEAKING, two >= LEAKING)

    def says(leaks: tuple[bool, bool]) -> str:
        for pump, (here, there) in enumerate(zip(found, leaks, strict=True), 1):
            if here != there:
                slowed = "slowed the rise" if here else "hardly changed the rise"
                holds = "leaks" if here else "holds"
                return (
                    f"Closing Pump {pump}'s discharge valve {slowed}, so its check valve {holds}."
                )
        told = "so that is where water was coming back" if any(leaks) else "so no water came back"
        slowed = "slowed" if any(leaks) else "hardly changed"
        which = "Closing that valve" if sum(leaks) == 1 else "Closing either valve"
        return f"{which} {slowed} the rise, {told}. {REPAIR if any(leaks) else ''}".strip()

    options = {leaks: Option(*VALVES[leaks], says(leaks)) for leaks in VALVES}
    right = options.pop(found)
    return Judgement(
        "if closing one discharge valve slows the rise, that pump's check valve leaks",
        "both open {}; Pump 1 closed {}; Pump 2 closed {}".format(*rates),
        right,
        tuple(options.values()),
    )


LEAKING_VALVE = CHAPTER.judged(
    "leaking_valve",
    "WY",
    "Which check valve leaks",
    judge_valves,
    Readings(Need(well=True), night_with_two, timed_anew),
    Level(
        ("rise_rate", "rise_rate_1", "rise_rate_2"),
        f"{OPENED}, the wet well of {{station}} takes in {{rise_rate}}. With only Pump 1's "
        "discharge valve closed, it takes in {rise_rate_1}. With only Pump 2's closed, it takes in "
        "{rise_rate_2}. Which check valve leaks?",
    ),
    Level(
        ("volume_per_depth", "rise_read", "rise_time", "rise_time_1", "rise_time_2"),
        f"{PER_DEPTH} {OPENED}, the level takes {{rise_time}} to rise {{rise_read}}. With only "
        "Pump 1's discharge valve closed, the same rise takes {rise_time_1}. With only Pump 2's "
        "closed, it takes {rise_time_2}. Which check valve leaks?",
        find=("rise_rate", "rise_rate_1", "rise_rate_2"),
    ),
)

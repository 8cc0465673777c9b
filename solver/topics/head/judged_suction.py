"""What is to be judged on the suction side: whether a pump is too high above its water, and has its NPSH."""

from dataclasses import replace

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judge
from solver.errors import NotSolvable
from solver.station.need import Need
from solver.station.scene import Readings
from solver.station.station import Station
from solver.station.suction import air_head
from solver.topics.zones import Limits, Zone, against

from .stations import CHAPTER, at_the_pump, clog, suction_of

__all__ = ["NPSH_CHECK", "SUCTION_LIMIT", "by_system"]


def by_system(us: Limits, si: Limits, *zones: Zone) -> Judge:
    """A judge whose limits are round numbers in each system."""
    judges = {"us": against(us, us.rule, *zones), "si": against(si, si.rule, *zones)}
    return lambda values, units, draw: judges[units](values, units, draw)


LIFT = "at sea level, up to {} is usual, and about {} is the practical limit"
PRACTICE = "common practice, no source; a pump's own required NPSH decides"

HIGHEST = 25.0  # ft above its water that a pump can be set and still lift any
TOTALS = ((8, 14.5), (15.5, 21.5), (22.5, 27))  # ft: usual, over it, over what is practical


def lifted(station: Station, lift: float) -> Station:
    """The pump that much above its water (ft | m), its water and the end of its main where they were."""
    system = station.system
    lift = round(lift * 2) / 2 if system.name == "us" else round(lift, 1)
    if not (
        1 / system.feet <= lift <= HIGHEST / system.feet
        and station.main.static - lift >= 2 / system.feet
    ):
        raise NotSolvable("nobody sets a pump there")
    return replace(station, suction=replace(suction_of(station), lift=lift))


def with_lift(station: Station, draw: Draw, total: float) -> Station:
    """A dynamic suction lift of so much (ft | m): the pump set that high, or its strainer clogged besides."""
    lost = suction_of(station).lost(station.running.pumped)
    if draw.pick((True, False)):
        return lifted(station, total - lost)
    higher = lifted(station, (total - lost) * draw.between(0.55, 0.9))
    return clog(higher, total - suction_of(higher).lift)


def lifting(station: Station, draw: Draw) -> Station:
    """At sea level, a dynamic suction lift within the usual, over it, or over what is practical."""
    system = station.system
    level = replace(suction_of(station), altitude=0.0, air=air_head(0.0, system))
    total = draw.between(*draw.pick(TOTALS)) / system.feet
    return with_lift(replace(at_the_pump(station, draw), suction=level), draw, total)


def needing(station: Station, draw: Draw) -> Station:
    """A pump with the full margin, with a part of it, or with less than it needs."""
    margin, needed = suction_of(station).margin, station.reading("npsh_required")
    kept = draw.pick(
        (None, needed + margin * draw.between(0.2, 0.85), needed * draw.between(0.7, 0.95))
    )
    if kept is None:
        return station
    suction = suction_of(station)
    return with_lift(station, draw, suction.air - suction.vapor - kept)


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
    Readings(Need(lift=True), lifting),
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
    Readings(Need(lift=True), needing),
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

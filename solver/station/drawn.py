"""How a station is drawn: from its duty to its bill, each step from what the ones before allow.

A station that could not be built, or that a problem cannot use, is drawn again by the same chance. Limits
of what people build are in `built`; the rest of each machine is drawn in its own module.
"""

from dataclasses import replace
from functools import cache
from math import pow
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.errors import NotSolvable
from solver.scenario import PUMPS, Place, kind_of
from solver.topics.tables import motor_sizes

from .built import EFFICIENCY, can_suck, is_built, is_main, is_pump
from .drive import Drive, draw_drive
from .faults import applies, fault_named, with_fault
from .kinds import KINDS, Kind
from .main import Main, draw_main
from .motor import Motor, draw_motor
from .need import ANY, Need
from .pump import Pump, draw_pump
from .station import Station
from .suction import Gauges, Suction, draw_gauges, draw_suction
from .supply import Supply, draw_supply, feeds
from .system import SYSTEMS, System
from .well import draw_well
from .what_if import MOVES, SLOWEST

__all__ = ["attempt", "beside", "draw_station", "round_flow", "seeded"]

LOAD = (42.0, 100.0)  # percent of its motor's size that a pump takes, when no need says another
POOREST = 0.35  # efficiency of the poorest pump with its drive
WORN = (0.05, 0.2)  # leak through the rings of a pump that a better one is thought of for
A_YEAR = (0.02, 0.15)  # what a year adds to it
TURNED_TO, LEAST_TURNED = (
    0.97,
    0.82,
)  # of its speed, by a drive; and that which only just lifts water
STALLING = 0.65  # of its speed, which only just lifts water where a slower one is to stall
TRIES, BESIDE = 500, 6


class Site(NamedTuple):
    """What the machines of a station must do: their kind, main and suction, and the duty (gpm, ft | L/s, m)."""

    system: System
    kind: Kind
    main: Main
    suction: Suction | None
    duty: tuple[float, float]


class Machines(NamedTuple):
    """What does it."""

    supply: Supply
    drive: Drive
    motor: Motor
    pump: Pump


def draw_station(draw: Draw, units: str, need: Need = ANY) -> Station:
    """A station that could exist and that a problem can use.

    Raises:
        NotSolvable: the need is never met.
    """
    for _ in range(TRIES):
        found = attempt(draw, units, need)
        if found:
            return found
    raise NotSolvable(f"no station in {TRIES} draws meets {need}: ask less of it")


def seeded(seed: int, units: str, fault: str = "") -> Station:
    """The station of a seed, with a fault when one is named.

    Raises:
        BadDefinition: no such fault.
        NotSolvable: this station cannot have it; the sentence names a seed whose station can.
    """
    station = draw_station(Draw(f"station {seed}"), units)
    if not fault:
        return station
    kind = fault_named(fault)
    if not applies(kind, station):
        others = range(seed + 1, seed + 100)
        other = next(n for n in others if applies(kind, seeded(n, units)))
        raise NotSolvable(
            f"The station of seed {seed} has no part that could have “{kind.label}”. "
            f"Seed {other} has one."
        )
    return with_fault(station, fault)


def beside(draw: Draw, station: Station, share: float) -> Station:
    """Another pump on the same main and from the same water, drawn for a share of the flow.

    Raises:
        NotSolvable: nobody would build one.
    """
    system, main, suction = station.system, station.main, station.suction
    flow = round_flow(station.rated[0] * share, system)
    head = main.lift + main.lost(flow) + (suction.lost(flow) if suction else 0.0)
    site = Site(system, station.kind, main, suction, (flow, head))
    for _ in range(BESIDE):
        machines = _machines(draw, site, ANY)
        if machines:
            supply, drive, motor, pump = machines
            return replace(
                station, supply=supply, motor=motor, drive=drive, pump=pump, rated=site.duty
            )
    raise NotSolvable(f"no pump fits {share:.0%} of the flow")


def attempt(draw: Draw, units: str, need: Need = ANY) -> Station | None:
    """One draw of a station; none when it could not be built or does not meet the need."""
    site = _site(draw, SYSTEMS[units], need)
    machines = _machines(draw, site, need) if site else None
    return _around(draw, site, machines, need) if site and machines else None


@cache
def _kinds(need: Need) -> tuple[Kind, ...]:
    """The kinds of station that could meet a need, each as often as it is usual."""
    fitting = (kind for kind in KINDS.values() if need.of_kind(kind))
    kinds = tuple(kind for kind in fitting for _ in range(kind.usual))
    if not kinds:
        raise NotSolvable(f"no kind of station meets {need}: ask less of it")
    return kinds


@cache
def _places(kind: str) -> tuple[Place, ...]:
    """Where pumps of a kind stand in the invented town."""
    return tuple(place for place in PUMPS if kind_of(place) == kind)


def _site(draw: Draw, system: System, need: Need) -> Site | None:
    """Duty, main and suction of a kind that the need admits."""
    kind = draw.pick(_kinds(need))
    spans = kind.spans(system.name)
    low, high = spans.flow
    flow = round_flow(low * pow(high / low, draw.between(0, 1)), system)
    main = draw_main(draw, system, kind, flow)
    if need.part and not need.part[0] <= _part(main, flow) <= need.part[1]:
        return None
    if 100 * main.minor(flow) < need.fittings * (main.lift + main.lost(flow)):
        return None
    suction = None if kind.submerged else draw_suction(draw, system, kind, main, flow)
    head = main.lift + main.lost(flow) + (suction.lost(flow) if suction else 0.0)
    if not (is_main(main, flow) and spans.head[0] <= head <= spans.head[1]):
        return None
    if need.sizes and not _near(need, need.sizes, flow * head / system.water_power):
        return None
    if need.head and not need.head[0] <= head * system.feet <= need.head[1]:
        return None
    if need.nozzle not in (None, bool(main.nozzle)):
        return None
    if need.sizes and not _could_take(need, flow * head / system.water_power):
        return None
    return Site(system, kind, main, suction, (flow, head))


def _could_take(need: Need, water: float) -> bool:
    """Whether any pump could need a motor of the sizes wanted for this water power (hp | kW)."""
    smallest, largest = need.sizes or (0, 1e9)
    low, high = need.load or LOAD
    least, most = EFFICIENCY
    return (
        100 * water / least >= smallest * low / 100 * 0.9
        and 100 * water / most <= largest * high / 100
    )


def _part(main: Main, flow: float) -> float:
    """Percent of the head that is static."""
    return 100 * main.lift / (main.lift + main.lost(flow))


def _near(need: Need, sizes: tuple[float, float], water: float) -> bool:
    """Whether a motor of these sizes could be the one for a water power (hp | kW): told before it is drawn."""
    least = (need.load or LOAD)[0] / 100 * POOREST
    return least * sizes[0] <= water <= sizes[1] * (need.load or LOAD)[1] / 100


def round_flow(flow: float, system: System) -> float:
    """A flow (gpm | L/s) to the steps that a duty is written in."""
    if system.name == "us":
        step = 50.0 if flow >= 2000 else 10.0 if flow >= 400 else 5.0
    else:
        step = 5.0 if flow >= 150 else 1.0 if flow >= 20 else 0.5
    return round(flow / step) * step


def _machines(draw: Draw, site: Site, need: Need) -> Machines | None:
    """Pump, motor, drive and supply for a duty."""
    system, kind, duty = site.system, site.kind, site.duty
    drive, supply = draw_drive(draw, kind, need.drives), draw_supply(draw, system, need.volts)
    turns = 120 * system.hertz * 0.98 * drive.ratio
    one = system.specific_speed(turns, *duty) * system.us_specific  # at one pole
    least, most = kind.specific
    if need.specific:
        least, most = max(least, need.specific[0]), min(most, need.specific[1])
    fitting = [p for p in kind.poles if (kind.stages or least <= one / p) and one / p <= most]
    if not fitting:
        return None
    poles = draw.pick(fitting)
    stages = _stages(draw, kind, one / poles, need)
    if not least <= one / poles * pow(stages, 0.75) <= most:
        return None
    pump = draw_pump(draw, system, turns / poles, stages, duty, draw.between(*kind.coarse))
    shaft = pump.power_at(duty[0], pump.speed) / (1 if drive.is_variable else drive.efficiency)
    size = _size(draw, shaft, need, system, supply)
    if size is None or not is_pump(pump, duty[0]):
        return None
    motor = draw_motor(draw, system, supply, size, poles, need)
    turning = motor.synchronous_speed * (1 - motor.at(shaft, supply).slip) * drive.ratio
    step = system.rounded(0.125, 1)
    diameter = step * round(pump.diameter * pump.speed / turning / step)
    pump = replace(pump, speed=turning, diameter=diameter)
    if not (
        is_built(kind, drive, motor, pump) and can_suck(pump, site.suction, site.main, duty[0])
    ):
        return None
    return Machines(supply, drive, motor, pump)


def _stages(draw: Draw, kind: Kind, one: float, need: Need) -> int:
    """One stage, or as many as bring the specific speed of one up to what impellers like."""
    if not kind.stages or need.stages is False:
        return 1
    wanted = draw.between(1300, 2400)
    least = 2 if need.stages else 1
    return max(least, min(12, round(pow(wanted / one, 4 / 3)))) if one < 1300 else least


def _size(draw: Draw, shaft: float, need: Need, system: System, supply: Supply) -> float | None:
    """The next standard motor, now and then a size more; none outside what is needed."""
    low, high = need.load or LOAD
    least = max(system.rounded(3, 2.2), shaft * 100 / high)
    fitting = [size for size in motor_sizes(system.name) if size >= least]
    step = draw.pick((0, 0, 0, 1))
    for size in fitting[step : step + 2] + fitting[:step]:
        loaded = low <= 100 * shaft / size <= high
        wanted = need.sizes is None or need.sizes[0] <= size <= need.sizes[1]
        if loaded and wanted and feeds(supply, size * system.horsepower):
            return size
    return None


def _around(draw: Draw, site: Site, machines: Machines, need: Need) -> Station | None:
    """The rest of the station, around machines that fit their duty."""
    system, kind, main, suction, duty = site
    supply, drive, motor, pump = machines
    shape = need.round_well, need.pumps
    well = draw_well(draw, system, duty[0], motor.size, *shape) if kind.well else None
    gauges = draw_gauges(draw, system, main, suction, duty[0])
    if kind.well and well is None:
        return None
    if need.level_gauges is not None and need.level_gauges != _level(gauges, suction):
        return None
    station = Station(
        system=system,
        kind=kind,
        place=draw.pick(_places(kind.place)),
        supply=supply,
        motor=motor,
        drive=drive,
        pump=pump,
        suction=suction,
        gauges=gauges,
        main=main,
        well=well,
        rated=duty,
        chance=f"{draw.between(0, 1)}",
        wish=(need.change, need.upgrade),
        days=need.days,
    )
    return _in_state(draw, station, need) if _fits(station, need) else None


def _fits(station: Station, need: Need) -> bool:
    """Whether a pump that is to be slowed, or stalled, can be."""
    if need.turned_down:
        return station.least_ratio < LEAST_TURNED
    return need.change != "stall" or station.least_ratio > STALLING


def _level(gauges: Gauges, suction: Suction | None) -> bool:
    """Whether the gauges are at one height, on pipes of one size."""
    return (
        suction is not None
        and gauges.discharge_height == gauges.suction_height
        and gauges.discharge_diameter == suction.diameter
    )


def _in_state(draw: Draw, station: Station, need: Need) -> Station:
    """The station with itself a year ago, or later pumping higher; worn where a better pump is thought of.

    Or with its drive turned down.
    """
    if need.turned_down:
        hertz = station.system.hertz
        most = TURNED_TO * hertz
        wanted = draw.between(hertz * max(SLOWEST, MOVES * station.least_ratio), most)
        drive = replace(station.drive, turned=0.5 * round(wanted / 0.5) / hertz)
        return replace(station, drive=drive)
    if need.upgrade in ("pump", "both"):
        station = replace(station, pump=replace(station.pump, leak=draw.between(*WORN)))
    if need.state == "then":
        leak = station.pump.leak + draw.between(*A_YEAR)
        return replace(station, pump=replace(station.pump, leak=leak), then=station)
    if need.state == "now":
        more = draw.step(2, 12, 1) if station.system.name == "us" else draw.step(0.5, 4, 0.5)
        higher = replace(station.main, static=station.main.static + more)
        return replace(station, now=replace(station, main=higher))
    return station

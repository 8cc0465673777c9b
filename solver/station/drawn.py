"""How a station is drawn.

The draw goes from the duty to the bill, each step from what the ones before allow (`attempt`). A station
that could not be built, or that a problem cannot use, is drawn again by the same chance. Limits of
what people build (efficiency, rim speed, NPSHr, lift, friction) are common practice, no source.
"""

from dataclasses import replace
from functools import cache
from math import pi, pow

from solver.engine.draw import Draw
from solver.errors import NotSolvable
from solver.scenario import PUMPS, Place, kind_of

from .bill import draw_bill
from .condition import draw_condition
from .drive import Drive, draw_drive
from .faults import applies, fault_named, with_fault
from .kinds import KINDS, Kind
from .main import Main, draw_main
from .motor import Motor, draw_motor, sizes
from .need import Need
from .pump import Pump, draw_pump
from .running import operate
from .station import Station
from .suction import Gauges, Suction, draw_gauges, draw_suction
from .supply import Supply, draw_supply, largest_motor
from .system import SYSTEMS, System
from .well import draw_well
from .what_if import draw_plans

__all__ = ["attempt", "draw_station", "seeded"]

EFFICIENCY = (46.0, 85.0)  # percent
TIP_SPEED, NPSH, HIGHEST = 131.0, 30.0, 25.0  # ft/s at the rim; ft; ft of suction lift
LEAST_FRICTION = 0.4  # ft
TRIES = 500


ANY = Need()


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


def attempt(draw: Draw, units: str, need: Need = ANY) -> Station | None:
    """One draw of a station; none when it could not be built or does not meet the need."""
    system = SYSTEMS[units]
    kind = draw.pick(_kinds(need))
    spans = kind.spans(units)
    low, high = spans.flow
    flow = _round_flow(low * (high / low) ** draw.between(0, 1), system)
    main = draw_main(draw, system, kind, flow)
    suction = None if kind.submerged else draw_suction(draw, system, kind, main, flow)
    head = main.lift + main.lost(flow) + (suction.lost(flow) if suction else 0.0)
    if main.friction(flow) * system.feet < LEAST_FRICTION:
        return None
    if not spans.head[0] <= head <= spans.head[1] or need.nozzle not in (None, bool(main.nozzle)):
        return None
    drive, supply = draw_drive(draw, kind, need.drives), draw_supply(draw, system)
    if need.volts and supply.nominal not in need.volts:
        supply = replace(supply, nominal=need.volts[0], volts=float(round(need.volts[0] * 0.99)))
    machines = _machines(draw, kind, need, (flow, head), drive, supply, system)
    if machines is None:
        return None
    pump, motor = machines
    if suction and not _can_suck(pump, suction, main, flow):
        return None
    return _around(draw, need, system, kind, main, suction, drive, supply, pump, motor, flow, head)


@cache
def _kinds(need: Need) -> tuple[Kind, ...]:
    """The kinds of station that could meet a need."""
    kinds = tuple(kind for kind in KINDS.values() if need.of_kind(kind))
    if not kinds:
        raise NotSolvable(f"no kind of station meets {need}: ask less of it")
    return kinds


@cache
def _places(kind: str) -> tuple[Place, ...]:
    """Where pumps of a kind stand in the invented town."""
    return tuple(place for place in PUMPS if kind_of(place) == kind)


def _can_suck(pump: Pump, suction: Suction, main: Main, flow: float) -> bool:
    """Whether the pump has the NPSH it needs, its lift is one that people build, and it is under the end."""
    above = suction.air - suction.vapor - suction.lost(flow) - suction.margin
    greatest = above - pump.npsh_at(flow, pump.speed)
    system = suction.system
    if suction.lift <= 0:
        return suction.lift <= greatest
    return suction.lift <= greatest <= HIGHEST / system.feet and (
        main.static - suction.lift >= 2 / system.feet
    )


def _round_flow(flow: float, system: System) -> float:
    if system.name == "us":
        step = 50.0 if flow >= 2000 else 10.0 if flow >= 400 else 5.0
    else:
        step = 5.0 if flow >= 150 else 1.0 if flow >= 20 else 0.5
    return round(flow / step) * step


def _machines(
    draw: Draw,
    kind: Kind,
    need: Need,
    duty: tuple[float, float],
    drive: Drive,
    supply: Supply,
    system: System,
) -> tuple[Pump, Motor] | None:
    """Pump and motor for a duty (gpm, ft | L/s, m)."""
    turns = 120 * system.hertz * 0.98 * drive.ratio
    one = system.specific_speed(turns, *duty) * system.us_specific  # at one pole
    least, most = kind.specific
    fitting = [p for p in kind.poles if (kind.stages or least <= one / p) and one / p <= most]
    if not fitting:
        return None
    poles = draw.pick(fitting)
    speed = turns / poles
    stages = _stages(draw, kind, one / poles, need)
    if not least <= one / poles * pow(stages, 0.75) <= most:
        return None
    pump = draw_pump(draw, system, speed, stages, duty, draw.between(*kind.coarse))
    if (
        not EFFICIENCY[0] + 1 <= pump.efficiency <= EFFICIENCY[1]
        or pump.npsh_at(duty[0], speed) > NPSH / system.feet
    ):
        return None
    shaft = pump.power_at(duty[0], speed)
    size = _size(draw, shaft / (1 if drive.is_variable else drive.efficiency), need, system, supply)
    if size is None:
        return None
    motor = draw_motor(draw, system, supply, size, poles)
    load = motor.at(shaft / (1 if drive.is_variable else drive.efficiency), supply)
    turning = motor.synchronous_speed * (1 - load.slip) * drive.ratio
    pump = replace(pump, speed=turning, diameter=pump.diameter * speed / turning)
    inches = pump.diameter / (1 if system.name == "us" else 25.4)
    return None if pi * inches * turning / 720 > TIP_SPEED else (pump, motor)


def _stages(draw: Draw, kind: Kind, one: float, need: Need) -> int:
    """One stage, or as many as bring the specific speed of one up to what impellers like."""
    if not kind.stages or need.stages is False:
        return 1
    wanted = draw.between(1300, 2400)
    least = 2 if need.stages else 1
    return max(least, min(12, round(pow(wanted / one, 4 / 3)))) if one < 1300 else least


def _size(draw: Draw, shaft: float, need: Need, system: System, supply: Supply) -> float | None:
    """The next standard motor, now and then a size more; none outside what is needed."""
    least = system.rounded(3, 2.2)
    fitting = [size for size in sizes(system.name) if size >= max(shaft, least)]
    step = draw.pick((0, 0, 0, 1))
    low, high = need.load or (42, 100)
    for size in fitting[step : step + 2] + fitting[:step]:
        loaded = low <= 100 * shaft / size <= high
        wanted = need.sizes is None or need.sizes[0] <= size <= need.sizes[1]
        if loaded and wanted and size * system.horsepower <= largest_motor(supply):
            return size
    return None


def _around(
    draw: Draw,
    need: Need,
    system: System,
    kind: Kind,
    main: Main,
    suction: Suction | None,
    drive: Drive,
    supply: Supply,
    pump: Pump,
    motor: Motor,
    flow: float,
    head: float,
) -> Station | None:
    """The rest of the station, around machines that fit their duty."""
    well = draw_well(draw, system, flow, motor.size) if kind.well else None
    gauges = draw_gauges(draw, system, main, suction)
    if kind.well and well is None:
        return None
    if need.level_gauges is not None and need.level_gauges != _level(gauges, suction):
        return None
    running = operate(pump, motor, drive, supply, main, suction, 0.0, (flow, head))
    output = running.shaft * system.kilowatts
    share = output / drive.efficiency / running.load.kilowatts * 100 / motor.efficiency
    plans = draw_plans(draw, pump, motor, running, main.lift, min(share, 1.0))
    if need.change:
        plans = replace(plans, change=need.change)
    if need.upgrade:
        plans = replace(plans, upgrade=need.upgrade)
    station = Station(
        system,
        kind,
        draw.pick(_places(kind.place)),
        supply,
        motor,
        drive,
        pump,
        suction,
        gauges,
        main,
        well,
        draw_bill(draw, running.load.kilowatts),
        draw_condition(draw, motor),
        plans,
        (flow, head),
    )
    return _with_state(draw, station, need.state)


def _level(gauges: Gauges, suction: Suction | None) -> bool:
    """Whether the gauges are at one height, on pipes of one size."""
    return (
        suction is not None
        and gauges.discharge_height == gauges.suction_height
        and gauges.discharge_diameter == suction.diameter
    )


def _with_state(draw: Draw, station: Station, state: str) -> Station:
    """The station with itself a year ago, or with itself later, pumping higher."""
    if state == "then":
        worn = replace(station.pump, leak=draw.between(0.02, 0.15))
        return replace(station, pump=worn, then=station)
    if state == "now":
        more = draw.step(2, 12, 1) if station.system.name == "us" else draw.step(0.5, 4, 0.5)
        higher = replace(station.main, static=station.main.static + more)
        return replace(station, now=replace(station, main=higher))
    return station

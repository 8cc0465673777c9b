"""How a station is drawn: from its duty to its bill, each step from what the ones before allow.

A station that could not be built, or that a problem cannot use, is drawn again by the same chance. Limits
of what people build are in `built`; the rest of each machine is drawn in its own module.
"""

from dataclasses import replace

from solver.engine.draw import Draw
from solver.errors import NotSolvable
from solver.scenario import places_of

from .faults import applies, fault_named, with_fault
from .machines import Machines, draw_machines
from .need import ANY, Need
from .site import Site, draw_site, head_of, round_flow
from .station import Station
from .suction import Gauges, Suction, draw_gauges
from .system import SYSTEMS
from .well import draw_well
from .what_if import MOVES, SLOWEST

__all__ = ["attempt", "beside", "draw_station", "seeded"]

WORN = (0.05, 0.2)  # leak through the rings of a pump that a better one is thought of for
A_YEAR = (0.02, 0.15)  # what a year adds to it
TURNED_TO = 0.97  # of its speed at most, by a drive that has it turned down
LEAST_TURNED = 0.82  # that which only just lifts water is below this, where it is turned down
STALLING = 0.65  # of its speed, which only just lifts water where a slower one is to stall
TRIES, BESIDE = 500, 6


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
    head = head_of(main, suction, flow)
    site = Site(system, station.kind, main, suction, (flow, head))
    for _ in range(BESIDE):
        machines = draw_machines(draw, site, ANY)
        if machines:
            supply, drive, motor, pump = machines
            return replace(
                station, supply=supply, motor=motor, drive=drive, pump=pump, rated=site.duty
            )
    raise NotSolvable(f"no pump fits {share:.0%} of the flow")


def attempt(draw: Draw, units: str, need: Need = ANY) -> Station | None:
    """One draw of a station; none when it could not be built or does not meet the need."""
    site = draw_site(draw, SYSTEMS[units], need)
    machines = draw_machines(draw, site, need) if site else None
    return _around(draw, site, machines, need) if site and machines else None


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
        place=draw.pick(places_of(kind.place)),
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

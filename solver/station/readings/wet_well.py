"""The wet well: volumes, floats, timed tests, cycles, hours and storage."""

from types import MappingProxyType
from typing import TYPE_CHECKING

from solver.station.well import cycle_rows
from solver.station.well import least_cycle as times_between_starts

from .read import NotRead, Reads, in_the_well
from .water import WATER

if TYPE_CHECKING:
    from solver.station.station import Station
    from solver.station.well import Well

__all__ = ["WET_WELL", "hours_per_day"]

flow = WATER["flow"]
HARDLY = 0.02  # of the flow: slower than this nobody waits for it to go down


def inflow(station: "Station") -> float:
    """What comes in (gpm | L/s)."""
    return in_the_well(station).inflow


def drawdown_rate(station: "Station") -> float:
    """How fast the pump draws the well down (gpm | L/s)."""
    down = flow(station) - inflow(station)
    if down <= HARDLY * flow(station):
        raise NotRead("the water hardly goes down while the pump runs")
    return down


def back(station: "Station", passing: float) -> float:
    """What comes back through a check valve while the pumps rest (gpm | L/s)."""
    lift: float = max(station.static, 0.0) ** 0.5
    return passing * lift


def leakage(station: "Station") -> float:
    """What comes back through both; NotRead with tight valves."""
    in_the_well(station)
    passing = station.main.passing + station.main.beside
    if not passing:
        raise NotRead("the check valves are tight")
    return back(station, passing)


def rise_rate(station: "Station") -> float:
    """How fast the well fills while the pumps rest (gpm | L/s)."""
    return inflow(station) + back(station, station.main.passing + station.main.beside)


def rise_without(station: "Station") -> float:
    """The same with this pump's discharge valve closed."""
    return inflow(station) + back(station, station.main.beside)


def rise_without_the_other(station: "Station") -> float:
    """The same with that of the pump beside it closed."""
    return inflow(station) + back(station, station.main.passing)


def fill_time(station: "Station") -> float:
    """From off to on (min)."""
    well = in_the_well(station)
    return well.minutes(well.working, rise_rate(station))


def pump_down_time(station: "Station") -> float:
    """From on to off (min)."""
    well = in_the_well(station)
    return well.minutes(well.working, drawdown_rate(station))


def cycle(station: "Station") -> float:
    """From start to start (min)."""
    return fill_time(station) + pump_down_time(station)


def sweep(station: "Station") -> float:
    """The pump-down time with nothing coming in (min)."""
    well = in_the_well(station)
    return well.minutes(well.working, flow(station))


def hours_per_day(station: "Station") -> float:
    """Hours a day that pumping takes (h/day)."""
    well = station.well
    return station.bill.hours if well is None else 24 * well.daily / flow(station)


def daily(station: "Station") -> float:
    """Inflow in a day (gpd | m3/day)."""
    well = in_the_well(station)
    return well.daily * well.system.per_minute * 1440


def least_cycle(station: "Station") -> float:
    """Cycle time that keeps each motor to its starts (min)."""
    well = in_the_well(station)
    return 60 / well.starts / well.pumps


def taking_turns(station: "Station") -> float:
    """Pumps that take turns; NotRead with one alone."""
    pumps = in_the_well(station).pumps
    if pumps == 1:
        raise NotRead("its only pump takes no turns")
    return float(pumps)


def in_the_table(station: "Station") -> tuple[float, float]:
    """The least time between starts by the motor's size (min), from and to."""
    size, units = station.motor.size, station.system.name
    if size > cycle_rows(units)[-1].under:
        raise NotRead("the table leaves motors this large to their maker")
    return times_between_starts(size, units)


def least_volume(station: "Station") -> float:
    """The volume between floats for that (gal | m3)."""
    well = in_the_well(station)
    return least_cycle(station) * flow(station) * well.system.per_minute / 4


def storage_depth(well: "Well") -> float:
    """From the water up to the overflow (ft | m)."""
    return well.to_floor - well.depth - well.to_overflow


def storage(station: "Station") -> float:
    """Room in well and sewer (gal | m3)."""
    well = in_the_well(station)
    return well.per_depth * storage_depth(well) + well.sewer


def side(station: "Station", place: int) -> float:
    """Length or width of a well with corners (ft | m)."""
    sides = in_the_well(station).sides
    if sides is None:
        raise NotRead("the wet well is round")
    return sides[place]


def diameter(station: "Station") -> float:
    """Diameter of a round well (ft | m)."""
    well = in_the_well(station)
    if well.sides:
        raise NotRead("the wet well isn't round")
    return well.diameter


WET_WELL: Reads = MappingProxyType(
    {
        "well_diameter": diameter,
        "well_length": lambda s: side(s, 0),
        "well_width": lambda s: side(s, 1),
        "well_area": lambda s: in_the_well(s).area,
        "depth_to_floor": lambda s: in_the_well(s).to_floor,
        "depth_to_water": lambda s: in_the_well(s).to_floor - in_the_well(s).depth,
        "depth_to_overflow": lambda s: in_the_well(s).to_overflow,
        "water_depth": lambda s: in_the_well(s).depth,
        "well_volume": lambda s: in_the_well(s).per_depth * in_the_well(s).depth,
        "volume_per_depth": lambda s: in_the_well(s).per_depth,
        "on_level": lambda s: in_the_well(s).on,
        "off_level": lambda s: in_the_well(s).off,
        "working_depth": lambda s: in_the_well(s).on - in_the_well(s).off,
        "working_volume": lambda s: in_the_well(s).working,
        # Timed tests
        "inflow": inflow,
        "drawdown_read": lambda s: in_the_well(s).drop,
        "drawdown_level": lambda s: in_the_well(s).drop / s.system.parts,
        "drawdown_volume": lambda s: in_the_well(s).volume_of(in_the_well(s).drop),
        "drawdown_time": lambda s: in_the_well(s).seconds(in_the_well(s).drop, drawdown_rate(s)),
        "drawdown_rate": drawdown_rate,
        "rise_read": lambda s: in_the_well(s).rise,
        "rise_level": lambda s: in_the_well(s).rise / s.system.parts,
        "rise_volume": lambda s: in_the_well(s).volume_of(in_the_well(s).rise),
        "rise_time": lambda s: in_the_well(s).seconds(in_the_well(s).rise, rise_rate(s)),
        "rise_rate": rise_rate,
        "closed_rise_read": lambda s: in_the_well(s).closed,
        "closed_rise_level": lambda s: in_the_well(s).closed / s.system.parts,
        "closed_rise_volume": lambda s: in_the_well(s).volume_of(in_the_well(s).closed),
        "closed_rise_time": lambda s: in_the_well(s).seconds(in_the_well(s).closed, inflow(s)),
        "leakage": leakage,
        "leak_share": lambda s: 100 * leakage(s) / rise_rate(s),
        "rise_time_1": lambda s: in_the_well(s).seconds(in_the_well(s).rise, rise_without(s)),
        "rise_rate_1": rise_without,
        "rise_time_2": lambda s: in_the_well(s).seconds(
            in_the_well(s).rise, rise_without_the_other(s)
        ),
        "rise_rate_2": rise_without_the_other,
        # Cycles and starts
        "fill_time": fill_time,
        "pump_down_time": pump_down_time,
        "cycle_time": cycle,
        "starts_per_hour": lambda s: 60 / cycle(s),
        "alternating_pumps": taking_turns,
        "pump_starts": lambda s: 60 / cycle(s) / in_the_well(s).pumps,
        "motor_cycle": lambda s: cycle(s) * in_the_well(s).pumps,
        "most_starts": lambda s: in_the_well(s).starts,
        "cycle_floor": lambda s: in_the_table(s)[0],
        "cycle_ceiling": lambda s: in_the_table(s)[1],
        "least_cycle": least_cycle,
        "least_volume": least_volume,
        "least_depth": lambda s: least_volume(s) / in_the_well(s).per_depth,
        "sweep_time": sweep,
        "shortest_cycle": lambda s: 4 * sweep(s),
        # Hours and storage
        "daily_inflow": daily,
        "pump_hours": lambda s: hours_per_day(s) / in_the_well(s).pumps,
        "storage_depth": lambda s: storage_depth(in_the_well(s)),
        "storage_volume": lambda s: in_the_well(s).per_depth * storage_depth(in_the_well(s)),
        "sewer_storage": lambda s: in_the_well(s).sewer,
        "total_storage": storage,
        "storage_time": lambda s: in_the_well(s).minutes(storage(s), inflow(s)),
    }
)

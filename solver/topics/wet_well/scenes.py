"""What the problems share: wet wells that could exist, with their pumps, floats and readings.

Each gives its quantities in the units of the system. Sizes, depths and rates are common practice,
no source; motors come from the published tables.
"""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.scenario import WITH_WET_WELL
from solver.topics.chapter import Chapter
from solver.topics.constants import WATER_POWER
from solver.topics.drawn.readings import by, noted, round_flow
from solver.topics.formulas import SPEED_AND_IMPELLER, WET_WELL
from solver.topics.tables import motor_sizes

__all__ = [
    "CHAPTER",
    "FALLS",
    "LOSES",
    "PER_DEPTH",
    "TURNS",
    "checked_pump",
    "failed_well",
    "leaking_well",
    "resting_motor",
    "rising_well",
    "small_pair",
    "two_check_valves",
    "well",
    "worked",
]

CHAPTER = Chapter("wet_well", (*WET_WELL, *SPEED_AND_IMPELLER), WITH_WET_WELL)
worked = by(CHAPTER.formulas)
PER_DEPTH = "The wet well of {station} holds {volume_per_depth} of depth."
FALLS = "With one pump running, it takes {drawdown_time} for the level to drop {drawdown_read}."
LOSES = "While {place} runs, the falling level shows that the wet well loses {drawdown_rate}."
TURNS = "The {alternating_pumps} pumps at {station} alternate."
Diameters = Mapping[str, tuple[float, ...]]
DIAMETERS = {"us": (5, 6, 7, 8, 9, 10, 12), "si": (1.5, 1.8, 2.2, 2.5, 2.8, 3.2, 3.6)}
SMALL = {"us": (4, 5, 6), "si": (1.2, 1.5, 1.8)}
SIDES = {"us": 0.5, "si": 0.1}  # the step of a rectangular well's sides
BETWEEN_FLOATS = {"us": (1.5, 5, 0.5), "si": (0.5, 1.5, 0.1)}
PUMP_OFF = {"us": (1.5, 3, 0.5), "si": (0.4, 0.9, 0.1)}
WATER = {"us": (4, 12.5, 0.5), "si": (1.2, 3.8, 0.1)}
FLOOR = {"us": (16, 32, 0.5), "si": (5, 9.5, 0.1)}
OVERFLOW = {"us": (3, 6, 0.5), "si": (0.9, 1.8, 0.1)}
RISE_LEFT = {"us": (4, 12, 0.5), "si": (1.2, 3.6, 0.1)}
READ = {"us": (6, 30, 1), "si": (15, 75, 1)}  # inches or centimetres
LAYER = {"us": 7.48, "si": 1.0}  # volume of a square foot or metre, one deep
READ_IN_DEPTH = {"us": 12, "si": 100}
VOLUME_PER_SECOND = {"us": 1 / 60, "si": 1 / 1000}  # gal for a gpm, m3 for a L/s
# Those on the line between two rows of EI 11C201 Table 7-1 are left out.
ON_THE_LINE = {"us": (20, 100), "si": (15, 75)}
MOTORS = {
    units: [size for size in motor_sizes(units) if size not in edges]
    for units, edges in ON_THE_LINE.items()
}
LEAKS = ((0, 0), (1, 0), (0, 1), (1, 1))  # which of two check valves leak
HEAD = {"us": (25, 95), "si": (8, 29)}


def round_well(draw: Draw, units: str, diameters: Diameters) -> dict[str, float]:
    """A round well, and a rectangular one that holds about as much."""
    diameter = float(draw.pick(diameters[units]))
    area = 0.785 * diameter**2
    step = SIDES[units]
    width = round(area**0.5 * draw.between(0.65, 0.9) / step) * step
    length = round(area / width / step) * step
    return {
        "well_diameter": diameter,
        "well_width": round(width, 2),
        "well_length": round(length, 2),
        "volume_per_depth": noted(area * LAYER[units]),
    }


def levels(draw: Draw, units: str) -> dict[str, float]:
    """Floats, and depths from the rim."""
    off, between = draw.step(*PUMP_OFF[units]), draw.step(*BETWEEN_FLOATS[units])
    floor, water = draw.step(*FLOOR[units]), draw.step(*WATER[units])
    overflow, left = draw.step(*OVERFLOW[units]), draw.step(*RISE_LEFT[units])
    return {
        "off_level": off,
        "working_depth": between,
        "on_level": round(off + between, 2),
        "water_depth": water,
        "depth_to_floor": floor,
        "depth_to_water": round(floor - water, 2),
        "depth_to_overflow": overflow,
        "storage_depth": left,
    }


def timed(name: str, read: float, rate: float, per_depth: float, units: str) -> dict[str, float]:
    """A change of level and the seconds it takes at a rate."""
    volume = per_depth * read / READ_IN_DEPTH[units]
    seconds = float(round(volume / (rate * VOLUME_PER_SECOND[units])))
    return {f"{name}_read": read, f"{name}_volume": noted(volume), f"{name}_time": seconds}


def well(draw: Draw, units: str, diameters: Diameters = DIAMETERS) -> dict[str, float]:
    """A well, its pump and its inflow: the pump starts every 8 to 30 minutes at the most."""
    values = round_well(draw, units, diameters) | levels(draw, units)
    per_depth, per_minute = values["volume_per_depth"], 60 * VOLUME_PER_SECOND[units]
    volume = per_depth * values["working_depth"]
    flow = round_flow(4 * volume / draw.between(8, 30) / per_minute)
    inflow = round_flow(flow * draw.between(0.22, 0.68))
    fill, down = (volume / per_minute / rate for rate in (inflow, flow - inflow))
    pumps, hours = float(draw.pick((2, 2, 2, 3))), draw.step(1.5, 9, 0.1)
    return values | {
        "working_volume": noted(volume),
        "flow": flow,
        "rated_flow": round_flow(flow / draw.between(0.7, 1.02)),
        "inflow": inflow,
        "drawdown_rate": noted(flow - inflow),
        **timed("drawdown", draw.step(*READ[units]), flow - inflow, per_depth, units),
        **timed("rise", draw.step(*READ[units]), inflow, per_depth, units),
        **timed("closed_rise", draw.step(*READ[units]), inflow, per_depth, units),
        "fill_time": noted(fill, 2),
        "pump_down_time": noted(down, 2),
        "cycle_time": noted(fill + down),
        "starts_per_hour": noted(60 / (fill + down), 2),
        "alternating_pumps": pumps,
        "most_starts": float(draw.pick((4, 5, 6, 8, 10, 12))),
        "least_cycle": float(draw.pick((8, 10, 12, 15, 20, 25, 30))),
        "least_volume": noted(volume, 2),
        "storage_volume": noted(per_depth * values["storage_depth"], 2),
        "sewer_storage": noted(per_depth * values["storage_depth"] * draw.between(0.4, 1.5), 2),
        "hours_per_day": hours,
        "pump_hours": hours,
        "daily_inflow": noted(flow * per_minute * 60 * hours, 2),
    }


def small_pair(draw: Draw, units: str) -> dict[str, float]:
    """Two pumps taking turns in a small station, for which EI 11C201 halves the volume."""
    return well(draw, units, SMALL) | {"alternating_pumps": 2.0}


def failed_well(draw: Draw, units: str) -> dict[str, float]:
    """A well without power, its water still under the overflow."""
    values = well(draw, units)
    down = values["depth_to_overflow"] + values["storage_depth"]
    return values | {"depth_to_water": round(down, 2)}


def leaking_well(draw: Draw, units: str) -> dict[str, float]:
    """A well at night: more comes back through a check valve than comes in.

    A small leak beside a large inflow would drown in the rounding of the steps.
    """
    return night(draw, units, (0.45, 0.88))


def rising_well(draw: Draw, units: str) -> dict[str, float]:
    """A well at night, whose check valves hold, leak, or let most of the water back."""
    return night(draw, units, draw.pick(((0.01, 0.08), (0.15, 0.42), (0.56, 0.85))))


def night(draw: Draw, units: str, share: tuple[float, float]) -> dict[str, float]:
    """A well of which a share of the rise leaks back."""
    values = well(draw, units)
    per_depth, flow = values["volume_per_depth"], values["flow"]
    inflow = flow * draw.between(0.03, 0.09)
    rise = inflow / (1 - draw.between(*share))
    low, high, step = READ[units]
    read = draw.step(low / 3, high / 3, step)
    return values | {
        "inflow": noted(inflow),
        "rise_rate": noted(rise),
        **timed("rise", read, rise, per_depth, units),
        **timed("closed_rise", read, inflow, per_depth, units),
    }


def two_check_valves(draw: Draw, units: str) -> dict[str, float]:
    """The same rise timed with both discharge valves open, and with one of them closed in turn."""
    values = leaking_well(draw, units)
    per_depth, inflow = values["volume_per_depth"], values["inflow"]
    leaks = [inflow * draw.between(0.6, 1.6) * leaks for leaks in draw.pick(LEAKS)]
    whole = inflow + sum(leaks)
    read = values["rise_read"]
    rates = [whole, *(whole - leak for leak in leaks)]
    for name, rate in zip(("", "_1", "_2"), rates, strict=True):
        misread = rate * draw.between(0.985, 1.015)
        values[f"rise_rate{name}"] = noted(misread)
        values[f"rise_time{name}"] = timed("rise", read, misread, per_depth, units)["rise_time"]
    return values


def checked_pump(draw: Draw, units: str) -> dict[str, float]:
    """A pump that moves less than its rated flow, as much, or more."""
    values = well(draw, units)
    share = draw.between(*draw.pick(((0.55, 0.86), (0.92, 1.08), (1.13, 1.3))))
    return values | {"rated_flow": round_flow(values["flow"] / share)}


def resting_motor(draw: Draw, units: str) -> dict[str, float]:
    """A well whose motors start too often, often enough to ask, or seldom."""
    values = well(draw, units)
    flow, inflow, pumps = values["flow"], values["inflow"], values["alternating_pumps"]
    brake = flow * draw.between(*HEAD[units]) / WATER_POWER.figure(units).value / 0.6
    size = next(size for size in MOTORS[units] if size >= min(brake, 130))
    longest = 15 if size < ON_THE_LINE[units][0] else 20 if size < ON_THE_LINE[units][1] else 30
    motor = longest * draw.between(*draw.pick(((0.35, 0.6), (0.72, 0.97), (1.05, 2))))
    station = motor / pumps
    volume = 60 * VOLUME_PER_SECOND[units] * station / (1 / inflow + 1 / (flow - inflow))
    return values | {
        "motor_size": size,
        "motor_cycle": noted(motor, 2),
        "cycle_time": noted(station, 2),
        "working_volume": noted(volume),
    }

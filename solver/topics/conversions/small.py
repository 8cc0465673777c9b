"""Small draws of what no pump station shows: tanks and their gauges, motors by their nameplates alone.

Ranges are common practice, no source; motors come from the published tables.
"""

from solver.engine.draw import Draw
from solver.engine.family import Small
from solver.topics.chapter import Chapter
from solver.topics.formulas import CONVERSIONS, POWER
from solver.topics.readings import by, noted
from solver.topics.tables import motor_sizes

__all__ = [
    "CHAPTER",
    "PART",
    "PRESSURES",
    "RATINGS",
    "TANK",
    "worked",
]

PRESSURE = {"us": (6, 60), "si": (45, 420)}  # at the foot of a standpipe or of a tank
TANKS = {
    "us": (300, 500, 750, 1500, 2500, 6000, 12_000, 40_000, 150_000, 500_000),
    "si": (1, 2, 5, 8, 15, 30, 60, 150, 600, 2000),
}
SMALL = {"us": 3000, "si": 12}  # a volume that a truck, a floor or a hoist may have to carry
CHAPTER = Chapter("units", (*POWER, *CONVERSIONS))
worked = by(CHAPTER.formulas)


def pressures(draw: Draw, units: str) -> dict[str, float]:
    """A gauge at the foot of a standpipe or of a tank."""
    whole = float(round(draw.between(*PRESSURE[units])))
    pressure = whole if units == "us" else round(whole / 5) * 5.0
    height = round(worked({"gauge_pressure": pressure}, "water_height", units), units == "si")
    tap = draw.step(1, 6, 0.5) if units == "us" else draw.step(0.3, 1.8, 0.1)
    scale = noted(worked({"gauge_pressure": pressure}, "second_scale", units))
    return {
        "gauge_pressure": pressure,
        "second_scale": scale,
        "water_height": float(height),
        "tank_depth": round(height + tap, 1),
        "tap_height": tap,
    }


def tank(draw: Draw, units: str) -> dict[str, float]:
    """A tank, how much of it is full, and what a small load of water weighs."""
    full = float(draw.pick(TANKS[units]))
    share = draw.step(12, 92, 1)
    volume = noted(full * share / 100, 2)
    load = noted(SMALL[units] * draw.between(0.05, 1), 2)
    return {
        "tank_volume": full,
        "percent_full": share,
        "empty_volume": noted(full - volume),
        "water_volume": load,
        "volume_converted": noted(worked({"water_volume": volume}, "volume_converted", units), 2),
        "water_weight": noted(worked({"water_volume": load}, "water_weight", units), 2),
    }


def part(draw: Draw, units: str) -> dict[str, float]:
    """The same tank, with the water that is in it now."""
    seen = tank(draw, units)
    return {**seen, "water_volume": round(seen["tank_volume"] - seen["empty_volume"], 6)}


def ratings(draw: Draw, units: str) -> dict[str, float]:
    """Motors marked in horsepower and in kilowatts, and what one does at its shaft."""
    horsepower = draw.pick(motor_sizes("us"))
    kilowatts = draw.pick(motor_sizes("si"))
    rated = {"us": "horsepower_rating", "si": "kilowatt_rating"}[units]
    load = draw.pick(motor_sizes(units)) * draw.between(0.6, 1.0)
    return {
        "horsepower_rating": horsepower,
        "kilowatt_rating": kilowatts,
        "shaft_work": noted(worked({rated: load}, "shaft_work", units)),
    }


PRESSURES, TANK, PART, RATINGS = map(Small, (pressures, tank, part, ratings))

"""What the problems read of a station, and what stands beside it: a generator, its fuel, bypass pumps, trucks.

Sizes of sets, tanks and trucks are those that are sold; a diesel burns about 0.07 gal (0.27 L) for each
kilowatt-hour near full load and more when it is lightly loaded (charts of approximate use, tests/references).
"""

from collections import ChainMap
from collections.abc import Callable, Mapping, MutableMapping
from dataclasses import dataclass
from typing import cast

from solver.engine.draw import Draw
from solver.engine.family import Drawn, Small
from solver.errors import Unfit
from solver.scenario import Place, places_of
from solver.station.need import Need
from solver.station.scene import Readings
from solver.topics.chapter import Chapter
from solver.topics.formulas import NAMEPLATE, STANDBY, WET_WELL
from solver.topics.readings import by, noted

__all__ = [
    "BYPASSED",
    "CHAPTER",
    "ENGINE",
    "FUELED",
    "ON_GENERATOR",
    "OVERLOADED",
    "SETS",
    "TRUCKED",
    "worked",
]

CHAPTER = Chapter("standby", (*STANDBY, *NAMEPLATE, *WET_WELL))
worked = by(CHAPTER.formulas)
SETS = (
    *(20, 25, 30, 40, 50, 60, 80, 100, 125, 150, 175, 200, 250, 300, 350, 400, 500, 600),
    *(750, 800, 1000, 1250, 1500, 2000),
)  # kW
TANKS = {
    "us": (50, 100, 150, 250, 400, 500, 1000, 2000, 3000),
    "si": (200, 400, 600, 1000, 1500, 2000, 4000, 8000),
}
BURNS = {"us": (0.065, 0.085, 0.005), "si": (0.25, 0.32, 0.01)}  # gal/kWh | L/kWh
VOLTS = {"us": (208.0, 240.0, 480.0), "si": (400.0,)}
LOW_VOLTS = 150  # kW: above that, sets in the US are 480 V


@dataclass(frozen=True, slots=True)
class Beside:
    """The readings of a station, and what `more` draws beside them; a scene of the engine."""

    readings: Readings
    more: Callable[[Mapping[str, float], Draw, str], dict[str, float]]

    @property
    def places(self) -> tuple[Place, ...]:
        """Where such stations are."""
        return self.readings.places

    def __call__(self, draw: Draw, units: str) -> Drawn:
        values, place = self.readings(draw, units)
        read = cast("MutableMapping[str, float]", values)  # a chain writes to its first alone
        return Drawn(ChainMap(self.more(values, draw, units), read), place)


def generator(values: Mapping[str, float], draw: Draw, units: str) -> dict[str, float]:
    """What runs at a station, what starts last, and a set that carries it."""
    pumps = float(draw.pick((2, 2, 3)))
    power, factor = values["input_power"], draw.step(0.8, 0.92, 0.01)
    other = noted(max(1, pumps * power * draw.between(0.05, 0.3)), 2)
    load = pumps * power + other
    lightly = draw.pick((False, False, True))
    share = draw.between(0.12, 0.27) if lightly else draw.between(0.35, 0.85)
    rating = min(SETS, key=lambda size: abs(load / size - share))
    return {
        "running_pumps": pumps,
        "other_load": other,
        "running_load": noted(load),
        "load_power_factor": factor,
        "running_kva": noted(load / factor),
        "starting_percent": draw.step(200, 400, 25),
        "generator_rating": float(rating),
        "generator_load": draw.step(60, 85, 5),
        "fuel_per_energy": draw.step(*BURNS[units]),
    }


def overloaded(values: Mapping[str, float], draw: Draw, units: str) -> dict[str, float]:
    """The same with a set that is far too large for its load, fits it, or is too small."""
    seen = generator(values, draw, units)
    low, high = draw.pick(((0.12, 0.28), (0.35, 0.92), (1.05, 1.4)))
    fitting = [size for size in SETS if low <= seen["running_load"] / size <= high]
    if not fitting:
        raise Unfit("No set of this size is sold.")
    return {**seen, "generator_rating": float(draw.pick(fitting))}


def engine(draw: Draw, units: str) -> dict[str, float]:
    """A set by itself: its rating, its volts, how fast it turns."""
    hertz = 60 if units == "us" else 50
    poles = draw.pick((2.0, 4.0, 4.0, 6.0))
    rating = float(draw.pick(SETS))
    off = draw.pick((-0.045, -0.03, -0.02, 0.02, 0.035, 0.05))
    return {
        "generator_rating": rating,
        "generator_power_factor": 0.8,
        "generator_kva": rating / 0.8,
        "generator_volts": draw.pick(VOLTS[units][-1:] if rating > LOW_VOLTS else VOLTS[units]),
        "generator_poles": poles,
        "engine_speed": float(round(120 * hertz / poles * (1 + off))),
        "generator_frequency": round(hertz * (1 + off), 1),
    }


def fueled(draw: Draw, units: str) -> dict[str, float]:
    """A tank, what its gauge shows, and what the engine burns."""
    rating = float(draw.pick([size for size in SETS if 30 <= size <= 800]))
    load = noted(rating * draw.between(0.35, 0.85))
    burns = draw.step(*BURNS[units])
    rate = noted(load * burns)
    tanks = [tank for tank in TANKS[units] if 12 * rate <= tank <= 110 * rate]
    tank = float(draw.pick(tanks or TANKS[units][-1:]))
    level, reserve = draw.step(45, 100, 5), draw.step(5, 10, 5)
    return {
        "running_load": load,
        "fuel_per_energy": burns,
        "fuel_rate": rate,
        "fuel_tank": tank,
        "fuel_level": level,
        "fuel_reserve": reserve,
        "usable_fuel": noted(tank * (level - reserve) / 100),
        "fuel_hours": draw.pick((8.0, 12.0, 24.0, 24.0, 36.0, 48.0, 72.0)),
    }


INFLOWS = {"us": (60, 1200, 10), "si": (4, 75, 1)}
BYPASS_PUMPS = {
    "us": (150, 250, 400, 600, 800, 1000, 1500, 2000),
    "si": (10, 15, 25, 40, 50, 65, 95, 125),
}


def bypassed(draw: Draw, units: str) -> dict[str, float]:
    """An average inflow with its peak, and bypass pumps that can be rented."""
    inflow, factor = draw.step(*INFLOWS[units]), draw.step(2, 4, 0.1)
    peak = noted(inflow * factor)
    rented = [size for size in BYPASS_PUMPS[units] if 1.15 <= peak / size <= 4.5]
    return {
        "inflow": inflow,
        "peaking_factor": factor,
        "peak_inflow": peak,
        "bypass_pump": float(draw.pick(rented or BYPASS_PUMPS[units][:1])),
    }


TRUCKS = {
    "us": (2000.0, 3000.0, 3500.0, 4000.0, 5000.0, 6000.0),
    "si": (8.0, 10.0, 12.0, 15.0, 20.0, 25.0),
}
HAULED = {"us": (50, 180, 5), "si": (3, 12, 0.5)}


def trucked(draw: Draw, units: str) -> dict[str, float]:
    """Trucks that haul what comes in while nothing pumps."""
    return {
        "truck_volume": draw.pick(TRUCKS[units]),
        "round_trip": draw.step(35, 120, 5),
        "inflow": draw.step(*HAULED[units]),
    }


STATION = Readings(Need(drives=("direct",), sizes=(5, 100)))
ON_GENERATOR, OVERLOADED = Beside(STATION, generator), Beside(STATION, overloaded)
LIFTS = places_of("lift")
ENGINE, FUELED = Small(engine), Small(fueled)
BYPASSED, TRUCKED = Small(bypassed, LIFTS), Small(trucked, LIFTS)

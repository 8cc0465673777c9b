"""Small draws of chemical feed: doses, solutions as they are delivered, and pumps that are sold.

Strengths and specific gravities are those of deliveries (makers' data sheets, from memory), doses those
that plants use (common practice, no source).
"""

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.family import Small
from solver.scenario import places_of
from solver.topics.chapter import Chapter
from solver.topics.formulas import CHEMICAL, POWER
from solver.topics.readings import by, noted
from solver.topics.scenes import NO_NUMBERS

__all__ = [
    "ALUM",
    "CHAPTER",
    "CHLORINE",
    "DILUTED",
    "FERRIC",
    "HYPO",
    "IN_WORDS",
    "OVERSIZED",
    "SMALL_FLOW",
    "TREATS",
    "worked",
]

CHAPTER = Chapter("chemical", (*CHEMICAL, *POWER))
TREATS = "A plant treats {daily_flow} and doses it with {dose} of "
HYPO = "sodium hypochlorite, counted as chlorine"
worked = by(CHAPTER.formulas)
FLOWS = {"us": (0.4, 9.5, 0.1), "si": (1500, 36_000, 100)}  # MGD | m3/day
SMALL_FLOWS = {"us": (60, 650, 10), "si": (4, 40, 0.5)}  # gpm | L/s
CAPACITIES = {
    "us": (0.5, 1, 2, 4, 8, 12, 20, 30, 50, 75, 120, 200, 300),
    "si": (2, 4, 8, 15, 30, 45, 75, 120, 200, 300, 450, 750, 1200),
}  # gph | L/h
TANKS = {
    "us": (55, 150, 300, 500, 1000, 2500, 5000),
    "si": (200, 500, 1000, 2000, 4000, 10_000, 20_000),
}


class Chemical(NamedTuple):
    """Doses (mg/L: from, to, step), and its deliveries: strength (percent by weight) with specific gravity."""

    doses: tuple[float, float, float]
    delivered: tuple[tuple[float, float], ...]


HYPOCHLORITE = Chemical((2.5, 12, 0.5), ((10, 1.15), (11, 1.17), (12, 1.19), (12.5, 1.2)))
FERRIC_CHLORIDE = Chemical((12, 70, 1), ((37, 1.37), (38, 1.39), (40, 1.42), (42, 1.45)))
ALUM_SOLUTION = Chemical((20, 110, 5), ((48, 1.33), (48.5, 1.33), (49, 1.34)))


def fed(chemical: Chemical) -> Callable[[Draw, str], dict[str, float]]:
    """What a chemical's feed is at a plant, and a pump that fits it."""

    def values(draw: Draw, units: str) -> dict[str, float]:
        strength, gravity = draw.pick(chemical.delivered)
        seen = {
            "daily_flow": draw.step(*FLOWS[units]),
            "dose": draw.step(*chemical.doses),
            "solution_strength": float(strength),
            "specific_gravity": gravity,
        }
        return {**seen, **_noted(seen, draw, units)}

    return values


def _noted(seen: dict[str, float], draw: Draw, units: str) -> dict[str, float]:
    """What is written down of it, and the settings of its pump."""

    def reads(name: str) -> float:
        return noted(worked(seen, name, units))

    hour, minute = reads("solution_hour"), reads("solution_minute")
    sold = [size for size in CAPACITIES[units] if hour <= 0.9 * size]
    capacity = float(draw.pick(sold[:2]))
    stroke = draw.step(40, 100, 5)
    speed = draw.step(25, 95, 5)
    seconds = _timed(draw, minute)
    drawn = minute * seconds / 60
    step = next(size for size in (1, 2, 5, 10, 20, 50, 100) if drawn < 200 * size)
    residual = draw.step(0.5, 2.5, 0.1)
    return {
        "chemical_feed": reads("chemical_feed"),
        "solution_weight": reads("solution_weight"),
        "solution_flow": reads("solution_flow"),
        "solution_hour": hour,
        "solution_minute": minute,
        "wanted_minute": noted(minute * draw.pick((0.7, 0.8, 0.85, 1.15, 1.2, 1.3))),
        "feeder_capacity": capacity,
        "stroke_setting": stroke,
        "speed_setting": speed,
        "cylinder_volume": float(max(round(drawn / step), 5) * step),
        "cylinder_time": seconds,
        "solution_on_hand": float(draw.pick(_tanks(reads("solution_flow"), units))),
        "chlorine_residual": residual,
        "chlorine_demand": round(max(seen["dose"] - residual, 1.2), 1),
    }


def _timed(draw: Draw, minute: float) -> float:
    """How long (s) a cylinder of 1 L or less is drawn down; a full minute would leave nothing to work out."""
    fits = [time for time in (20.0, 30.0, 40.0, 45.0, 90.0, 120.0) if minute * time / 60 <= 1000]
    return draw.pick(fits[-3:] or [15.0])


def _tanks(daily: float, units: str) -> list[float]:
    """Tanks that hold from three days' use to two months'; the largest where none does."""
    return [t for t in TANKS[units] if 3 * daily <= t <= 60 * daily] or [TANKS[units][-1]]


def small_flow(draw: Draw, units: str) -> dict[str, float]:
    """A pump's flow that is dosed while it runs."""
    return {"flow": draw.step(*SMALL_FLOWS[units]), "dose": draw.step(*FERRIC_CHLORIDE.doses)}


def oversized(draw: Draw, units: str) -> dict[str, float]:
    """A feed pump that is far too large for what it feeds, fits it, or is too small."""
    seen = fed(HYPOCHLORITE)(draw, units)
    low, high = draw.pick(((0.02, 0.09), (0.12, 0.95), (1.05, 2.5)))
    needed = seen["solution_hour"]
    sold = [float(size) for size in CAPACITIES[units] if low <= needed / size <= high]
    return {**seen, "feeder_capacity": draw.pick(sold or [noted(needed / high, 2)])}


BATCHES = {"us": (20, 300, 5), "si": (80, 1200, 20)}  # gal | L


def diluted(draw: Draw, units: str) -> dict[str, float]:
    """A batch mixed from a strong solution and water."""
    strong, _ = draw.pick(HYPOCHLORITE.delivered)
    batch, mixed = draw.step(*BATCHES[units]), draw.step(0.5, 6, 0.25)
    seen = {"strong_strength": float(strong), "mixed_strength": mixed, "mixed_volume": batch}
    return {**seen, "strong_volume": noted(worked(seen, "strong_volume", units))}


# Feed pumps are at the plant.
PLACES = places_of("plant")
CHLORINE, FERRIC, ALUM = (
    Small(fed(chemical), PLACES) for chemical in (HYPOCHLORITE, FERRIC_CHLORIDE, ALUM_SOLUTION)
)
OVERSIZED, DILUTED = Small(oversized, PLACES), Small(diluted, PLACES)
SMALL_FLOW = Small(small_flow)
IN_WORDS = replace(NO_NUMBERS, places=PLACES)

"""What the problems share: pumps that change speed or impeller, and pumps on a system.

Each gives its quantities in the units of the system. Speeds are those of loaded motors on 60 Hz
(US) and 50 Hz (metric). Impellers, shares of static head and shapes of curves are common practice,
no source; the pumps are those of topics/drawn.
"""

from solver.engine.draw import Draw
from solver.scenario import WITHOUT_LIFT
from solver.topics.chapter import Chapter
from solver.topics.constants import HOURLY_VOLUME
from solver.topics.drawn.pumps import larger_pump, pump
from solver.topics.drawn.readings import by, noted, round_flow
from solver.topics.formulas import COST, HEAD, POWER, SPEED_AND_IMPELLER, WET_WELL

from .curves import crossing, pump_curve, system_curve

__all__ = [
    "BEST",
    "CHAPTER",
    "FRICTION",
    "FRICTION_ALONE",
    "PUMP",
    "SPEEDS",
    "SQUARES",
    "TWINS",
    "on_a_system",
    "other_speed",
    "slower",
    "slower_lift",
    "speeds",
    "to_step",
    "trimmed",
    "worked",
]

CHAPTER = Chapter("speed", (*SPEED_AND_IMPELLER, *HEAD, *POWER, *COST, *WET_WELL))
# Where the cube law holds: at places that lift no water.
FRICTION_ALONE = Chapter("speed", CHAPTER.formulas, WITHOUT_LIFT)
worked = by(CHAPTER.formulas)
BEST = "At its best efficiency point, {place} moves"
FRICTION = "All of its head is friction."
PUMP = ("shutoff_head", "rated_head", "rated_flow")
SQUARES = "Treat both curves as changing with the square of the flow."
TWINS = (
    "A second pump just like {place} runs with it on the same main. The table shows what one pump "
    "does alone, and the head that the main needs. "
)

SPEEDS = {"us": (3500, 1770, 1760, 1750, 1170, 1160, 880), "si": (2900, 1460, 1450, 970, 730)}
RATIOS = ((0.6, 0.95), (0.6, 0.95), (1.06, 1.2))  # most are slowed down
IMPELLERS = {"us": (6, 16, 0.25), "si": (160, 400, 5)}
TRIMS = {"us": 0.125, "si": 2.0}
STEP = {"us": 1.0, "si": 0.1}  # how heads are noted


def to_step(value: float, units: str) -> float:
    """A head as it is noted: whole feet, tenths of a metre."""
    return round(round(value / STEP[units]) * STEP[units], 2)


def at_another(draw: Draw, units: str, machine: dict[str, float], ratio: float) -> dict[str, float]:
    """A pump with what it does at a ratio of its speed or diameter."""
    return machine | {
        "new_flow": noted(machine["flow"] * ratio),
        "new_head": to_step(machine["head"] * ratio**2, units),
        "new_shaft_power": noted(machine["brake_power"] * ratio**3),
    }


def speeds(draw: Draw, units: str, wanted: float) -> dict[str, float]:
    """A speed, and another near a wanted ratio of it, read to ten rpm."""
    speed = float(draw.pick(SPEEDS[units]))
    new = float(round(speed * wanted, -1))
    return {"pump_speed": speed, "new_speed": new, "speed_cut": float(round(100 * (1 - wanted)))}


def other_speed(draw: Draw, units: str) -> dict[str, float]:
    """A pump slowed down, or now and then sped up by its belts."""
    turning = speeds(draw, units, draw.between(*draw.pick(RATIOS)))
    ratio = turning["new_speed"] / turning["pump_speed"]
    return at_another(draw, units, pump(draw, units), ratio) | turning


def slower(draw: Draw, units: str) -> dict[str, float]:
    """A larger pump slowed by a drive, with nothing but friction to overcome."""
    machine = larger_pump(draw, units)
    turning = speeds(draw, units, draw.between(0.6, 0.92))
    ratio = turning["new_speed"] / turning["pump_speed"]
    return at_another(draw, units, machine, ratio) | turning | used(draw, units, machine)


def used(draw: Draw, units: str, machine: dict[str, float]) -> dict[str, float]:
    """The hours a pump runs in a year, and what a volume takes."""
    per_volume = machine["input_power"] * HOURLY_VOLUME.figure(units).value / machine["flow"]
    return {"yearly_hours": draw.step(2000, 8000, 250), "energy_per_volume": noted(per_volume)}


def slower_lift(draw: Draw, units: str) -> dict[str, float]:
    """The same where water is lifted: a good part of the head is static, and stays."""
    machine = larger_pump(draw, units)
    share = draw.between(0.3, 0.7)
    return (
        machine
        | used(draw, units, machine)
        | {
            "static_head": to_step(machine["head"] * share, units),
            "new_flow": round_flow(machine["flow"] * draw.between(0.5, 0.85)),
        }
    )


def trimmed(draw: Draw, units: str) -> dict[str, float]:
    """A pump whose impeller is turned down by a fifth at the most."""
    diameter, step = draw.step(*IMPELLERS[units]), TRIMS[units]
    new = round(round(diameter * draw.between(0.82, 0.96) / step) * step, 3)
    cut = {"impeller_diameter": diameter, "new_diameter": new}
    return at_another(draw, units, pump(draw, units), new / diameter) | cut


def elevations(draw: Draw, units: str, static: float) -> dict[str, float]:
    """Two water levels so far apart."""
    low = to_step(draw.between(*{"us": (400, 900), "si": (120, 280)}[units]), units)
    return {"suction_elevation": low, "discharge_elevation": round(low + static, 2)}


def on_a_system(
    draw: Draw,
    units: str,
    static: tuple[float, float] = (0.25, 0.7),
    friction: tuple[float, float] = (0.6, 1.7),
) -> dict[str, float]:
    """A pump's curve and a system's, by the shares of static head and of friction.

    Friction is against what the rated head leaves for it: below one the pump runs out beyond its
    rated flow, above one it stays short of it.
    """
    machine = pump(draw, units)
    rated_flow, rated = machine["flow"], to_step(machine["head"], units)
    shutoff = to_step(rated * draw.between(1.18, 1.45), units)
    lift = to_step(rated * draw.between(*static), units)
    lost = to_step(max((rated - lift) * draw.between(*friction), STEP[units]), units)
    at = crossing(pump_curve(shutoff, rated_flow, rated), system_curve(lift, rated_flow, lost))
    pair = crossing(
        pump_curve(shutoff, rated_flow, rated).in_parallel(2), system_curve(lift, rated_flow, lost)
    )
    known = round_flow(rated_flow * draw.between(0.45, 0.8))
    speed = float(draw.pick(SPEEDS[units]))
    return machine | elevations(draw, units, lift) | {
        "pump_speed": speed,
        "rated_flow": rated_flow,
        "rated_head": rated,
        "shutoff_head": shutoff,
        "static_head": lift,
        "rated_friction": lost,
        "known_flow": known,
        "known_friction": noted(lost * (known / rated_flow) ** 2, 2),
        "flow": noted(at.flow),
        "head": noted(at.head),
        "parallel_flow": noted(pair.flow),
    }  # fmt: skip

"""What the problems share: a motor's three legs that could exist, and how a question puts them.

Every scene gives each reading to three figures, about an average that has three figures too, so
that rounding the average moves nothing. Amps are in A, volts in V, powers in hp or kW. Ranges are
common practice, no source; motors are from the published tables, their amps at other volts by the
ratios of NEC Table 430.250.
"""

from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.family import Scene
from solver.topics.chapter import Chapter
from solver.topics.drawn.readings import AMPS, Range, by, grid_of, noted, offsets, only, three
from solver.topics.formulas import BALANCE
from solver.topics.tables import Motor, motors, table_rows

__all__ = [
    "AMPS",
    "CHAPTER",
    "GRAPH",
    "LEGS_READ",
    "METHOD",
    "POINTS",
    "TURNS",
    "VOLTS",
    "VOLTS_READ",
    "Ranges",
    "both_causes",
    "legs",
    "loaded",
    "one_cause",
    "stated",
]

CHAPTER = Chapter("balance", BALANCE)
worked = by(CHAPTER.formulas)
METHOD = "the largest deviation from the average, divided by the average"
VOLTS = ("volts_ab", "volts_bc", "volts_ca")
UNBALANCE = {"amps": "current_unbalance", "volts": "voltage_unbalance"}
TURNS = ("", "_2", "_3")  # as found, rolled once, rolled twice
LEGS_READ = "A qualified person reads {amps_a}, {amps_b} and {amps_c} on the three legs of {place}."

VOLTS_READ = (
    "A qualified person reads {volts_ab}, {volts_bc} and {volts_ca} line to line at {place}."
)

GRAPH = "The points of NEMA MG 1 Figure 14-1 are in the table. Between points, use a straight line."

POINTS = tuple(
    (f"Allowed load at {row['unbalance']:g}% voltage unbalance", f"{row['derating']:g}% of rating")
    for row in table_rows("derating")
    if row["unbalance"]
)

SUPPLY = {"us": (460, 460, 230, 208), "si": (400,)}
AMPS_RATIO = {460: 1, 230: 2, 208: 2.2, 400: 1}
SERVICE_FACTORS = {"us": (1.15, 1.15, 1.25), "si": (1.1, 1.15)}
LEAST_AMPS, MOST_AMPS = 5, 220  # full-load amps of the motors drawn
JITTER = 0.1  # what two readings of one leg differ by, as a share of the largest deviation


class Ranges(NamedTuple):
    """What a scene draws from; where there are several ranges, one is picked.

    `amps` and `volts`: the unbalance in percent. `middle`: the smaller of the other two
    deviations, as a share of the largest. `load`: average amps over nameplate amps.
    Where `even` is False, the average of the amps may have more figures than the readings.
    """

    amps: tuple[Range, ...] = ((4.6, 12.5),)
    volts: tuple[Range, ...] = ((1.9, 4.6),)
    middle: Range = (0.2, 0.5)
    load: tuple[Range, ...] = ((0.7, 0.92),)
    even: bool = True


def nameplate(draw: Draw, units: str) -> tuple[Motor, float, float]:
    """A motor, its supply volts and its nameplate full-load amps."""
    volts = draw.pick(SUPPLY[units])
    ratio = AMPS_RATIO[volts]
    motor = draw.pick([m for m in motors(units) if LEAST_AMPS <= m.amps * ratio <= MOST_AMPS])
    return motor, volts, noted(motor.amps * ratio)


USUAL = Ranges()


def legs(ranges: Ranges = USUAL) -> Scene:
    """A scene of one motor's nameplate and its readings of amps and volts."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        motor, supply, full_load = nameplate(draw, units)
        load, percent, skew = (
            draw.between(*draw.pick(part)) for part in (ranges.load, ranges.amps, ranges.volts)
        )
        amps, average = three(draw, full_load * load, percent, ranges.middle)
        if not ranges.even:
            amps, average = _one_more(draw, amps)
        volts, volts_average = three(
            draw, round(supply * draw.between(0.985, 1.03)), skew, ranges.middle
        )
        return (
            dict(zip(AMPS + VOLTS, amps + volts, strict=True))
            | _summed_up("amps", amps, average)
            | _summed_up("volts", volts, volts_average)
            | {
                "motor_size": motor.size,
                "full_load_amps": full_load,
                "load_amps": float(round(100 * max(amps) / full_load)),
                "service_factor": draw.pick(SERVICE_FACTORS[units]),
                "balanced_rise": draw.step(60, 105, 5),
            }
        )

    return scene


def _one_more(draw: Draw, readings: list[float]) -> tuple[list[float], float]:
    """One reading a step of the meter up or down, and the average then."""
    first, *others = readings
    moved = [round(first + draw.pick((1, -1)) * grid_of(max(readings)), 2), *others]
    return moved, sum(moved) / len(moved)


def _summed_up(kind: str, readings: list[float], average: float) -> dict[str, float]:
    """What a report says of three readings."""
    deviation = round(max(abs(reading - average) for reading in readings), 2)
    return {
        f"{kind}_average": average,
        f"{kind}_deviation": deviation,
        f"{kind}_highest": max(readings),
        UNBALANCE[kind]: round(100 * deviation / average, 1),
    }


def stated(name: str, *values: float) -> Scene:
    """The scene of `legs` with one quantity stated outright: a limit, or a figure of a report."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        return legs()(draw, units) | {name: draw.pick(values)}

    return scene


def one_cause(draw: Draw, units: str) -> dict[str, float]:
    """Nine readings whose high leg either stays with the line or moves with the motor lead."""
    count, grid = _steady_load(draw, units)
    furthest, *others = offsets(draw, count, draw.between(7, 12), (0.35, 0.5))
    uneven, even = draw.shuffled((furthest, *others)), [0, 0, 0]
    lines, leads = draw.pick(((uneven, even), (even, uneven)))
    return _nine(draw, (count, grid), lines, leads, max(1, round(furthest * JITTER)))


def both_causes(draw: Draw, units: str) -> dict[str, float]:
    """Nine readings of a supply and a motor that are each a little uneven."""
    count, grid = _steady_load(draw, units)
    lines, leads = (_uneven(draw, count, draw.between(2, 6)) for _ in ("supply", "motor"))
    return _nine(draw, (count, grid), lines, leads, 1)


def _steady_load(draw: Draw, units: str) -> tuple[int, float]:
    """The average amps of a motor in steps of its meter, and the size of a step."""
    _, _, full_load = nameplate(draw, units)
    average = full_load * draw.between(0.7, 0.9)
    grid = grid_of(average * 1.15)
    return round(average / grid), grid


def _uneven(draw: Draw, count: int, percent: float) -> list[int]:
    side = draw.pick((1, -1))
    return [side * steps for steps in draw.shuffled(offsets(draw, count, percent, (0.2, 0.5)))]


def _nine(
    draw: Draw, scale: tuple[int, float], lines: list[int], leads: list[int], jitter: int
) -> dict[str, float]:
    """Readings by leg for each connection: lead 0 is on leg A, then on B, then on C."""
    count, grid = scale
    values = {}
    for rolled, turn in enumerate(TURNS):
        steps = [
            count + lines[leg] + leads[(leg - rolled) % 3] + round(draw.between(-jitter, jitter))
            for leg in range(3)
        ]
        for leg, reading in zip("abc", steps, strict=True):
            values[f"amps_{leg}{turn}"] = round(reading * grid, 2)
        average = round(sum(steps) / 3)
        values[f"amps_average{turn}"] = round(average * grid, 2)
        values[f"amps_deviation{turn}"] = round(max(abs(s - average) for s in steps) * grid, 2)
    return values


def loaded(draw: Draw, units: str) -> dict[str, float]:
    """A shaft load within the derated power, over it, or over the nameplate itself."""
    values = legs(Ranges(volts=((2.5, 4.7),)))(draw, units)
    read = only(values, "volts_average", "volts_deviation")
    share = worked(read, "derating", units) / 100
    zones = ((0.72 * share, 0.96 * share), (1.025 * share, 0.98), (1.03, 1.1))
    load = values["motor_size"] * draw.between(*draw.pick(zones))
    return values | {"brake_power": noted(load)}

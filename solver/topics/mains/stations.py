"""The stations the chapter reads its problems off, and small draws of what no station has.

Pressure waves run at about 1,000 to 1,500 ft/s in plastic and 3,300 to 4,100 ft/s in iron and steel pipe; weirs,
flumes and meters have sizes that are sold (common practice, no source).
"""

from math import ceil

from solver.engine.draw import Draw
from solver.engine.family import Small
from solver.scenario import places_of
from solver.station.need import Need
from solver.station.scene import Readings
from solver.topics.chapter import Chapter
from solver.topics.formulas import HEAD, MAINS, WET_WELL
from solver.topics.readings import by, noted
from solver.topics.tables import table_rows

from .formulas_measuring import flume_row

__all__ = [
    "CHAPTER",
    "CLOSING",
    "CREST",
    "FLUME",
    "FLUSH",
    "HIGH",
    "LONG",
    "MAIN",
    "NOTCH",
    "ORIFICE",
    "SUBMERGED",
    "SURGE",
    "VENTURI",
    "worked",
]

CHAPTER = Chapter("mains", (*MAINS, *HEAD, *WET_WELL), redrawn=())
worked = by(CHAPTER.formulas)
LIFTS, PLANT = places_of("lift"), places_of("plant")

MAIN = Readings(Need(kinds=("lift",)))
HIGH = Readings(Need(kinds=("lift",), pumps=2))
LONG = Readings(Need(kinds=("lift",), part=(10, 62)))  # much friction: far to go
BORES = {
    "us": (4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 24.0),
    "si": (100.0, 150.0, 200.0, 250.0, 300.0, 350.0, 400.0, 500.0, 600.0),
}
WAVES = {  # plastic; iron and steel
    "us": ((1000, 1500, 50), (3300, 4100, 50)),
    "si": ((300, 460, 10), (1000, 1250, 10)),
}


def flush(draw: Draw, units: str) -> dict[str, float]:
    """A main, the velocity that is wanted of it, and a pump's flow."""
    bore = draw.pick(BORES[units])
    velocity = draw.pick((2.0, 2.5, 3.0, 3.5) if units == "us" else (0.6, 0.75, 0.9, 1.1))
    flow = worked({"velocity": velocity, "pipe_diameter": bore}, "flow", units)
    return {
        "pipe_diameter": bore,
        "velocity": velocity,
        "flow": noted(flow * draw.between(0.85, 1.25), 2),
    }


def surge(draw: Draw, units: str) -> dict[str, float]:
    """A main whose flow is stopped by a valve that closes slower than its wave comes back."""
    us = units == "us"
    length = draw.step(800, 7000, 50) if us else draw.step(250, 2200, 10)
    wave = draw.step(*draw.pick(WAVES[units]))
    velocity = draw.step(2, 6.5, 0.1) if us else draw.step(0.6, 2, 0.05)
    there_and_back = 2 * length / wave
    slow = there_and_back * draw.between(1.5, 9)
    return {
        "pipe_length": length,
        "wave_speed": wave,
        "velocity": velocity,
        "closing_time": float(f"{slow:.2g}"),
    }


def closing(draw: Draw, units: str) -> dict[str, float]:
    """The same, and a valve that closes faster than the wave, slower, or far slower."""
    drawn = surge(draw, units)
    times = draw.between(*draw.pick(((0.4, 0.85), (1.5, 7), (13, 30))))
    time = times * 2 * drawn["pipe_length"] / drawn["wave_speed"]
    return {**drawn, "closing_time": float(f"{time:.2g}")}


def notch(draw: Draw, units: str) -> dict[str, float]:
    """A V-notch weir and the head over it."""
    row = draw.pick(table_rows("v_notch"))
    head = draw.step(0.2, 1.2, 0.01) if units == "us" else draw.step(0.06, 0.36, 0.005)
    return {
        "notch_angle": row["angle"],
        "notch_constant": row[units],
        "weir_head": head,
        "weir_flow": noted(row[units] * head**2.5),
    }


def crest(draw: Draw, units: str) -> dict[str, float]:
    """A rectangular weir: a head of a third of its crest at most, and twice that or more below the crest."""
    us = units == "us"
    length = draw.step(1.5, 8, 0.5) if us else draw.step(0.5, 2.5, 0.1)
    most = min(length / 3, 1.2 if us else 0.36)
    head = round(draw.between(0.2 if us else 0.06, most), 2 if us else 3)
    least = ceil(2 * head * 10) / 10 if us else ceil(2 * head * 20) / 20
    floor = draw.step(max(least, 1), 3.5, 0.1) if us else draw.step(max(least, 0.3), 1.1, 0.05)
    return {
        "crest_length": length,
        "contracted_crest": length,
        "weir_head": head,
        "crest_height": floor,
        "upstream_depth": round(floor + head, 3),
    }


def flume(draw: Draw, units: str) -> dict[str, float]:
    """A Parshall flume of the table, with a head in the range in which it is free."""
    row = draw.pick(table_rows("parshall"))
    least, most = row[f"{units}_least"], row[f"{units}_most"]
    head = round(draw.between(1.5 * least, 0.9 * most), 2 if units == "us" else 3)
    seen = {"flume_throat": row[f"{units}_throat"], "flume_head": head}
    return {
        **seen,
        "flume_constant": row[units],
        "flume_exponent": row["exponent"],
        "flume_flow": noted(worked(seen, "flume_flow", units)),
    }


def submerged(draw: Draw, units: str) -> dict[str, float]:
    """A flume of some size, with little water behind it or much."""
    seen = flume(draw, units)
    head = seen["flume_head"]
    limit = flume_row(seen["flume_throat"], units)["submergence"] / 100
    share = draw.between(*draw.pick(((0.2, limit - 0.06), (limit + 0.06, 0.93))))
    behind = round(head * share, 2 if units == "us" else 3)
    return {
        **seen,
        "downstream_head": behind,
        "submergence": float(round(100 * behind / head)),
    }


def meter(
    draw: Draw, units: str, ratios: tuple[float, float], coefficient: float
) -> dict[str, float]:
    """A meter that narrows the pipe, and the differential at an ordinary flow."""
    us = units == "us"
    bore = draw.pick(BORES[units][:-2])
    step = 0.5 if us else 10
    narrow = step * round(bore * draw.between(*ratios) / step)
    pipe_velocity = draw.between(2.5, 7) if us else draw.between(0.8, 2.1)
    ratio = narrow / bore
    ideal = pipe_velocity / ratio**2 / coefficient
    seen = {"throat_velocity": ideal, "meter_ratio": ratio}
    return {
        "pipe_diameter": bore,
        "throat_diameter": float(narrow),
        "discharge_coefficient": coefficient,
        "differential_head": noted(worked(seen, "differential_head", units)),
    }


def venturi(draw: Draw, units: str) -> dict[str, float]:
    """A Venturi tube, or a meter that shows its differential in percent."""
    full = noted(draw.between(300, 6000) if units == "us" else draw.between(20, 400), 2)
    share = float(draw.pick((9, 12, 16, 20, 25, 30, 36, 40, 45, 49, 55, 64, 70, 81)))
    return {
        "full_flow": full,
        "differential_share": share,
        **meter(draw, units, (0.45, 0.65), 0.98),
    }


def orifice(draw: Draw, units: str) -> dict[str, float]:
    """An orifice plate."""
    return meter(draw, units, (0.5, 0.7), 0.61)


FLUSH = Small(flush, LIFTS)
SURGE, CLOSING = Small(surge, LIFTS), Small(closing, LIFTS)
NOTCH, CREST, FLUME, SUBMERGED, VENTURI, ORIFICE = (
    Small(values, PLANT) for values in (notch, crest, flume, submerged, venturi, orifice)
)

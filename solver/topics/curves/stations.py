"""The stations the chapter reads its problems off, and small draws of what no station has.

Plunger, diaphragm and progressing-cavity pumps move sludge: sizes, strokes and speeds that are sold
(UFC 3-240-02N has 75 to 250 gpm for plunger pumps, and 40 to 200 rpm for progressing cavities; the rest
is common practice, no source).
"""

from dataclasses import replace

from solver.engine.draw import Draw
from solver.engine.family import Small
from solver.errors import NotSolvable
from solver.scenario import places_of
from solver.station.need import Need
from solver.station.scene import OneOf, Readings
from solver.station.station import Station
from solver.topics.chapter import Chapter
from solver.topics.formulas import CURVES, POWER
from solver.topics.readings import by, noted

__all__ = [
    "AS_BUILT",
    "CHAPTER",
    "DIAPHRAGM",
    "MISPLACED",
    "PLUNGER",
    "ROTOR",
    "SHEETS",
    "SHEETS_AT_PUMP",
    "SHUTOFF_STORY",
    "TESTED",
    "TWO",
    "worked",
]

CHAPTER = Chapter("curves", (*CURVES, *POWER), redrawn=())
worked = by(CHAPTER.formulas)
MOST_BY_PLUNGERS = {"us": 270, "si": 1020}  # gal | L a minute, slip not counted
RADIAL = ("lift", "flooded", "above", "booster")
AT_GRADE = ("flooded", "booster")  # kinds with a pressure on the suction gauge

SHEETS = Readings(Need(kinds=RADIAL, stages=False))
SHEETS_AT_PUMP = Readings(Need(kinds=("flooded", "above", "booster"), stages=False))


def at_share(low: float, high: float) -> Readings:
    """A pump that works at such a share of its best flow."""

    def change(station: Station, draw: Draw) -> Station:
        share, (flow, head) = draw.between(low, high), station.rated
        pump = station.pump
        falls = pump.shutoff - (pump.shutoff - 1) * share**pump.bend
        return replace(station, pump=replace(pump, flow=flow / share, head=head / falls))

    return Readings(Need(kinds=RADIAL, stages=False), change)


# Far left of the best point, near it, and far out.
MISPLACED = OneOf((at_share(0.4, 0.64), at_share(0.8, 1.1), at_share(1.26, 1.34)))


def worn(low: float, high: float) -> Readings:
    """A pump whose impeller has lost such a share of its diameter, with both gauges at one height."""

    def change(station: Station, draw: Draw) -> Station:
        now = replace(station, pump=replace(station.pump, worn=draw.between(low, high)))
        if now.reading("closed_suction") < station.system.rounded(1.5, 10):
            raise NotSolvable("its suction gauge shows next to nothing")
        return now

    return Readings(Need(kinds=AT_GRADE, level_gauges=True, stages=False), change)


AS_BUILT = worn(0.0, 0.005)
TESTED = worn(0.0, 0.09)
SHUTOFF_STORY = OneOf((worn(0.035, 0.11), worn(0.0, 0.015), worn(-0.08, -0.035)))


def two(draw: Draw, units: str) -> dict[str, float]:
    """Two booster pumps, and the pressure before them: at least the 20 psi of Ten States Standards (water)."""
    us = units == "us"
    flows, heads, gauge = (
        ((120, 900, 10), (45, 115, 1), (20, 45, 0.5))
        if us
        else ((8, 60, 0.5), (14, 35, 0.5), (140, 310, 2))
    )
    flow, head = draw.step(*flows), draw.step(*heads)
    return {
        "flow": flow,
        "second_flow": noted(flow * draw.between(0.55, 1.5), 2),
        "head": head,
        "second_head": float(f"{head * draw.between(0.6, 1.4):.{2 if head < 100 else 3}g}"),
        "suction_gauge": draw.step(*gauge),
    }


def driven(
    draw: Draw, units: str, each: float, rate: float, low: float, high: float
) -> dict[str, float]:
    """What a displacement pump moves a minute: volume at a time, times a minute, efficiency from and to."""
    efficiency = float(round(draw.between(low, high)))
    per_minute = each * rate / (1 if units == "us" else 60)
    return {
        "volumetric_efficiency": efficiency,
        "theoretical_output": noted(per_minute),
        "pd_output": noted(per_minute * efficiency / 100),
    }


def plunger(draw: Draw, units: str) -> dict[str, float]:
    """A plunger pump for sludge."""
    us = units == "us"
    bore = draw.pick((7.0, 8.0, 9.0, 10.0, 11.0) if us else (180.0, 200.0, 230.0, 250.0, 280.0))
    stroke = draw.step(3, 6, 0.5) if us else draw.step(80, 150, 10)
    plungers = float(draw.pick((2, 3)))
    each = worked({"plunger_diameter": bore, "plunger_stroke": stroke}, "stroke_volume", units)
    fastest = min(60, int(MOST_BY_PLUNGERS[units] / (each * plungers)))
    rate = draw.step(30, fastest, 1)
    return {
        "plunger_diameter": bore,
        "plunger_stroke": stroke,
        "stroke_volume": noted(each),
        "plungers": plungers,
        "stroke_rate": rate,
        **driven(draw, units, each * plungers, rate, 84, 96),
    }


def diaphragm(draw: Draw, units: str) -> dict[str, float]:
    """A diaphragm pump for sludge, driven by a crank."""
    each = draw.step(0.8, 3.2, 0.1) if units == "us" else draw.step(3, 12, 0.5)
    rate = draw.step(18, 58, 1)
    return {"stroke_volume": each, "stroke_rate": rate, **driven(draw, units, each, rate, 78, 93)}


def rotor(draw: Draw, units: str) -> dict[str, float]:
    """A progressing-cavity pump for sludge."""
    each = draw.step(0.2, 1.6, 0.05) if units == "us" else draw.step(0.8, 6, 0.1)
    rate = draw.step(45, 195, 5)
    return {"turn_volume": each, "rotor_speed": rate, **driven(draw, units, each, rate, 70, 92)}


TWO = Small(two, places_of("booster"))
PLUNGER, DIAPHRAGM, ROTOR = map(Small, (plunger, diaphragm, rotor))

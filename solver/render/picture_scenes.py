"""Where the water comes from and the pump that moves it: a well or a tank, one scene a kind of station."""

from collections.abc import Mapping

from solver.station.station import Station
from solver.station.well import Well

from .svg import ACCENT, INK, LOOK, PAGE, SOFT, WATER, circle, label, path, rect

__all__ = ["FLOOR", "GROUND", "PIPE", "RISER", "gauge", "source"]

Texts = Mapping[str, str]
GROUND, FLOOR, PIPE = 132.0, 304.0, 74.0  # px from the top
RISER = 188.0  # where the discharge goes up
HIGHEST = 200.0  # the highest float or water, px from the top
APART = 17.0  # between two labels
WALL = 5.0


def source(station: Station, texts: Texts) -> list[str]:
    """The water and the pump."""
    if station.kind.submerged:
        return (_in_the_well if station.well else _in_a_channel)(station, texts)
    if station.well is None:
        return _beside_a_tank(station, texts)
    lifts = station.suction is not None and station.suction.lift > 0
    return _above(station, texts) if lifts else _dry_pit(station, texts)


def gauge(
    x: float,
    y: float,
    to: tuple[float, float],
    value: str,
    at: tuple[float, float],
    anchor: str = "middle",
) -> list[str]:
    """A gauge with its stem to a pipe, and what it reads."""
    return [
        path((x, y), to, width=2),
        circle(x, y, 11, fill=PAGE, stroke=INK, stroke_width=2.5),
        path((x - 4, y + 5), (x + 5, y - 5), stroke=LOOK, width=2.5),
        label(*at, "", value, anchor) if value else "",
    ]


def _ground(*gaps: tuple[float, float]) -> list[str]:
    """The ground, from left to right, with gaps for what is dug into it."""
    ends = [0.0, *(edge for gap in gaps for edge in gap), 390.0]
    return [
        path((ends[i], GROUND), (ends[i + 1], GROUND), stroke=SOFT, width=2)
        for i in range(0, len(ends), 2)
    ]


def _water(left: float, right: float, top: float, bottom: float) -> list[str]:
    return [
        rect(left, top, right - left, bottom - top, fill=WATER, fill_opacity=0.32),
        path((left, top), (right, top), stroke=WATER, width=2.5),
    ]


def _submersible(x: float, y: float) -> list[str]:
    """A submersible on its foot; `y` is its foot."""
    return [
        rect(x - 15, y - 46, 30, 30, rx=4, fill=ACCENT),
        path(
            (x - 20, y),
            (x - 14, y - 16),
            (x + 14, y - 16),
            (x + 20, y),
            (x - 20, y),
            width=2,
            fill=ACCENT,
            stroke=ACCENT,
        ),
    ]


def _pump(x: float, y: float) -> list[str]:
    """A pump and its motor behind it, its eye at x, y."""
    return [
        circle(x, y, 15, fill=ACCENT),
        rect(x + 6, y - 9, 31, 18, rx=3, fill=ACCENT),
        path((x - 18, y + 19), (x + 37, y + 19), width=3),
        path((x, y + 12), (x, y + 19), width=3),
        circle(x, y, 4, fill=PAGE),
    ]


def _level(well: Well, level: float) -> float:
    """Where a level is in the picture (px from the top)."""
    top = max(well.on, well.designed[0], well.depth)
    return FLOOR - level / top * (FLOOR - HIGHEST)


def _well(station: Station, texts: Texts, left: float, right: float, floats: float) -> list[str]:
    """A wet well with its water, floats, inflow and their labels; `floats`: where they hang."""
    well = station.well
    assert well is not None
    surface = _level(well, well.depth)
    drawn = [
        *_ground((left - WALL, right + WALL)),
        *_water(left, right, surface, FLOOR),
        path(
            (left - WALL / 2, GROUND - 8),
            (left - WALL / 2, FLOOR + WALL / 2),
            (right + WALL / 2, FLOOR + WALL / 2),
            (right + WALL / 2, GROUND - 8),
            width=WALL,
        ),
        path((0, 162), (left + 3, 162), stroke=WATER, width=7),
        path((left + 3, 164), (left + 7, 172), (left + 8, surface), stroke=WATER, width=2.5),
    ]
    for level, name in ((well.on, "on_level"), (well.off, "off_level")):
        if name in texts:
            y = _level(well, level)
            drawn += [
                path((floats, GROUND - 8), (floats, y), stroke=SOFT, width=1.2, dash="3 3"),
                circle(floats, y, 6, fill=LOOK, stroke=PAGE, stroke_width=1.5),
            ]
    return drawn + _level_labels(well, texts, left + 14)


def _level_labels(well: Well, texts: Texts, left: float) -> list[str]:
    """Inflow at the top, on and off beside their floats, the water where it finds room at its surface."""
    floats = [
        (_level(well, level) + 5, name, texts[reading])
        for level, name, reading in ((well.on, "on", "on_level"), (well.off, "off", "off_level"))
        if reading in texts
    ]
    places = spread([y for y, _, _ in floats], APART, FLOOR - 6)
    drawn = [label(left, y, name, text) for y, (_, name, text) in zip(places, floats, strict=True)]
    if "water_depth" in texts:
        y = _room(places, _level(well, well.depth))
        drawn.append(label(left, y, "water", texts["water_depth"]))
    if "inflow" in texts:
        drawn.append(label(left, 158, "", f"{texts['inflow']} in"))
    return drawn


def _room(taken: list[float], surface: float) -> float:
    """Where a label fits under the surface, over it, or else next to one that is taken."""
    beside = (y + step for y in taken for step in (APART, -APART))
    for y in (surface + APART, surface - 6, *beside):
        if y <= FLOOR - 5 and all(abs(y - other) >= APART - 1 for other in taken):
            return y
    return surface - 6


def spread(places: list[float], apart: float, last: float) -> list[float]:
    """Places in order, moved up or down so that each is so far from the next and none past `last`.

    >>> spread([10, 12, 60], 17, 62)
    [10, 27, 60]
    """
    down: list[float] = []
    for place in places:
        down.append(max(place, down[-1] + apart) if down else place)
    limit = last
    for index in range(len(down) - 1, -1, -1):
        down[index] = min(down[index], limit)
        limit = down[index] - apart
    return down


def _in_the_well(station: Station, texts: Texts) -> list[str]:
    """A submersible in its well, its gauge on the pipe at the top."""
    left, right = 20.0, 202.0
    return [
        *_well(station, texts, left, right, 124),
        path((RISER - 30, FLOOR - 14), (RISER, FLOOR - 14), (RISER, PIPE), width=6),
        *_submersible(RISER - 34, FLOOR - 2),
        *gauge(270, PIPE - 28, (270, PIPE), texts.get("discharge_gauge", ""), (270, PIPE - 46)),
    ]


def _in_a_channel(station: Station, texts: Texts) -> list[str]:
    """A propeller pump at the foot of its column, in a channel."""
    left, right, surface = 8.0, 206.0, PIPE + 24
    return [
        *_ground((left, right)),
        *_water(left, right, surface, GROUND + 10),
        path(
            (left, surface - 9),
            (left, GROUND + 10),
            (right, GROUND + 10),
            (right, surface - 9),
            width=4,
        ),
        path((RISER, GROUND - 8), (RISER, PIPE), width=6),
        path(
            (RISER - 11, GROUND + 4),
            (RISER - 7, GROUND - 22),
            (RISER + 7, GROUND - 22),
            (RISER + 11, GROUND + 4),
            (RISER - 11, GROUND + 4),
            fill=ACCENT,
            stroke=ACCENT,
            width=2,
        ),
        rect(RISER - 9, PIPE - 42, 18, 34, rx=3, fill=ACCENT),
        path((RISER, PIPE - 8), (RISER, PIPE), width=3),
        *gauge(270, PIPE - 28, (270, PIPE), texts.get("discharge_gauge", ""), (270, PIPE - 46)),
    ]


def _dry_pit(station: Station, texts: Texts) -> list[str]:
    """A pump on the floor of a dry pit beside the well."""
    left, right = 8.0, 122.0
    y = FLOOR - 26
    return [
        *_well(station, texts, left, right, right - 12),
        path((right + 2.5, FLOOR + 2.5), (204, FLOOR + 2.5), (204, GROUND - 8), width=WALL),
        path((right - 4, y), (168, y), width=6),
        path((172, y), (RISER, y - 8), (RISER, PIPE), width=6),
        *_pump(162, y),
        *gauge(146, y - 34, (146, y), texts.get("suction_gauge", ""), (130, y - 50), "start"),
        *gauge(
            158, y - 92, (RISER, y - 92), texts.get("discharge_gauge", ""), (130, y - 109), "start"
        ),
    ]


def _above(station: Station, texts: Texts) -> list[str]:
    """A pump on the ground, above the water it draws up."""
    left, right = 8.0, 150.0
    well = station.well
    assert well is not None
    y, x = GROUND - 19, 112.0
    surface = _level(well, well.depth)
    lift = texts.get("suction_lift", "")
    vacuum = texts.get("suction_vacuum", texts.get("suction_gauge", ""))
    return [
        *_well(station, texts, left, right, 108),
        path((x + 16, FLOOR - 12), (x + 16, y), (168, y), width=6),
        path((172, y), (RISER, y - 8), (RISER, PIPE), width=6),
        *_pump(168, y),
        *gauge(144, y - 34, (144, y), vacuum, (150, y - 50)),
        *gauge(270, PIPE - 28, (270, PIPE), texts.get("discharge_gauge", ""), (270, PIPE - 46)),
        path((160, y + 26), (160, surface), width=1.2, stroke=SOFT),
        path((right + 6, surface), (174, surface), width=1.2, stroke=SOFT, dash="3 3"),
        label(165, (GROUND + surface) / 2 + 4, "lift") if lift else "",
        label(165, (GROUND + surface) / 2 + 21, "", lift) if lift else "",
    ]


def _beside_a_tank(station: Station, texts: Texts) -> list[str]:
    """A pump on the ground, its suction from a tank whose water is above it."""
    left, right, top = 4.0, 112.0, 40.0
    y = GROUND - 19
    over = texts.get("static_suction_head", "")
    return [
        *_ground(),
        *_water(left, right, top + 16, GROUND - 2),
        path((left, top), (left, GROUND - 1), (right, GROUND - 1), (right, top), width=4),
        path((right - 2, y), (168, y), width=6),
        path((172, y), (RISER, y - 8), (RISER, PIPE), width=6),
        *_pump(170, y),
        *gauge(140, y - 34, (140, y), texts.get("suction_gauge", ""), (120, y - 50), "start"),
        *gauge(270, PIPE - 28, (270, PIPE), texts.get("discharge_gauge", ""), (270, PIPE - 46)),
        label(left + 6, top + 38, "", over) if over else "",
        label(left + 6, top + 55, "over the pump") if over else "",
    ]

"""The pieces of the scenes: the ground, water, a pump, a wet well with its floats and their labels, a gauge."""

from collections.abc import Mapping

from solver.station.station import Station
from solver.station.well import Well

from .svg import ACCENT, INK, LOOK, PAGE, SOFT, WATER, circle, label, path, rect

__all__ = [
    "FLOOR",
    "GROUND",
    "PIPE",
    "WALL",
    "Texts",
    "gauge",
    "ground_line",
    "level_at",
    "pump_at",
    "submersible_at",
    "water_body",
    "well_with_floats",
]

Texts = Mapping[str, str]
GROUND, FLOOR, PIPE = 132.0, 304.0, 74.0  # px from the top
HIGHEST = 200.0  # the highest float or water, px from the top
APART = 17.0  # between two labels
WALL = 5.0


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


def ground_line(*gaps: tuple[float, float]) -> list[str]:
    """The ground, from left to right, with gaps for what is dug into it."""
    ends = [0.0, *(edge for gap in gaps for edge in gap), 390.0]
    return [
        path((ends[i], GROUND), (ends[i + 1], GROUND), stroke=SOFT, width=2)
        for i in range(0, len(ends), 2)
    ]


def water_body(left: float, right: float, top: float, bottom: float) -> list[str]:
    """Water, with its surface."""
    return [
        rect(left, top, right - left, bottom - top, fill=WATER, fill_opacity=0.32),
        path((left, top), (right, top), stroke=WATER, width=2.5),
    ]


def submersible_at(x: float, y: float) -> list[str]:
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


def pump_at(x: float, y: float) -> list[str]:
    """A pump and its motor behind it, its eye at x, y."""
    return [
        circle(x, y, 15, fill=ACCENT),
        rect(x + 6, y - 9, 31, 18, rx=3, fill=ACCENT),
        path((x - 18, y + 19), (x + 37, y + 19), width=3),
        path((x, y + 12), (x, y + 19), width=3),
        circle(x, y, 4, fill=PAGE),
    ]


def level_at(well: Well, level: float) -> float:
    """Where a level is in the picture (px from the top)."""
    top = max(well.on, well.designed[0], well.depth)
    return FLOOR - level / top * (FLOOR - HIGHEST)


def well_with_floats(
    station: Station, texts: Texts, left: float, right: float, floats: float
) -> list[str]:
    """A wet well with its water, floats, inflow and their labels; `floats`: where they hang."""
    well = station.well
    assert well is not None
    surface = level_at(well, well.depth)
    drawn = [
        *ground_line((left - WALL, right + WALL)),
        *water_body(left, right, surface, FLOOR),
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
            y = level_at(well, level)
            drawn += [
                path((floats, GROUND - 8), (floats, y), stroke=SOFT, width=1.2, dash="3 3"),
                circle(floats, y, 6, fill=LOOK, stroke=PAGE, stroke_width=1.5),
            ]
    return drawn + _level_labels(well, texts, left + 14)


def _level_labels(well: Well, texts: Texts, left: float) -> list[str]:
    """Inflow at the top, on and off beside their floats, the water where it finds room at its surface."""
    floats = [
        (level_at(well, level) + 5, name, texts[reading])
        for level, name, reading in ((well.on, "on", "on_level"), (well.off, "off", "off_level"))
        if reading in texts
    ]
    places = spread([y for y, _, _ in floats], APART, FLOOR - 6)
    drawn = [label(left, y, name, text) for y, (_, name, text) in zip(places, floats, strict=True)]
    if "water_depth" in texts:
        y = _room(places, level_at(well, well.depth))
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

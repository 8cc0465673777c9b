"""A tank with its water, what it holds, and a gauge at its foot with its scales."""

from solver.render.svg import INK, LOOK, PAGE, SOFT, WATER, across, circle, height, path, rect

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown

__all__ = ["TANK"]

RIGHT, TOP, SURFACE, TAP, FLOOR = 132.0, 10.0, 34.0, 104.0, 128.0  # px
BESIDE = RIGHT + 46
HOLDS: Rows = (
    ("tank_volume", "holds"),
    ("percent_full", "full"),
    ("empty_volume", "empty"),
    ("water_volume", "water"),
    ("volume_converted", "water"),
    ("water_weight", "weighs"),
)
READS: Rows = (("gauge_pressure", "gauge"), ("second_scale", "2nd scale"))
HEIGHTS: Rows = (
    ("water_height", "height"),
    ("tank_depth", "depth"),
    ("tap_height", "gauge at"),
)


def _draw(shown: Shown) -> Drawn:
    gauge = shown.works(*(name for name, _ in (*READS, *HEIGHTS)))
    pieces = [across(0, *_scene(gauge))]
    more, foot = shown.flow(TOP + 22, (*HOLDS, *HEIGHTS, *READS), room=LEAST - BESIDE, dx=BESIDE)
    return Drawn(pieces + more, max(foot, FLOOR + 4))


def _scene(gauge: bool) -> list[str]:
    drawn = [
        rect(2, SURFACE, RIGHT - 2, FLOOR - SURFACE, fill=WATER, fill_opacity=0.35),
        path((2, SURFACE), (RIGHT, SURFACE), stroke=WATER, width=2.5),
        path((2, TOP), (2, FLOOR), (RIGHT, FLOOR), (RIGHT, TOP), width=4),
    ]
    if gauge:
        x = RIGHT + 22
        drawn += [
            path((RIGHT, TAP), (x - 10, TAP), width=3),
            circle(x, TAP, 13, fill=PAGE, stroke=INK, stroke_width=2.5),
            path((x - 5, TAP + 6), (x + 6, TAP - 5), stroke=LOOK, width=2.5),
            *height(20, SURFACE, TAP),
            path((10, TAP), (RIGHT, TAP), stroke=SOFT, width=1, dash="4 4"),
        ]
    return drawn


TANK = Drawing(
    "A tank and the water in it",
    tuple(name for name, _ in (*HOLDS, *READS, *HEIGHTS)),
    _draw,
)

"""The suction side: the air's push on the water, the lift, what the pipe takes, what is left at the pump."""

from solver.render.svg import (
    ACCENT,
    INK,
    LOOK,
    PAGE,
    SOFT,
    WATER,
    across,
    circle,
    height,
    path,
    rect,
)

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown

__all__ = ["SUCTION"]

SUMP, SURFACE, BOTTOM = 104.0, 104.0, 138.0  # px: the sump's right wall, its water, its floor
EYE, X = 46.0, 138.0  # px: the pump's middle
FLOODED = 26.0  # px: the water when it is over the pump
BESIDE = 172.0
AIR: Rows = (("atmospheric_head", "barometric"),)
PIPE: Rows = (("suction_loss", "pipe loses"), ("vapor_head", "vapor pressure"))
PUMP: Rows = (
    ("suction_vacuum", "vacuum"),
    ("dynamic_suction_lift", "dynamic lift"),
    ("npsh_available", "NPSHa"),
    ("npsh_required", "NPSHr"),
    ("npsh_margin", "margin"),
)
HEIGHTS: Rows = (
    ("suction_lift", "lift"),
    ("greatest_lift", "max. lift"),
    ("static_suction_head", "head"),
)


def _draw(shown: Shown) -> Drawn:
    flooded = shown.works("static_suction_head")
    surface = FLOODED if flooded else SURFACE
    pieces = [across(0, *_scene(surface, shown.works("suction_vacuum")))]
    name, called = shown.first(HEIGHTS)
    middle = (surface + EYE) / 2
    if shown.has(name):
        pieces.append(across(0, *height(14, surface, EYE)))
        pieces.append(across(0, path((0, EYE), (X, EYE), stroke=SOFT, width=1, dash="4 4")))
        pieces.append(shown.stacked(0, middle - 2 + (10 if flooded else 0), name, called, dx=22))
    rest = [row for row in HEIGHTS if row[0] != name]
    more, foot = shown.flow(20, (*AIR, *PIPE, *rest, *PUMP), room=LEAST - BESIDE, dx=BESIDE)
    return Drawn(pieces + more, max(foot, BOTTOM + 3))


def _scene(surface: float, gauge: bool) -> list[str]:
    """The sump with its water, the suction pipe and the pump."""
    top = min(surface, EYE + 20) - 8
    drawn = [
        rect(0, surface, SUMP, BOTTOM - surface, fill=WATER, fill_opacity=0.35),
        path((0, surface), (SUMP, surface), stroke=WATER, width=2.5),
        path((0, top), (0, BOTTOM), (SUMP, BOTTOM), (SUMP, top), width=3),
        path((SUMP - 14, BOTTOM - 10), (SUMP - 14, EYE), (X, EYE), width=6),
        path((X, EYE), (X + 26, EYE - 10), (X + 26, 4), width=6),
        circle(X, EYE, 15, fill=ACCENT),
        circle(X, EYE, 4, fill=PAGE),
    ]
    if gauge:
        drawn += [
            path((X - 26, EYE), (X - 26, EYE - 24), width=2),
            circle(X - 26, EYE - 28, 10, fill=PAGE, stroke=INK, stroke_width=2.5),
            path((X - 30, EYE - 24), (X - 22, EYE - 32), stroke=LOOK, width=2.5),
        ]
    return drawn


SUCTION = Drawing(
    "The suction side of a pump",
    tuple(name for rows in (AIR, PIPE, PUMP, HEIGHTS) for name, _ in rows),
    _draw,
    (),
    ("suction_lift", "suction_loss", "suction_vacuum", "npsh_available", "atmospheric_head"),
)

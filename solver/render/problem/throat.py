"""A meter that narrows the pipe, with the head across it. Not to scale."""

from solver.render.svg import ACCENT, LOOK, SOFT, WATER, across, element, path

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown

__all__ = ["THROAT"]

WIDE, TOP, FOOT, IN = 150.0, 46.0, 94.0, 15.0  # px: the pipe, and how far it narrows
BESIDE = WIDE + 24
PLATE = 0.9  # a coefficient below this is a plate's
ROWS: Rows = (
    ("pipe_diameter", "pipe"),
    ("throat_diameter", "narrows to"),
    ("differential_head", "differential"),
    ("discharge_coefficient", "coefficient"),
    ("full_flow", "full scale"),
    ("differential_share", "differential"),
    ("meter_flow", "flow"),
)


def _draw(shown: Shown) -> Drawn:
    plate = (shown.number("discharge_coefficient") or 1) < PLATE
    more, foot = shown.flow(TOP - 26, ROWS, room=LEAST - BESIDE, dx=BESIDE)
    return Drawn(
        [across(0, *(_plate() if plate else _tube()), *_columns()), *more], max(foot, FOOT + 8)
    )


def _tube() -> list[str]:
    upper = ((0, TOP), (34, TOP), (66, TOP + IN), (84, TOP + IN), (WIDE, TOP))
    lower = tuple((x, TOP + FOOT - y) for x, y in upper)
    points = " ".join(f"{x:g},{y:g}" for x, y in (*upper, *reversed(lower)))
    return [
        element("polygon", points=points, fill=WATER, fill_opacity=0.35),
        path(*upper, width=3),
        path(*lower, width=3),
    ]


def _plate() -> list[str]:
    ends = ((0, TOP), (WIDE, TOP)), ((0, FOOT), (WIDE, FOOT))
    points = f"0,{TOP:g} {WIDE:g},{TOP:g} {WIDE:g},{FOOT:g} 0,{FOOT:g}"
    return [
        element("polygon", points=points, fill=WATER, fill_opacity=0.35),
        *(path(*end, width=3) for end in ends),
        path((66, TOP - 4), (66, TOP + IN), width=5, stroke=ACCENT),
        path((66, FOOT + 4), (66, FOOT - IN), width=5, stroke=ACCENT),
    ]


def _columns() -> list[str]:
    """Two columns of water on the pipe: high before the throat, low in it."""
    return [
        path((20, TOP), (20, 8), width=1.4, stroke=SOFT),
        path((75, TOP + IN), (75, 28), width=1.4, stroke=SOFT),
        path((20, TOP), (20, 12), width=5, stroke=WATER),
        path((75, TOP + IN), (75, 32), width=5, stroke=WATER),
        path((20, 12), (94, 12), stroke=SOFT, width=1, dash="3 3"),
        path((90, 13), (90, 31), stroke=LOOK, width=1.8),
        path((75, 32), (94, 32), stroke=SOFT, width=1, dash="3 3"),
    ]


THROAT = Drawing(
    "A meter that narrows the pipe",
    tuple(name for name, _ in ROWS),
    _draw,
    core=("throat_diameter", "differential_share"),
)

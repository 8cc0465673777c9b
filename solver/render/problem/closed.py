"""A pump that runs against its closed valve: its impeller and its speed, and the head that it makes then."""

from solver.render.svg import ACCENT, INK, LOOK, PAGE, SOFT, across, circle, path

from .drawing import Drawing, Drawn
from .shown import Rows, Shown, words

__all__ = ["CLOSED"]

X, Y, CASE, WHEEL = 52.0, 74.0, 38.0, 26.0  # px: the casing's middle, its radius, the impeller's
VALVE, END = 118.0, 160.0  # px
BESIDE = 178.0
ROWS: Rows = (
    ("impeller_diameter", "impeller"),
    ("impeller_estimate", "impeller"),
    ("pump_speed", "turns at"),
    ("tested_shutoff", "makes at shutoff"),
    ("shutoff_estimate", "should make"),
    ("curve_shutoff", "curve at shutoff"),
    ("shutoff_share", "of the curve"),
)


def _draw(shown: Shown) -> Drawn:
    pieces = [across(0, *_machine()), words(0, Y - CASE - 14, "closed", "middle", dx=VALVE)]
    more, foot = shown.column(0, 20, ROWS, dx=BESIDE)
    return Drawn([*pieces, *more], max(foot, Y + CASE + 4))


def _machine() -> list[str]:
    """The casing from the side, the impeller in it, and the discharge up to the valve."""
    pipe = Y - CASE + 8
    vanes = [
        path((X, Y), (X + x * 0.55 - y * 0.25, Y + y * 0.55 + x * 0.25), (X + x, Y + y), stroke=ACCENT, width=2)
        for x, y in ((WHEEL, 0), (0, WHEEL), (-WHEEL, 0), (0, -WHEEL))
    ]  # fmt: skip
    return [
        path((X, pipe), (END, pipe), stroke=SOFT, width=14),
        circle(X, Y, CASE, fill=PAGE, stroke=INK, stroke_width=3),
        circle(X, Y, WHEEL, fill="none", stroke=ACCENT, stroke_width=2.5),
        *vanes,
        circle(X, Y, 4, fill=INK),
        path((VALVE - 11, pipe - 10), (VALVE + 11, pipe + 10), (VALVE + 11, pipe - 10), (VALVE - 11, pipe + 10), (VALVE - 11, pipe - 10), stroke=LOOK, width=2.5, fill=LOOK),
    ]  # fmt: skip


CLOSED = Drawing(
    "A pump against a closed valve",
    tuple(name for name, _ in ROWS),
    _draw,
    (),
    ("tested_shutoff", "shutoff_estimate", "curve_shutoff"),
)

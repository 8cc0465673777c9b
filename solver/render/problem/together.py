"""Two pumps in a station: one after the other in the same pipe, or side by side into one pipe."""

from solver.render.svg import INK, PAGE, SOFT, across, circle, line, path

from .drawing import Drawing, Drawn
from .shown import Shown

__all__ = ["TOGETHER"]

LOW, HIGH, RADIUS = (
    66.0,
    30.0,
    17.0,
)  # px: the pipe of both in series, with gauges and without, and a pump
FIRST, SECOND = 112.0, 222.0  # px
UPPER, LOWER, MIDDLE = 44.0, 104.0, 166.0  # px: both side by side, and where they stand
SPLIT, JOINED = 74.0, 218.0  # px: the headers before and after them
BEFORE, AFTER = ("suction_gauge", "gauge before"), ("series_gauge", "gauge after")
SERIES = ("head", "second_head", "series_head", "suction_gauge", "series_gauge")
PARALLEL = ("flow", "second_flow", "combined_flow")


def _draw(shown: Shown) -> Drawn:
    return _series(shown) if shown.has("second_head") else _parallel(shown)


def _series(shown: Shown) -> Drawn:
    gauges = [
        gauge
        for gauge in ((0, "start", 16, *BEFORE), (100, "end", -16, *AFTER))
        if shown.has(gauge[3])
    ]
    y = LOW if gauges else HIGH
    pieces = [
        line(0, 100, y, stroke=SOFT, stroke_width=7),
        across(0, *_pump(FIRST, y), *_pump(SECOND, y)),
        shown.stacked(0, y + 38, "head", "first pump", "middle", FIRST),
        shown.stacked(0, y + 38, "second_head", "second pump", "middle", SECOND),
    ]
    for share, side, dx, name, called in gauges:
        pieces += [across(share, *_gauge(dx, y)), shown.stacked(share, 14, name, called, side)]
    if not gauges:
        pieces.append(shown.note(100, y - 14, "series_head", "together", "end"))
    return Drawn(pieces, y + 58)


def _parallel(shown: Shown) -> Drawn:
    middle = (UPPER + LOWER) / 2
    pipes = [
        path((0, middle), (SPLIT, middle), stroke=SOFT, width=7),
        path((JOINED, UPPER), (SPLIT, UPPER), (SPLIT, LOWER), (JOINED, LOWER), (JOINED, UPPER), stroke=SOFT, width=7),
    ]  # fmt: skip
    pieces = [
        across(0, *pipes, *_pump(MIDDLE - 20, UPPER), *_pump(MIDDLE - 20, LOWER)),
        line(0, 100, middle, JOINED, stroke=SOFT, stroke_width=7),
        shown.note(0, UPPER - 25, "flow", "one pump", "middle", MIDDLE - 20),
        shown.note(0, LOWER + 33, "second_flow", "the other", "middle", MIDDLE - 20),
        shown.stacked(100, middle - 28, "combined_flow", "together", "end"),
    ]
    return Drawn(pieces, LOWER + 36)


def _pump(x: float, y: float) -> list[str]:
    """A pump that moves to the right."""
    return [
        circle(x, y, RADIUS, fill=PAGE, stroke=INK, stroke_width=3),
        path((x - 7, y - 9), (x + 11, y), (x - 7, y + 9), (x - 7, y - 9), width=2),
    ]


def _gauge(x: float, y: float) -> list[str]:
    """A gauge on the pipe."""
    return [
        path((x, y), (x, y - 14), stroke=SOFT, width=3),
        circle(x, y - 20, 8, fill=PAGE, stroke=INK, stroke_width=2),
        path((x, y - 20), (x + 4, y - 25), width=1.6),
    ]


TOGETHER = Drawing(
    "Two pumps together",
    (*SERIES, *PARALLEL),
    _draw,
    (),
    ("second_head", "second_flow"),
)

"""A bearing with its size and its grease; and the hour meter from one greasing to the next."""

from math import cos, pi, sin

from solver.render.svg import ACCENT, INK, PAGE, SOFT, across, circle, height, line, path, rect

from .drawing import Drawing, Drawn
from .shown import Rows, Shown, words

__all__ = ["BEARING", "HOUR_METER"]

X, Y, OUTSIDE, INSIDE, BORE = 54.0, 66.0, 50.0, 26.0, 18.0  # px: the bearing from the front
BALLS, BALL = 9, 7.5  # how many, and their radius (px)
LEFT, WIDE = 128.0, 34.0  # px: the same from the side
BESIDE = 196.0
SIZES: Rows = (
    ("bearing_diameter", "outside"),
    ("bearing_width", "width"),
    ("grease_per_stroke", "a stroke"),
    ("grease_amount", "grease"),
    ("grease_strokes", "strokes"),
)


def _draw_bearing(shown: Shown) -> Drawn:
    more, foot = shown.column(0, 20, SIZES, dx=BESIDE)
    return Drawn([across(0, *_bearing()), *more], max(foot, Y + OUTSIDE + 20))


def _bearing() -> list[str]:
    """A ball bearing from the front and from the side, with its two sizes."""
    middle = (OUTSIDE + INSIDE) / 2
    around = [2 * pi * n / BALLS for n in range(BALLS)]
    right, top, foot = LEFT + WIDE, Y - OUTSIDE, Y + OUTSIDE
    return [
        circle(X, Y, OUTSIDE, fill=PAGE, stroke=INK, stroke_width=3),
        circle(X, Y, middle + 5, fill=ACCENT, fill_opacity=0.25, stroke=SOFT, stroke_width=1.5),
        circle(X, Y, middle - 5, fill=PAGE, stroke=SOFT, stroke_width=1.5),
        circle(X, Y, BORE, fill=PAGE, stroke=INK, stroke_width=3),
        *(
            circle(X + middle * cos(a), Y + middle * sin(a), BALL, fill=PAGE, stroke=INK, stroke_width=2)
            for a in around
        ),
        rect(LEFT, top, WIDE, foot - top, fill=PAGE, stroke=INK, stroke_width=3),
        *(
            circle(LEFT + WIDE / 2, Y + way * middle, BALL, fill=PAGE, stroke=INK, stroke_width=2)
            for way in (-1, 1)
        ),
        *(path((LEFT, Y + way * BORE), (right, Y + way * BORE), stroke=SOFT) for way in (-1, 1)),
        *height(right + 14, top, foot),
        path((LEFT, foot + 10), (right, foot + 10), width=1.5),
        path((LEFT + 5, foot + 6), (LEFT, foot + 10), (LEFT + 5, foot + 14), width=1.5),
        path((right - 5, foot + 6), (right, foot + 10), (right - 5, foot + 14), width=1.5),
    ]  # fmt: skip


TIME, NOW = 70.0, 58.0  # px: the line of hours; percent: where today is, whatever the meter shows
UNDER: Rows = (("hours_per_day", "runs"), ("days_to_grease", ""))


def _draw_hours(shown: Shown) -> Drawn:
    metered = shown.has("hour_meter")
    pieces = [
        line(0.6, 99.4, TIME, stroke=INK, stroke_width=3),
        across(0.6, path((0, TIME - 9), (0, TIME + 9), width=3)),
        across(99.4, path((0, TIME - 9), (0, TIME + 9), width=3)),
        line(0.6, 99.4, TIME - 38, stroke=SOFT, stroke_width=1.5),
        across(0.6, path((6, TIME - 42), (0, TIME - 38), (6, TIME - 34), stroke=SOFT, width=1.5)),
        across(99.4, path((-6, TIME - 42), (0, TIME - 38), (-6, TIME - 34), stroke=SOFT, width=1.5)),
        shown.note(50, TIME - 46, "grease_interval", "run hours between greasings", "middle"),
        shown.stacked(0, TIME + 26, "hour_meter_greased", "last greased"),
        words(100, TIME + 26, "next greasing", "end"),
    ]  # fmt: skip
    if metered:
        pieces += [
            line(0.6, NOW, TIME, stroke=ACCENT, stroke_width=7),
            across(NOW, circle(0, TIME, 7, fill=ACCENT)),
            shown.stacked(NOW, TIME + 26, "hour_meter", "meter now", "middle"),
        ]
    more, foot = shown.flow(TIME + (66 if metered else 48), UNDER)
    return Drawn([*pieces, *more], foot)


BEARING = Drawing("A ball bearing", tuple(name for name, _ in SIZES), _draw_bearing)
HOUR_METER = Drawing(
    "Run hours from one greasing to the next",
    ("grease_interval", "hour_meter_greased", "hour_meter", *(name for name, _ in UNDER)),
    _draw_hours,
    (),
    ("grease_interval",),
)

"""A belt drive: the motor's sheave, the pump's, and the belt around both."""

from math import acos, cos, sin

from solver.render.svg import INK, PAGE, SOFT, across, circle, path

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown, words

__all__ = ["SHEAVES"]

SMALL, LARGE = 24.0, 42.0  # px: radii, whatever the sheaves measure
LEFT, RIGHT, Y = 52.0, 232.0, 70.0  # px: the shafts
FOOT = Y + LARGE + 24
MOTOR: Rows = (
    ("motor_sheave", "sheave"),
    ("new_motor_sheave", "new sheave"),
    ("running_speed", "turns at"),
)
PUMP: Rows = (
    ("pump_sheave", "sheave"),
    ("pump_speed", "turns at"),
    ("new_speed", "should turn at"),
)
BELT: Rows = (("belt_speed", "belt speed"), ("belt_slip", "slip"))


def _draw(shown: Shown) -> Drawn:
    pieces = [across(0, *_belt(), *_sheave(LEFT, SMALL), *_sheave(RIGHT, LARGE))]
    pieces += [
        words(0, 16, "Motor", "middle", dx=LEFT),
        words(0, 16, "Pump", "middle", dx=RIGHT),
    ]
    left, low = shown.column(0, FOOT, MOTOR, "middle", dx=LEFT)
    right, high = shown.column(0, FOOT, PUMP, "middle", dx=RIGHT)
    belt, foot = shown.flow(max(low, high) + 24, BELT, room=LEAST)
    return Drawn([*pieces, *left, *right, *belt], max(low, high, foot))


def _sheave(x: float, radius: float) -> list[str]:
    return [
        circle(x, Y, radius, fill=PAGE, stroke=INK, stroke_width=3),
        circle(x, Y, 4, fill=INK),
    ]


def _belt() -> list[str]:
    """The two straight runs, each touching both rims."""
    turn = acos((LARGE - SMALL) / (RIGHT - LEFT))
    across_, up = cos(turn), sin(turn)
    runs = []
    for side in (-1, 1):
        start = (LEFT - SMALL * across_, Y + side * SMALL * up)
        end = (RIGHT - LARGE * across_, Y + side * LARGE * up)
        runs.append(path(start, end, stroke=SOFT, width=5))
    return runs


SHEAVES = Drawing(
    "A belt drive",
    tuple(name for name, _ in (*MOTOR, *PUMP, *BELT)),
    _draw,
    (),
    ("motor_sheave", "pump_sheave"),
)

"""A displacement pump: a plunger in its barrel, or a rotor in its stator, and what goes through.

Neither is to scale.
"""

from math import cos, pi

from solver.render.svg import ACCENT, INK, SOFT, WATER, across, path, rect

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown

__all__ = ["STROKES"]

TOP, TALL, RIGHT = 26.0, 48.0, 150.0  # px: the barrel
BESIDE = RIGHT + 24
TURNS: Rows = (("turn_volume", "a turn"), ("rotor_speed", "turns at"))
SIZES: Rows = (
    ("plungers", "plungers"),
    ("plunger_diameter", "across"),
    ("plunger_stroke", "stroke"),
    ("stroke_volume", "a stroke"),
    ("stroke_rate", "at"),
)
OUT: Rows = (
    ("volumetric_efficiency", "volumetric"),
    ("theoretical_output", "without slip"),
    ("pd_output", "comes out"),
    ("slip_flow", "slips back"),
    ("pump_slip", "slip"),
)


def _draw(shown: Shown) -> Drawn:
    turns = not shown.works(*(name for name, _ in SIZES))
    drawn = _rotor() if turns else _plunger()
    pieces = [across(0, *drawn)]
    rows = (*TURNS, *SIZES, *OUT)
    more, foot = shown.flow(TOP + 12, rows, room=LEAST - BESIDE, dx=BESIDE)
    return Drawn(pieces + more, max(foot, TOP + TALL + 12))


def _plunger() -> list[str]:
    """A plunger halfway through its stroke, and the two valves over and under the barrel's end."""
    foot, middle = TOP + TALL, TOP + TALL / 2
    return [
        rect(70, TOP, RIGHT - 70, TALL, fill=WATER, fill_opacity=0.35),
        path((12, TOP), (RIGHT - 34, TOP), width=3),
        path((12, foot), (RIGHT - 34, foot), width=3),
        path((RIGHT, TOP - 14), (RIGHT, foot + 14), width=3),
        *(
            path((RIGHT - 34, y), (RIGHT - 34, y + way * 14), width=3)
            for y, way in ((TOP, -1), (foot, 1))
        ),
        rect(34, TOP + 3, 38, TALL - 6, fill=ACCENT),
        path((0, middle), (34, middle), width=7, stroke=ACCENT),
        path((34, foot + 12), (72, foot + 12), stroke=SOFT, width=1.4),
        path((40, foot + 8), (34, foot + 12), (40, foot + 16), stroke=SOFT, width=1.4),
        path((66, foot + 8), (72, foot + 12), (66, foot + 16), stroke=SOFT, width=1.4),
        path((RIGHT - 17, TOP + 4), (RIGHT - 17, TOP - 16), width=2.2),
        path((RIGHT - 22, TOP - 9), (RIGHT - 17, TOP - 16), (RIGHT - 12, TOP - 9), width=2.2),
        path((RIGHT - 17, foot + 16), (RIGHT - 17, foot - 4), width=2.2),
        path((RIGHT - 22, foot + 3), (RIGHT - 17, foot - 4), (RIGHT - 12, foot + 3), width=2.2),
    ]


def _rotor() -> list[str]:
    """A rotor winding through its stator, with water in the cavities."""
    middle, foot = TOP + TALL / 2, TOP + TALL
    waves = [(x, middle + 10 * cos(x * pi / 22)) for x in range(2, int(RIGHT) - 1, 3)]
    return [
        rect(0, TOP, RIGHT, TALL, fill=SOFT, fill_opacity=0.25),
        rect(0, TOP + 8, RIGHT, TALL - 16, fill=WATER, fill_opacity=0.5),
        path((0, TOP), (RIGHT, TOP), width=3),
        path((0, foot), (RIGHT, foot), width=3),
        path(*waves, stroke=ACCENT, width=11),
        path((RIGHT - 30, foot + 12), (RIGHT, foot + 12), width=2.2, stroke=INK),
        path((RIGHT - 8, foot + 7), (RIGHT, foot + 12), (RIGHT - 8, foot + 17), width=2.2),
    ]


STROKES = Drawing(
    "A displacement pump",
    tuple(name for name, _ in (*TURNS, *SIZES, *OUT)),
    _draw,
)

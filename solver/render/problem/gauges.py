"""A pump with its two gauges: what each reads, how high it is, and the pipe it is on."""

from solver.render.svg import ACCENT, INK, LOOK, PAGE, SOFT, across, circle, line, path, rect
from solver.units.quantity import Both

from .drawing import Drawing, Drawn
from .shown import Rows, Shown, words

__all__ = ["GAUGES"]

SUCTION, PUMP, DISCHARGE = 20.0, 50.0, 80.0  # percent
PIPE, FACE = 118.0, 62.0  # px: the pipe's middle and the gauges' middle
SIDES: tuple[tuple[float, str, Rows, str, str], ...] = (
    (
        SUCTION,
        "suction",
        (
            ("suction_gauge", ""),
            ("suction_vacuum", "vacuum"),
            ("suction_gauge_now", "now"),
            ("closed_suction", "closed"),
        ),
        "suction_gauge_height",
        "suction_velocity_head",
    ),
    (
        DISCHARGE,
        "discharge",
        (
            ("discharge_gauge", ""),
            ("discharge_gauge_now", "now"),
            ("shutoff_gauge", "closed"),
        ),
        "discharge_gauge_height",
        "discharge_velocity_head",
    ),
)
VELOCITIES = tuple(velocity for *_, velocity in SIDES)
UNDER: Rows = (
    ("pressure", "pressure rise"),
    ("tested_shutoff", "at shutoff"),
    ("curve_shutoff", "on the curve"),
    ("shutoff_share", "of the curve"),
    ("pump_speed", "speed"),
    ("impeller_estimate", "impeller"),
    ("flow", "flow"),
    ("pump_efficiency", "pump"),
    ("brake_power", Both("BHP", "shaft")),
    ("water_power", Both("WHP", "water")),
)


def _draw(shown: Shown) -> Drawn:
    pieces = [line(0, 100, PIPE, stroke_width=8), across(PUMP, *_pump())]
    for side in SIDES:
        pieces += _side(shown, *side)
    pieces.append(shown.note(PUMP, 60, "head", "TDH", "middle"))
    more, foot = shown.flow(PIPE + 46 + (14 if shown.has(*VELOCITIES) else 0), UNDER)
    return Drawn(pieces + more, foot)


def _side(
    shown: Shown, share: float, called: str, readings: Rows, height: str, velocity: str
) -> list[str]:
    """A gauge on its stem, with its name and readings over it, and its height beside it."""
    said = [row for row in readings if shown.has(row[0])]
    face = FACE + (10 if len(said) > 1 else 0)
    pieces = [
        across(
            share,
            path((0, face), (0, PIPE), width=3),
            circle(0, face, 15, fill=PAGE, stroke=INK, stroke_width=2.5),
            path((-5, face + 6), (6, face - 6), stroke=LOOK, width=2.5),
        ),
        words(share, 14, called, "middle"),
    ]
    for row, (name, caption) in enumerate(said):
        label = "reads" if shown.asks(name) else caption
        pieces.append(shown.note(share, 33 + 18 * row, name, label, "middle"))
    if shown.has(height):
        way = -1 if share < PUMP else 1
        pieces += [
            across(share, path((way * 30, face), (way * 30, PIPE), stroke=SOFT, width=1.2)),
            across(share, path((way * 18, face), (way * 34, face), stroke=SOFT, width=1.2)),
            shown.note(share, (face + PIPE) / 2 + 5, height, "", "start", dx=8),
        ]
    if shown.has(velocity):
        pieces.append(shown.stacked(share, PIPE + 22, velocity, "velocity head", "middle"))
    return pieces


def _pump() -> list[str]:
    return [
        circle(0, PIPE, 24, fill=ACCENT),
        rect(-8, PIPE - 44, 16, 22, rx=3, fill=ACCENT),
        circle(0, PIPE, 6, fill=PAGE),
    ]


GAUGES = Drawing(
    "A pump with a gauge on each side",
    (
        *(name for _, _, rows, _, _ in SIDES for name, _ in rows),
        *(name for _, _, _, height, velocity in SIDES for name in (height, velocity)),
        "head",
        *(name for name, _ in UNDER),
    ),
    _draw,
    ("head",),
    ("suction_gauge", "discharge_gauge", "suction_vacuum", "shutoff_gauge"),
)

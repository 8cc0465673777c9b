"""A motor that turns a pump: the power on the shaft, its speed and its torque."""

from solver.render.svg import ACCENT, INK, PAGE, SOFT, across, element, line, path, rect

from .drawing import Drawing, Drawn
from .shown import Rows, Shown, words

__all__ = ["SHAFT"]

TOP, TALL = 22.0, 52.0  # px
Y = TOP + TALL / 2
WIDE = 86.0  # px: a machine
MOTOR: Rows = (
    ("motor_size", "nameplate"),
    ("rated_speed", "nameplate speed"),
    ("rated_torque", "full-load torque"),
    ("motor_output", "delivers"),
)
PUMP: Rows = (
    ("brake_power", "takes"),
    ("pump_speed", "turns at"),
    ("shaft_torque", "torque"),
)


def _draw(shown: Shown) -> Drawn:
    pieces = [
        line(0, 100, Y, stroke=SOFT, stroke_width=5),
        across(0, rect(2, TOP, WIDE, TALL, fill=PAGE, stroke=INK, stroke_width=2.5)),
        across(100, rect(-WIDE - 2, TOP, WIDE, TALL, fill=PAGE, stroke=INK, stroke_width=2.5)),
        words(0, Y + 5, "Motor", "middle", dx=2 + WIDE / 2),
        words(100, Y + 5, "Pump", "middle", dx=-2 - WIDE / 2),
        across(50, *_turning()),
    ]
    if shown.has("drive_efficiency"):
        pieces.append(shown.note(50, TOP - 4, "drive_efficiency", "belts pass on", "middle"))
    left, low = shown.column(0, TOP + TALL + 22, MOTOR, dx=2)
    right, high = shown.column(100, TOP + TALL + 22, PUMP, "end", dx=-2)
    return Drawn([*pieces, *left, *right], max(low, high, TOP + TALL))


def _turning() -> list[str]:
    """An arrow around the shaft."""
    bow = element(
        "path", d=f"M-7,{Y - 16:g} A9,17 0 1 0 7,{Y - 14:g}", fill="none", stroke=ACCENT, stroke_width=2.5
    )  # fmt: skip
    return [bow, path((1, Y - 13), (7, Y - 15), (9, Y - 8), stroke=ACCENT, width=2.5)]


SHAFT = Drawing(
    "A motor that turns a pump",
    (*(name for name, _ in (*MOTOR, *PUMP)), "drive_efficiency"),
    _draw,
    (),
    ("shaft_torque", "rated_torque"),
)

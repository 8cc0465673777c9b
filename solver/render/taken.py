"""A station with every place where a reading of the pump-day record is taken.

It is a pump in a dry pit, which has them all: a submersible has the same, but no suction gauge. Each place is a
group of its own, `w2w-place-NAME`, with a ring that a page shows while its reading is typed.
"""

from html import escape

from solver.own.record import PLACES

from .picture_pieces import FLOOR, GROUND, PIPE, gauge
from .svg import (
    ACCENT,
    INK,
    LOOK,
    PAGE,
    SOFT,
    WATER,
    check_valve,
    circle,
    element,
    gate_valve,
    height,
    label,
    path,
    rect,
)  # fmt: skip

__all__ = ["AT", "TALL", "TITLE", "WIDTH", "taken"]

WIDTH, TALL = 390, 312  # px
TITLE = "Where each reading is taken"
WELL, PIT = (8.0, 104.0), (109.0, 214.0)  # left and right
AXIS = FLOOR - 26  # the pump's centerline, px from the top
PUMP, RISER = 166.0, 196.0
HIGH, LOW = 218.0, 272.0  # the water before and after the drawdown
PANEL, BOTTOM = 226.0, 306.0  # its left and its foot
LEGS = (246.0, 266.0, 286.0)
METERS = 356.0
RING = 13.0
# Where the ring of each place is; the bill and the head are nowhere in it.
AT = {
    "plate": (190, AXIS), "motor": (190, AXIS), "pump": (PUMP, AXIS), "leads": (LEGS[1], 284), "windings": (LEGS[1], 284),
    "volts": (256, 196), "amps": (LEGS[0], 226), "rolled": (LEGS[0], 226), "power": (METERS, 184), "hours": (METERS, 240),
    "well": (56, FLOOR - 8), "drop": (76, 245), "rise": (76, 245), "inflow": (22, 162),
    "discharge": (226, PIPE - 28), "discharge_height": (209, 160), "discharge_pipe": (226, PIPE),
    "suction": (128, AXIS - 36), "suction_height": (146, AXIS - 18), "suction_pipe": (128, AXIS), "meter": (340, PIPE),
}  # fmt: skip


def taken() -> str:
    """The station as SVG, with its places; told in words to who cannot see it."""
    words = " ".join(place.says for place in PLACES if place.name in AT)
    return element(
        "svg",
        element("title", TITLE, id="w2w-taken-title"),
        element("desc", escape(words), id="w2w-taken-words"),
        *_well(), *_pit(), *_main(), *_panel(), *map(_ring, AT),
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {WIDTH} {TALL}",
        width="100%",
        role="img",
        aria_labelledby="w2w-taken-title w2w-taken-words",
        class_="w2w-station",
        style="color: var(--w2w-text, CanvasText)",
    )  # fmt: skip


def _ring(name: str) -> str:
    """The ring of a place; a page shows it by its class."""
    x, y = AT[name]
    ring = circle(x, y, RING, fill=LOOK, fill_opacity="0.22", stroke=LOOK, stroke_width=3)
    return element("g", ring, class_=f"w2w-place w2w-place-{name}")


def _well() -> list[str]:
    """The wet well with its water, the drawdown and what comes in."""
    left, right = WELL
    return [
        path((0, GROUND), (left - 3, GROUND), stroke=SOFT),
        rect(left, HIGH, right - left, FLOOR - HIGH, fill=WATER, fill_opacity=0.32),
        path((left, HIGH), (right, HIGH), stroke=WATER, width=2.5),
        path((left, LOW), (right, LOW), stroke=WATER, width=1.5, dash="4 3"),
        path(
            (left - 2.5, GROUND - 8), (left - 2.5, FLOOR + 2.5), (PIT[1] + 2.5, FLOOR + 2.5), (PIT[1] + 2.5, GROUND - 8),
            width=5,
        ),
        path((right + 2.5, GROUND - 8), (right + 2.5, FLOOR), width=5),
        path((0, 162), (left + 3, 162), stroke=WATER, width=7),
        path((left + 3, 164), (left + 7, 172), (left + 8, HIGH), stroke=WATER, width=2.5),
        *height(76, HIGH, LOW),
        path((left + 4, FLOOR - 8), (right - 4, FLOOR - 8), width=1.5),
        label(left + 12, 158, "inflow"),
        label(left + 18, 250, "level"),
        label(left + 6, 206, "wet well"),
    ]  # fmt: skip


def _pit() -> list[str]:
    """The pump in its pit, the suction gauge, and the heights of both gauges over the pump."""
    return [
        path((WELL[1] - 4, AXIS), (PUMP, AXIS), width=6),
        path((PUMP + 4, AXIS), (RISER, AXIS - 8), (RISER, PIPE), width=6),
        circle(PUMP, AXIS, 15, fill=ACCENT),
        rect(PUMP + 6, AXIS - 9, 31, 18, rx=3, fill=ACCENT),
        path((PUMP - 18, AXIS + 19), (PUMP + 37, AXIS + 19), width=3),
        circle(PUMP, AXIS, 4, fill=PAGE),
        path((112, AXIS), (PIT[1], AXIS), stroke=PAGE, width=1, dash="5 3"),
        *gauge(128, AXIS - 36, (128, AXIS), "", (0, 0)),
        *height(146, AXIS - 36, AXIS),
        *height(209, PIPE - 28, AXIS),
        path((226, PIPE - 28), (209, PIPE - 28), stroke=SOFT, width=1, dash="3 3"),
        label(114, AXIS - 66, "suction"),
        label(114, AXIS - 51, "gauge"),
    ]


def _main() -> list[str]:
    """The discharge with its gauge, its valves and its meter."""
    return [
        path((PIT[1] + 5, GROUND), (WIDTH, GROUND), stroke=SOFT),
        path((RISER, PIPE), (WIDTH, PIPE), width=6),
        *gauge(226, PIPE - 28, (226, PIPE), "", (0, 0)),
        check_valve(262, PIPE),
        gate_valve(294, PIPE),
        rect(322, PIPE - 13, 36, 26, rx=4, fill=PAGE, stroke=INK, stroke_width=2.5),
        path((330, PIPE + 5), (340, PIPE - 5), (350, PIPE + 5), stroke=LOOK),
        label(226, PIPE - 48, "discharge gauge", anchor="middle"),
        label(340, PIPE - 22, "flow meter", anchor="middle"),
    ]


def _panel() -> list[str]:
    """The panel: three legs from the volts to the motor leads, the power meter, the hour meter."""
    legs = [path((x, 174), (x, 292), width=2.5) for x in LEGS]
    names = [label(x, 169, "", leg, "middle") for x, leg in zip(LEGS, "ABC", strict=True)]
    return [
        rect(PANEL, 150, WIDTH - PANEL - 4, BOTTOM - 150, rx=6, fill="none", stroke=INK, stroke_width=2.5),
        *legs, *names,
        *(circle(x, 196, 3.5, fill=LOOK) for x in LEGS),
        element("ellipse", cx=LEGS[0], cy=226, rx=9, ry=4.5, fill="none", stroke=LOOK, stroke_width=2.5),
        rect(LEGS[0] - 8, 246, LEGS[2] - LEGS[0] + 16, 18, rx=3, fill=PAGE, stroke=INK, stroke_width=2),
        *(circle(x, 284, 3.5, fill=LOOK) for x in LEGS),
        path((LEGS[0], 292), (LEGS[2], 292), width=2.5),
        path((LEGS[0], 292), (PANEL - 5, 292), (PUMP + 37, AXIS + 4), width=2, dash="5 3"),
        circle(METERS, 184, 10, fill=PAGE, stroke=INK, stroke_width=2.5),
        rect(METERS - 11, 233, 22, 14, rx=2, fill=PAGE, stroke=INK, stroke_width=2.5),
        label(METERS, 212, "power", anchor="middle"),
        label(METERS, 265, "hours", anchor="middle"),
        label(298, 201, "volts"),
        label(298, 231, "amps"),
        label(298, 289, "leads"),
    ]  # fmt: skip

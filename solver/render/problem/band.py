"""The wire-to-water band: its width is power, and at each machine some of it leaves.

Its widths are the same in every problem, so that nothing can be measured on it.
"""

from dataclasses import replace
from typing import NamedTuple

from solver.render.svg import (
    ACCENT,
    LOOK,
    SOFT,
    WATER,
    Look,
    across,
    block,
    element,
    line,
    path,
    shape,
)
from solver.units.quantity import Both, Text

from .drawing import Drawing, Drawn
from .shown import Shown, words

__all__ = ["BAND"]

TOP, WIDEST, LOST = 26.0, 88.0, 18.0  # px: where the band begins, how wide, what a machine takes
MACHINE = 26.0  # px of the band in which it narrows
END, TIP = 94.0, 20.0  # percent of the width where the arrow's tip begins, and how long it is (px)
BAND_LOOK: Look = {"fill": ACCENT, "fill_opacity": 0.2}


class Stage(NamedTuple):
    """The power between two machines, and the efficiency of the machine after it."""

    power: str
    caption: Text
    machine: str = ""
    called: str = ""


MOTOR = Stage("motor_power", Both("MHP", "motor input"), "motor_efficiency", "motor")
OUTPUT = Stage("motor_output", "output", "drive_efficiency", "drive")
SHAFT = Stage("brake_power", Both("BHP", "shaft"), "pump_efficiency", "pump")
WET = Stage("water_power", Both("WHP", "water"))
PLAIN = ((MOTOR, 0.0), (SHAFT, 36.0), (WET, 68.0))
DRIVEN = ((MOTOR, 0.0), (OUTPUT, 24.0), (SHAFT, 50.0), (WET, 78.0))
CLOSE, APART = (
    (-13.0, -13.0),
    (-29.0, -12.0, 0.0),
)  # px: where names of machines are, beside the links
METER = "input_power"
NAMEPLATE = (
    ("motor_size", "on the nameplate"),
    ("motor_load", "motor load"),
)
IN_THE_WATER = (
    ("flow", ""),
    ("daily_flow", ""),
    ("head", "TDH"),
    ("pressure", "rise"),
)
MACHINES = ("motor_efficiency", "drive_efficiency", "pump_efficiency")
WHOLE = "overall_efficiency"


def _draw(shown: Shown) -> Drawn:
    driven = shown.works("motor_output", "drive_efficiency")
    stages = DRIVEN if driven else PLAIN
    pieces, inside = _band(stages), replace(shown, halo=False)
    for number, (stage, share) in enumerate(stages):
        middle, dx = TOP + (WIDEST - LOST * number) / 2, 10 if share else 6
        if number == 0 and shown.has(METER):
            pieces.append(_line_or_two(inside, 0, middle + 24, METER, "meter", dx))
            middle -= 20
        pieces.append(_line_or_two(inside, share, middle, stage.power, stage.caption, dx))
        if stage.machine:
            link, beside = stages[number + 1][1], (APART if driven else CLOSE)[number]
            pieces.append(shown.note(link, TOP - 9, stage.machine, stage.called, "middle", beside))
    return _below(shown, pieces, len(stages) - 1)


def _line_or_two(
    shown: Shown, share: float, middle: float, name: str, caption: Text, dx: float
) -> str:
    """A quantity around this height (px): its value, where it has one, under its caption."""
    if shown.text(name) in ("", "?"):
        return shown.note(share, middle + 5, name, caption, dx=dx)
    return shown.stacked(share, middle - 4, name, caption, dx=dx)


def _band(stages: tuple[tuple[Stage, float], ...]) -> list[str]:
    """The band itself, narrowing at each machine, with what leaves it, and the water's arrow."""
    pieces = []
    for number, (stage, share) in enumerate(stages):
        tall = WIDEST - LOST * number
        if not stage.machine:
            tip = ((0, -10), (TIP, tall / 2), (0, tall + 10))
            water: Look = {"fill": WATER, "fill_opacity": 0.4}
            pieces.append(block(share, END, TOP, tall, **water))
            pieces.append(across(END, shape(*tip, **water), y=TOP))
            continue
        pieces += _machine(share, stages[number + 1][1], tall)
    return pieces


def _machine(share: float, end: float, tall: float) -> list[str]:
    """The band up to a machine, what the machine takes from it, and the line to what is after."""
    passed = tall - LOST
    parted = element("rect", x=-MACHINE, y=passed, width="100%", height=LOST, **BAND_LOOK)
    narrows = ((-MACHINE, passed), (0, passed), (-MACHINE, tall))
    leaves = (
        *((-MACHINE, tall), (0, passed), (0, tall + 9), (7, tall + 9), (-MACHINE / 2, tall + 24)),
        *((-MACHINE - 7, tall + 9), (-MACHINE, tall + 9)),
    )
    return [
        block(share, end, TOP, passed, **BAND_LOOK),
        element("svg", parted, x=f"{share:g}%", y=TOP, width=f"{end - share:g}%", height=tall),
        across(
            end, shape(*narrows, **BAND_LOOK), shape(*leaves, fill=LOOK, fill_opacity=0.4), y=TOP
        ),
        across(end, path((0, TOP), (0, TOP + passed), stroke=SOFT, width=1)),
        words(end, TOP + tall + 20, "lost", "end", dx=-MACHINE - 12),
    ]


def _below(shown: Shown, pieces: list[str], machines: int) -> Drawn:
    """What is under the band: the meter and the nameplate on the left, the water on the right."""
    foot, water = TOP + WIDEST, TOP + WIDEST - LOST * machines
    left = [row for row in NAMEPLATE if shown.has(row[0])]
    right = [row for row in IN_THE_WATER if shown.has(row[0])]
    for row, (name, caption) in enumerate(left):
        pieces.append(shown.note(0, foot + 40 + 18 * row, name, caption, first=True))
    for row, (name, caption) in enumerate(right):
        pieces.append(shown.note(100, water + 27 + 18 * row, name, caption, "end", first=True))
    low = foot + 24 + (4 + 18 * len(left) if left else 0)
    if shown.has(WHOLE):
        low += 8
        pieces.append(line(0, 100, low, stroke=SOFT, stroke_width=1.2))
        pieces += [
            across(end, path((0, low - 5), (0, low + 5), stroke=SOFT, width=1.2))
            for end in (0, 100)
        ]
        low += 18
        pieces.append(shown.note(50, low, WHOLE, "wire to water", "middle"))
    return Drawn(pieces, low)


BAND = Drawing(
    "Power on its way from the wire to the water",
    (
        *("motor_power", "motor_output", "brake_power", "water_power", WHOLE),
        *MACHINES,
        METER,
        *(name for name, _ in (*NAMEPLATE, *IN_THE_WATER)),
    ),
    _draw,
    ("motor_power", "brake_power", "water_power", *MACHINES),
    (
        "motor_power",
        "motor_output",
        "brake_power",
        "water_power",
        WHOLE,
        *MACHINES,
        "head",
        "pressure",
    ),
)

"""The power triangle: kilowatts along, kvar up, kVA across, and the same with capacitors."""

from solver.render.svg import ACCENT, INK, LOOK, SOFT, across, element, path
from solver.units.quantity import Both

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown

__all__ = ["TRIANGLE"]

TOP, FOOT, BETTER = 10.0, 106.0, 62.0  # px: the top of kvar, its foot, its top with capacitors
END = 62.0  # percent: where kvar goes up
FROM: Rows = (
    ("line_volts", "volts"),
    ("line_amps", "amps"),
    ("single_volts", "volts"),
    ("single_amps", "amps"),
    ("amps_a", "A"),
    ("amps_b", "B"),
    ("amps_c", "C"),
    ("brake_power", Both("BHP", "shaft")),
    ("motor_efficiency", "motor"),
    ("motor_size", "nameplate"),
    ("service_factor", "SF"),
    ("motor_load", "motor load"),
)
BESIDE: Rows = (
    ("capacitor_kvar", "capacitors"),
    ("corrected_apparent_power", "kVA, corrected"),
    ("corrected_power_factor", "PF, corrected"),
)


def _draw(shown: Shown) -> Drawn:
    corrected = shown.works(*(name for name, _ in BESIDE))
    kvar = (
        (FOOT - 6, "kvar")
        if corrected
        else ((TOP + FOOT) / 2 + 5, _unit(shown, "reactive_power", "kvar"))
    )
    pieces = [
        _side((0, FOOT), (END, FOOT), INK),
        _side((END, FOOT), (END, TOP), INK),
        _side((0, FOOT), (END, TOP), ACCENT),
        across(0, path((44, FOOT), (43, FOOT - 6), (40, FOOT - 13), stroke=SOFT, width=1.5)),
        shown.note(0, FOOT + 18, "power_factor", "PF"),
        shown.note(END / 2, FOOT + 18, "input_power", _unit(shown, "input_power", "kW"), "middle"),
        shown.note(END / 2, 40, "apparent_power", _unit(shown, "apparent_power", "kVA"), "end", -8),
        shown.note(END, kvar[0], "reactive_power", kvar[1], dx=8),
    ]
    if corrected:
        pieces.append(_side((0, FOOT), (END, BETTER), LOOK, "6 4"))
        pieces += shown.column(END + 5, TOP + 8, BESIDE)[0]
    more, foot = shown.flow(FOOT + 19 + LINE, FROM)
    return Drawn(pieces + more, foot)


def _unit(shown: Shown, name: str, unit: str) -> str:
    """The unit as the name of a side, unless its value says it."""
    return "" if shown.text(name) not in ("", "?") else unit


def _side(start: tuple[float, float], end: tuple[float, float], stroke: str, dash: str = "") -> str:
    """A line from one share of the width (percent) and height (px) to another."""
    look = {"stroke_dasharray": dash} if dash else {}
    return element(
        "line", x1=f"{start[0]:g}%", y1=start[1], x2=f"{end[0]:g}%", y2=end[1], stroke=stroke,
        stroke_width=2.5, **look,
    )  # fmt: skip


TRIANGLE = Drawing(
    "The power triangle",
    (
        *("input_power", "apparent_power", "reactive_power", "power_factor"),
        *(name for name, _ in (*FROM, *BESIDE)),
    ),
    _draw,
    ("input_power", "apparent_power", "reactive_power", "power_factor"),
    ("apparent_power", "reactive_power", "power_factor", "capacitor_kvar"),
)

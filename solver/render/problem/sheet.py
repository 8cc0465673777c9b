"""A pump's data sheet: head and efficiency above, power and NPSHr below, over one scale of flow.

It is drawn to scale from the station, as it is read: what a question asks is on it.
"""

from collections.abc import Callable, Iterable

from solver.render.svg import ACCENT, LOOK, SOFT, across, element, path
from solver.station.scene import station_of
from solver.station.sheet import HIGH, LOW, PERCENT, Sheet, sheet_of
from solver.units.show import exact
from solver.vocabulary import quantity_named

from .drawing import Drawing, Drawn
from .shown import Shown, words

__all__ = ["SHEET"]

LEFT, RIGHT = 11.0, 89.0  # percent: the axes
TOP, TALL, SMALL, BETWEEN = 24.0, 140.0, 104.0, 40.0  # px: the pictures, and what is between them
POINTS = 48
NARROW = 3  # signs of a flow that fits under every line
# Families that ask for the power, or for what only the upper curves tell.
WITHOUT_POWER = ("curve_to_power", "operating_region")
Value = Callable[[float], float]


def _draw(shown: Shown) -> Drawn:
    station = station_of(shown.case)
    if station is None:
        return Drawn([], 0)
    sheet, units = sheet_of(station), shown.case.units
    foot = TOP + TALL
    pieces = _panel(TOP, TALL, HIGH, sheet.head_step, PERCENT, sheet)
    pieces += _names(TOP, "head", "efficiency, %", units)
    pieces.append(_curve(sheet, TOP, TALL, lambda q: sheet.at(q)[0] / sheet.head_step / HIGH))
    pieces.append(_curve(sheet, TOP, TALL, lambda q: sheet.at(q)[1] / PERCENT / HIGH, True))
    if shown.case.family.name not in WITHOUT_POWER:
        top = foot + BETWEEN
        foot = top + SMALL
        pieces += _panel(top, SMALL, LOW, sheet.power_step, sheet.npsh_step, sheet)
        pieces += _names(top, "brake_power", f"NPSHr, {_unit('npsh_required', units)}", units)
        pieces.append(_curve(sheet, top, SMALL, lambda q: sheet.at(q)[2] / sheet.power_step / LOW))
        pieces.append(
            _curve(sheet, top, SMALL, lambda q: sheet.at(q)[3] / sheet.npsh_step / LOW, True)
        )
    pieces += _flows(sheet, foot + 17)
    pieces.append(words(50, foot + 36, f"flow, {_unit('flow', units)}", "middle"))
    return Drawn(pieces, foot + 38)


def _unit(name: str, units: str) -> str:
    return quantity_named(name).unit(units)


def _share(flow: float, sheet: Sheet) -> float:
    """Where a flow is, in percent of the width."""
    return LEFT + (RIGHT - LEFT) * flow / sheet.flows[-1]


def _names(top: float, left: str, right: str, units: str) -> list[str]:
    """What the two scales are, each in the color of its curve."""
    named = quantity_named(left)
    said = f"{named.short(units) or named.label(units)}, {_unit(left, units)}"
    return [
        words(0, top - 11, said, look=ACCENT),
        words(100, top - 11, f"{right} (dashed)", "end", look=LOOK),
    ]


def _panel(
    top: float, tall: float, spaces: int, left: float, right: float, sheet: Sheet
) -> list[str]:
    """The lines of a picture, and the numbers of both scales."""
    pieces = []
    for n in range(spaces + 1):
        y = top + tall * (1 - n / spaces)
        pieces.append(
            element(
                "line", x1=f"{LEFT:g}%", x2=f"{RIGHT:g}%", y1=y, y2=y, stroke=SOFT, stroke_width=0.7
            )
        )
        pieces.append(words(LEFT, y + 4.5, exact(round(left * n, 6)), "end", dx=-6, look=ACCENT))
        pieces.append(words(RIGHT, y + 4.5, exact(round(right * n, 6)), dx=6, look=LOOK))
    upright = path((0, top), (0, top + tall), stroke=SOFT, width=0.7)
    return pieces + [across(_share(flow, sheet), upright) for flow in sheet.flows]


def _flows(sheet: Sheet, y: float) -> Iterable[str]:
    """The flows under their lines; every other one where they are long."""
    texts = [exact(round(flow, 6)) for flow in sheet.flows]
    every = 1 if max(map(len, texts)) <= NARROW or len(texts) <= 6 else 2
    for flow, text in list(zip(sheet.flows, texts, strict=True))[::every]:
        yield words(_share(flow, sheet), y, text, "middle")


def _curve(sheet: Sheet, top: float, tall: float, height: Value, dashed: bool = False) -> str:
    """One curve; `height` is its share of the picture at a flow."""
    flows = (sheet.flows[-1] * n / POINTS for n in range(POINTS + 1))
    points = " ".join(
        f"{100 * flow / sheet.flows[-1]:.2f},{tall * (1 - height(flow)):.2f}" for flow in flows
    )
    drawn = element(
        "polyline", points=points, fill="none", stroke=LOOK if dashed else ACCENT, stroke_width=2.4,
        vector_effect="non-scaling-stroke", **({"stroke_dasharray": "7 4"} if dashed else {}),
    )  # fmt: skip
    return element(
        "svg", drawn, x=f"{LEFT:g}%", y=top, width=f"{RIGHT - LEFT:g}%", height=tall,
        viewBox=f"0 0 100 {tall:g}", preserveAspectRatio="none",
    )  # fmt: skip


SHEET = Drawing(
    "The pump's curves",
    (),
    _draw,
    families=("read_curve", "operating_region", "curve_to_power", "npsh_off_curve"),
)

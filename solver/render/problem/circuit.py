"""A circuit: loads side by side between two wires, or one after another in a signal loop."""

from solver.render.svg import INK, PAGE, SOFT, across, line, path, rect

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown, words

__all__ = ["BRANCHES", "LOOP"]

TOP, FOOT = 12.0, 84.0  # px: the two wires
BOX = (16.0, 34.0)  # px: a load, wide and tall
SIDE_BY_SIDE = ("parallel_ohms_1", "parallel_ohms_2", "parallel_ohms_3")
PLACES = (30.0, 57.0, 84.0)  # percent: where loads are
OF_BRANCHES: Rows = (
    ("load_watts", "watts"),
    ("rated_watts", "rated"),
    ("rated_volts", "at"),
    ("run_time", "on for"),
    ("energy", "energy"),
    ("parallel_ohms", "together"),
)
ONE_AFTER_ANOTHER: Rows = (
    ("series_ohms_1", "input card"),
    ("series_ohms_2", "display"),
    ("series_ohms_3", "wire"),
)
OF_LOOP: Rows = (
    ("loop_current", "current"),
    ("loop_ohms", "total"),
    ("loop_drop", "used by the three"),
    ("transmitter_volts", "left for the transmitter"),
)


def _branches(shown: Shown) -> Drawn:
    loads = [name for name in SIDE_BY_SIDE if shown.has(name)] or ["load_ohms"]
    places = PLACES[-len(loads) :] if len(loads) > 1 else PLACES[1:2]
    pieces = [line(0, places[-1], y, stroke=INK) for y in (TOP, FOOT)]
    middle = (TOP + FOOT) / 2
    for name, share in zip(loads, places, strict=True):
        pieces.append(across(share, path((0, TOP), (0, FOOT)), _load(0, middle)))
        pieces.append(shown.note(share, FOOT + 20, name, "", "middle"))
    pieces.append(shown.note(0, middle - 4, "load_volts", ""))
    pieces.append(shown.note(0, middle + 17, "circuit_amps", ""))
    more, foot = shown.flow(FOOT + 24 + LINE, OF_BRANCHES)
    return Drawn(pieces + more, foot)


def _load(x: float, y: float) -> str:
    wide, tall = BOX
    look: dict[str, str | float] = {"fill": PAGE, "stroke": INK, "stroke_width": 2}
    return rect(x - wide / 2, y - tall / 2, wide, tall, **look)


def _loop(shown: Shown) -> Drawn:
    top, foot = 50.0, 92.0
    pieces = [line(0, 100, y, stroke=INK) for y in (top, foot)]
    pieces += [across(share, path((0, top), (0, foot))) for share in (0, 100)]
    for (name, called), share in zip(ONE_AFTER_ANOTHER, (20, 52, 84), strict=True):
        look: dict[str, str | float] = {"fill": PAGE, "stroke": INK, "stroke_width": 2}
        pieces.append(across(share, rect(-17, top - 8, 34, 16, **look)))
        pieces.append(shown.stacked(share, 14, name, called, "middle"))
    pieces.append(across(52, rect(-44, foot - 9, 88, 18, fill=PAGE, stroke=SOFT, stroke_width=2)))
    pieces.append(words(52, foot + 5, "transmitter", "middle"))
    pieces.append(shown.note(0, top + 25, "loop_supply", "supply", dx=8))
    more, last = shown.flow(foot + 30, OF_LOOP)
    return Drawn(pieces + more, last)


BRANCHES = Drawing(
    "Loads between two wires",
    (
        *("load_volts", "circuit_amps", "load_ohms"),
        *SIDE_BY_SIDE,
        *(name for name, _ in OF_BRANCHES),
    ),
    _branches,
    core=("load_volts", "load_ohms", "load_watts", "parallel_ohms"),
)
LOOP = Drawing(
    "A signal loop",
    (*(name for name, _ in (*ONE_AFTER_ANOTHER, *OF_LOOP)), "loop_supply"),
    _loop,
    core=("series_ohms_1",),
)

"""The readings of three legs at two or three connections, a row for each connection."""

from solver.render.svg import SOFT, line
from solver.units.quantity import Text

from .drawing import Drawing, Drawn
from .shown import Shown, words

__all__ = ["ROLLED"]

CALLED = (("", "as found"), ("_2", "rolled once"), ("_3", "rolled twice"))
CELLS: tuple[tuple[str, Text, float], ...] = (
    ("amps_a", "A", 29.0),
    ("amps_b", "B", 53.0),
    ("amps_c", "C", 77.0),
)
SUMMED: tuple[tuple[str, Text, float], ...] = (
    ("amps_average", "average", 30.0),
    ("amps_deviation", "deviation", 100.0),
)
TOP, ROW = 20.0, 30.0  # px


def _draw(shown: Shown) -> Drawn:
    pieces: list[str] = []
    y = TOP
    for suffix, called in CALLED:
        if not shown.has(*(f"{name}{suffix}" for name, _, _ in (*CELLS, *SUMMED))):
            continue
        if y > TOP:
            pieces.append(line(0, 100, y - 20, stroke=SOFT, stroke_width=0.6))
        pieces.append(words(0, y, called))
        for name, said, share in CELLS:
            pieces.append(
                shown.note(
                    share, y, f"{name}{suffix}", said if shown.has(f"{name}{suffix}") else ""
                )
            )
        for name, said, share in SUMMED:
            if shown.has(f"{name}{suffix}"):
                pieces.append(
                    shown.note(
                        share, y, f"{name}{suffix}", said, "end" if share == 100 else "start"
                    )
                )
        y += ROW
    return Drawn(pieces, y - ROW + 6)


ROLLED = Drawing(
    "Amps of three legs at each connection",
    tuple(f"{name}{suffix}" for suffix, _ in CALLED for name, _, _ in (*CELLS, *SUMMED)),
    _draw,
    (),
    ("amps_a_2", "amps_average_2"),
)

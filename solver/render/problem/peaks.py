"""Two prices: the energy of on-peak and off-peak hours side by side, each with its hours and its price."""

from solver.render.svg import ACCENT, LOOK, SOFT, across, block, path, stretched
from solver.units.quantity import Both

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown, words

__all__ = ["PEAKS"]

TOP, TALL = 22.0, 74.0  # px
POWER: Rows = (
    ("input_power", ""),
    ("brake_power", Both("BHP", "shaft")),
    ("motor_efficiency", "motor"),
)
HIGH: Rows = (("on_peak_hours", ""), ("on_peak_energy", ""), ("on_peak_price", ""))
LOW: Rows = (("off_peak_hours", ""), ("off_peak_energy", ""), ("off_peak_price", ""))
MOVED: Rows = (("energy_moved", "moved"), ("hours_moved", "moved"))
SUM: Rows = (("time_of_use_bill", "bill"), ("shift_saving", "saved"))


def _block(
    shown: Shown, left: float, right: float, called: str, rows: Rows, color: str
) -> list[str]:
    """One block with its name over it and its quantities in it."""
    pieces = [
        block(left, right, TOP, TALL, fill=color, fill_opacity=0.25),
        words(left, TOP - 6, called),
    ]
    y = TOP + 20
    for name, caption in rows:
        if shown.has(name):
            pieces.append(shown.note(left, y, name, caption, dx=8))
            y += LINE
    return pieces


def _draw(shown: Shown) -> Drawn:
    pieces = [
        *_block(shown, 0, 38, "on-peak", HIGH, LOOK),
        *_block(shown, 62, 100, "off-peak", LOW, ACCENT),
    ]
    foot = TOP + TALL
    if shown.works("energy_moved", "hours_moved"):
        head = path((-9, -5), (0, 0), (-9, 5), stroke=SOFT, width=2)
        pieces.append(stretched(40, 60, TOP + 50, 1, (0, 0), (100, 0), stroke=SOFT, stroke_width=2))
        pieces.append(across(60, head, y=TOP + 50))
        name = next((name for name, _ in MOVED if shown.has(name)), "")
        pieces.append(shown.stacked(50, TOP + 18, name, "moved", "middle") if name else "")
    rows = (*POWER, *SUM)
    more, foot = shown.flow(foot + LINE, rows)
    return Drawn(pieces + more, foot)


PEAKS = Drawing(
    "On-peak and off-peak energy",
    tuple(name for rows in (POWER, HIGH, LOW, MOVED, SUM) for name, _ in rows),
    _draw,
)

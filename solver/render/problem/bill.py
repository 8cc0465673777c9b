"""An electric bill as it comes in the mail: a line for each charge, and the total."""

from solver.render.svg import SOFT, block, line

from .drawing import Drawing, Drawn
from .shown import Rows, Shown, words

__all__ = ["BILL"]

ROW, TOP, RIM = 24.0, 6.0, 10.0  # px
USE: Rows = (("input_power", ""), ("hours_per_day", "×"), ("days", "×"))
CHARGES: tuple[tuple[str, Rows, str], ...] = (
    ("energy", (("energy", ""), ("energy_price", "×")), "energy_cost"),
    ("demand", (("peak_demand", ""), ("demand_price", "×")), "demand_charge"),
    ("fixed", (), "fixed_charge"),
)
TOTAL = (("bill", "total"), ("average_price", "average price"))


def _draw(shown: Shown) -> Drawn:
    y = TOP + 18
    use, last = shown.flow(y, USE, dx=RIM)
    pieces = [*use]
    y = last + ROW if use else y
    for called, factors, amount in CHARGES:
        pieces.append(words(0, y, called, dx=RIM))
        more, _ = shown.flow(y, factors, dx=RIM + 66)
        pieces += [*more, shown.note(100, y, amount, "", "end", dx=-RIM)]
        y += ROW
    pieces.append(line(0, 100, y - 14, stroke=SOFT, stroke_width=1))
    y += 4
    for name, called in TOTAL:
        if name == "bill" or shown.has(name):
            pieces.append(shown.note(100, y, name, called, "end", dx=-RIM))
            y += ROW
    tall = y - ROW + 10
    frame = block(0, 100, TOP - 5, tall - TOP + 5, fill="none", stroke=SOFT, stroke_width=1.5)
    return Drawn([frame, *pieces], tall)


BILL = Drawing(
    "An electric bill",
    (
        *(name for name, _ in (*USE, *TOTAL)),
        *(
            name
            for _, factors, amount in CHARGES
            for name in (*(one for one, _ in factors), amount)
        ),
    ),
    _draw,
    ("bill",),
    ("bill", "demand_charge", "energy_cost", "peak_demand"),
)

"""A month's kilowatts: the average all month long, and the peak that the demand is billed by."""

from solver.render.svg import ACCENT, INK, SOFT, line, stretched

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown

__all__ = ["DEMAND"]

PEAK, AVERAGE, FOOT = 26.0, 74.0, 104.0  # px down
# One shape for every problem, in percent of its width and height.
DAYS = (
    (0, 70), (6, 40), (12, 66), (20, 52), (27, 70), (34, 30), (41, 62), (47, 58), (53, 0), (58, 64),
    (66, 44), (73, 68), (80, 50), (87, 70), (94, 38), (100, 66),
)  # fmt: skip
OVER: Rows = (("energy", "used"), ("period_hours", "in"), ("days", "in"))
BILLED: Rows = (
    ("power_factor", "PF"),
    ("required_power_factor", "PF required"),
    ("kva_price", "price"),
    ("load_factor", "load factor"),
    ("billed_kva", "billed"),
    ("kva_charge", "charge"),
    ("adjusted_demand", "billed"),
)


def _draw(shown: Shown) -> Drawn:
    tall = FOOT - PEAK
    shape = ((0, 100), *DAYS, (100, 100))
    pieces = [
        stretched(0, 100, PEAK, tall, *shape, fill=ACCENT, fill_opacity=0.25, stroke="none"),
        line(0, 100, AVERAGE, stroke=SOFT, stroke_width=1.5, stroke_dasharray="5 4"),
        line(0, 100, FOOT, stroke=INK, stroke_width=1.5),
        shown.note(53, PEAK - 8, "peak_demand", "peak", "middle"),
        shown.note(0, AVERAGE - 7, "average_demand", "average"),
    ]
    over, foot = shown.flow(FOOT + 20, OVER)
    more, foot = shown.flow(foot + LINE, BILLED)
    return Drawn([*pieces, *over, *more], foot)


DEMAND = Drawing(
    "Demand over the month",
    ("peak_demand", "average_demand", *(name for name, _ in (*OVER, *BILLED))),
    _draw,
    core=("load_factor", "billed_kva", "kva_charge", "kva_price", "adjusted_demand"),
)

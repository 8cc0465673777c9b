"""Energy as an area: kilowatts high and hours wide, with what it costs; a better machine takes a strip off it."""

from solver.render.svg import ACCENT, LOOK, SOFT, across, block, line, path
from solver.units.quantity import Both

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown, words

__all__ = ["ENERGY"]

TOP, TALL, STRIP = 20.0, 96.0, 46.0  # px: where the area begins, how high, and what is saved of it
END, RIGHT = 61.0, 64.0  # percent: the end of the area, the column beside it
ROOM = 190.0  # px in the area
NOW: Rows = (
    ("input_power", ""),
    ("motor_size", "nameplate"),
    ("motor_load", "load"),
    ("brake_power", Both("BHP", "shaft")),
    ("water_power", Both("WHP", "water")),
    ("pump_efficiency", "pump"),
    ("motor_efficiency", "motor"),
    ("overall_efficiency", "wire to water"),
    ("flow", "flow"),
    ("head", "TDH"),
)
THEN: Rows = (
    ("new_input_power", ""),
    ("new_pump_efficiency", "pump"),
    ("new_motor_efficiency", "motor"),
)
HOURS: Rows = (("run_time", ""), ("hours_per_day", ""), ("days", "×"), ("yearly_hours", ""))
COST: Rows = (
    ("volume_pumped", "volume"),
    ("energy_price", "price"),
    ("installed_cost", "installed cost"),
    ("energy_cost", "cost"),
    ("cost_per_volume", Both("cost per MG", "cost per 1,000 m³")),
    ("yearly_saving", "saved per year"),
    ("simple_payback", "payback"),
)
AREA, SAVED = "energy", "saved_energy"


def _draw(shown: Shown) -> Drawn:
    compared = shown.works("new_input_power", "saved_energy", "yearly_saving")
    top = TOP + STRIP if compared else TOP
    foot = TOP + TALL
    pieces = [block(0, END, top, foot - top, fill=ACCENT, fill_opacity=0.2)]
    if compared:
        pieces.append(block(0, END, TOP, STRIP, fill=LOOK, fill_opacity=0.25))
        pieces.append(words(0, top + 19, "after", dx=6))
        more, _ = shown.flow(top + 38, THEN, room=ROOM, dx=6)
        pieces += [*more, shown.note(0, TOP + 19, SAVED, "saved", dx=6) if shown.has(SAVED) else ""]
    more, _ = shown.flow(TOP + 19, NOW, room=ROOM, dx=6)
    pieces += [*more, words(0, TOP - 6, "now" if compared else "kW")]
    if shown.has(AREA) or not compared:
        pieces.append(shown.note(END / 2, foot - 12, AREA, "energy", "middle"))
    column, right = shown.column(RIGHT, TOP - 5, COST)
    pieces += [*column, line(0, END, foot, stroke=SOFT, stroke_width=1.5)]
    pieces.append(across(0, path((0, TOP), (0, foot), stroke=SOFT, width=1.5)))
    hours, low = shown.flow(foot + 18, HOURS, room=LEAST if right <= foot + 2 else ROOM)
    if not hours:
        hours, low = [words(END, foot + 18, "hours", "end")], foot + 18
    return Drawn(pieces + hours, max(low, right))


ENERGY = Drawing(
    "Energy: kilowatts times hours",
    (AREA, SAVED, *(name for rows in (NOW, THEN, HOURS, COST) for name, _ in rows)),
    _draw,
    core=(AREA, SAVED, *(name for name, _ in NOW)),
)

"""Kilowatts times hours, their cost, and what a better pump saves."""

from typing import TYPE_CHECKING

from solver.formulas import FORMULAS

from .view import Figure, Scale, Slide, Values, View, shown, worked

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["COST"]

COMPARED = ("input_power", "motor_efficiency", "pump_efficiency", "new_pump_efficiency")
BILLED = ("hours_per_day", "days", "energy_price")
# The motor stays the same, so its efficiency leaves the share saved as it is; any value would do.
SAME_MOTOR = {"motor_efficiency": 92.0}


def billed(power: float, values: Values, units: str) -> dict[str, float]:
    """The energy and cost of drawing `power` kilowatts on this schedule."""
    schedule = {name: values[name] for name in BILLED}
    return worked({"input_power": power, **schedule}, "energy_cost", FORMULAS, units)


def view(values: Values, units: str) -> View:
    """The pump now, a better pump, and the difference, each billed the same way."""
    given = {name: (values | SAME_MOTOR)[name] for name in COMPARED}
    known = {**values, **worked(given, "saved_power", FORMULAS, units)}
    powers = (known["input_power"], known["new_input_power"], known["saved_power"])
    bills = [billed(power, values, units) for power in powers]
    rows = tuple(
        (label, *(shown(bill, name, units) for bill in bills))
        for label, name in (
            ("Power", "input_power"),
            (f"Energy in {values['days']:g} days", "energy"),
            ("Cost", "energy_cost"),
        )
    )
    now, new, saved = (shown(bill, "energy_cost", units) for bill in bills)
    headline = f"In {values['days']:g} days: {now} now, {new} with the other pump. It saves {saved}."
    sides = ". ".join(f"{r[0]}: now {r[1]}, other pump {r[2]}, saved {r[3]}" for r in rows)
    alt = f"Kilowatts against hours a day, {values['hours_per_day']:g} hours. {sides}."
    columns = ("", "Now", "Other pump", "Saved")
    return View(headline, alt, columns, rows, known, units)


def draw(axes: "Axes", view: View) -> None:
    """Height is kilowatts and width is hours, so each area is the energy of a day."""
    known = view.known
    hours, now, new = (known[n] for n in ("hours_per_day", "input_power", "new_input_power"))
    axes.bar(0, new, hours, align="edge", color="C0", label="other pump")
    axes.bar(0, known["saved_power"], hours, new, align="edge", color="C1", hatch="////", label="saved")
    axes.set_xlim(0, 24)
    axes.set_xticks(range(0, 25, 4))
    axes.set_xlabel("Hours a day")
    axes.set_ylabel("Kilowatts")
    axes.figure.legend(loc="outside upper left", ncols=2)


COST = Figure(
    "cost",
    "Kilowatts, hours and cost",
    (
        Slide("input_power", *[Scale(1, 120, 0.5, 14)] * 2, label="Input power now"),
        Slide("hours_per_day", *[Scale(0.5, 24, 0.5, 9)] * 2),
        Slide("days", *[Scale(1, 366, 1, 30)] * 2),
        Slide("energy_price", *[Scale(0.04, 0.5, 0.005, 0.115)] * 2),
        Slide("pump_efficiency", *[Scale(35, 85, 1, 61)] * 2, label="Pump efficiency now"),
        Slide("new_pump_efficiency", *[Scale(35, 88, 1, 76)] * 2, label="Other pump's efficiency"),
    ),
    view,
    draw,
    height=2.9,
    systems=("us",),
)

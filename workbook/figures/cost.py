"""Kilowatts times hours, their cost, and what a better pump saves."""

from typing import TYPE_CHECKING

from solver.topics.formulas import FORMULAS

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
    """The pump now, another pump, and the difference, each billed the same way."""
    given = {name: {**values, **SAME_MOTOR}[name] for name in COMPARED}
    known = {**values, **worked(given, "saved_power", FORMULAS, units)}
    # The same efficiency twice leaves a rounding of the machine's, not a saving.
    known["saved_power"] = round(known["saved_power"], 9)
    change = "Saved" if known["saved_power"] >= 0 else "More"
    powers = (known["input_power"], known["new_input_power"], abs(known["saved_power"]))
    bills = [billed(power, values, units) for power in powers]
    days = f"{values['days']:g} day{'s' * (values['days'] != 1)}"
    rows = tuple(
        (label, *(shown(bill, name, units) for name in ("input_power", "energy", "energy_cost")))
        for label, bill in zip(("Now", "Other pump", change), bills, strict=True)
    )
    now, new, changed = (row[-1] for row in rows)
    ends = f"You save {changed}" if change == "Saved" else f"That is {changed} more"
    headline = f"For {days} you pay {now} now, and {new} with the other pump. {ends}."
    told = ". ".join(f"{row[0]}: {', '.join(row[1:])}" for row in rows)
    alt = f"Kilowatts against hours a day, for {values['hours_per_day']:g} hours. {told}."
    columns = ("", "Power", f"Energy in {days}", "Cost")
    return View(headline, alt, columns, rows, known, units)


def draw(axes: "Axes", view: View) -> None:
    """Height is kilowatts and width is hours, so each area is the energy of a day."""
    known = view.known
    hours, now, new, saved = (
        known[name] for name in ("hours_per_day", "input_power", "new_input_power", "saved_power")
    )
    labels = [f"{label.lower()} {power}" for label, power, *_ in view.rows]
    axes.bar(0, new, hours, align="edge", color="C0", label=labels[1])
    axes.bar(0, saved, hours, new, align="edge", color="C1", hatch="////", label=labels[2])
    axes.step((0, hours, hours), (now, now, 0), color="C2", linewidth=3, label=labels[0])
    axes.set(xlim=(0, 24), xticks=range(0, 25, 4), ylim=(0, None))
    axes.set(xlabel="Hours a day (each area: kWh a day)", ylabel="Kilowatts")
    axes.locator_params(axis="y", nbins=5, steps=[1, 2, 5, 10])
    axes.figure.legend(loc="outside upper left", ncols=2, columnspacing=1.2, handlelength=1.2)


COST = Figure(
    "cost",
    "Kilowatts, hours and cost",
    (
        Slide("input_power", Scale(1, 120, 0.5, 14), label="Input power now, kW"),
        Slide("pump_efficiency", Scale(35, 85, 1, 61), label="Pump efficiency now, %"),
        Slide("new_pump_efficiency", Scale(35, 88, 1, 76), label="Other pump's efficiency, %"),
        Slide("hours_per_day", Scale(0.5, 24, 0.5, 9), label="Hours a day"),
        Slide("days", Scale(1, 366, 1, 30), label="Days"),
        Slide("energy_price", Scale(0.04, 0.5, 0.005, 0.115), label="Price, $ per kWh"),
    ),
    view,
    draw,
    height=3.0,
    systems=("us",),
)

"""Kilowatts times hours, their cost, and what a better pump saves."""

from solver.topics.formulas import FORMULAS

from .chart import BLUE, GREEN, ORANGE, Axis, Bar, Chart, Line
from .view import Figure, Scale, Slide, Values, View, shown, worked

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


def draw(view: View) -> tuple[Chart, ...]:
    """Height is kilowatts and width is hours, so each area is the energy of a day."""
    known = view.known
    hours, now, new, saved = (
        known[name] for name in ("hours_per_day", "input_power", "new_input_power", "saved_power")
    )
    labels = [f"{label.lower()} {power}" for label, power, *_ in view.rows]
    across = Axis(
        0, 24, "Hours a day (each area: kWh a day)", [(h, str(h)) for h in range(0, 25, 4)]
    )
    chart = Chart(across, Axis(0, 1.06 * max(now, new), "Kilowatts"), 170)
    chart.put(
        Bar(0, 0, hours, new, BLUE, labels[1]),
        Bar(0, new, hours, saved, ORANGE, labels[2], hatched=True),
        Line([(0, now), (hours, now), (hours, 0)], GREEN, labels[0], width=4),
    )
    return (chart,)


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
    systems=("us",),
)

"""Kilowatts, kilovars and kVA as the sides of a triangle, and what a capacitor does to it."""

from solver.topics.formulas import NAMEPLATE
from solver.units.show import exact

from .chart import BLUE, GREEN, INK, ORANGE, PINK, Axis, Bar, Chart, Line
from .view import Figure, Scale, Slide, Values, View, shown, told, worked

__all__ = ["TRIANGLE"]

NOW = ("power_factor", "apparent_power", "reactive_power")
THEN = tuple(f"corrected_{name}" for name in NOW)
LABELS = ("Power factor", "Apparent", "Reactive", "Line amps")


def lines(known: Values, names: tuple[str, ...], units: str) -> tuple[str, ...]:
    """The power factor, kVA, kvar and line amps of one of the triangles, each with its unit."""
    factor, apparent, reactive = names
    given = {"apparent_power": known[apparent], "line_volts": known["line_volts"]}
    amps = worked(given, "line_amps", NAMEPLATE, units)
    return (
        told(known[factor], factor, units, exact),
        *(shown(known, name, units) for name in (apparent, reactive)),
        shown(amps, "line_amps", units),
    )


def view(values: Values, units: str) -> View:
    """The triangle now, and with a capacitor that brings the power factor to what is wanted."""
    known = dict(values)
    factor, wanted = known["power_factor"], known["corrected_power_factor"]
    # A capacitor only raises it.
    known["corrected_power_factor"] = max(factor, wanted)
    given = {name: known[name] for name in ("input_power", NOW[0], THEN[0])}
    known |= worked(given, "capacitor_kvar", NAMEPLATE, units)
    power, capacitor = (shown(known, name, units) for name in ("input_power", "capacitor_kvar"))
    both = zip(LABELS, lines(known, NOW, units), lines(known, THEN, units), strict=True)
    first, *others = both
    rows = (first, ("Real", power, power), *others, ("Capacitor", "none", capacitor))
    amps = rows[4]
    headline = (
        f"The motor draws {power} either way. A capacitor of {capacitor} "
        f"brings the line from {amps[1]} down to {amps[2]} on each leg."
    )
    if wanted <= factor:
        headline = (
            f"The power factor is {first[1]} now, so it takes no capacitor to reach {wanted:g}."
        )
    listed = "; ".join(f"{name}: {now} now, {then} after" for name, now, then in rows)
    alt = (
        "Two right triangles on the same kilowatts: kilovars go straight up, and kVA is the "
        f"sloping side. {listed}."
    )
    return View(headline, alt, ("", "Now", "After"), rows, known, units)


def draw(view: View) -> tuple[Chart, ...]:
    """Both triangles on the same kilowatts; both ways have one scale, so the angles are true."""
    known = view.known
    power, now, then = (known[name] for name in ("input_power", NOW[2], THEN[2]))
    by = {row[0]: row for row in view.rows}
    kva, kvar = by["Apparent"], by["Reactive"]
    width = 0.05 * power
    across = Axis(0, power + width, f"Kilowatts, the work: {by['Real'][1]}")
    chart = Chart(across, Axis(0, 1.05 * now, "Kilovars"), 220, even=True)
    chart.put(Line([(0, 0), (power, 0)], INK, width=4))
    for kvars, color, dashed, label in (
        (now, BLUE, False, f"now {kva[1]}"),
        (then, GREEN, True, f"after {kva[2]}"),
    ):
        chart.put(Line([(0, 0), (power, kvars)], color, label, dashed, width=4))
    chart.put(
        Bar(power, 0, width, then, PINK, f"stays {kvar[2]}"),
        Bar(
            power, then, width, known["capacitor_kvar"], ORANGE,
            f"capacitor {by['Capacitor'][2]}", hatched=True,
        ),
    )  # fmt: skip
    return (chart,)


TRIANGLE = Figure(
    "triangle",
    "Kilowatts, kilovars and kVA",
    (
        Slide("input_power", Scale(5, 150, 0.5, 42.5), label="Input power, kW"),
        Slide("power_factor", Scale(0.6, 0.97, 0.01, 0.78), label="Power factor now"),
        Slide("corrected_power_factor", Scale(0.85, 1, 0.01, 0.95), label="Power factor wanted"),
        Slide("line_volts", Scale(200, 600, 5, 460), label="Volts, line to line"),
    ),
    view,
    draw,
    systems=("us",),
)

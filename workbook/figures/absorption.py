"""Insulation over ten minutes of test: a dry winding beside a damp one, both of them a model.

At 40 °C the current is a steady leak, and an absorption current that fades as a power of time
(the law of Curie and von Schweidler). The microamps are invented, so that a damp winding reads
well above the least megohms and only its index gives it away.
"""

from solver.algebra.expression import Known, Number
from solver.topics.formulas import INSULATION
from solver.topics.limits import POLARIZATION, RANDOM_INSULATION
from solver.units.show import figures

from .chart import BLUE, GREY, ORANGE, Axis, Chart, Dot, Line, Note
from .view import Figure, Scale, Slide, Values, View, shown, told, valued, worked

__all__ = ["ABSORPTION"]

VOLTS = 500.0  # IEEE 43 for a winding under 1,000 V
DRY_LEAK = 0.4  # µA
# 3 µA after a minute, and less by the power 0.7 of the time.
CURRENT = Known("leakage_current") + Number(3) * Known("test_time") ** -0.7
READ_AT = {"30s": 0.5, "1min": 1.0, "10min": 10.0}  # minutes
SPOKEN = ("30 s", "1 min", "10 min")
LONGEST = 10  # minutes
# Close together at first, where the curves bend.
TIMES = (0.1, 0.2, 0.3, 0.4, *(0.5 * step for step in range(1, 2 * LONGEST + 1)))


def reading(leak: float, minutes: float, temperature: float, units: str) -> float:
    """The megohms that the meter shows so many minutes after the volts went on."""
    current = valued(CURRENT, {"leakage_current": leak, "test_time": minutes}, units)
    given = {"test_volts": VOLTS, "leakage_current": current}
    at_40 = worked(given, "insulation", INSULATION, units)["insulation"]
    given = {"insulation_at_40": at_40, "winding_temperature": temperature}
    return worked(given, "insulation", INSULATION, units)["insulation"]


def tested(leak: float, temperature: float, units: str) -> dict[str, float]:
    """The three readings of one winding, what they come to, and the minute's one at 40 °C."""
    known = {
        f"insulation_{when}": reading(leak, minutes, temperature, units)
        for when, minutes in READ_AT.items()
    }
    for asked in ("absorption_ratio", "polarization_index"):
        known = worked(known, asked, INSULATION, units)
    minute = {"insulation": known["insulation_1min"], "winding_temperature": temperature}
    return known | worked(minute, "insulation_at_40", INSULATION, units)


def both(values: Values, units: str) -> list[dict[str, float]]:
    """The dry winding and the damp one, at the same temperature."""
    leaks = (DRY_LEAK, values["leakage_current"])
    return [tested(leak, values["winding_temperature"], units) for leak in leaks]


def verdict(index: float) -> str:
    """What IEEE 43 makes of an index."""
    low, high = POLARIZATION.at({})
    if index < low:
        return f"That is under {low}, which is too low for any class."
    if index < high:
        return f"That is under {high:.1f}: enough for class A insulation, but too low for the other classes."
    return f"That is {high:.1f} or more: enough for every class."


ROWS = {
    **{f"insulation_{when}": f"Megohms, {t}" for when, t in zip(READ_AT, SPOKEN, strict=True)},
    "insulation_at_40": "1 min, at 40 °C",
    "absorption_ratio": "Absorption ratio",
    "polarization_index": "Polarization index",
}


def view(values: Values, units: str) -> View:
    """Two windings under test, one as damp as the slider says."""
    dry, damp = both(values, units)
    rows = tuple((label, figures(dry[name]), figures(damp[name])) for name, label in ROWS.items())
    index = damp["polarization_index"]
    headline = (
        f"The damp winding has an index of {shown(damp, 'polarization_index', units)}. "
        f"{verdict(index)} After one minute it reads {shown(damp, 'insulation_at_40', units)}, "
        f"corrected to 40 °C. IEEE 43 asks for {RANDOM_INSULATION.low} megohms on a random-wound motor."
    )
    degrees = told(values["winding_temperature"], "winding_temperature", units)
    told_rows = "; ".join(f"{label}: dry {a}, damp {b}" for label, a, b in rows)
    alt = f"Megohms over ten minutes, for two model windings at {degrees}. {told_rows}."
    return View(headline, alt, ("", "Dry", "Damp"), rows, dict(values), units)


def draw(view: View) -> tuple[Chart, ...]:
    """Megohms against minutes, with the three readings marked on each curve."""
    values, units = view.known, view.units
    degrees = values["winding_temperature"]
    marks = [[found[f"insulation_{when}"] for when in READ_AT] for found in both(values, units)]
    top = 1.2 * max(max(row) for row in marks)
    across = Axis(0, LONGEST, f"Minutes at {VOLTS:g} V DC\nA model, not readings from a motor.")
    chart = Chart(across, Axis(0, top, "Megohms"), 190)
    chart.put(*(Line([(at, 0), (at, top)], GREY, width=0.6) for at in READ_AT.values()))
    half, minute, last = SPOKEN
    chart.put(
        Note(READ_AT["1min"], top, f"{half} and {minute}", dx=5, dy=13),
        Note(READ_AT["10min"], top, last, "end", dx=-5, dy=13),
    )
    leaks = (("dry", DRY_LEAK, BLUE, "dot"), ("damp", values["leakage_current"], ORANGE, "square"))
    for (name, leak, color, shape), found, row in zip(
        leaks, both(values, units), marks, strict=True
    ):
        ratio, index = (shown(found, n, units) for n in ("absorption_ratio", "polarization_index"))
        curve = [(time, reading(leak, time, degrees, units)) for time in TIMES]
        chart.put(Line(curve, color, dashed=name == "damp"))
        label = f"{name}: ratio {ratio}, index {index}"
        dots = [Dot(at, read, color, shape) for at, read in zip(READ_AT.values(), row, strict=True)]
        chart.put(dots[0]._replace(label=label), *dots[1:])
    return (chart,)


ABSORPTION = Figure(
    "absorption",
    "A ten-minute test, dry and damp",
    (
        Slide("leakage_current", Scale(0.5, 20, 0.5, 6), label="Leakage through moisture, µA"),
        Slide("winding_temperature", Scale(5, 60, 1, 22), label="Winding temperature, °C"),
    ),
    view,
    draw,
    systems=("us",),
)

"""Insulation over ten minutes of test: a dry winding beside a damp one, both of them a model.

At 40 °C the current is a steady leak, and an absorption current that fades as a power of time
(the law of Curie and von Schweidler). The microamps are invented, so that a damp winding reads
well above the least megohms and only its index gives it away.
"""

from typing import TYPE_CHECKING

from solver.algebra.expression import Known, Number
from solver.topics.formulas import INSULATION
from solver.topics.limits import POLARIZATION, RANDOM_INSULATION
from solver.units.show import figures

from .view import Figure, Scale, Slide, Values, View, shown, told, valued, worked

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["ABSORPTION"]

VOLTS = 500.0  # IEEE 43 for a winding under 1,000 V
DRY_LEAK = 0.4  # µA
# 3 µA after a minute, and less by the power 0.7 of the time.
CURRENT = Known("leakage_current") + Number(3) * Known("test_time") ** -0.7
READ_AT = {"30s": 0.5, "1min": 1.0, "10min": 10.0}  # minutes
SPOKEN = ("30 s", "1 min", "10 min")
LONGEST = 10  # minutes


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


def draw(axes: "Axes", view: View) -> None:
    """Megohms against minutes, with the three readings marked on each curve."""
    values, units = view.known, view.units
    times = [step / 10 for step in range(1, 10 * LONGEST + 1)]
    leaks = {"dry": DRY_LEAK, "damp": values["leakage_current"]}
    looks = (("C0", "-", "o"), ("C1", "--", "s"))
    for (name, leak), found, (color, line, mark) in zip(
        leaks.items(), both(values, units), looks, strict=True
    ):
        ratio, index = (shown(found, n, units) for n in ("absorption_ratio", "polarization_index"))
        curve = [reading(leak, time, values["winding_temperature"], units) for time in times]
        axes.plot(times, curve, color=color, linestyle=line)
        marks = [found[f"insulation_{when}"] for when in READ_AT]
        label = f"{name}: ratio {ratio}, index {index}"
        axes.plot(list(READ_AT.values()), marks, mark, color=color, clip_on=False, label=label)
    _mark_times(axes)
    axes.set(xlim=(0, LONGEST), ylim=(0, None), ylabel="Megohms")
    axes.locator_params(axis="y", nbins=5, steps=[1, 2, 5, 10])
    axes.set_xlabel(f"Minutes at {VOLTS:g} V DC\nA model, not readings from a motor.")
    axes.figure.legend(loc="outside upper left", handlelength=1.2)


def _mark_times(axes: "Axes") -> None:
    """When the readings are taken, said above the curves; the first two stand close together."""
    top = axes.secondary_xaxis("top")
    top.set_xticks(list(READ_AT.values()), SPOKEN)
    top.spines["top"].set_visible(False)
    half, minute, last = top.get_xticklabels()
    half.set_horizontalalignment("right")
    minute.set_horizontalalignment("left")
    last.set_horizontalalignment("right")
    for minutes in READ_AT.values():
        axes.axvline(minutes, color="#888888", linewidth=0.6)


ABSORPTION = Figure(
    "absorption",
    "A ten-minute test, dry and damp",
    (
        Slide("leakage_current", Scale(0.5, 20, 0.5, 6), label="Leakage through moisture, µA"),
        Slide("winding_temperature", Scale(5, 60, 1, 22), label="Winding temperature, °C"),
    ),
    view,
    draw,
    height=3.4,
    systems=("us",),
)

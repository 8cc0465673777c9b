"""Insulation judged: the least megohms that a winding of each kind may have."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Level, Option
from solver.topics.limits import FIELD_INSULATION, FORM_INSULATION, RANDOM_INSULATION, against
from solver.units.show import exact, figures, with_unit

from .kinds import CAUTION, TESTED, judged
from .scenes import LOW, RATED, brought_to, halvings, reading_at

__all__ = ["LEAST"]


def three_kinds(draw: Draw, units: str) -> tuple[tuple[int, str, float], ...]:
    """Three windings: rated volts, kind, and the least megohms at 40 °C for that kind."""
    low, high = (
        draw.pick([v for v in RATED[units] if (v < LOW) is below]) for below in (True, False)
    )
    return (
        (low, "random-wound", RANDOM_INSULATION.low),
        (high, "form-wound", FORM_INSULATION.low),
        (high, "wound in 1962", high / 1000 + 1),
    )


def judge_below(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Three motors of three kinds, one of which reads less than its kind must."""
    temperature = values.get("winding_temperature", 40.0)
    factor, bad = halvings(temperature), draw.pick((0, 1, 2))
    options = []
    for at, (volts, kind, least) in enumerate(three_kinds(draw, units)):
        share = draw.between(0.45, 0.75) if at == bad else draw.between(1.4, 2.6)
        reading = reading_at(least * share, temperature)
        shown, at_40, limit = (
            with_unit(text, "megohm")
            for text in (exact(reading), figures(reading * factor), figures(least))
        )
        verdict = "but " if at == bad else "so it passes: "
        says = f"Corrected to 40 °C it reads {at_40}, {verdict}its kind needs at least {limit}."
        text = f"{with_unit(exact(volts), 'V')}, {kind}: {shown}"
        options.append(Option(f"kind_{at}", text, says))
    right = options.pop(bad)
    return Judgement(
        "minimum at 40 °C: 5 megohms random-wound, 100 form-wound, kV + 1 before about 1970 (IEEE 43)",
        f"multiply by {figures(factor)} to correct to 40 °C" if factor != 1 else "",
        Option(
            right.id,
            right.text,
            f"{right.says} Don't energize it. Clean it, dry it and test it again.",
        ),
        tuple(options),
    )


LEAST = (
    judged(
        "insulation_limit",
        "GL",
        "A reading against the minimum",
        against(
            RANDOM_INSULATION,
            RANDOM_INSULATION.rule,
            (
                "below",
                "Under 5 megohms: don't energize it",
                f"Look for moisture and dirt. Dry the winding and test it again. {CAUTION}",
            ),
            (
                "between",
                "Over 5, up to 100 megohms: OK to run, but find out why",
                f"IEEE 43 allows it. Most dry windings read higher, so keep an eye on it. {CAUTION}",
            ),
            (
                "good",
                f"Over {FIELD_INSULATION} megohms: good",
                f"Write it down with the winding temperature, so a later drop shows. {CAUTION}",
            ),
        ),
        brought_to((0.9, 4.6), (5.6, 90), (112, 900)),
        Level(
            ("rated_volts", "insulation_at_40"),
            f"{TESTED}The motor is random-wound and rated {{rated_volts}}. It reads "
            "{insulation_at_40}, corrected to 40 °C. What is your call?",
        ),
        Level(
            ("rated_volts", "insulation", "winding_temperature"),
            f"{TESTED}The motor is random-wound and rated {{rated_volts}}. It reads {{insulation}} "
            "with the winding at {winding_temperature}. What is your call?",
            find=("insulation_at_40",),
        ),
        Level(
            ("rated_volts", "test_volts", "leakage_current", "winding_temperature"),
            f"{TESTED}The motor is random-wound and rated {{rated_volts}}. At a test voltage of "
            "{test_volts} it leaks {leakage_current}, with the winding at {winding_temperature}. "
            "What is your call?",
            find=("insulation_at_40",),
        ),
    ),
    judged(
        "which_is_below",
        "GN",
        "Which winding reads too low",
        judge_below,
        brought_to((8, 40)),
        Level(
            (),
            "{person} corrects the readings of three motors at {station} to 40 °C. "
            "Which one is under the minimum for its kind?",
            scene=lambda draw, units: {},
        ),
        Level(
            ("winding_temperature",),
            "{person} tests three motors at {station}, all at {winding_temperature}. "
            "Corrected to 40 °C, which one is under the minimum for its kind?",
        ),
    ),
)

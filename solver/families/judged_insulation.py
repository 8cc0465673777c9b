"""Insulation judged: the least megohms that a winding of each kind may have."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Judgement, Level, Option
from ..limits import FIELD_INSULATION, FORM_INSULATION, RANDOM_INSULATION
from ..show import exact, figures, with_unit
from .against import against
from .insulation_family import CAUTION, TESTED, judged
from .scenes_insulation import LOW, RATED, brought_to, halvings, reading_at

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
        verdict = "under" if at == bad else "not under"
        says = f"At 40 °C it has {at_40}, {verdict} the {limit} for its kind."
        text = f"{with_unit(exact(volts), 'V')}, {kind}: {shown}"
        options.append(Option(f"kind_{at}", text, says))
    right = options.pop(bad)
    return Judgement(
        "at 40 °C: 5 megohms random-wound, 100 form-wound, kV + 1 before about 1970 (IEEE 43)",
        f"× {figures(factor)} to 40 °C" if factor != 1 else "",
        Option(right.id, right.text, f"{right.says} Do not energize it. Clean, dry, test again."),
        tuple(options),
    )


LEAST = (
    judged(
        "insulation_limit",
        "GL",
        "A reading against the least allowed",
        against(
            RANDOM_INSULATION,
            RANDOM_INSULATION.rule,
            (
                "below",
                "Under 5 megohms: do not energize it",
                f"Look for moisture and dirt. Dry it, and test again. {CAUTION}",
            ),
            (
                "between",
                "Over 5, not over 100 megohms: allowed, but find out why",
                f"IEEE 43 allows it. Most dry windings read more, so watch it. {CAUTION}",
            ),
            (
                "good",
                f"Over {FIELD_INSULATION} megohms: good",
                f"Note it with its temperature, so that a later fall shows. {CAUTION}",
            ),
        ),
        brought_to((0.9, 4.6), (5.6, 90), (112, 900)),
        Level(
            ("rated_volts", "insulation_at_40"),
            f"{TESTED}It is random-wound and rated {{rated_volts}}. The reading comes to "
            "{insulation_at_40} at 40 °C. What do you say of it?",
        ),
        Level(
            ("rated_volts", "insulation", "winding_temperature"),
            f"{TESTED}It is random-wound and rated {{rated_volts}}. It reads {{insulation}} at "
            "{winding_temperature}. What do you say of it?",
            find=("insulation_at_40",),
        ),
        Level(
            ("rated_volts", "test_volts", "leakage_current", "winding_temperature"),
            f"{TESTED}It is random-wound and rated {{rated_volts}}. At {{test_volts}} of test it "
            "leaks {leakage_current}, at {winding_temperature}. What do you say of it?",
            find=("insulation_at_40",),
        ),
    ),
    judged(
        "which_is_below",
        "GN",
        "Which winding reads too little",
        judge_below,
        brought_to((8, 40)),
        Level(
            (),
            "{person} brings the readings of three motors of {station} to 40 °C. "
            "Which one is under the least for its kind?",
            scene=lambda draw, units: {},
        ),
        Level(
            ("winding_temperature",),
            "{person} tests three motors of {station}, all at {winding_temperature}. "
            "Which one is under the least for its kind at 40 °C?",
        ),
    ),
)

"""The test volts for a rating, by two published practices, and why they differ."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Judgement, Level, Option
from ..show import exact, with_unit
from ..tables import table_rows
from .insulation_family import CAUTION, judged
from .scenes_insulation import RATED, rated

__all__ = ["VOLTS"]

STANDARD_VOLTS = (250, 500, 1000, 2500, 5000, 10_000)
FIELD_VOLTS = 1000  # NETA MTS Table 100.1 for the 600 V class
CLASS = 600  # volts of the class that most pump motors are of
TABLE = (
    "IEEE 43 has these test volts DC for rated volts. Under 1,000 V, 500 V; to 2,500 V, 500 to "
    "1,000 V. To 5,000 V, 1,000 to 2,500 V; to 12,000 V, 2,500 to 5,000 V. "
)


def dc(volts: float) -> str:
    return f"{with_unit(exact(volts), 'V')} DC"


def judge_by_rating(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """The test volts that IEEE 43 has for a rating."""
    volts = values["rated_volts"]
    row = next(r for r in reversed(table_rows("insulation_tests")) if volts >= r["rated"])
    fits = [v for v in STANDARD_VOLTS if row["least"] <= v <= row["most"]]
    high = [v for v in STANDARD_VOLTS if v > row["most"]][:2]
    low = [v for v in STANDARD_VOLTS if v < row["least"]][len(high) - 3 :]
    right = draw.pick(fits)
    shown = with_unit(exact(volts), "V")

    def wrong(tested: float) -> Option:
        weak = f"For a winding of {shown} that is too low. It may not show a weak place."
        harm = f"For a winding of {shown} that is too high. It may break the insulation down."
        return Option(f"volts_{tested}", dc(tested), weak if tested in low else harm)

    span = dict.fromkeys(with_unit(exact(v), "V") for v in (row["least"], row["most"]))
    return Judgement(
        "IEEE 43: test volts by the rated volts of the winding",
        f"{shown}: {' to '.join(span)} DC",
        Option(f"volts_{right}", dc(right), f"That is in its row of the table. {CAUTION}"),
        tuple(wrong(tested) for tested in (*low, *high)),
    )


def judge_in_the_field(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """The 1,000 V that field practice uses on a 600 V class circuit."""
    return Judgement(
        "NETA MTS Table 100.1: the 600 V class, 1,000 V DC and 100 megohms",
        f"{with_unit(exact(values['rated_volts']), 'V')} is of the 600 V class",
        Option("class", dc(FIELD_VOLTS), f"The table goes by the class of the circuit. {CAUTION}"),
        (
            Option(
                "rating",
                dc(500),
                "IEEE 43 has 500 V for this winding alone. Here the NETA table is asked.",
            ),
            Option(
                "too_low", dc(250), "That is for the 250 V class. It may not show a weak place."
            ),
            Option(
                "too_high", dc(2500), "That is for the 2,500 V class and up. It may do harm here."
            ),
        ),
    )


WHY_TWO = (
    "IEEE 43 is for windings, by their rating; the NETA table for other gear, by its class",
    "In the field many take the NETA volts for motor, cable and starter at once. "
    f"Keep to one of them, and note which. {CAUTION}",
)
NOT_WHY = (
    (
        "alternating",
        "IEEE 43 uses DC, and NETA uses AC",
        "Both are tests with DC. AC would charge and discharge the winding all the time.",
    ),
    (
        "wet",
        "The higher one is for motors that are wet",
        "A wet winding gets fewer volts, not more. Dry it before you test it hard.",
    ),
    (
        "newer",
        "The higher one has replaced the lower one",
        "Both are in use today. They test different things.",
    ),
)


def judge_why(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Why two published practices differ."""
    return Judgement(
        "IEEE 43 is for rotating machines; NETA MTS Table 100.1 for other electrical equipment",
        "",
        Option("class_and_rating", *WHY_TWO),
        tuple(Option(*each) for each in NOT_WHY),
    )


def low_rated(draw: Draw, units: str) -> dict[str, float]:
    """A motor of the 600 V class by its nameplate volts."""
    return {"rated_volts": float(draw.pick([v for v in RATED[units] if v <= CLASS]))}


VOLTS = (
    judged(
        "test_volts",
        "GV",
        "Test volts for a rating",
        judge_by_rating,
        rated,
        Level(
            ("rated_volts",),
            f"{TABLE}{{person}} prepares a test of {{place}}, rated {{rated_volts}}. "
            "Which test volts fit its winding?",
        ),
        Level(
            ("rated_volts",),
            "{person} prepares a test of the circuit of {place}, rated {rated_volts}. Motor, cable "
            "and starter are tested at once, by NETA MTS Table 100.1. "
            "Which test volts does that have?",
            scene=low_rated,
            judge=judge_in_the_field,
        ),
        Level(
            ("rated_volts",),
            "For {place}, rated {rated_volts}, {person} finds two practices. IEEE 43 says 500 V DC, "
            "and NETA MTS Table 100.1 says 1,000 V DC. Why do they differ?",
            scene=low_rated,
            judge=judge_why,
        ),
    ),
)

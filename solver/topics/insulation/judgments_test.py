"""The test itself judged: which voltage, and how long the winding stays grounded after it."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Level, Option, Scene
from solver.topics.limits import TIME_ON_GROUND, against
from solver.topics.tables import table_rows
from solver.units.show import exact, with_unit

from .scenes import CAUTION, CHAPTER, RATED, rated, worked

__all__ = ["GROUND", "VOLTS"]

STANDARD_VOLTS = (250, 500, 1000, 2500, 5000, 10_000)
FIELD_VOLTS = 1000  # NETA MTS Table 100.1 for the 600 V class
CLASS = 600  # volts of the class that most pump motors are of

TABLE = (
    ("IEEE 43, rated under 1,000 V", "500 V DC"),
    ("IEEE 43, rated up to 2,500 V", "500 to 1,000 V DC"),
    ("IEEE 43, rated up to 5,000 V", "1,000 to 2,500 V DC"),
    ("IEEE 43, rated up to 12,000 V", "2,500 to 5,000 V DC"),
)


def dc(volts: float) -> str:
    """So many volts, said as those of a test."""
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
        weak = f"That is too low for a winding rated {shown}. It may not show a weak spot."
        harm = f"That is too high for a winding rated {shown}. It may break down the insulation."
        return Option(f"volts_{tested}", dc(tested), weak if tested in low else harm)

    span = dict.fromkeys(with_unit(exact(v), "V") for v in (row["least"], row["most"]))
    return Judgement(
        "IEEE 43: test volts by the rated volts of the winding",
        f"{shown}: {' to '.join(span)} DC",
        Option(
            f"volts_{right}", dc(right), f"That is in the table's row for this rating. {CAUTION}"
        ),
        tuple(wrong(tested) for tested in (*low, *high)),
    )


def judge_in_the_field(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """The 1,000 V that field practice uses on a 600 V class circuit."""
    return Judgement(
        "NETA MTS Table 100.1: 1,000 V DC and 100 megohms for the 600 V class",
        f"cable and starter are rated {with_unit(exact(CLASS), 'V')}",
        Option(
            "class",
            dc(FIELD_VOLTS),
            f"The table goes by the voltage class of the circuit. {CAUTION}",
        ),
        (
            Option(
                "rating",
                dc(500),
                "IEEE 43 gives 500 V for this winding alone. This test goes by the NETA table.",
            ),
            Option(
                "too_low", dc(250), "That is too low for this class. It may not show a weak spot."
            ),
            Option("too_high", dc(2500), "That is for higher classes. It may do damage here."),
        ),
    )


WHY_TWO = (
    "IEEE 43 goes by the winding's rating; the NETA table goes by the equipment's class",
    "Many people in the field use the NETA voltage on motor, cable and starter together. "
    f"Pick one, stick with it, and write down which. {CAUTION}",
)

NOT_WHY = (
    (
        "alternating",
        "IEEE 43 uses DC, and NETA uses AC",
        "Both are DC tests. AC would keep charging and discharging the winding.",
    ),
    (
        "wet",
        "The higher one is for motors that are wet",
        "A wet winding gets less voltage, not more. Dry it before a full test.",
    ),
    (
        "newer",
        "The higher one has replaced the lower one",
        "Both are in use today. They cover different equipment.",
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
    CHAPTER.judged(
        "test_volts",
        "GV",
        "Test voltage for a rating",
        judge_by_rating,
        rated,
        Level(
            ("rated_volts",),
            "{person} is getting ready to test {place}, rated {rated_volts}. IEEE 43 gives test volts "
            "by the rated volts of the winding. Which test voltage fits?",
            table=TABLE,
        ),
        Level(
            ("rated_volts",),
            "{person} is getting ready to test {place}: a {rated_volts} motor on 600 V cable, with a "
            "600 V starter. All three are tested together, by NETA MTS Table 100.1. "
            "Which test voltage does the table give?",
            scene=low_rated,
            judge=judge_in_the_field,
        ),
        Level(
            ("rated_volts",),
            "For {place}, a {rated_volts} motor on 600 V cable, {person} finds two test voltages. IEEE 43 says "
            "500 V DC, and NETA MTS Table 100.1 says 1,000 V DC. Why do they differ?",
            scene=low_rated,
            judge=judge_why,
        ),
    ),
)


def grounded(*times: float) -> Scene:
    """A test of so many minutes, and how long its winding has been grounded since."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        test = float(draw.pick(times))
        share = draw.between(*draw.pick(((0.5, 0.9), (1.2, 3.7), (4.3, 7))))
        step = 0.5 if test < 5 else 1
        since = max(step, round(test * share / step) * step)
        known = {"test_time": test, "time_grounded": since}
        return known | {"times_grounded": worked(known, "times_grounded", units)}

    return scene


HELD = (
    ("no", "No: it hasn't even been as long as the test", "The charge is still in the winding, and it can kill. Wait four times as long as the test."),
    ("soon", "No: it hasn't been four times as long as the test", "The charge bleeds off slowly, and it can kill. Wait four times as long as the test."),
    ("yes", "Yes: it has been over four times as long as the test", "Even so, a qualified person verifies again that it is dead before anyone touches it."),
)  # fmt: skip

GROUND = (
    CHAPTER.judged(
        "time_on_ground",
        "GD",
        "How long a winding stays grounded",
        against(TIME_ON_GROUND, TIME_ON_GROUND.rule, *HELD),
        grounded(1, 2, 5, 10),
        Level(
            ("test_time", "time_grounded"),
            "A qualified person tested the winding of {place} for {test_time}. It has been "
            "grounded for {time_grounded}. Can the ground come off?",
            find=("times_grounded",),
        ),
        Level(
            ("time_grounded",),
            "A qualified person ran a polarization index test on {place}. The winding has been "
            "grounded for {time_grounded} since the test ended. Can the ground come off?",
            scene=grounded(10),
        ),
    ),
)

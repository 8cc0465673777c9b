"""The test itself judged: which voltage, and how long the winding stays grounded after it."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.station.need import Need
from solver.station.scene import Change, Readings
from solver.station.station import Station
from solver.topics.limits import TIME_ON_GROUND
from solver.topics.tables import table_rows
from solver.topics.zones import against
from solver.units.show import exact, with_unit

from .windings import CAUTION, CHAPTER, RATED, altered, worked

__all__ = ["GROUND", "VOLTS"]

STANDARD_VOLTS = (250, 500, 1000, 2500, 5000, 10_000)
WINDING_VOLTS = 500  # IEEE 43 for a motor rated under 1,000 V
CLASS_VOLTS = 1000  # NETA MTS Table 100.1 for the 600 V class

TABLE = (
    ("IEEE 43, rated under 1,000 V", "500 V DC"),
    ("IEEE 43, rated up to 2,500 V", "500 to 1,000 V DC"),
    ("IEEE 43, rated up to 5,000 V", "1,000 to 2,500 V DC"),
    ("IEEE 43, rated up to 12,000 V", "2,500 to 5,000 V DC"),
)

# ANSI/NETA MTS-2019, Table 100.1 (read in a copy); note 5 sends rotating machinery to Table 100.11.
NETA = (
    ("NETA MTS Table 100.1, 250 V class", "500 V DC"),
    ("NETA MTS Table 100.1, 600 V class", "1,000 V DC"),
    ("NETA MTS Table 100.1, 2,500 V class", "1,000 V DC"),
    ("NETA MTS Table 100.1, 5,000 V class", "2,500 V DC"),
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


WEAK = Option("too_low", dc(250), "Neither table tests that low. It may not show a weak spot.")
HARM = Option(
    "too_high", dc(2500), "NETA's table gives that for the 5,000 V class. It may do damage here."
)
BOTH_ASKED = {
    "cable and starter": (
        Option(
            "class",
            dc(CLASS_VOLTS),
            "Cable and starter are 600 V class, and that is NETA's row for them. Before anyone "
            "touches them, ground them for four times as long as the test.",
        ),
        Option(
            "rating",
            dc(WINDING_VOLTS),
            "IEEE 43 gives 500 V DC for the winding, and NETA gives it for the 250 V class. Cable "
            "and starter are 600 V class.",
        ),
    ),
    "motor": (
        Option(
            "rating",
            dc(WINDING_VOLTS),
            f"The motor goes by its own rating, in IEEE 43. {CAUTION}",
        ),
        Option(
            "class",
            dc(CLASS_VOLTS),
            "NETA gives 1,000 V DC for cable and starter. Its Table 100.1 leaves rotating machines "
            "to Table 100.11.",
        ),
    ),
}


def judge_by_class(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Cable and starter by their class, or the motor by its rating."""
    asked = draw.pick(tuple(BOTH_ASKED))
    right, other = BOTH_ASKED[asked]
    return Judgement(
        "the motor by its rating in IEEE 43; cable and starter by their class in NETA MTS Table 100.1",
        f"{with_unit(exact(values['rated_volts']), 'V')} motor; cable and starter of the 600 V class",
        right,
        (other, WEAK, HARM),
        asks=f"Which test voltage goes on the {asked}?",
    )


WHY_TWO = (
    "IEEE 43 goes by the motor's rating; NETA's Table 100.1 goes by the class of cable and starter",
    "Table 100.1 leaves rotating machines to Table 100.11. So test the motor by its own rating, "
    f"and write down which voltage you used. {CAUTION}",
)

NOT_WHY = (
    (
        "alternating",
        "IEEE 43 uses DC, and NETA uses AC",
        "Both are DC tests. AC would keep charging and discharging the insulation.",
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
        "IEEE 43 is for rotating machines; NETA MTS Table 100.1 is for other electrical equipment",
        "",
        Option("class_and_rating", *WHY_TWO),
        tuple(Option(*each) for each in NOT_WHY),
    )


CLASS_600 = Readings(Need(volts=(480, 600)))  # in the metric system, any: they are of 400 V

VOLTS = (
    CHAPTER.judged(
        "test_volts",
        "GV",
        "Test voltage for a rating",
        judge_by_rating,
        RATED,
        Level(
            ("rated_volts",),
            "{person} is getting ready to test {place}, rated {rated_volts}. IEEE 43 gives test volts "
            "by the rated volts of the winding. Which test voltage fits?",
            table=TABLE,
        ),
        Level(
            ("rated_volts",),
            "{person} is getting ready to test {place}: a {rated_volts} motor, with cable and "
            "starter of the 600 V class. The motor is disconnected from its cable. {asks}",
            table=(("IEEE 43, windings rated under 1,000 V", "500 V DC"), *NETA),
            scene=CLASS_600,
            judge=judge_by_class,
        ),
        Level(
            ("rated_volts",),
            "{place} has a {rated_volts} motor on 600 V cable. {person} finds two test voltages: "
            "IEEE 43 says 500 V DC, and NETA MTS Table 100.1 says 1,000 V DC. Why do they differ?",
            scene=CLASS_600,
            judge=judge_why,
        ),
    ),
)


def grounded(*times: float) -> Change:
    """A test of so many minutes, and how long its winding has been grounded since."""

    def change(station: Station, draw: Draw) -> Station:
        test = draw.pick(times)
        share = draw.between(*draw.pick(((0.5, 0.9), (1.2, 3.7), (4.3, 7))))
        return altered(station, test_time=test, grounded=max(0.5, test * share))

    return change


HELD = (
    ("no", "No: it hasn't even been as long as the test", "The charge is still in the winding, and it can kill. Wait four times as long as the test."),
    ("soon", "No: it hasn't been four times as long as the test", "The charge bleeds off slowly, and it can kill. Wait four times as long as the test."),
    ("yes", "Yes: it has been over four times as long as the test", "Even so, a qualified person verifies again that it is dead before anyone touches it."),
)  # fmt: skip

INDEX_TEST = 10.0  # minutes that a polarization index test takes
judge_ground = against(TIME_ON_GROUND, TIME_ON_GROUND.rule, *HELD)


def judge_after_index(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The same after a test whose time is told by its name."""
    times = {"test_time": INDEX_TEST, "time_grounded": values["time_grounded"]}
    return judge_ground({"times_grounded": worked(times, "times_grounded", units)}, units, draw)


GROUND = (
    CHAPTER.judged(
        "time_on_ground",
        "GD",
        "How long a winding stays grounded",
        judge_ground,
        Readings(change=grounded(1, 2, 5, 10)),
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
            scene=Readings(change=grounded(INDEX_TEST)),
            judge=judge_after_index,
        ),
    ),
)

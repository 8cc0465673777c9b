"""Readings judged within one test: a minute, an absorption ratio, a polarization index."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judge, Judgement, Option
from solver.station.condition import at_temperature
from solver.station.scene import Readings
from solver.station.station import Station
from solver.topics.limits import ABSORPTION, INDEX_CEILING, POLARIZATION
from solver.topics.readings import only, shown
from solver.topics.zones import against, too_near
from solver.units.show import exact, figures, with_unit

from .windings import CAUTION, CHAPTER, SOUND, TESTED, altered, damp_to, worked

__all__ = ["RATIOS"]

DRY = f"Stop the test. Look for moisture and dirt, dry the winding and test it again. {CAUTION}"
FALLS, STEADY, RISES = (0.6, 0.88), (0.985, 1.015), (1.14, 1.75)
CLASS_A, CLASS_B_UP = POLARIZATION.at({})
LEAST_INDEX = {"A": CLASS_A, "B": CLASS_B_UP, "F": CLASS_B_UP}
INDEX = POLARIZATION._replace(low=1.0)

MINUTE = {
    "falls": (
        "Stop the test: it is falling, a sign of moisture or dirt",
        DRY,
        "The reading fell during the minute. Good insulation doesn't do that.",
    ),
    "steady": (
        "Keep going: steady is good, if it is over the minimum",
        "It settles right away, as small dry windings do. Write down the one-minute reading. "
        f"{CAUTION}",
        "The reading hardly moved. Steady is good; it doesn't have to rise.",
    ),
    "rises": (
        "Keep going: it is rising, as dry insulation does",
        "The winding takes its charge slowly, as it should. Write down the one-minute reading. "
        f"{CAUTION}",
        "The reading rose during the minute, as it does in dry insulation.",
    ),
}


def judge_minute(first: str, last: str, rule: str) -> Judge:
    """Whether a winding's ohms fall, stay or rise between readings of ohms, or of leakage."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        read = only(values, first, last)
        change = worked(read, "absorption_ratio", units)
        spans = zip(MINUTE, (FALLS, STEADY, RISES), strict=True)
        here = [kind for kind, (low, high) in spans if low * 0.97 < change < high * 1.03]
        if len(here) != 1:
            return None
        said = [shown(name, value, units) for name, value in read.items()]
        options = {
            kind: Option(kind, text, right if kind == here[0] else MINUTE[here[0]][2])
            for kind, (text, right, _) in MINUTE.items()
        }
        found = options.pop(here[0])
        return Judgement(rule, " then ".join(said), found, tuple(options.values()))

    return judge


NEAR_A_LEAST = damp_to("polarization_index", (1.15, 1.4), (1.6, 1.9), SOUND)


def by_class(station: Station, draw: Draw) -> Station:
    """An index near the least of a class, at usual megohms or on a cold winding that reads far more."""
    if draw.between(0, 1) < 0.7:
        return NEAR_A_LEAST(station, draw)
    cold = draw.step(10, 16, 1)
    at_40 = draw.between(5300, 6200) / at_temperature(1.0, cold)
    return altered(station, megohms=at_40, temperature=cold)


def judge_class(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """An index against the least of the insulation class; none above 5,000 megohms."""
    kind = draw.pick(tuple(LEAST_INDEX))
    least, index = LEAST_INDEX[kind], values["polarization_index"]
    if too_near(index, least):
        return None
    high = values["insulation_1min"] > INDEX_CEILING
    here = "not_used" if high else "keeps" if index > least else "under"
    found = f"The PI is {figures(index)}, and class {kind} needs at least {least:g}."
    minute = with_unit(exact(values["insulation_1min"]), "megohm")
    says = {
        "keeps": f"{found} {CAUTION}",
        "under": f"{found} {DRY}",
        "not_used": f"At {minute}, the current is too small for the PI to mean much. {CAUTION}",
    }
    texts = {
        "keeps": "It meets the minimum for its class",
        "under": "It is under the minimum for its class",
        "not_used": "The index isn't used at readings this high",
    }
    wrong = says["not_used"].removesuffix(f" {CAUTION}") if high else found
    options = {id: Option(id, texts[id], says[id] if id == here else wrong) for id in texts}
    right = options.pop(here)
    return Judgement(
        POLARIZATION.rule,
        f"{minute} after 1 min; PI {figures(index)}",
        right,
        tuple(options.values()),
        asks=f"The insulation is class {kind}. What does its polarization index (PI) tell you?",
    )


def minute(station: Station, draw: Draw) -> Station:
    """A damp winding that falls, a small one that takes its charge at once, or a dry one."""
    kind = draw.pick(("falls", "steady", "rises"))
    if kind == "steady":
        return altered(station, ratio=draw.between(0.99, 1.01), index=1.0)
    return damp_to("absorption_ratio", (0.77, 0.88) if kind == "falls" else SOUND)(station, draw)


any_index = Readings(change=damp_to("polarization_index", (0.75, 0.93), (1.1, 1.85), SOUND))
any_ratio = Readings(change=damp_to("absorption_ratio", (0.78, 0.94), (1.04, 1.21), SOUND))
any_minute = Readings(change=minute)

RATIOS = (
    CHAPTER.judged(
        "minute_reading",
        "GS",
        "Falling, steady or rising",
        judge_minute("insulation_30s", "insulation_1min", "steady or rising is good"),
        any_minute,
        Level(
            ("insulation_30s", "insulation_1min"),
            f"{TESTED}The meter shows {{insulation_30s}} after 30 s and {{insulation_1min}} "
            "after 1 min. What do you do next?",
        ),
        Level(
            ("test_volts", "leakage_30s", "leakage_1min"),
            f"{TESTED}At a test voltage of {{test_volts}}, the winding leaks {{leakage_30s}} after "
            "30 s and {leakage_1min} after 1 min. What do you do next?",
            judge=judge_minute("leakage_30s", "leakage_1min", "more leakage means less resistance"),
        ),
    ),
    CHAPTER.judged(
        "ratio_limit",
        "GJ",
        "Judging a dielectric absorption ratio",
        against(
            ABSORPTION,
            ABSORPTION.rule,
            ("falling", "Bad: 1 or less", f"The reading fell. {DRY}"),
            (
                "questionable",
                "Questionable: over 1, up to 1.25",
                f"Compare it with earlier tests, and test again soon. {CAUTION}",
            ),
            ("good", "Good: over 1.25", f"Write it down with the date. {CAUTION}"),
        ),
        any_ratio,
        Level(
            ("absorption_ratio",),
            f"{TESTED}The dielectric absorption ratio (DAR) comes to {{absorption_ratio}}. "
            "What is your call?",
        ),
        Level(
            ("insulation_30s", "insulation_1min"),
            f"{TESTED}The winding reads {{insulation_30s}} after 30 s and {{insulation_1min}} "
            "after 1 min. What does the dielectric absorption ratio (DAR) tell you?",
            find=("absorption_ratio",),
        ),
    ),
    CHAPTER.judged(
        "index_limit",
        "GI",
        "Judging a polarization index",
        against(
            INDEX,
            INDEX.rule,
            ("falling", "Bad: 1 or less", f"The reading fell over the ten minutes. {DRY}"),
            (
                "under",
                "Under the minimum for class F: over 1, up to 2",
                f"Clean and dry the winding, then test it again. {CAUTION}",
            ),
            ("good", "Good: over 2", f"Write it down with the date. {CAUTION}"),
        ),
        any_index,
        Level(
            ("polarization_index",),
            f"{TESTED}The insulation is class F. The polarization index (PI) comes to "
            "{polarization_index}. What is your call?",
        ),
        Level(
            ("insulation_1min", "insulation_10min"),
            f"{TESTED}The insulation is class F. It reads {{insulation_1min}} after 1 min and "
            "{insulation_10min} after 10 min. What is your call?",
            find=("polarization_index",),
        ),
        Level(
            ("insulation_1min", "insulation_10min"),
            f"{TESTED}The winding reads {{insulation_1min}} after 1 min and {{insulation_10min}} "
            "after 10 min. {asks}",
            find=("polarization_index",),
            scene=Readings(change=by_class),
            judge=judge_class,
        ),
    ),
)

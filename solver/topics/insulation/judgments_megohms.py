"""Megohms judged: the least that a winding of each kind may have, and its trend over the years."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.station.need import Need
from solver.station.scene import Readings
from solver.topics.limits import FIELD_INSULATION, FORM_INSULATION, RANDOM_INSULATION
from solver.topics.readings import noted
from solver.topics.zones import against
from solver.units.show import exact, figures, with_unit

from .windings import CAUTION, CHAPTER, MEDIUM, SOUND, TESTED, altered, damp_to, kept, worked

__all__ = ["LEAST", "TREND"]


LARGE, SMALL = Readings(MEDIUM), Readings(Need(kinds=MEDIUM.kinds))
AT_40 = Readings(MEDIUM, lambda station, draw: altered(station, temperature=40.0))


def three_kinds(large: float, small: float, units: str) -> tuple[tuple[float, str, float], ...]:
    """Three windings, two of them of a large motor: rated volts, kind, and its least megohms at 40 °C."""
    return (
        (small, "random-wound", RANDOM_INSULATION.at({})[0]),
        (large, "form-wound", FORM_INSULATION.at({})[0]),
        (large, "wound in 1962", worked({"rated_volts": large}, "least_insulation", units)),
    )


def reading_at(at_40: float, temperature: float, units: str) -> float:
    """Megohms that a meter shows at a temperature (°C) for so many at 40 °C, to three figures."""
    known = {"insulation_at_40": at_40, "winding_temperature": temperature}
    return noted(worked(known, "insulation", units))


def judge_below(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Three motors of three kinds, one of which reads less than its kind must; at 40 °C if corrected."""
    temperature = values.get("winding_temperature", 40.0)
    large = values.get("rated_volts") or LARGE.station(draw, units).motor.rated_volts
    small = SMALL.station(draw, units).motor.rated_volts
    bad = draw.pick((0, 1, 2))

    def at_40(reading: float) -> float:
        read = {"insulation": reading, "winding_temperature": temperature}
        return worked(read, "insulation_at_40", units)

    factor = at_40(1)
    options = []
    for at, (volts, kind, least) in enumerate(three_kinds(large, small, units)):
        share = draw.between(0.45, 0.75) if at == bad else draw.between(1.4, 2.6)
        reading = reading_at(least * share, temperature, units)
        shown, corrected, limit = (
            with_unit(text, "megohm")
            for text in (exact(reading), figures(at_40(reading)), figures(least))
        )
        verdict = "but " if at == bad else "so it passes: "
        says = f"Corrected to 40 °C it reads {corrected}, {verdict}its kind needs at least {limit}."
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
    CHAPTER.judged(
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
        Readings(change=damp_to("insulation_at_40", (0.9, 4.6), (5.6, 90), SOUND)),
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
    CHAPTER.judged(
        "which_is_below",
        "GN",
        "Which winding reads too low",
        judge_below,
        LARGE,
        Level(
            (),
            "{person} corrects the readings of three motors at {station} to 40 °C. "
            "Which one is under the minimum for its kind?",
            scene=AT_40,
        ),
        Level(
            ("winding_temperature",),
            "{person} tests three motors at {station}, all at {winding_temperature}. "
            "Corrected to 40 °C, which one is under the minimum for its kind?",
        ),
    ),
)

YEARS = {
    "steady": (
        "Nothing new: the readings stay around one value",
        "Readings of one winding vary by 10% or so. Test again at the usual time.",
    ),
    "slow": (
        "It is aging: a little less every year, so test it more often",
        "Each year is lower than the one before. Plan to clean and dry the winding.",
    ),
    "sudden": (
        "Something happened since the last test: find it now",
        "It held steady for years, then dropped. Look for water at the seal, cable and splice. "
        f"{CAUTION}",
    ),
}

SHAPES = {
    "steady": ((0.92, 1.08),) * 3,
    "slow": ((0.76, 0.82), (0.56, 0.64), (0.38, 0.46)),
    "sudden": ((0.93, 1.07), (0.93, 1.07), (0.1, 0.28)),
}


def judge_years(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Four yearly readings at 40 °C: steady, slowly falling, or suddenly low."""
    shape = draw.pick(tuple(SHAPES))
    first = values["insulation_at_40_before"]
    readings = [first, *(first * draw.between(*span) for span in SHAPES[shape])]
    shown = [with_unit(figures(float(f"{reading:.2g}")), "megohm") for reading in readings]
    wrong = f"Look at the readings in order: {', '.join(shown)}."
    options = {
        id: Option(id, text, says if id == shape else wrong) for id, (text, says) in YEARS.items()
    }
    right = options.pop(shape)
    return Judgement(
        "the trend at 40 °C tells you more than any one reading",
        ", ".join(shown),
        right,
        tuple(options.values()),
        asks=f"Year by year they are {', '.join(shown[:-1])}, and now {shown[-1]}. "
        "What would you conclude?",
    )


CHANGES = {"fell": (0.3, 0.55), "steady": (0.93, 1.07), "rose": (1.7, 2.6)}


def judge_two(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Two years at two temperatures: only at 40 °C do they compare."""
    kept = values["insulation_kept"] / 100
    here = [id for id, (low, high) in CHANGES.items() if low * 0.95 < kept < high * 1.05]
    if len(here) != 1:
        return None
    before, now = (values[f"insulation_at_40{turn}"] for turn in ("_before", ""))
    shown = " and ".join(with_unit(figures(reading), "megohm") for reading in (before, now))
    texts = {
        "fell": "It dropped: look for moisture and dirt",
        "steady": "It hasn't changed: temperature made the difference",
        "rose": "It went up: it is drier than it was",
    }
    says = {
        "fell": f"Corrected to 40 °C, it is {figures(100 * kept)}% of last year's reading. {CAUTION}",
        "steady": f"Corrected to 40 °C, the two readings are nearly the same. {CAUTION}",
        "rose": f"Corrected to 40 °C, it is {figures(kept)} times last year's reading. {CAUTION}",
    }
    wrong = f"Corrected to 40 °C, the readings are {shown}."
    options = {id: Option(id, texts[id], says[id] if id == here[0] else wrong) for id in texts}
    right = options.pop(here[0])
    return Judgement("compare readings only at 40 °C", shown, right, tuple(options.values()))


TREND = (
    CHAPTER.judged(
        "insulation_trend",
        "GY",
        "What the years tell you",
        judge_years,
        Readings(),
        Level(
            (),
            "{person} keeps the one-minute readings of {place}, all corrected to 40 °C. {asks}",
        ),
        Level(
            (
                "insulation_before",
                "winding_temperature_before",
                "insulation",
                "winding_temperature",
            ),
            "Last year {place} read {insulation_before} with the winding at "
            "{winding_temperature_before}. Today it reads {insulation} with the winding at "
            "{winding_temperature}. What happened to the insulation?",
            find=("insulation_kept",),
            scene=Readings(change=kept(*CHANGES.values())),
            judge=judge_two,
        ),
    ),
)

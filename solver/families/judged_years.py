"""The trend of a winding over years, and the time it stays on ground after a test, judged."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Judgement, Level, Option, Scene
from ..limits import TIME_ON_GROUND
from ..show import figures, with_unit
from .against import against
from .insulation_family import CAUTION, judged
from .scenes_insulation import two_years

__all__ = ["GROUND", "TREND"]

YEARS = {
    "steady": (
        "Nothing new: the readings scatter about one value",
        "Readings of one winding differ by a tenth or so. Test again at the usual time.",
    ),
    "slow": (
        "It ages: a little less every year, so test it more often",
        "Each year is lower than the one before. Plan to clean and dry it.",
    ),
    "sudden": (
        "Something happened since the last test: find it now",
        f"It held for years and fell at once. Look for water at seal, cable and splice. {CAUTION}",
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
    first = draw.between(150, 900)
    readings = [first, *(first * draw.between(*span) for span in SHAPES[shape])]
    shown = [with_unit(figures(float(f"{reading:.2g}")), "megohm") for reading in readings]
    wrong = f"From the first to the last it went {', '.join(shown)}."
    options = {
        id: Option(id, text, says if id == shape else wrong) for id, (text, says) in YEARS.items()
    }
    right = options.pop(shape)
    return Judgement(
        "the trend at 40 °C tells more than one reading",
        ", ".join(shown),
        right,
        tuple(options.values()),
        asks=f"Year by year it read {', '.join(shown[:-1])}, and now {shown[-1]}. What do you say?",
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
        "fell": "It has fallen: look for moisture and dirt",
        "steady": "It is as it was: the temperature made the difference",
        "rose": "It has risen: it is drier than it was",
    }
    says = {
        "fell": f"At 40 °C it is {figures(100 * kept)}% of the earlier reading. {CAUTION}",
        "steady": f"At 40 °C both readings are nearly the same. {CAUTION}",
        "rose": f"At 40 °C it is {figures(kept)} times the earlier reading. {CAUTION}",
    }
    wrong = f"Brought to 40 °C they are {shown}."
    options = {id: Option(id, texts[id], says[id] if id == here[0] else wrong) for id in texts}
    right = options.pop(here[0])
    return Judgement("compare at 40 °C only", shown, right, tuple(options.values()))


TREND = (
    judged(
        "insulation_trend",
        "GY",
        "What the years tell",
        judge_years,
        lambda draw, units: {},
        Level(
            (),
            "{person} keeps the one-minute readings of {place}, all brought to 40 °C. {asks}",
        ),
        Level(
            (
                "insulation_before",
                "winding_temperature_before",
                "insulation",
                "winding_temperature",
            ),
            "Last year the winding of {place} read {insulation_before} at "
            "{winding_temperature_before}. Now it reads {insulation} at {winding_temperature}. "
            "What has happened to it?",
            find=("insulation_kept",),
            scene=two_years(*CHANGES.values()),
            judge=judge_two,
        ),
    ),
)


def grounded(*times: float) -> Scene:
    """A test of so many minutes, and how long its winding has been on ground since."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        test = float(draw.pick(times))
        share = draw.between(*draw.pick(((0.5, 0.9), (1.2, 3.7), (4.3, 7))))
        step = 0.5 if test < 5 else 1
        since = max(step, round(test * share / step) * step)
        return {"test_time": test, "time_grounded": since, "times_grounded": since / test}

    return scene


HELD = (
    ("no", "Leave it on ground: it has not even been as long as the test", "The charge is still in it, and it can kill. Wait for four times the test."),
    ("soon", "Leave it on ground: it has not been four times the test", "The charge soaks back out slowly, and it can kill. Wait for four times the test."),
    ("yes", "It may come off: it has been over four times the test", "Even so a qualified person tests it dead again before anyone touches it."),
)  # fmt: skip

GROUND = (
    judged(
        "time_on_ground",
        "GD",
        "How long a winding stays on ground",
        against(TIME_ON_GROUND, TIME_ON_GROUND.rule, *HELD),
        grounded(1, 2, 5, 10),
        Level(
            ("test_time", "time_grounded"),
            "A qualified person tested the winding of {place} for {test_time}. It has been on "
            "ground for {time_grounded}. May the ground come off?",
            find=("times_grounded",),
        ),
        Level(
            ("time_grounded",),
            "A qualified person took the polarization index of {place}. Since the end of that "
            "test it has been on ground for {time_grounded}. May the ground come off?",
            scene=grounded(10),
        ),
    ),
)

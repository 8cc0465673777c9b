"""The trend of a winding over years, and the time it stays grounded after a test, judged."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Level, Option, Scene
from solver.topics.limits import TIME_ON_GROUND, against
from solver.units.show import figures, with_unit

from .kinds import CAUTION, judged
from .scenes import two_years

__all__ = ["GROUND", "TREND"]

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
    first = draw.between(150, 900)
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
    judged(
        "insulation_trend",
        "GY",
        "What the years tell you",
        judge_years,
        lambda draw, units: {},
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
            scene=two_years(*CHANGES.values()),
            judge=judge_two,
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
        return {"test_time": test, "time_grounded": since, "times_grounded": since / test}

    return scene


HELD = (
    ("no", "No: it hasn't even been as long as the test", "The charge is still in the winding, and it can kill. Wait four times as long as the test."),
    ("soon", "No: it hasn't been four times as long as the test", "The charge bleeds off slowly, and it can kill. Wait four times as long as the test."),
    ("yes", "Yes: it has been over four times as long as the test", "Even so, a qualified person verifies again that it is dead before anyone touches it."),
)  # fmt: skip

GROUND = (
    judged(
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

"""A motor's speed judged: how many poles it has, and what its slip tells of the load."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judge, Judgement, Option
from solver.topics.readings import only
from solver.units.show import exact, figures, with_unit

from .stations import CHAPTER, LIVE, ON_THE_LINE, SLIPS, by_slip, worked

__all__ = ["FROM_SPEED"]


def judge_poles(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """How many poles a motor has, from its frequency and its nameplate speed."""
    poles = round(values["poles"])

    def turns(count: int) -> str:
        read = {"frequency": values["frequency"], "poles": float(count)}
        return with_unit(figures(worked(read, "synchronous_speed", units)), "rpm")

    field = turns(poles)
    options = []
    for count in sorted({2, 4, 6, 8, poles // 2} - {poles, 1}, key=lambda n: abs(n - poles))[:3]:
        says = f"With {count} poles the field would turn at {turns(count)}. The shaft runs just below that."
        if count == poles // 2:
            says = "That is how many pairs of poles it has. Each pair is two poles."
        options.append(Option(f"poles_{count}", f"{count} poles", says))
    return Judgement(
        "120 × frequency / poles comes out just above the shaft speed",
        f"120 × {exact(values['frequency'])} / {poles} = {field}",
        Option(
            f"poles_{poles}",
            f"{poles} poles",
            f"The field turns at {field}, and the shaft slips a few percent below that.",
        ),
        tuple(options),
    )


LIGHT = ("light", "It is carrying less than full load")
FULL = ("full", "It is carrying about full load")
HEAVY = ("heavy", "It is carrying more than full load, or the volts are low")
ABOVE = ("above", "The speed reading or the frequency is wrong")

NEAR = 0.065  # of full-load slip: as near as a speed read to 1 rpm may be to its kind

TELLS = {
    "light": "It turns faster than the nameplate speed, but slower than the field.",
    "full": "It turns at about the nameplate speed, so it slips about as much as at full load.",
    "heavy": "It turns slower than the nameplate speed, so it slips more than at full load.",
    "above": "The reading is faster than the field. A motor can't do that on its own power.",
}

THEN = {
    "light": "Less slip means less load. Nameplate speeds are rounded, so trust it to about 20%.",
    "full": "Full-load slip means about full load. Check it with kilowatts before you change anything.",
    "heavy": f"More slip means more load, or low volts. Measure both soon. {LIVE}",
    "above": "Check the tachometer, and check if a drive is set above line frequency.",
}


def judge_slip(*kinds: tuple[str, str]) -> Judge:
    """What the slip tells, from these answers to choose."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        read = only(values, "synchronous_speed", "rated_speed", "running_speed")
        share = worked(read, "load_by_slip", units) / 100
        fitting = [kind for kind, (low, high) in SLIPS.items() if low - NEAR < share < high + NEAR]
        if len(fitting) != 1:
            return None
        options = {
            id: Option(id, text, THEN[id] if id == fitting[0] else TELLS[fitting[0]])
            for id, text in kinds
        }
        right = options.pop(fitting[0])
        shown = [with_unit(figures(speed), "rpm") for speed in read.values()]
        return Judgement(
            "compare the slip now with the slip at full load",
            "field {}, nameplate {}, measured {}".format(*shown),
            right,
            tuple(options.values()),
        )

    return judge


FROM_SPEED = (
    CHAPTER.judged(
        "pole_count",
        "NZ",
        "How many poles the motor has",
        judge_poles,
        ON_THE_LINE,
        Level(
            ("frequency", "rated_speed"),
            "The nameplate of {place} says {rated_speed} and {frequency}. "
            "How many poles does the motor have?",
        ),
        Level(
            ("frequency", "running_speed"),
            "{person} measures {running_speed} at the motor shaft of {place}, under load. The "
            "supply is {frequency}. How many poles does the motor have?",
        ),
    ),
    CHAPTER.judged(
        "slip_tells",
        "NE",
        "What the slip tells you",
        judge_slip(LIGHT, FULL, HEAVY),
        by_slip("light", "full", "heavy"),
        Level(
            ("synchronous_speed", "rated_speed", "running_speed"),
            "The synchronous speed of {place} is {synchronous_speed}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed} at the shaft. "
            "What does the slip tell you?",
        ),
        Level(
            ("frequency", "poles", "rated_speed", "running_speed"),
            "The motor of {place} has {poles} poles and runs on {frequency}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed} at the shaft. "
            "What does the slip tell you?",
            find=("synchronous_speed",),
            scene=by_slip("light", "heavy", "above"),
            judge=judge_slip(LIGHT, HEAVY, ABOVE),
        ),
    ),
)

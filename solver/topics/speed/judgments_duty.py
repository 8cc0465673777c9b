"""Why a pump runs at another flow and head than it did: the scene by its curves, and the judge."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judge, Judgement, Level, Option, Scene
from solver.topics.drawn.readings import noted, only
from solver.units.show import figures, with_unit

from .curves import Curve, crossing, pump_curve, system_curve
from .scenes import CHAPTER, on_a_system, to_step, worked

__all__ = ["DUTY_CHANGE", "WITHOUT_STATIC", "changed_duty", "judge_duty"]

CAUSES = ("restricted", "lifted", "worn", "opened")
WITHOUT_STATIC = ("restricted", "worn", "opened")
CLEAR, ABOVE = 96, 100 / 0.96  # percents; a share between them may be the readings alone
CHECK = "Check the gauges first. Lock out the pump before anyone opens it or closes a valve."

TEXTS = {
    "restricted": "Something is holding the flow back: a valve closing or the main clogging",
    "lifted": "The static head went up: a lower wet well, or a higher level or pressure at the far end",
    "worn": "The pump itself is doing less: it is worn or partly plugged",
    "opened": "Water gets away more easily: the main is broken or a valve was opened",
}

SHOWS = {
    "restricted": "less flow at more head, with the same static head",
    "lifted": "less flow at more head, with more static head when the pumps are off",
    "worn": "less flow and less head",
    "opened": "more flow at less head",
}


def changed_duty(causes: tuple[str, ...] = CAUSES) -> Scene:
    """A scene of one pump that ran at its rated point, and what it shows now for one cause."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        values = on_a_system(draw, units, static=(0.3, 0.6))
        rated, static = values["rated_head"], values["static_head"]
        flow = values["rated_flow"]
        pump = pump_curve(values["shutoff_head"], flow, rated)
        friction = rated - static
        curves, now = _after(draw.pick(causes), draw, (pump, static, friction, flow))
        at = crossing(*curves)
        return values | {
            "flow": noted(at.flow),
            "head": to_step(at.head, units),
            "static_now": to_step(now, units),
        }

    return scene


def _after(
    cause: str, draw: Draw, was: tuple[Curve, float, float, float]
) -> tuple[tuple[Curve, Curve], float]:
    """The curves of the pump and the system after a change, and the static head then."""
    pump, static, friction, flow = was
    match cause:
        case "restricted":
            friction *= draw.between(1.8, 4)
        case "lifted":
            static += (pump.at_zero - static) * draw.between(0.25, 0.5)
        case "worn":
            pump = pump.at_speed(draw.between(0.8, 0.9))
        case "opened":
            friction *= draw.between(0.2, 0.55)
    return (pump, system_curve(static, flow, friction)), static


def _cause(flow: float, head: float, static: float) -> str | None:
    """What three percents of the old readings show; None where they are too near to say."""
    if flow > ABOVE and head < CLEAR:
        return "opened"
    if flow > CLEAR or CLEAR < head < ABOVE:
        return None
    if head < CLEAR:
        return "worn"
    if static > ABOVE:
        return "lifted"
    return "restricted" if static < 101 else None


def judge_duty(causes: tuple[str, ...] = CAUSES) -> Judge:
    """Which of these causes fits the readings now against those before.

    Its levels find flow_share and head_share; where the static head may have gone up, their scene
    has static_now and static_head.
    """

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        at_rest = 100.0
        if "lifted" in causes:
            at_rest = worked(only(values, "static_now", "static_head"), "static_kept", units)
        shares = (values["flow_share"], values["head_share"], at_rest)
        found = _cause(*shares)
        if found is None or found not in causes:
            return None
        flow, head, static = (with_unit(figures(share), "%") for share in shares)
        said = f"flow is {flow} and head is {head} of what they were"
        if "lifted" in causes:
            said += f"; static head is {static}"
        options = {
            cause: Option(cause, TEXTS[cause], f"That would show {SHOWS[cause]}.")
            for cause in causes
        }
        del options[found]
        right = Option(found, TEXTS[found], f"The readings show {SHOWS[found]}. {CHECK}")
        return Judgement(
            "when the system changes, the pump moves along its curve; when it wears, it drops below it",
            said,
            right,
            tuple(options.values()),
        )

    return judge


WAS = "When new, {place} moved {rated_flow} at {rated_head}. "

DUTY_CHANGE = CHAPTER.judged(
    "duty_change",
    "SZ",
    "Why the duty point moved",
    judge_duty(),
    changed_duty(),
    Level(
        ("rated_flow", "rated_head", "flow", "head"),
        f"{WAS}Now, at the same speed and water levels, it moves {{flow}} at {{head}}. What changed?",
        find=("flow_share", "head_share"),
        scene=changed_duty(WITHOUT_STATIC),
        judge=judge_duty(WITHOUT_STATIC),
    ),
    Level(
        ("rated_flow", "rated_head", "static_head", "flow", "head", "static_now"),
        f"{WAS}With the pumps off, the static head was {{static_head}}. Now, at the same speed, it "
        "moves {flow} at {head}, and the static head is {static_now}. What changed?",
        find=("flow_share", "head_share"),
    ),
)

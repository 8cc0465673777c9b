"""Why a pump runs at another flow and head than it did: a fault that puts it there, and the judge."""

from collections.abc import Mapping
from dataclasses import replace

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judge, Judgement, Option
from solver.errors import NotSolvable
from solver.station.faults import with_fault
from solver.station.need import Need
from solver.station.scene import Change, Readings, station_in
from solver.station.station import Station
from solver.topics.readings import only
from solver.units.show import figures, with_unit

from .stations import CHAPTER, worked

__all__ = ["DUTY_CHANGE", "SOME_FRICTION", "WITHOUT_STATIC", "changed_duty", "judge_duty"]

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


# By cause: the faults that it may be, each with how bad it is then.
FAULTS = {
    "restricted": {"throttled_valve": (0.35, 0.7), "clogged_main": (0.5, 1)},
    "worn": {"worn_rings": (0.45, 1), "worn_impeller": (0.45, 1), "clogged_impeller": (0.25, 0.75)},
    "opened": {"broken_main": (0.3, 0.65)},
}
SOME_FRICTION = Need(kinds=("lift", "flooded", "above"), part=(15, 62))
LESS = (0.72, 0.88)  # of the rated flow, where the water has to go higher


def lifted(station: Station, draw: Draw) -> Station:
    """A pump that has to lift its water higher than when it was new, and so moves less."""
    flow, main = station.rated[0] * draw.between(*LESS), station.main
    suction = station.suction.lost(flow) if station.suction else 0
    spare = station.pump.head_at(flow, station.running.speed) - main.lost(flow) - suction
    now = replace(main, static=round(spare, 1))
    return replace(station, main=now, then=station)


def changed_duty(causes: tuple[str, ...]) -> Change:
    """A pump that ran at its rated point, as it runs after one of these changes."""

    def change(station: Station, draw: Draw) -> Station:
        cause = draw.pick(causes)
        if cause == "lifted":
            return lifted(station, draw)
        fault = draw.pick(tuple(FAULTS[cause]))
        return with_fault(station, fault, draw.between(*FAULTS[cause][fault]))

    return change


def static_noted(seen: Mapping[str, float], draw: Draw) -> Mapping[str, float]:
    """The static head of before, and of now, with the pumps off."""
    now = station_in(seen)
    if now.then is None:
        raise NotSolvable("nothing has changed")
    return {
        "static_head": now.then.noted("static_head"),
        "static_now": now.noted("static_head"),
    }


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
    Readings(SOME_FRICTION, changed_duty(CAUSES), static_noted),
    Level(
        ("rated_flow", "rated_head", "flow", "head"),
        f"{WAS}Now, at the same speed and water levels, it moves {{flow}} at {{head}}. What changed?",
        find=("flow_share", "head_share"),
        scene=Readings(SOME_FRICTION, changed_duty(WITHOUT_STATIC)),
        judge=judge_duty(WITHOUT_STATIC),
    ),
    Level(
        ("rated_flow", "rated_head", "static_head", "flow", "head", "static_now"),
        f"{WAS}With the pumps off, the static head was {{static_head}}. Now, at the same speed, it "
        "moves {flow} at {head}, and the static head is {static_now}. What changed?",
        find=("flow_share", "head_share"),
    ),
)

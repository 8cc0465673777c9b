"""The set that the form makes, in sentences, and what to do once it is written."""

from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path

from solver.sets.credit import in_points
from solver.units.show import counted, exact
from workbook.trainer.command import line_of
from workbook.trainer.sets.guessing import guessing
from workbook.trainer.sets.set_file import Assigned
from workbook.trainer.sets.set_keys import COUNTS as COUNTED
from workbook.ui.printing import UNITS

__all__ = ["next_steps", "summary"]

COUNTS = {"best": "the best one counts", "last": "the last one counts", "first": "the first counts"}


def summary(assigned: Assigned, now: datetime) -> list[str]:
    """Everything that was chosen, to be read over before it is written; `now` has its zone."""
    work = assigned.work
    level = f"at level {work.level}" if work.level else "at any level"
    kinds = counted(len(work.families), "kind")
    whose = "Each person gets their own numbers." if work.each else "Everyone has the same numbers."
    return [
        f"{counted(work.count, 'question')} {level}, in {UNITS[work.units]}, from {kinds} of problem.",
        whose,
        *_points(assigned),
        *_tries(assigned),
        guessing(assigned),
        *_cases(assigned),
        *_time(assigned),
        *_due(assigned, now),
        *_plant(assigned),
    ]


def _points(assigned: Assigned) -> list[str]:
    credit, each = assigned.credit, assigned.points
    noun = "point" if each == 1 else "points"
    whole = exact(round(assigned.out_of, 4))
    slip, close = _percent(credit.mistake), _percent(credit.close)
    lines = [
        f"Each is worth {exact(each)} {noun}, {whole} in all.",
        f"A known slip earns {slip} of the points, and a close answer {close}.",
    ]
    if credit.by_mistake:
        some = counted(len(credit.by_mistake), "mistake")
        lines.append(f"The set's file gives {some} a different share, and that stays.")
    return lines


def _percent(share: float) -> str:
    return f"{round(100 * share, 2):g}%"


def _tries(assigned: Assigned) -> list[str]:
    choice = assigned.choice_tries
    many = "one try" if choice == 1 else f"up to {choice} tries"
    more = [f"A question with choices has {many}."] if choice and choice != assigned.tries else []
    return [_usual_tries(assigned), *more]


def _usual_tries(assigned: Assigned) -> str:
    tries, off = assigned.tries, assigned.credit.each_try
    if tries == 1:
        return "There is one try for each question."
    many = f"Up to {tries} tries for each question" if tries else "Any number of tries"
    taken = f" Each earlier try takes off {_percent(off)}." if off else ""
    return f"{many}; {COUNTS[assigned.counts]}.{taken}"


def _cases(assigned: Assigned) -> list[str]:
    """The cases of find the fault, where there are any."""
    if not (part := assigned.work.faults):
        return []
    off = assigned.faults.unsafe
    each = f"{in_points(assigned.faults.points)}{' each' * (part.count > 1)}"
    unsafe = f" Each unsafe step takes off {_percent(off)}." if off else ""
    return [
        f"Then {counted(part.count, 'case')} of find the fault at level {part.level}, {each}.{unsafe}"
    ]


def _time(assigned: Assigned) -> list[str]:
    """The time limit, where there is one, and what it can prove."""
    if not assigned.minutes:
        return []
    counts = (
        "counts too, and you are told which" if assigned.after_time == COUNTED else "doesn't count"
    )
    return [
        f"{counted(assigned.minutes, 'minute')} from when a person opens the questions. What they answer "
        f"after that {counts}.",
        "Each person's own computer keeps the time, so it can be set back. If the grade matters, watch.",
    ]


def _due(assigned: Assigned, now: datetime) -> list[str]:
    if not assigned.due:
        return ["There is no due time, so nothing counts as late."]
    here = assigned.due.astimezone(now.tzinfo)
    lines = [
        f"Due on {here:%A}, {here:%B} {here.day}, {here.year}, at {_clock(assigned.due, here)}."
    ]
    if assigned.due <= now:
        lines.append("That time has passed, so everything that comes in is late. Check the date.")
    off = f"takes off {_percent(assigned.late)} of the score" if assigned.late else "costs nothing"
    return [*lines, f"Turning it in late {off}."]


def _clock(due: datetime, here: datetime) -> str:
    there = due.astimezone(UTC)
    if here.utcoffset() == there.utcoffset():
        return f"{there:%H:%M} UTC; the form shows it in your own time"
    day = "" if here.date() == there.date() else f" on {there:%A}"
    return f"{here:%H:%M} on this computer, which is {there:%H:%M} UTC{day}"


def _plant(assigned: Assigned) -> list[str]:
    if not (plant := assigned.work.plant):
        return []
    pumps = counted(len(plant.places), "pump")
    return [f"The problems are about “{plant.name}”, with {pumps}."]


def next_steps(assigned: Assigned, course: Path) -> Sequence[tuple[str, str]]:
    """What to do now, each with the command for a terminal, wherever that is."""
    name, at = assigned.name, ["--course", str(course)]
    return (
        ("Make what people get", line_of(["set", name, *at])),
        (
            "Put what people send back into the course's folder incoming, and grade it",
            line_of(["mark", name, *at, "--hand-in", str(course / "incoming" / name)]),
        ),
        ("See how the class did", line_of(["class", name, *at])),
    )

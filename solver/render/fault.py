"""A case of a fault and a way through it, as text for people and as JSON for programs."""

from typing import Any

from solver.fault.acts import Act
from solver.fault.case import LEVELS, FaultCase
from solver.fault.finding import Finding
from solver.fault.record import last_year
from solver.fault.remedies import ACTIONS, RIGHT
from solver.fault.review import Turn, sure_way, turns
from solver.fault.safety import STEPS
from solver.fault.way import DO, NAME, Told, Way
from solver.station.faults import FAULTS
from solver.units.show import capital, counted

from .station import nameplates

__all__ = [
    "best_text",
    "case_heading",
    "fault_json",
    "fault_text",
    "finding_text",
    "grouped",
    "outcome",
    "summary",
    "told_text",
    "way_in_words",
]

NEEDS = {
    "running": "Pump running",
    "live": "Pump running, panel open: a qualified person",
    "dead": "Locked out and proved dead",
}


def case_heading(case: FaultCase) -> str:
    """The pump, where it is, and the case's code and level."""
    place = case.station.place
    return f"{place.name} at {place.station} · level {case.level} · {case.code}"


def fault_text(way: Way) -> str:
    """The case, what was done so far, and what can be done; the review once it is over."""
    case = way.case
    blocks = [
        "\n".join((case.title, case.report, f"{case_heading(case)} ({LEVELS[case.level]})")),
        *nameplates(case.station),
        _record(case),
        _suspects(case),
    ]
    if way.told:
        blocks.append("\n".join(("What you did", *(told_text(way, told) for told in way.told))))
    blocks.append(_review(way) if way.ended else _choices(way))
    return "\n\n".join(blocks)


def _record(case: FaultCase) -> str:
    rows = [f"  {capital(s.signal.label)}: {s.text(case.units)}" for s in last_year(case)]
    return "\n".join(("Last year's record", *rows))


def _suspects(case: FaultCase) -> str:
    rows = [f"  {name}: {FAULTS[name].label}" for name in case.suspects]
    return "\n".join((f"One of these {len(rows)} is behind it", *rows))


def _choices(way: Way) -> str:
    rows = []
    for needs, title in NEEDS.items():
        rows.append(title)
        rows += [f"  {_act(way, act)}" for act in way.case.acts.values() if act.needs == needs]
    rows.append("Steps before a reading")
    rows += [f"  {step.name}: {step.label} ({step.minutes} min)" for step in STEPS.values()]
    rows.append(f"You used {counted(way.minutes, 'minute')}.")
    return "\n".join(rows)


def _act(way: Way, act: Act) -> str:
    taken = "taken" if act.name in way.taken else f"{way.cost(act.name)} min"
    return f"{act.name}: {act.label} ({taken})"


def finding_text(found: Finding, units: str) -> str:
    """What an act found, in one line."""
    readings = [one.named(units) for one in found.shown]
    return "; ".join([*readings, found.says] if found.says else readings)


def told_text(way: Way, told: Told) -> str:
    """One step of a way in one line."""
    case = way.case
    if told.stopped:
        what = case.acts[told.word].label if told.word in case.acts else STEPS[told.word].label
        return f"  Stopped: {what}. {told.stopped.says} ({told.stopped.source})"
    if told.found:
        return f"  {capital(case.acts[told.word].label)}, {told.minutes} min: {finding_text(told.found, case.units)}"
    if told.word in STEPS:
        return f"  {STEPS[told.word].label}, {told.minutes} min"
    if told.word.startswith(NAME):
        name = told.word.removeprefix(NAME)
        said = f"Yes: {FAULTS[name].label}." if name == case.fault else told.says
        return f"  You named it. {said}"
    if told.word.startswith(DO):
        return f"  What you do next: {ACTIONS[told.word.removeprefix(DO)]}."
    return "  You asked for the review."


def way_in_words(way: Way) -> str:
    """The steps of a way, as a person would say them: what was read, in order."""
    labels = [way.case.acts[t.word].label for t in way.told if t.found and t.minutes]
    return ", then ".join(labels) or "no reading at all"


def outcome(way: Way) -> list[str]:
    """How a way ended, in sentences: the name, the call, why, the minutes, safety."""
    case = way.case
    best, why = RIGHT[case.fault]
    said = [f"It was: {FAULTS[case.fault].label}."]
    if way.names and not way.named:
        labels = "; ".join(FAULTS[name].label for name in dict.fromkeys(way.names))
        said.append(f"You named: {labels}.")
    elif not way.named:
        said.append("You ended before you named it." if way.ended else "You didn't name it.")
    elif len(way.names) > 1:
        said.append(f"You named it on try {len(way.names)}.")
    if way.action:
        word = "That's the call." if way.action in best else f"Better: {ACTIONS[best[0]].lower()}."
        said.append(f"You chose: {ACTIONS[way.action].lower()}. {word}")
    elif way.named:
        said.append("You didn't say what you'd do about it.")
    said += [why, f"You used {counted(way.minutes, 'minute')}."]
    count = len(way.unsafe)
    said.append(
        f"{counted(count, 'step')} would have been unsafe, and {'was' if count == 1 else 'were'} stopped."
        if count
        else "Nothing you tried was unsafe."
    )
    return said


def summary(way: Way) -> list[str]:
    """The outcome, and beside its minutes those of a sure way."""
    *said, used, safety = outcome(way)
    sure = sure_way(str(way.case.code))
    beside = f"{used} A sure way takes {sure.minutes}: {way_in_words(sure)}."
    return [*said, beside, safety]


def grouped(turn: Turn) -> dict[str, dict[str, list[str]]]:
    """What a reading ruled out: by what was read, by what it would have shown, the faults."""
    found: dict[str, dict[str, list[str]]] = {}
    for out in turn.out:
        found.setdefault(out.read, {}).setdefault(out.would, []).append(FAULTS[out.fault].label)
    return found


def _review(way: Way) -> str:
    rows = ["Review", *(f"  {line}" for line in summary(way))]
    for turn in turns(way):
        rows.append(
            f"After {way.case.acts[turn.found.act].label}: {counted(len(turn.left), 'suspect')} left."
        )
        for read, by_would in grouped(turn).items():
            rows.append(f"  {read}")
            rows += [f"    Out: {'; '.join(who)}. {would}" for would, who in by_would.items()]
        rows.append(f"  {best_text(way.case, turn)}")
    return "\n".join(rows)


def best_text(case: FaultCase, turn: Turn) -> str:
    """Which reading would have told most at this point."""
    best, before = turn.best, len(turn.left) + len(turn.out)
    left, taken = (f"{before / 2**bits:.1f}" for bits in (best.bits, best.taken))
    if left == taken:
        return "No reading would have told more at this point."
    label = case.acts[best.act].label
    return (
        f"More telling here: {label}. Of {before} suspects it leaves {left} on average; "
        f"{case.acts[turn.found.act].label} leaves {taken}."
    )


def fault_json(way: Way) -> dict[str, Any]:
    """The case and the way for programs; the fault only once the way is over."""
    case = way.case
    data: dict[str, Any] = {
        "code": str(case.code),
        "level": case.level,
        "units": case.units,
        "title": case.title,
        "report": case.report,
        "suspects": list(case.suspects),
        "last_year": {one.signal.name: one.value for one in last_year(case)},
        "acts": {
            a.name: {"needs": a.needs, "minutes": way.cost(a.name)} for a in case.acts.values()
        },
        "steps": [_step(told) for told in way.told],
        "minutes": way.minutes,
        "over": way.ended,
    }
    if way.ended:
        data["fault"] = case.fault
        data["right_first"] = way.names[:1] == (case.fault,)
        data["unsafe"] = len(way.unsafe)
        data["sure_way"] = {
            "minutes": sure_way(str(case.code)).minutes,
            "steps": sure_way(str(case.code)).words,
        }
        data["turns"] = [_turn(turn) for turn in turns(way)]
    return data


def _step(told: Told) -> dict[str, Any]:
    data: dict[str, Any] = {"word": told.word, "minutes": told.minutes}
    if told.found:
        data["found"] = {s.signal.name: s.value for s in told.found.shown}
        if told.found.says:
            data["says"] = told.found.says
    if told.stopped:
        data["stopped"] = {"says": told.stopped.says, "source": told.stopped.source}
    if told.says:
        data["says"] = told.says
    return data


def _turn(turn: Turn) -> dict[str, Any]:
    return {
        "act": turn.found.act,
        "ruled_out": {out.fault: f"{out.read} {out.would}" for out in turn.out},
        "left": list(turn.left),
        "told_most": {"act": turn.best.act, "bits": turn.best.bits, "taken": turn.best.taken},
    }

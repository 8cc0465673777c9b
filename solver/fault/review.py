"""A way held against the model: what each reading ruled out, what would have told most, the shortest sure way.

The shortest sure way is found by a program that knows no more than a person: at each point it takes the
reading that tells most for its minutes, until one suspect is left.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from solver.station.faults import FAULTS
from solver.units.show import capital, exact, with_unit

from .acts import CHECK
from .case import case_of
from .finding import Finding, Shown, finding
from .model import Cell, Model, model_of
from .remedies import RIGHT
from .safety import LOCKOUT, PERMIT, QUALIFIED, RESTORE, STEPS
from .signals import Value
from .way import DO, NAME, Way

__all__ = ["Best", "RuledOut", "Turn", "against", "best_now", "steps_to", "sure_way", "turns"]


@dataclass(frozen=True, slots=True)
class RuledOut:
    """A suspect that a reading ruled out: what was read, and what it would have shown."""

    fault: str
    read: str
    would: str


@dataclass(frozen=True, slots=True)
class Best:
    """The reading that would have told most: its name and the bits, and those of the one taken."""

    act: str
    bits: float
    taken: float


@dataclass(frozen=True, slots=True)
class Turn:
    """One reading of a way: what it found, what it ruled out, what was left, what would have told most."""

    found: Finding
    out: tuple[RuledOut, ...]
    left: tuple[str, ...]
    best: Best


def turns(way: Way) -> Iterator[Turn]:
    """The readings of a way, in order, each once."""
    model = model_of(str(way.case.code))
    before, done, checked = model.cells, list[Finding](), False
    for told in way.told:
        if not told.found or any(told.found.act == each.act for each in done):
            continue
        act = told.found.act
        rated = {name: model.told(name, before, checked) for name in way.case.acts}
        best = max(rated, key=lambda name: rated[name])
        checked = checked or act == CHECK
        done = [finding(way.case, each.act, checked) for each in done]
        done.append(finding(way.case, act, checked))
        after = model.fitting(done)
        gone = [name for name in model.names(before) if name not in model.names(after)]
        out = tuple(RuledOut(name, *_why(model, name, done[::-1])) for name in gone)
        yield Turn(done[-1], out, model.names(after), Best(best, rated[best], rated[act]))
        before = after


def against(way: Way, fault: str) -> str:
    """What speaks against a wrong name: a finding that doesn't fit, or a reading that would tell."""
    model, label = model_of(str(way.case.code)), FAULTS[fault].label
    if fault not in model.left(way.found):
        return " ".join((f"Not “{label}”.", *_why(model, fault, way.found)))
    telling = [act for act in way.case.acts if act not in way.taken and _tells(model, act, fault)]
    first = min(telling, key=way.cost) if telling else CHECK
    return (
        f"“{label}” fits everything you read so far, and it still isn't that. One more reading would "
        f"show it: {way.case.acts[first].label}, {way.cost(first)} minutes."
    )


def _tells(model: Model, act: str, fault: str) -> bool:
    """Whether the finding of an act rules a suspect out by itself."""
    return act != CHECK and fault not in model.left([finding(model.case, act, checked=True)])


def _why(model: Model, fault: str, found: tuple[Finding, ...] | list[Finding]) -> tuple[str, str]:
    """Why findings rule a suspect out: the first reading that does alone, else the two that do together."""
    units = model.case.units
    cells = [cell for cell in model.cells if cell[0] == fault]
    for shown in (shown for one in found for shown in one.shown):
        if not model.fitting([Finding("", (shown,))], cells):
            return _arithmetic(shown, model.shows(fault, shown.signal.name), units)
    return (
        "Each reading alone could come from it, but no one size of it gives them all.",
        f"What fits {_last(found)} doesn't fit the rest.",
    )


def _last(found: tuple[Finding, ...] | list[Finding]) -> str:
    shown = next((one.shown for one in found if one.shown), ())
    return f"the {shown[0].signal.label}" if shown else "one reading"


def _arithmetic(shown: Shown, shows: tuple[Value | None, ...], units: str) -> tuple[str, str]:
    """A reading with its bounds, and what the suspect would show."""
    signal, read = shown.signal, shown.text(units)
    label = capital(signal.label)
    numbers = [value for value in shows if isinstance(value, float)]
    if isinstance(shown.value, str) or not numbers:
        would = " or ".join(dict.fromkeys(str(value) for value in shows if value is not None))
        return f"{label}: you found “{read}”.", f"It would be “{would}”."
    unit = signal.unit(units)
    low, high = min(numbers), max(numbers)
    gap = low - shown.high if low > shown.high else shown.low - high
    off = _say((shown.high - shown.low) / 2, unit, 2)
    return (
        f"{label}: you read {read}, good to ±{off}, so {_range(shown.low, shown.high, unit)}.",
        f"It would read {_range(low, high, unit)}, {_say(max(gap, 0.0), unit, 2)} away.",
    )


def _say(value: float, unit: str, figures: int = 3) -> str:
    return with_unit(_figures(value, figures), unit)


def _figures(value: float, count: int = 3) -> str:
    return exact(float(f"{value:.{count}g}"))


def _range(low: float, high: float, unit: str) -> str:
    """19.7 to 22.5 psi; one number where both are the same."""
    if _figures(low) == _figures(high):
        return _say(low, unit)
    return f"{_figures(low)} to {_say(high, unit)}"


def best_now(model: Model, way: Way, cells: frozenset[Cell]) -> str:
    """The reading that tells most for its minutes with these cells left; "" where none tells anything."""
    rated = {}
    for name in way.case.acts:
        if name not in way.taken and (bits := model.told(name, cells, way.checked)) > 1e-9:
            rated[name] = bits / (
                way.cost(name) + sum(STEPS[s].minutes for s in steps_to(way, name))
            )
    return max(rated, key=lambda name: rated[name]) if rated else ""


def steps_to(way: Way, act: str) -> list[str]:
    """The steps that an act still needs, in order."""
    one = way.case.acts[act]
    if one.needs == "dead":
        wanted = [*LOCKOUT, PERMIT] if one.permit else list(LOCKOUT)
        return [step for step in wanted if step not in way.done]
    back = [RESTORE] if any(step in way.done for step in LOCKOUT) else []
    return back + [QUALIFIED] * (one.needs == "live" and QUALIFIED not in way.done)


@lru_cache(maxsize=256)
def sure_way(code: str) -> Way:
    """A way that finds the fault safely, by the reading that tells most for its minutes at each point."""
    way, model = Way(case_of(code)), model_of(code)
    cells = model.cells
    while len(model.names(cells)) > 1:
        act = best_now(model, way, cells)
        if not act and way.case.can_check and not way.checked:
            act = CHECK
        if not act:
            act = next((name for name in way.case.acts if name not in way.taken), "")
        if not act:
            break
        for step in steps_to(way, act):
            way = way.then(step)
        way = way.then(act)
        cells = model.fitting(way.found)
    fault = next(iter(model.names(cells)), "")
    if fault:
        way = way.then(f"{NAME}{fault}")
    return way.then(f"{DO}{RIGHT[fault][0][0]}") if way.named else way

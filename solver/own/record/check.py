"""One thing to work out and judge, and what came of it for a record."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, product
from math import isfinite
from typing import NamedTuple

from solver.engine.plan import Link, Plan, find_plan
from solver.engine.steps import Step, worked_steps
from solver.errors import NotSolvable, SolverError
from solver.own.doubts import beyond_nature
from solver.topics.formulas import FORMULAS
from solver.units.quantity import Text, in_system
from solver.vocabulary import quantity_named

from .entries import Record
from .fields import in_words
from .verdict import BEYOND, COARSE, LOOK, NOT_MEASURED, WITHIN, Seen, Verdict, shown

__all__ = ["Check", "Finding", "checked"]

Judge = Callable[[Seen], Verdict]
Ways = tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Check:
    """What is worked, from which readings, and how it is judged.

    `find` is the quantity to be worked and judged; `also` are worked before it where they can be.
    `ways` are the sets of names, any of which will do; the first that is all known is used. Each
    name may be a reading, or what an earlier check has worked. `optional` names go in too where they are known,
    each set together. `legs` marks a check of three legs, `by_a_hair` one whose value is a small
    difference of readings, so that a step of the meter may be all of it; `unless` names what makes it needless,
    `only` a text of the record that must be so. `cautions` are the dangers of its readings.
    """

    topic: str
    name: str
    labels: Text
    ways: Ways
    find: str
    judge: Judge
    also: tuple[str, ...] = ()
    legs: bool = False
    by_a_hair: bool = False
    optional: Ways = ()
    unless: tuple[str, ...] = ()
    only: tuple[str, str] | None = None
    cautions: tuple[str, ...] = ()

    def label(self, units: str) -> str:
        """What it is called in the system "us" or "si"."""
        return in_system(self.labels, units)

    def applies(self, record: Record, known: Mapping[str, float]) -> bool:
        """Whether the check has a meaning for a record, measured or not."""
        if self.only and record.texts.get(self.only[0]) != self.only[1]:
            return False
        one_phase = record.texts.get("phase") == "1"
        return not (known.keys() & set(self.unless) or (self.legs and one_phase))


class Finding(NamedTuple):
    """What came of one check. `known` and `given` are what its steps are shown with.

    `missing` has the names of what would have to be known, each way a tuple, the shortest first.
    """

    check: Check
    value: float | None
    unit: str
    verdict: Verdict
    steps: tuple[Step, ...] = ()
    given: Mapping[str, float] = {}
    known: Mapping[str, float] = {}
    links: tuple[Link, ...] = ()
    missing: tuple[tuple[str, ...], ...] = ()

    @property
    def name(self) -> str:
        """The short name of the check, which stays the same."""
        return self.check.name

    @property
    def state(self) -> str:
        """One of STATES."""
        return self.verdict.state


@lru_cache(maxsize=4096)
def _plan(given: tuple[str, ...], find: str, units: str) -> Plan | None:
    """The chain to `find`, or None where there is none."""
    try:
        return find_plan(given, find, FORMULAS, units)
    except NotSolvable:
        return None


def checked(check: Check, record: Record, known: Mapping[str, float]) -> Finding:
    """Work and judge one check of a record; `known` is what is known before it."""
    unit = quantity_named(check.find).unit(record.units)
    way = next((way for way in check.ways if all(name in known for name in way)), None)
    if way is None:
        return _not_measured(check, record.units, known)
    given = {name: known[name] for name in _start(check, way, known, record.units)}
    try:
        worked, steps, links = _worked(check, given, record.units)
        verdict = _judged(check, Seen(record, {**known, **worked}), worked)
        if check.by_a_hair and verdict.state in (BEYOND, LOOK):
            verdict = _fine_enough(check, Seen(record, {**known, **worked}), given, verdict)
    except (ArithmeticError, ValueError, SolverError) as refusal:
        return Finding(check, None, unit, _cannot(check, refusal, record.units), given=given)
    return Finding(check, worked[check.find], unit, verdict, steps, given, worked, links)


def _judged(check: Check, seen: Seen, worked: Mapping[str, float]) -> Verdict:
    """The verdict; what cannot be is to be looked into, whatever limit it keeps."""
    for name, value in worked.items():
        if impossible := beyond_nature(value, quantity_named(name), seen.units):
            return Verdict(
                LOOK,
                impossible,
                then=f"Take the readings behind the {check.label(seen.units)} again.",
            )
    return check.judge(seen)


def _fine_enough(check: Check, seen: Seen, given: Mapping[str, float], verdict: Verdict) -> Verdict:
    """The verdict, unless it would be another within half a step of the meter, most of the value.

    Three readings of 0.31, 0.32 and 0.31 ohm tell of no unbalance: the meter can't show less.
    """
    record = seen.record
    if not given.keys() <= record.steps.keys():
        return verdict
    around = []
    for signs in product((-0.5, 0.5), repeat=len(given)):
        moved = {
            name: given[name] + sign * record.steps[name]
            for name, sign in zip(given, signs, strict=True)
        }
        worked = _worked(check, moved, record.units)[0]
        state = check.judge(Seen(record, {**seen.known, **worked})).state
        around.append((worked[check.find], state))
    low, high = min(around), max(around)
    if low[1] != WITHIN or high[0] - low[0] < seen.known[check.find]:
        return verdict
    return _coarse(check, record, given, low[0], high[0])


def _coarse(
    check: Check, record: Record, given: Mapping[str, float], low: float, high: float
) -> Verdict:
    *rest, last = (shown(name, value, record.units) for name, value in given.items())
    step = shown(next(iter(given)), max(record.steps[name] for name in given), record.units)
    least, most = (shown(check.find, value, record.units) for value in (low, high))
    return Verdict(
        COARSE,
        f"The meter shows steps of {step}, and that is nearly all the difference between "
        f"{', '.join(rest)} and {last}. "
        f"The {check.label(record.units)} could be anything from {least} to {most}.",
        then=f"Measure the {in_words(given, record.units)} with a meter that shows one more digit.",
    )


def _start(
    check: Check, way: tuple[str, ...], known: Mapping[str, float], units: str
) -> tuple[str, ...]:
    """Where the work starts: a way with what may go in too, or alone where that leads nowhere."""
    besides = (some for some in check.optional if all(name in known for name in some))
    wide = tuple(dict.fromkeys((*way, *chain.from_iterable(besides))))
    return wide if _plan(wide, check.find, units) else way


def _worked(
    check: Check, given: Mapping[str, float], units: str
) -> tuple[dict[str, float], tuple[Step, ...], tuple[Link, ...]]:
    """The quantity, and all on the way, from those given; the steps, and the links used."""
    worked = dict(given)
    steps: tuple[Step, ...] = ()
    links: tuple[Link, ...] = ()
    for name in (*check.also, check.find):
        if plan := _plan(tuple(worked), name, units):
            worked = plan.run(worked)
            steps += worked_steps(plan, worked)
            links += plan.links
    for name, value in worked.items():
        if not isfinite(value):
            quantity = quantity_named(name)
            raise OverflowError(f"the {quantity.label(units)} {quantity.be(units)} far too large")
    return worked, steps, links


def _cannot(check: Check, refusal: Exception, units: str) -> Verdict:
    why = str(refusal)
    if not isinstance(refusal, SolverError | OverflowError) or not why[:1].islower():
        why = "these readings would divide by zero, or take the root of a negative number"
    return Verdict(LOOK, f"The {check.label(units)} can't be calculated: {why}.")


def _not_measured(check: Check, units: str, known: Mapping[str, float]) -> Finding:
    """What is missing, by the way that lacks least; the other ways after it."""
    lacking = sorted((tuple(n for n in way if n not in known) for way in check.ways), key=len)
    says = f"Not measured: the {in_words(lacking[0], units)}."
    unit = quantity_named(check.find).unit(units)
    return Finding(check, None, unit, Verdict(NOT_MEASURED, says), missing=tuple(lacking))

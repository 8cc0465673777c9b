"""How people went through the cases of find the fault: what each read, in order, and what came of it.

Whoever tried something unsafe comes first, then whoever didn't find the fault, then by minutes.
"""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from statistics import median
from typing import TYPE_CHECKING, NamedTuple

from solver.fault.remedies import ACTIONS, RIGHT
from solver.fault.safety import STEPS
from solver.fault.way import Way
from solver.station.faults import FAULTS
from solver.units.show import capital, counted

if TYPE_CHECKING:
    from workbook.trainer.marking.tries import QuestionMark

__all__ = ["WAY_HEADS", "WayFacts", "way_facts", "way_lines", "way_rows"]

FIRST = 3  # readings that stand in the table; the file has all
OFTEN = 3  # first readings, and unsafe steps, that are told
WAY_HEADS = ("Person", "Question", "First readings", "All", "Minutes", "Named", "Call", "Unsafe")


class WayFacts(NamedTuple):
    """One person's way through one case, with every label in words.

    `readings` are in the order they were taken. `found` tells that the fault was named, `good_call` that
    what was chosen next is right for it. `unsafe` are the steps that a safety rule stopped.
    """

    person: str
    number: int
    code: str
    level: int
    fault: str
    readings: tuple[str, ...]
    minutes: int
    named: tuple[str, ...]
    found: bool
    call: str
    good_call: bool
    unsafe: tuple[str, ...]
    points: float


def way_facts(mark: "QuestionMark", person: str) -> WayFacts | None:
    """The way in a mark; None for a problem, and for a case in which nothing was done."""
    way = mark.way
    if way is None or not way.words:
        return None
    case = way.case
    return WayFacts(
        person,
        mark.number,
        str(case.code),
        case.level,
        FAULTS[case.fault].label,
        tuple(case.acts[one.act].label for one in way.found),
        way.minutes,
        tuple(FAULTS[name].label for name in way.names),
        way.named,
        ACTIONS.get(way.action, ""),
        way.action in RIGHT[case.fault][0],
        tuple(_label(way, told.word) for told in way.unsafe),
        mark.points,
    )


def _label(way: Way, word: str) -> str:
    acts = way.case.acts
    return acts[word].label if word in acts else STEPS[word].label.lower()


def _order(one: WayFacts) -> tuple[bool, bool, int, int, str]:
    return not one.unsafe, one.found, -one.minutes, one.number, one.person


def way_rows(ways: Iterable[WayFacts], names: Mapping[str, str]) -> tuple[tuple[str, ...], ...]:
    """A row of text for each way, under WAY_HEADS."""
    return tuple(_row(one, names[one.person]) for one in sorted(ways, key=_order))


def _row(one: WayFacts, name: str) -> tuple[str, ...]:
    named = "; ".join(one.named) or "nothing"
    return (
        name,
        f"{one.number}",
        capital("; ".join(one.readings[:FIRST]) or "none"),
        f"{len(one.readings)}",
        f"{one.minutes}",
        f"✓ {named}" if one.found else f"✗ {named}",
        _call(one),
        "; ".join(one.unsafe) or "–",
    )


def _call(one: WayFacts) -> str:
    return f"{'✓' if one.good_call else '✗'} {one.call}" if one.call else "–"


def way_lines(ways: Sequence[WayFacts]) -> list[str]:
    """All the ways in sentences: who found it, minutes, what was read first, what was unsafe."""
    first = Counter(one.readings[0] for one in ways if one.readings)
    unsafe = Counter(step for one in ways for step in set(one.unsafe))
    at_once = sum(one.found and len(one.named) == 1 for one in ways)
    found = sum(one.found for one in ways)
    lines = [
        f"{counted(len(ways), 'case')} worked. In {found} the fault was found, in {at_once} at the first name.",
        f"The middle one took {median(one.minutes for one in ways):.0f} minutes.",
    ]
    if first:
        lines.append(f"Read first most often: {_most(first)}.")
    guessed = sum(not one.readings for one in ways)
    if guessed:
        lines.append(f"In {guessed} no reading was taken at all.")
    if unsafe:
        lines.append(
            f"Stopped as unsafe most often: {_most(unsafe)}. Go over lockout and permits again."
        )
    else:
        lines.append("Nobody tried an unsafe step.")
    return lines


def _most(counts: Counter[str]) -> str:
    return ", ".join(f"{label} ({many})" for label, many in counts.most_common(OFTEN))

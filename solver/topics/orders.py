"""Steps to put in order, as data: one TOML file a topic, read when first drawn, not at import.

A file is a list of [[order]], each with

    id      its own name, in small letters; it never changes
    level   1 or 2
    asks    what is to be done; it may use {place}, {station} and {person}
    rule    what to think of: a hint that gives no step's place away
    steps   a list of { id, text, source }, written in one order that is right. A step has `after` too:
            { ID = "why that step comes before this one" } for each that must; or, where none must,
            `why` it may come first

Only pairs that a standard, an agency or a handbook, or the nature of the thing settles are written: what
may as well be done the other way around is right both ways. One added, removed or moved gives old codes
another question: add to the family's `revised`.
"""

from functools import cache
from string import Formatter
from typing import Any, NamedTuple

from solver.engine.order import Ordering, Stage
from solver.errors import BadDefinition
from solver.topics.tables import toml_rows

__all__ = ["Graded", "graded_of", "orders"]

LEVELS = (1, 2)
SLOTS = {"place", "station", "person"}
KINDS = {"id": str, "level": int, "asks": str, "rule": str, "steps": list}
NOTE = "Your plant's written procedure, the manuals and your local codes come first."


class Graded(NamedTuple):
    """An ordering at its level."""

    level: int
    ordering: Ordering


def orders(topic: str, level: int) -> tuple[Ordering, ...]:
    """The orderings of a topic at a level, in the order of its file.

    Raises:
        BadDefinition: one is not well formed; it names the file and the ordering.

    >>> orders("lock_and_try", 1)[0].stages[0].id
    'stop'
    """
    return tuple(one.ordering for one in _read(topic) if one.level == level)


@cache
def _read(topic: str) -> tuple[Graded, ...]:
    found = tuple(graded_of(topic, row) for row in toml_rows(topic, "order"))
    names = [one.ordering.id for one in found]
    if twice := {name for name in names if names.count(name) > 1}:
        raise BadDefinition(f"{topic}.toml: two orderings are called {min(twice)!r}")
    return found


def graded_of(topic: str, row: dict[str, Any]) -> Graded:
    """One row of a file as an ordering; BadDefinition says what is wrong with it, and where."""
    kinds = {key: type(value) for key, value in row.items()}
    _expect(topic, row, kinds == KINDS, f"it has {', '.join(row)}; give it {', '.join(KINDS)}")
    _expect(topic, row, row["level"] in LEVELS, f"its level is {row['level']}; give it 1 or 2")
    _expect(topic, row, row["asks"].endswith("."), "end what it asks with a full stop")
    used = {slot for _, slot, _, _ in Formatter().parse(row["asks"]) if slot is not None}
    _expect(topic, row, used <= SLOTS, f"it uses {sorted(used)}; there are {sorted(SLOTS)}")
    stages = tuple(_stage(topic, row, step) for step in row["steps"])
    texts = {stage.text for stage in stages}
    _expect(topic, row, len(texts) == len(stages), "two of its steps share one text")
    return Graded(row["level"], Ordering(row["id"], row["asks"], row["rule"], stages, NOTE))


def _stage(topic: str, row: dict[str, Any], step: dict[str, Any]) -> Stage:
    whole = {"id", "text", "source"} < step.keys() <= {"id", "text", "source", "after", "why"}
    one = ("after" in step) is not ("why" in step)
    fault = f"a step is {step}; give it an id, a text and a source, and either after or why"
    _expect(topic, row, whole and one, fault)
    return Stage(**step)


def _expect(topic: str, row: dict[str, Any], holds: bool, fault: str) -> None:
    if not holds:
        name = row.get("id", "without an id")
        raise BadDefinition(f"{topic}.toml, order {name!r}: {fault}")

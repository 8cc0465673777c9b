"""A set written as its file, `set.toml`; set_file.py reads it."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict
from datetime import datetime
from typing import Any

from solver.sets.own_plant import Plant, table_of
from solver.sets.shares import shares_text
from solver.sets.work_set import WorkSet
from solver.topics.catalogue import CATALOGUE, FIRST, chapters_at, kinds_at

from .set_file import Assigned
from .set_keys import EACH, SAME

__all__ = ["chosen_names", "toml_of"]


def toml_of(assigned: Assigned) -> str:
    """The text of a set's file.

    >>> from .set_file import parse_set_file
    >>> week = parse_set_file('draw = 48213\\nchapters = ["head"]', "week-3")
    >>> parse_set_file(toml_of(week), "week-3") == week
    True
    """
    work, credit = assigned.work, assigned.credit
    top = {
        "title": assigned.title,
        **_what(work),
        "level": work.level,
        "units": work.units,
        "count": work.count,
        "numbers": EACH if work.each else SAME,
        "draw": work.seed,
        "catalogue": work.catalogue,
        "points": assigned.points,
        "tries": assigned.tries,
        "choice_tries": assigned.choice_tries,
        "counts": assigned.counts,
        "due": assigned.due,
        "late": assigned.late,
        **({"group": assigned.group} if assigned.group else {}),
        **_time(assigned),
    }
    shares = credit._asdict()
    by_mistake = shares.pop("by_mistake")
    faults = {**asdict(work.faults), **assigned.faults._asdict()} if work.faults else {}
    if work.catalogue > FIRST and credit.wrong_choice is None:
        shares["wrong_choice"] = credit.mistake
    return "\n".join(
        [
            *_lines(top),
            "\n[credit]",
            *_lines(shares),
            *(["\n[credit.by_mistake]", *_lines(by_mistake)] if by_mistake else []),
            *(["\n[faults]", *_lines(faults)] if faults else []),
            *(_plant_lines(work.plant) if work.plant else []),
            "",
        ]
    )


def _time(assigned: Assigned) -> dict[str, Any]:
    if not assigned.minutes:
        return {}
    return {"minutes": assigned.minutes, "after_time": assigned.after_time}


def _what(work: WorkSet) -> dict[str, Any]:
    if work.shares:
        return {"shares": shares_text(work.by_share)}
    return chosen_names(work.families, work.catalogue)


def chosen_names(families: Iterable[str], catalogue: int = CATALOGUE) -> dict[str, list[str]]:
    """Whole chapters of a catalogue by their names; the families that are left over by theirs."""
    chosen, kinds = set(families), kinds_at(catalogue)
    members = {c: {k.name for k in kinds if k.chapter == c} for c in chapters_at(catalogue)}
    chapters = [chapter for chapter, names in members.items() if names <= chosen]
    left = chosen.difference(*(members[chapter] for chapter in chapters))
    named = {"chapters": chapters, "families": [k.name for k in kinds if k.name in left]}
    return {key: names for key, names in named.items() if names}


def _lines(values: Mapping[str, Any]) -> list[str]:
    """A line for each value; what is empty is left out, as reading takes it so."""
    said = {name: value for name, value in values.items() if value not in (None, [], {})}
    return [f"{_key(name)} = {_value(value)}" for name, value in said.items()]


def _key(name: str) -> str:
    return name if name.isascii() and name.isidentifier() else _text(name)


def _value(value: Any) -> str:
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, list | tuple):
        return f"[{', '.join(map(_value, value))}]"
    if isinstance(value, Mapping):
        return f"{{ {', '.join(_lines(value))} }}"
    if isinstance(value, datetime):
        return value.isoformat()
    whole = isinstance(value, float) and value.is_integer() and value < 1e15
    return repr(int(value) if whole else value)


def _text(text: str) -> str:
    """JSON writes a string as TOML does, but for one control character."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _plant_lines(plant: Plant) -> list[str]:
    table = table_of(plant)
    pumps = table.pop("pumps")
    assert isinstance(pumps, list)
    lines = ["\n[plant]", *_lines(table)]
    for pump in pumps:
        lines += ["\n[[plant.pumps]]", *_lines(pump)]
    return lines

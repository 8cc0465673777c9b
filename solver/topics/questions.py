"""Questions to think about, as data: one TOML file a topic, read when first drawn, not at import.

A file is a list of [[question]], each with

    id      its own name, in small letters; it never changes
    level   1 or 2
    asks    the question; it may use {place}, {station} and {person}
    rule    what to think of: a hint that does not give the answer away
    right   { text, why }
    wrong   three of { id, text, why }
    source  "29 CFR ..." or the like, or "common practice, no source"
    rungs   only where it has a ladder drawing: each rung in words (rungs.py)

One added, removed or moved gives old codes another question: add to the family's `revised`.
`in_words` makes the family of a file.
"""

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from string import Formatter
from typing import Any, NamedTuple

from solver.engine.draw import Draw
from solver.engine.family import Family, Level, Scene
from solver.engine.judgement import Judge, Judgement, Option
from solver.errors import BadDefinition
from solver.topics.chapter import Chapter
from solver.topics.rungs import rung_of
from solver.topics.scenes import NO_NUMBERS
from solver.topics.tables import toml_rows
from solver.vocabulary import spoken

__all__ = ["Question", "in_words", "question_of", "questions", "questions_of"]

LEVELS = (1, 2)
SLOTS = {"place", "station", "person"}
TEXT = {"id": str, "asks": str, "rule": str, "source": str}
KINDS = TEXT | {"level": int, "right": dict, "wrong": list}


class Question(NamedTuple):
    """One question with its four options, and the source of its answer."""

    id: str
    topic: str
    level: int
    asks: str
    rule: str
    right: Option
    wrong: tuple[Option, ...]
    source: str
    rungs: tuple[str, ...] = ()


def in_words(
    chapter: Chapter,
    topic: str,
    tag: str,
    title: str,
    since: int = 1,
    scene: Scene = NO_NUMBERS,
) -> Family:
    """The family of a file's questions, which has a level for each of theirs."""
    levels = tuple(Level((), "{asks}", judge=_judge(topic, level)) for level in LEVELS)
    return chapter.judged(topic, tag, title, _judge(topic, LEVELS[0]), scene, *levels, since=since)


def _judge(topic: str, level: int) -> Judge:
    """One question of a topic and level, drawn by chance."""

    def drawn(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
        found = draw.pick(questions(topic, level))
        right = replace(found.right, says=f"{found.right.says} Source: {found.source}.")
        drawing = tuple((f"Rung {n}", rung) for n, rung in enumerate(found.rungs, 1))
        return Judgement(found.rule, "", right, found.wrong, found.asks, drawing)

    return drawn


def questions(topic: str, level: int) -> tuple[Question, ...]:
    """The questions of a topic at a level, in the order of its file.

    Raises:
        BadDefinition: a question is not well formed; it names the file and the question.

    >>> questions("lockout", 1)[0].id
    'first_of_all'
    """
    return tuple(question for question in _read(topic) if question.level == level)


@cache
def _read(topic: str) -> tuple[Question, ...]:
    return questions_of(topic, toml_rows(topic, "question"))


def questions_of(topic: str, rows: list[dict[str, Any]]) -> tuple[Question, ...]:
    """The rows of a file as questions; no two share an id."""
    found = {}
    for row in rows:
        question = question_of(topic, row)
        _expect(topic, row, question.id not in found, "another question has this id")
        found[question.id] = question
    return tuple(found.values())


def question_of(topic: str, row: dict[str, Any]) -> Question:
    """One row of a file as a question; BadDefinition says what is wrong with it, and where."""
    kinds = {key: type(value) for key, value in row.items() if key != "rungs"}
    _expect(topic, row, kinds == KINDS, f"it has {', '.join(row)}; give it {', '.join(KINDS)}")
    _expect(topic, row, row["level"] in LEVELS, f"its level is {row['level']}; give it 1 or 2")
    _expect(topic, row, all(row[key].strip() for key in TEXT), "one of its texts is empty")
    _check_asks(topic, row)
    _expect(topic, row, len(row["wrong"]) == 3, f"{len(row['wrong'])} choices are wrong, not three")
    options = [
        _option(topic, row, each) for each in ({"id": "right"} | row["right"], *row["wrong"])
    ]
    for what, given in (("id", {o.id for o in options}), ("text", {o.text for o in options})):
        _expect(topic, row, len(given) == len(options), f"two of its choices share one {what}")
    right, *wrong = options
    told = {key: row[key] for key in ("id", "level", "asks", "rule", "source")}
    rungs = tuple(row.get("rungs", ()))
    for rung in rungs:
        rung_of(rung)  # refuses what is none
    return Question(topic=topic, right=right, wrong=tuple(wrong), rungs=rungs, **told)


def _check_asks(topic: str, row: dict[str, Any]) -> None:
    asks = row["asks"]
    _expect(topic, row, asks.endswith(("?", ".")), "end what it asks with ? or a full stop")
    try:
        asked = spoken(asks, "us")
        used = {slot for _, slot, _, _ in Formatter().parse(asked) if slot is not None}
    except (BadDefinition, ValueError) as fault:
        used = {str(fault)}
    _expect(topic, row, used <= SLOTS, f"it uses {sorted(used)}; there are {sorted(SLOTS)}")


def _option(topic: str, row: dict[str, Any], given: dict[str, str]) -> Option:
    texts = given if isinstance(given, dict) else {}
    whole = texts.keys() == {"id", "text", "why"} and all(text.strip() for text in texts.values())
    _expect(topic, row, whole, f"a choice is {given}; give it an id, a text and a why")
    named = all(name.isidentifier() and name.islower() for name in (row["id"], given["id"]))
    _expect(topic, row, named, "an id is lower case words joined by _")
    return Option(f"{row['id']}.{given['id']}", given["text"], given["why"])


def _expect(topic: str, row: dict[str, Any], holds: bool, fault: str) -> None:
    if not holds:
        name = row.get("id", "without an id")
        raise BadDefinition(f"{topic}.toml, question {name!r}: {fault}")

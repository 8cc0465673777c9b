"""A set for an invented class, and what there is to say of one person who hands it in."""

import json
from collections.abc import Callable, Mapping
from typing import NamedTuple

from solver import grade
from solver.sets.work_set import cases_for
from solver.topics.catalogue import CATALOGUE
from tests.workbook.trainer import tampering
from tests.workbook.trainer.sheets import line, right, sheet
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.sets.set_file import parse_set_file

NAME, COUNT, POINTS = "week-3", 12, 2.0
SET = f"""
title = "Week 3: power and head"
catalogue = {CATALOGUE}
draw = 48213
chapters = ["horsepower", "head"]
count = 12
points = 2
tries = 3
choice_tries = 0
due = 2025-11-26T12:00:00Z
late = 0.1

[credit]
each_try = 0.1
wrong_choice = 0.5
"""
WEEK = parse_set_file(SET, NAME)
ALL = range(1, COUNT + 1)
FULL = (POINTS,) * COUNT
NOTHING = (0.0,) * COUNT


class Person(NamedTuple):
    """One of the class.

    `points` and `look` are what the gradebook must say: the points of each question, and the
    questions that somebody must look at. `reason` is a piece of the sentence that says why.
    `notebook` makes the notebook of the released one; None hands in none. `way` is "exchange",
    "zip" or "folder".
    """

    id: str
    about: str
    sheet: bytes | None
    points: tuple[float, ...]
    look: tuple[int, ...] = ()
    reason: str = ""
    notebook: Callable[[dict], bytes] | None = tampering.untouched
    way: str = "zip"
    late: bool = False
    files: Mapping[str, bytes] = {}

    @property
    def score(self) -> float:
        """The points less what being late costs."""
        return round(sum(self.points) * (0.9 if self.late else 1.0), 4)


def answers(person: str, *typed, which=ALL) -> bytes:
    """A sheet on which each question was answered so, one try after another."""
    lines = [line(WEEK, person, n, how, at) for n in which for at, how in enumerate(typed, 1)]
    return sheet(*lines)


def numeric(person: str) -> list[int]:
    return [n for n, case in enumerate(cases_for(WEEK.work, person), 1) if not case.choices]


def at(which, points: float) -> tuple[float, ...]:
    return tuple(points if number in which else 0.0 for number in ALL)


def close(case) -> str:
    """An answer just outside of rounding."""
    for factor in (1.015, 0.985, 1.02, 0.98, 1.025, 0.975):
        if grade(case, text := f"{case.answer * factor:.8g}").status == "close":
            return text
    return right(case)


def kinds_of(person: str) -> set[str]:
    """The kinds of mistakes of one link that this person's questions have."""
    return {kind_of(m) for case in cases_for(WEEK.work, person) for m in case.single_mistakes}


def kind_of(mistake) -> str:
    return mistake.id.split(".")[1] if "." in mistake.id else mistake.id


def files_of(person: Person, released: bytes) -> dict[str, bytes]:
    """The files that somebody hands in, made of the notebook that went out."""
    found = dict(person.files)
    if person.sheet is not None:
        found[SHEET] = person.sheet
    if person.notebook:
        found[f"{NAME}.ipynb"] = person.notebook(json.loads(released))
    return found

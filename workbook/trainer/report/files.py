"""A class report as files for a spreadsheet: its people, its questions, its mistakes."""

from collections.abc import Callable
from typing import NamedTuple

from workbook.ui.pages import titles
from workbook.ui.spreadsheet import csv_of

from .facts import STATUSES, ClassFacts, PersonFacts
from .words import names_for

__all__ = ["FILES", "File", "cases_csv", "mistakes_csv", "people_csv", "questions_csv"]


def people_csv(told: ClassFacts, hidden: bool = False) -> bytes:
    """A row for each person: points, what is blank, why a person must look, points by question."""
    numbers = [one.number for one in told.questions]
    names = names_for(told, hidden)
    rows = [_person(person, names[person.person], hidden) for person in told.people]
    if hidden:
        rows.sort(key=lambda row: int(str(row[0]).split()[-1]))  # "Person 7"
    heads = ["person", "points", "out of", "percent", "blank", "must be looked at", "why"]
    return csv_of([[*heads, *(f"question {number}" for number in numbers)], *rows])


def _person(person: PersonFacts, name: str, hidden: bool) -> list[object]:
    return [
        name,
        person.points,
        person.out_of,
        round(100 * person.share, 1),
        person.blank,
        "yes" if person.needs else "",
        "" if hidden else " ".join(person.reasons),
        *person.by_question,
    ]


def questions_csv(told: ClassFacts, hidden: bool = False) -> bytes:
    """A row for each question: the share of its points, what was answered, how well it tells."""
    named = titles()
    heads = ["question", "kind", "chapter", "level", "percent of the points", *STATUSES]
    rows = [
        [
            one.number,
            one.family.title,
            named.get(one.family.chapter, one.family.chapter),
            one.level,
            round(100 * one.share, 1),
            *(one.counts[status] for status in STATUSES),
            *(_rounded(value) for value in one.telling),
        ]
        for one in told.questions
    ]
    return csv_of([[*heads, "tells apart", "best third", "lowest third"], *rows])


def _rounded(value: float | None) -> float | str:
    return "" if value is None else round(value, 4)


def mistakes_csv(told: ClassFacts, hidden: bool = False) -> bytes:
    """A row for each known mistake: how many people made it, where, and what to teach again."""
    named = titles()
    heads = [
        "people",
        "questions",
        "step or kind",
        "mistake",
        "teach again",
        "chapter",
        "id",
        "who",
    ]
    names = names_for(told, hidden)
    rows = [
        [
            len(flaw.people),
            " ".join(map(str, flaw.questions)),
            flaw.what,
            flaw.says,
            flaw.why,
            named.get(flaw.chapter, flaw.chapter),
            flaw.id,
            "" if hidden else " ".join(names[person] for person in flaw.people),
        ]
        for flaw in told.flaws
    ]
    return csv_of([heads, *rows])


def cases_csv(told: ClassFacts, hidden: bool = False) -> bytes:
    """A row for each way through a case: readings in order, minutes, names, the call, unsafe steps, points."""
    heads = [
        "person",
        "question",
        "case",
        "level",
        "fault",
        "readings",
        "in order",
        "minutes",
        "named",
    ]
    names = names_for(told, hidden)
    rows = [
        [
            names[one.person],
            one.number,
            "" if hidden else one.code,
            one.level,
            one.fault,
            len(one.readings),
            "; ".join(one.readings),
            one.minutes,
            "; ".join(one.named),
            "yes" if one.found else "no",
            one.call,
            "yes" if one.good_call else "no",
            len(one.unsafe),
            "; ".join(one.unsafe),
            one.points,
        ]
        for one in told.ways
    ]
    if hidden:
        rows.sort(key=lambda row: (int(str(row[0]).split()[-1]), row[1]))  # "Person 7"
    more = ["found", "call", "right call", "unsafe steps", "which", "points"]
    return csv_of([[*heads, *more], *rows])


class File(NamedTuple):
    """A file to save: what it is called, what a link to it says, and how it is made."""

    name: str
    says: str
    made: Callable[..., bytes]


FILES = (
    File("people", "Save the people, for a spreadsheet", people_csv),
    File("questions", "Save the questions, for a spreadsheet", questions_csv),
    File("mistakes", "Save the mistakes, for a spreadsheet", mistakes_csv),
    File("cases", "Save the ways through the cases, for a spreadsheet", cases_csv),
)

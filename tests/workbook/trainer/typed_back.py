"""Sheets of a small set, and the rows that somebody types back from them."""

import csv
import io

from solver.sets.credit import Credit
from solver.sets.work_set import set_of
from workbook.trainer.course import Person
from workbook.trainer.on_paper.marks import marks_of
from workbook.trainer.on_paper.sheets import sheets_of
from workbook.trainer.on_paper.typed import TypedFile
from workbook.trainer.sets.set_file import Assigned

from .sheets import right

__all__ = [
    "ANA",
    "BEN",
    "FAMILIES",
    "NUMERIC",
    "PEOPLE",
    "RIGHT",
    "SHEETS",
    "WEEK",
    "WORK",
    "ZERO",
    "marked",
    "messages",
    "one",
    "row",
    "text",
]

FAMILIES = ("brake_power", "energy_cost", "check_valve", "static_head")
WORK = set_of(families=FAMILIES, count=4, seed=7, level=1)
WEEK = Assigned("week-3", "Week 3", WORK, points=10.0, credit=Credit(mistake=0.4))
PEOPLE = [Person("ana.r", "Ana", "Rivet"), Person("ben.k", "Ben"), Person("00123")]
SHEETS = sheets_of(WEEK, PEOPLE)
ANA, BEN, ZERO = SHEETS
HEAD = ["sheet", "person", "name", "1", "2", "3", "4"]
RIGHT = [right(case) for case in ANA.cases]
NUMERIC = [at for at, case in enumerate(ANA.cases) if not case.choices]


def row(sheet, answers=None, who=""):
    return [
        str(sheet.code),
        who,
        "",
        *([right(c) for c in sheet.cases] if answers is None else answers),
    ]


def text(*rows, head=HEAD, separator=",", end="\r\n"):
    made = io.StringIO(newline="")
    csv.writer(made, delimiter=separator, lineterminator=end).writerows([head, *rows])
    return made.getvalue()


def marked(data, people=PEOPLE, assigned=WEEK):
    file = TypedFile(io.BytesIO(data if isinstance(data, bytes) else data.encode()), 4)
    return list(marks_of(assigned, file, people))


def one(data, people=PEOPLE):
    (found,) = marked(data, people)
    return found.marked


def messages(data):
    return TypedFile(io.BytesIO(data.encode()), 4).messages

"""Files for a spreadsheet: one to type the answers into, and one with the marks of what was typed."""

from collections.abc import Iterable, Iterator, Sequence

from workbook.trainer.marking import Marked, QuestionMark
from workbook.ui.spreadsheet import csv_of

from .marks import RowMark
from .sheets import Sheet

__all__ = ["answers_csv", "marks_csv"]


def answers_csv(sheets: Sequence[Sheet]) -> bytes:
    """A row for each sheet, with its code and whose it is, and a column for each question."""
    count = len(sheets[0].cases) if sheets else 0
    blank = [""] * count
    heads = ["sheet", "person", "name", *range(1, count + 1)]
    rows = ([str(each.code), each.person, each.name, *blank] for each in sheets)
    return csv_of([heads, *rows])


def marks_csv(marks: Iterable[RowMark], count: int) -> bytes:
    """A row for each row that was typed: the points, why a person must look, then each question."""
    heads = ["row", "sheet", "person", "points", "out of", "must be looked at", "why"]
    parts = ("points", "state", "mistake", "answer", "read as", "says")
    named = [f"{number} {part}" for number in range(1, count + 1) for part in parts]
    return csv_of([[*heads, *named], *map(_row, marks)])


def _row(mark: RowMark) -> list:
    marked = mark.marked
    return [
        mark.row,
        mark.sheet,
        marked.person,
        *((marked.points, marked.out_of) if marked.questions else ("", "")),
        "yes" if marked.needs_person else "",
        marked.reason,
        *_questions(marked),
    ]


def _questions(marked: Marked) -> Iterator[object]:
    for each in marked.questions:
        yield from (each.points, each.status, each.mistake, each.typed, each.read_as, _says(each))


def _says(mark: QuestionMark) -> str:
    return " ".join(filter(None, (mark.says, mark.reason if mark.reason != mark.says else "")))

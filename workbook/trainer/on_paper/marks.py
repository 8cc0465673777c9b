"""Marks for the answers typed back from paper: whose sheet each row is, then the rules of marking.

A code holds a mark of the set and the person together, so that a row counts for nobody whom its
code was not made for. A row that cannot be given to a person for certain gets no marks and says why.
The marks are also a file for a spreadsheet.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

from solver import SolverError
from solver.sets.sheet_code import SheetCode, read_sheet_code, sheet_code
from solver.sets.work_set import person_id
from workbook.trainer.course import Person
from workbook.trainer.marking.marked import Marked, QuestionMark, mark_paper
from workbook.trainer.marking.odd import quoted, told
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.spreadsheet import csv_of

from .sheets import numbered_id
from .typed import TypedRow

__all__ = ["RowMark", "marks_csv", "marks_of"]

OTHER_SET = "This sheet is from another set, or from this set before it was changed."
NOBODY = "Nobody on this list has this sheet. Use the list of people it was printed for."
MOVED = (
    "The list of people has changed since this sheet was printed. Check whether this is {}’s sheet."
)
OTHER = "This is the code of {}’s sheet, but the row says {}. Correct one of them."
PARTED = "More cells are filled than there are headings: a comma may have split an answer. Put that answer in quotation marks."
EMPTY = "This row has no answers."
AGAIN = "Row {} has this sheet too, and is the one that counts."
TWICE = "Row {} has this sheet too, with other answers. Delete one of them."


class RowMark(NamedTuple):
    """What came of a row: its number, the code as typed, and the marks.

    `marked` has no person and no questions where nobody gets marks; its reason says why. `answers` are
    those typed, `odd` by question and `odd_whole` why somebody must look.
    """

    row: int
    sheet: str
    marked: Marked
    answers: Mapping[int, str] = MappingProxyType({})
    odd: Mapping[int, str] = MappingProxyType({})
    odd_whole: tuple[str, ...] = ()


class _Refused(SolverError):
    """A row that is nobody's; the sentence says why."""


class _Whose(NamedTuple):
    """A row, whose it is, and what is odd about that."""

    typed: TypedRow
    person: str
    odd: tuple[str, ...]


def marks_of(
    assigned: Assigned, rows: Iterable[TypedRow], people: Sequence[Person] = ()
) -> Iterator[RowMark]:
    """The marks of every row, in order. `people` are those the sheets were printed for, if named.

    It never raises for what a row holds. All rows are read before the first is marked, as a sheet
    may stand twice: the first row with answers counts, and a person must look where others differ.
    """
    everybody = _Everybody(assigned.work.code, people)
    found = [_whose(assigned, row, everybody) for row in rows]
    of_one: dict[str, list[TypedRow]] = {}
    for each in found:
        if isinstance(each, _Whose):
            of_one.setdefault(each.person, []).append(each.typed)
    counting = {person: _counting(typed) for person, typed in of_one.items()}
    for each in found:
        if isinstance(each, RowMark):
            yield each
            continue
        counts, others = counting[each.person]
        if each.typed is counts:
            yield _marked(assigned, each, [TWICE.format(other) for other in sorted(others)])
        else:
            differs = each.typed.row in others
            yield _unmarked(assigned, each.typed, (TWICE if differs else AGAIN).format(counts.row))


def _counting(rows: Sequence[TypedRow]) -> tuple[TypedRow, set[int]]:
    """Of one person's rows the one that counts, and the numbers of those with other answers."""
    filled = [row for row in rows if row.answers]
    counts = (filled or rows)[0]
    return counts, {row.row for row in filled if row.answers != counts.answers}


def _whose(assigned: Assigned, row: TypedRow, everybody: "_Everybody") -> _Whose | RowMark:
    try:
        if not row.fits:
            raise _Refused(PARTED)
        person, odd = everybody.person(row)
    except SolverError as fault:
        return _unmarked(assigned, row, told((*row.faults, str(fault))))
    return _Whose(row, person, (*row.faults, *odd))


class _Everybody:
    """Whom the sheets of a set may have been made for: those of a list, and nobody known."""

    def __init__(self, work: str, people: Sequence[Person]):
        self._work, self._people = work, people
        self._by_mark: dict[int, list[Person]] = {}
        for each in people:
            mark = sheet_code(work, 1, each.id).of_person
            self._by_mark.setdefault(mark, []).append(each)

    def person(self, row: TypedRow) -> tuple[str, tuple[str, ...]]:
        """The id of whom the code of a row was made for, and what is odd about it.

        Raises:
            BadCode: the code cannot be read.
            _Refused: the row is nobody's for certain; the sentence says why.
        """
        code = read_sheet_code(row.sheet)
        if not code.is_of_set(self._work):
            raise _Refused(OTHER_SET)
        said = _id(row.who)
        if said and code.is_of(self._work, said):
            return said, ()
        found, odd = self._made_for(code)
        if row.who and not _same(row.who, found):
            raise _Refused(OTHER.format(found.id, quoted(row.who)))
        return found.id, odd

    def _made_for(self, code: SheetCode) -> tuple[Person, tuple[str, ...]]:
        """Whom the code fits: in its place of the list, nobody known, or elsewhere in the list."""
        place = self._people[code.number - 1 : code.number]
        for each in (*place, Person(numbered_id(code.number))):
            if code.is_of(self._work, each.id):
                return each, ()
        fitting = self._by_mark.get(code.of_person, [])
        if len(fitting) != 1:
            raise _Refused(NOBODY)
        return fitting[0], (MOVED.format(fitting[0].id),)


def _id(text: str) -> str:
    """The id in a cell; "" where it holds none."""
    try:
        return person_id(text)
    except SolverError:
        return ""


def _same(who: str, person: Person) -> bool:
    """Whether a cell means this person: by id, which may have lost its zeros, or by name."""
    said = " ".join(who.split()).casefold()
    return said in (person.id, person.name.casefold()) or (
        person.id.isdecimal() and said == person.id.lstrip("0")
    )


def _marked(assigned: Assigned, whose: _Whose, more: Sequence[str]) -> RowMark:
    typed = whose.typed
    odd_whole = (*whose.odd, *more, *([] if typed.answers else [EMPTY]))
    found = mark_paper(assigned, whose.person, typed.answers, typed.odd, odd_whole)
    return RowMark(typed.row, typed.sheet, found, typed.answers, typed.odd, odd_whole)


def _unmarked(assigned: Assigned, typed: TypedRow, reason: str) -> RowMark:
    return _row(typed, Marked("", assigned.work.code, (), reason, True))


def _row(typed: TypedRow, marked: Marked) -> RowMark:
    return RowMark(typed.row, typed.sheet, marked)


def marks_csv(marks: Iterable[RowMark], count: int) -> bytes:
    """A row for each row that was typed: the points, why a person must look, then each question."""
    heads = ["row", "sheet", "person", "points", "out of", "must be looked at", "why"]
    parts = ("points", "state", "mistake", "answer", "read as", "says")
    named = [f"{number} {part}" for number in range(1, count + 1) for part in parts]
    return csv_of([[*heads, *named], *map(_cells, marks)])


def _cells(mark: RowMark) -> list[object]:
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

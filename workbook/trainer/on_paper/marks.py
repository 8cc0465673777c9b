"""Marks for the answers typed back from paper: whose sheet each row is, then the rules of marking.

A code holds a mark of the set and the person together, so that a row counts for nobody whom its
code was not made for. A row that cannot be given to a person for certain gets no marks and says why.
"""

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from solver import SolverError
from solver.sheet_code import SheetCode, read_sheet_code
from solver.work_set import person_id

from ..assigned import Assigned
from ..coming_in.people import Person
from ..marking import Marked, QuestionMark, mark_typed
from ..odd import quoted, told
from .sheets import name_of, numbered_id
from .typed import TypedRow

__all__ = ["RowMark", "marks_of"]

UNREAD = "unreadable"
OTHER_SET = "This sheet is of another set, or of this one before it was changed."
NOBODY = "Nobody here has this sheet. Name the list of people it was printed for."
MOVED = "The list of people has changed since this sheet was printed. See whether it is {}’s."
OTHER = "The code is of {}’s sheet, and the row says {}. Correct one of them."
PARTED = "More cells are filled than there are headings: a comma may have parted an answer. Put it in quotation marks."
EMPTY = "No answer is typed in this row."
AGAIN = "Row {} has this sheet too, and is the one that counts."
TWICE = "Row {} has this sheet too, with other answers. Delete one of them."


class RowMark(NamedTuple):
    """What came of a row: its number, the code as typed, and the marks.

    `marked` has no person and no questions where nobody gets marks; its reason says why.
    """

    row: int
    sheet: str
    marked: Marked


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
    may stand twice: the first row counts, and a person must look where the answers differ.
    """
    found = [_whose(assigned, row, people) for row in rows]
    first: dict[str, TypedRow] = {}
    differs: dict[str, int] = {}
    for each in found:
        if isinstance(each, _Whose):
            before = first.setdefault(each.person, each.typed)
            if before.answers != each.typed.answers:
                differs.setdefault(each.person, each.typed.row)
    for each in found:
        if isinstance(each, RowMark):
            yield each
        elif (counts := first[each.person]) is not each.typed:
            said = TWICE if counts.answers != each.typed.answers else AGAIN
            yield _unmarked(assigned, each.typed, said.format(counts.row))
        else:
            more = [TWICE.format(differs[each.person])] if each.person in differs else []
            yield _marked(assigned, each, more)


def _whose(assigned: Assigned, row: TypedRow, people: Sequence[Person]) -> _Whose | RowMark:
    try:
        if not row.fits:
            raise _Refused(PARTED)
        person, odd = _person(assigned.work.code, row, people)
    except SolverError as fault:
        return _unmarked(assigned, row, told((*row.faults, str(fault))))
    return _Whose(row, person, (*row.faults, *odd))


def _person(work: str, row: TypedRow, people: Sequence[Person]) -> tuple[str, tuple[str, ...]]:
    """The id of whom the code was made for, and what is odd; BadCode or _Refused where nobody is."""
    code = read_sheet_code(row.sheet)
    if not code.is_of_set(work):
        raise _Refused(OTHER_SET)
    said = _id(row.who)
    if said and code.is_of(work, said):
        return said, ()
    if code.is_of(work, numbered := numbered_id(code.number)):
        found, odd = Person(numbered), ()
    else:
        found, odd = _listed(work, code, people)
    if row.who and not _same(row.who, found):
        raise _Refused(OTHER.format(found.id, quoted(row.who)))
    return found.id, odd


def _listed(work: str, code: SheetCode, people: Sequence[Person]) -> tuple[Person, tuple[str, ...]]:
    """Whom of the list the code was made for: in its place there, or elsewhere, which is odd."""
    place = people[code.number - 1 : code.number]
    if place and code.is_of(work, place[0].id):
        return place[0], ()
    fitting = [each for each in people if code.is_of(work, each.id)]
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
    return said in (person.id, name_of(person).casefold()) or (
        person.id.isdecimal() and said == person.id.lstrip("0")
    )


def _marked(assigned: Assigned, whose: _Whose, more: Sequence[str]) -> RowMark:
    typed = whose.typed
    odd = {number: (why,) for number, why in typed.odd.items()}
    odd_whole = [*whose.odd, *more, *([] if typed.answers else [EMPTY])]
    found = mark_typed(assigned, whose.person, typed.answers, odd, odd_whole)
    questions = tuple(_certain(each, typed.odd.get(each.number, "")) for each in found.questions)
    return _row(typed, found._replace(questions=questions))


def _certain(mark: QuestionMark, odd: str) -> QuestionMark:
    """No points for an answer of which nobody can say what was meant."""
    if not odd:
        return mark
    return mark._replace(points=0.0, status=UNREAD, mistake="", says=odd, read_as="")


def _unmarked(assigned: Assigned, typed: TypedRow, reason: str) -> RowMark:
    return _row(typed, Marked("", assigned.work.code, (), reason, True))


def _row(typed: TypedRow, marked: Marked) -> RowMark:
    return RowMark(typed.row, typed.sheet, marked)

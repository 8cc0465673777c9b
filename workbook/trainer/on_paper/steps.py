"""What the command paper does, a sentence for each thing done."""

import argparse
from collections.abc import Iterator, Sequence
from pathlib import Path

from solver import SolverError
from solver.units.show import counted
from workbook.trainer.course import Person, course_at
from workbook.trainer.marking.feedback import points_of
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.saving import whole_file

from .keeping import keep_answers
from .marks import RowMark, marks_csv, marks_of
from .printed import check_room, pdf_of
from .sheets import Sheet, answers_csv, numbered, sheets_of
from .typed import TypedFile

__all__ = ["mark_typed_file", "print_sheets"]

MOST_SAID = 20  # rows and people told one by one; all of them stand in the file
WHO = "Type --sheets 30 for numbered sheets, or --people and a list of people."


class CannotPrint(SolverError):
    """What was asked for cannot be printed; the sentence says what to type."""


def print_sheets(
    assigned: Assigned, people: Sequence[Person], options: argparse.Namespace
) -> Iterator[str]:
    """Write the PDF, and beside it the file to type the answers into.

    Raises:
        SolverError: what is asked for cannot be printed; the sentence says what to type.
        OSError: a file cannot be written.
    """
    sheets = _sheets(assigned, people, options.sheets)
    in_full = _in_full(sheets, options.solved)
    pdf = Path(options.pdf)
    with whole_file(pdf) as file:
        file.write(pdf_of(assigned, sheets, in_full, two_sided=options.two_sided))
    yield f"{pdf} has {counted(len(sheets), 'sheet')}, each with its code; the key comes last."
    path = pdf.with_name(f"{pdf.stem}-answers.csv")
    made = answers_csv(sheets)
    # What somebody has typed there must never be lost.
    if path.exists() and path.read_bytes() != made:
        yield f"{path} is already there and was left alone. For a new one, give the PDF another name."
        return
    with whole_file(path) as file:
        file.write(made)
    yield f"Type the answers into {path}, a row for each sheet. To grade them, type --mark {path}."


def _sheets(
    assigned: Assigned, people: Sequence[Person], asked: tuple[int, int] | None
) -> tuple[Sheet, ...]:
    if not (people or asked):
        raise CannotPrint(WHO)
    first, last = asked or (1, len(people))
    if people and last > len(people):
        raise CannotPrint(f"The list has {len(people):,} people; there is no sheet {last:,}.")
    check_room(assigned, last - first + 1)
    return sheets_of(assigned, people or numbered(last), first, last)


def _in_full(sheets: Sequence[Sheet], text: str) -> set[str]:
    """The people whose sheets are worked in full: those with the numbers named."""
    by_number = {str(sheet.number): sheet.person for sheet in sheets}
    named = [each.strip() for each in text.split(",") if each.strip()]
    for each in named:
        if each not in by_number:
            least, most = sheets[0].number, sheets[-1].number
            raise CannotPrint(
                f"There is no sheet “{each[:40]}” to work in full. Type numbers from {least} to {most}."
            )
    return {by_number[each] for each in named}


def mark_typed_file(
    assigned: Assigned, people: Sequence[Person], options: argparse.Namespace
) -> Iterator[str]:
    """Mark every row of a file; write the marks, or say them.

    Raises:
        SolverError: the file cannot be marked, or the marks would go over it.
        OSError: a file cannot be read or written.
    """
    path = Path(options.mark)
    if options.csv and Path(options.csv).resolve() == path.resolve():
        raise CannotPrint(
            "The result would overwrite the file you are reading. Give --csv another name."
        )
    with path.open("rb") as stream:
        typed = TypedFile(stream, assigned.work.asked)
        marks = list(_with_progress(marks_of(assigned, typed, people)))
    yield from typed.messages
    if options.csv:
        with whole_file(Path(options.csv)) as file:
            file.write(marks_csv(marks, assigned.work.asked))
    said = [_said(mark) for mark in marks if mark.marked.needs_person or not options.csv]
    most = MOST_SAID if options.csv else len(said)
    yield from said[:most]
    if len(said) > most:
        yield f"And {len(said) - most:,} more to look at; each one is in {options.csv}."
    yield from _in_all(marks, people)
    if options.csv:
        yield f"{options.csv} is written."
    if options.keep:
        yield from _kept(assigned, marks, options)
    if options.report:
        yield _report(assigned, marks, people)


def _kept(
    assigned: Assigned, marks: Sequence[RowMark], options: argparse.Namespace
) -> Iterator[str]:
    yield from keep_answers(course_at(options.course), assigned, marks)


def _with_progress(marks: Iterator[RowMark]) -> Iterator[RowMark]:
    from tqdm import tqdm  # shown where there is a screen for it

    return iter(tqdm(marks, unit=" rows", disable=None, leave=False))


def _said(mark: RowMark) -> str:
    marked = mark.marked
    if not marked.questions:
        return f"Row {mark.row}: {marked.reason}"
    return f"Row {mark.row}, {marked.person}: {points_of(marked)}. {marked.reason}".rstrip()


def _in_all(marks: Sequence[RowMark], people: Sequence[Person]) -> Iterator[str]:
    for_somebody = [mark.marked for mark in marks if mark.marked.questions]
    look = sum(marked.needs_person for marked in for_somebody)
    nobody = len(marks) - len(for_somebody)
    said = f"{counted(len(for_somebody), 'sheet')} graded. You need to look at {look:,} of them."
    yield said + f" {counted(nobody, 'row')} not counted." * bool(nobody)
    absent = _absent(marks, people)
    if absent:
        named = ", ".join(absent[:MOST_SAID]) + ", …" * (len(absent) > MOST_SAID)
        yield f"No row counts for {len(absent):,} of the list: {named}."


def _absent(marks: Sequence[RowMark], people: Sequence[Person]) -> list[str]:
    there = {mark.marked.person for mark in marks}
    return [person.id for person in people if person.id not in there]


def _report(assigned: Assigned, marks: Sequence[RowMark], people: Sequence[Person]) -> str:
    """How the class did, as text."""
    from workbook.trainer.report.facts import facts
    from workbook.trainer.report.sections import report, report_text

    told = facts((mark.marked for mark in marks if mark.marked.questions), _absent(marks, people))
    return "\n" + report_text(report(told, assigned.title)).rstrip("\n")

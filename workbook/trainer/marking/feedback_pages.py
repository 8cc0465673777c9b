"""A page for each person with their marks and worked solutions, and their marked notebook.

They lie where nbgrader's own would: `feedback/ana.r/week-3/week-3.html`, which its release_feedback
gives out, and `autograded/ana.r/week-3/week-3.ipynb`, which its grading page opens. A score or a
comment that somebody gave by hand stands as the gradebook has it.
"""

import json
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from itertools import islice
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile

from solver.sets.credit import in_points
from solver.units.show import exact
from workbook.trainer.coming_in.handed_in import SECRET, TIMESTAMP, Handed, plain_answers
from workbook.trainer.coming_in.times import in_words
from workbook.trainer.course import SEND, Course, CourseFault, names_in
from workbook.trainer.gradebook.given import Extension, extensions_of
from workbook.trainer.gradebook.rules import grade_id, score_of
from workbook.trainer.gradebook.tables import (
    AT_ONCE,
    Entry,
    Graded,
    SetRows,
    entries_of,
    opened,
    set_rows,
)
from workbook.ui.markup import Child, Markup, joined, tag
from workbook.ui.pieces import css
from workbook.ui.saving import whole_file

from .bulk import marks_of, set_in
from .feedback import feedback_html
from .grade_cell import fill_in, show_plain_answers
from .marked import Marked, QuestionMark

__all__ = ["pack_feedback", "sending_zip", "write_feedback"]

LOOK = tag(
    "style",
    Markup("""
body { margin: 1em auto; max-width: 54rem; }
.w2w-feedback { margin-top: 2em; padding-top: 1.5em; border-top: 2px solid var(--w2w-line); }
"""),
)


def write_feedback(
    course: Course, name: str, db: str | None = None, *, people: Sequence[str] | None = None
) -> int:
    """Write the pages of all whose work for the set `name` is in the gradebook; how many.

    Raises:
        SolverError: the set or the gradebook cannot be used, or a folder not be written to.
    """
    title, written = set_in(course, name).title, 0
    released = course.folder("release", name) / f"{name}.ipynb"
    blank = released.read_text(encoding="utf-8")
    marks, more = marks_of(course, name, people), extensions_of(course.root, name)
    called = names_in(course)
    with opened(db or course.gradebook) as connection, _sending(course, name) as send:
        rows = set_rows(connection, name)
        while batch := list(islice(marks, AT_ONCE)):
            entries = entries_of(connection, rows, [handed.person for handed, _ in batch])
            for handed, marked in batch:
                if entry := entries.get(handed.person):
                    who = called.get(handed.person, handed.person)
                    page = _page(title, who, marked, _Kept(rows, entry), more.get(handed.person))
                    send(f"{name} {_plain(who)}.html", page)
                    _write(course, name, handed, page, _notebook(blank, handed, marked))
                    written += 1
    return written


def pack_feedback(course: Course, name: str) -> int:
    """Pack the pages that nbgrader made of a set, of whoever handed it in, ready to send; how many.

    Raises:
        CourseFault: the file cannot be written.
    """
    called, packed = names_in(course), 0
    with _sending(course, name) as send:
        for person in course.handed_in(name):
            page = course.folder("feedback", name, person) / f"{name}.html"
            if page.is_file():
                who = called.get(person, person)
                send(f"{name} {_plain(who)}.html", page.read_text(encoding="utf-8"))
                packed += 1
    return packed


def sending_zip(course: Course, name: str) -> Path:
    """The file that has the feedback of everybody, ready to send, each page with its person's name."""
    return course.root / SEND / f"{name}-feedback.zip"


@contextmanager
def _sending(course: Course, name: str) -> Iterator[Callable[[str, str], None]]:
    """What puts a page into that file; it holds the pages and nothing else."""
    path = sending_zip(course, name)
    try:
        path.parent.mkdir(exist_ok=True)
        with whole_file(path) as file, ZipFile(file, "w", ZIP_DEFLATED) as packed:
            yield packed.writestr
    except OSError as error:
        raise CourseFault(f"{path} can't be written: {error.strerror}.") from error


def _plain(who: str) -> str:
    """A name as every system can have it in that of a file."""
    return "".join(mark if mark.isalnum() or mark in " ._-@()" else "-" for mark in who)


class _Kept:
    """What the gradebook has of one person, by question."""

    def __init__(self, rows: SetRows, entry: Entry):
        self.rows, self.entry = rows, entry
        self.penalty = entry.penalty or 0.0

    def of(self, question: QuestionMark) -> Graded | None:
        return self.entry.graded.get(self.rows.cells[grade_id(question.number)])

    def points(self, question: QuestionMark) -> float:
        """The points as they count: those given by hand where there are any."""
        graded = self.of(question)
        if graded is None:
            return score_of(question)
        by_hand = graded.kept.by_hand
        return (score_of(question) if by_hand is None else by_hand) + (graded.extra or 0.0)


def _page(title: str, who: str, marked: Marked, kept: _Kept, more: Extension | None) -> str:
    points = sum(kept.points(each) for each in marked.questions) - kept.penalty
    notes = [f"It was late, which took {exact(kept.penalty)} off."] if kept.penalty else []
    if more:
        why = f": {more.note}" if more.note else "."
        notes.append(f"Your trainer gave you until {in_words(more.due)}{why}")
    if marked.reason:
        notes.append(marked.reason)
    have = f"{exact(round(points, 4))} of {in_points(marked.out_of)}"
    return _document(
        f"{title}: {who}",
        tag("h1", title),
        tag("p", f"Graded for {who}: ", tag("b", have), "."),
        (tag("p", note) for note in notes),
        (_question(each, kept) for each in marked.questions),
    )


def _document(title: str, *parts: Child) -> str:
    """A whole page with the workbook's look, which needs no program running."""
    head = tag(
        "head",
        tag("meta", charset="utf-8"),
        tag("meta", name_="viewport", content="width=device-width, initial-scale=1"),
        tag("title", title),
        css(),
        LOOK,
    )
    body = tag("body", tag("main", parts, cls="w2w-panel"))
    return f"<!DOCTYPE html>\n{tag('html', head, body, lang='en')}\n"


def _question(question: QuestionMark, kept: _Kept) -> Markup:
    """The feedback of a question, and before it what a person decided about it."""
    graded, points = kept.of(question), kept.points(question)
    said = []
    if points != score_of(question):
        said.append(f"Your trainer gave {in_points(points)} for this question.")
        question = question._replace(points=points, needs_person=False)
    if graded and graded.said_by_hand:
        said.append(f"Your trainer says: {graded.said_by_hand}")
    return joined((tag("p", tag("b", sentence)) for sentence in said), feedback_html(question))


def _notebook(blank: str, handed: Handed, marked: Marked) -> str:
    page = json.loads(blank)
    show_plain_answers(page, plain_answers(handed.notebook))
    fill_in(page, marked)
    return json.dumps(page, indent=1, ensure_ascii=False)


def _write(course: Course, name: str, handed: Handed, page: str, notebook: str) -> None:
    given = course.folder("submitted", name, handed.person)
    feedback = course.folder("feedback", name, handed.person)
    marked = course.folder("autograded", name, handed.person)
    try:
        _put(feedback / f"{name}.html", page.encode())
        _put(marked / f"{name}.ipynb", notebook.encode())
        for file in (TIMESTAMP, SECRET):  # release_feedback looks for both
            if (given / file).is_file():
                _put(feedback / file, (given / file).read_bytes())
                _put(marked / file, (given / file).read_bytes())
    except OSError as error:
        raise CourseFault(f"{error.filename} can't be written: {error.strerror}.") from error


def _put(path: Path, data: bytes) -> None:
    """Write a file whole, also over one that nbgrader has made unwritable."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with whole_file(path) as file:
        file.write(data)

"""A set on its way through nbgrader's own commands, from the trainer's folder to the feedback.

Each function runs one of them in the course, in the program of `nbgrader_program.py`. What nbgrader says goes into the file `nbgrader.log` there, and what has to be
known is said in a sentence.
"""

import re
import secrets
import shutil
import sys
from collections.abc import Sequence
from pathlib import Path

from solver import SolverError
from workbook.ui.spreadsheet import csv_of

from .coming_in.exchange_clock import inbound
from .coming_in.handed_in import SECRET, TIMESTAMP, read_handed
from .course import Course, CourseFault, Person, keep_people, people_in, read_people
from .nbgrader_program import run_nbgrader

__all__ = [
    "StepFailed",
    "autograde",
    "collect",
    "enrol",
    "export_grades",
    "generate_assignment",
    "generate_feedback",
    "release",
    "release_feedback",
    "validate",
]

LOG = "nbgrader.log"
FOR_NBGRADER = "people-for-nbgrader.csv"
PASSED = "Success! Your notebook passes all the tests."
NOT_MARKED = re.compile(r"error processing assignment '.*' for student '(.*)'")
SPOILT = TIMESTAMP + ".unreadable"
NO_EXCHANGE = (
    "This course has no exchange. Give people the folder {folder}, and take their work in with "
    "--hand-in."
)


class StepFailed(SolverError):
    """A command of nbgrader's did not do what it should; the sentence says where to look."""


def _nbgrader(course: Course, *words: str) -> tuple[int, str]:
    """Run one command of nbgrader's; its exit status, and what it said."""
    status, said = run_nbgrader(course.root, words)
    with (course.root / LOG).open("a", encoding="utf-8") as log:
        log.write(f"$ nbgrader {' '.join(words)}\n{said}\n")
    return status, said


def _do(course: Course, what: str, *words: str) -> str:
    """Run one command of nbgrader's that must end well; what it said."""
    status, said = _nbgrader(course, *words)
    if status:
        raise StepFailed(f"{what} didn't work. What nbgrader said is in {course.root / LOG}.")
    return said


def enrol(course: Course, path: Path) -> tuple[int, list[str]]:
    """Take the people of a list into the course and the gradebook; how many, and who is on it no more.

    Raises:
        SolverError: the file cannot be used, or nbgrader refuses it.
    """
    people = read_people(path)
    gone = sorted(people_in(course) - {one.id for one in people})
    keep_people(course, people)
    # nbgrader's own list of grades knows no quotation marks, so a comma in a name goes there.
    plain = [[part.replace(",", " ") for part in one[:4]] for one in people]
    listed = course.root / FOR_NBGRADER
    listed.write_bytes(csv_of([Person._fields[:4], *plain]).removeprefix(b"\xef\xbb\xbf"))
    try:
        _do(course, "Adding the people", "db", "student", "import", listed.name)
    finally:
        listed.unlink()
    return len(people), gone


def validate(course: Course, name: str) -> None:
    """Run the trainer's notebook: right answers must get all the points.

    Raises:
        StepFailed: it cannot be run, or they do not.
    """
    said = _do(course, "Trying the notebook", "validate", f"source/{name}/{name}.ipynb")
    if PASSED not in said:
        raise StepFailed(f"The notebook doesn't give full points for right answers. See {LOG}.")


def generate_assignment(course: Course, name: str) -> Path:
    """Make what goes out to people, and the set's place in the gradebook; the folder to give out.

    Raises:
        StepFailed: nbgrader refuses.
    """
    _do(course, "Making what people get", "generate_assignment", name, "--force")
    return course.folder("release", name)


def _exchange(course: Course, name: str) -> None:
    if sys.platform == "win32" or not course.exchange:
        raise CourseFault(NO_EXCHANGE.format(folder=course.folder("release", name)))


def release(course: Course, name: str) -> None:
    """Give a set out by the exchange.

    Raises:
        CourseFault: the course has no exchange.
        StepFailed: nbgrader refuses.
    """
    _exchange(course, name)
    _do(course, "Giving out the set", "release_assignment", name, "--force")


def collect(course: Course, name: str) -> list[str]:
    """Take in what people handed in by the exchange, and newer work for older; who could not be.

    Should one person's folder stop nbgrader, the others are taken in one by one.

    Raises:
        CourseFault: the course has no exchange.
        StepFailed: nbgrader takes in nobody's.
    """
    _exchange(course, name)
    words = ["collect", name, "--update"]
    if not _nbgrader(course, *words)[0]:
        return []
    people = sorted(inbound(course, name))
    failed = [one for one in people if _nbgrader(course, *words, f"--student={one}")[0]]
    if len(failed) == len(people):
        raise StepFailed(
            f"Taking work in didn't work. What nbgrader said is in {course.root / LOG}."
        )
    return [
        f"{one}: what was turned in through the exchange can't be taken in. Look at "
        f"{course.root / LOG}. Everybody else's was."
        for one in failed
    ]


def autograde(course: Course, name: str, again: bool = False) -> list[str]:
    """Mark what was handed in, the slow way; sentences about what had to be put right for it.

    Work that is marked already, and no newer work has come for, is marked again only when asked.

    Raises:
        CourseFault: nobody has handed in anything.
        StepFailed: nbgrader marked nothing and does not say whose work was the reason.
    """
    people = course.handed_in(name)
    if not people:
        raise CourseFault(f"Nobody has turned in “{name}” yet.")
    notes = [note for person in people for note in _made_whole(course, name, person)]
    words = ["autograde", name, *["--force"] * again]
    status, said = _nbgrader(course, *words)
    failed = sorted(set(NOT_MARKED.findall(said)))
    if status and not failed:
        raise StepFailed(f"Grading didn't work. What nbgrader said is in {course.root / LOG}.")
    return [*notes, *(f"{person}: not graded. See {course.root / LOG}." for person in failed)]


def _made_whole(course: Course, name: str, person: str) -> list[str]:
    """Put right what nbgrader would stumble over; nothing that was handed in is lost."""
    folder, said = course.folder("submitted", name, person), []
    if not (folder / f"{name}.ipynb").is_file():
        shutil.copy(course.folder("release", name) / f"{name}.ipynb", folder)
        said.append(f"{person}: no notebook was turned in. The answer sheet counts without it.")
    handed = read_handed(folder, name, person)
    if handed.note:
        (folder / TIMESTAMP).rename(folder / SPOILT)
        said.append(f"{person}: {handed.note}")
    return said


def generate_feedback(course: Course, name: str) -> None:
    """Make a page for each person whose work nbgrader has marked.

    Raises:
        StepFailed: nbgrader refuses.
    """
    _do(course, "Making the feedback", "generate_feedback", name, "--force")


def release_feedback(course: Course, name: str) -> None:
    """Give the feedback out by the exchange, to those who handed in by it.

    Raises:
        CourseFault: the course has no exchange.
        StepFailed: nbgrader refuses.
    """
    _exchange(course, name)
    for page in course.root.glob(f"feedback/*/{name}/{name}.html"):
        # Without these two nbgrader gives out nothing at all, to nobody.
        for file, text in ((TIMESTAMP, ""), (SECRET, secrets.token_hex(64))):
            if not page.with_name(file).exists():
                page.with_name(file).write_text(text, encoding="ascii")
    _do(course, "Giving out the feedback", "release_feedback", name)


def export_grades(course: Course, path: Path, names: Sequence[str] = ()) -> None:
    """Write the grades of these sets, or of all, to a CSV file, as nbgrader does.

    Raises:
        StepFailed: nbgrader refuses, or the file is not there afterwards.
    """
    to = Path(path).expanduser().absolute()
    only = [f"--ExportPlugin.assignment={name}" for name in names]
    _do(course, "Writing the grades", "export", f"--to={to}", *only)
    if not to.exists():
        raise StepFailed(f"The grades couldn't be written to {to}. See {course.root / LOG}.")

"""Who is in a class: a CSV with an id for each person, and a name or an address where wanted."""

import csv
from collections.abc import Iterator
from io import StringIO
from pathlib import Path
from typing import NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.trainer.course import Course, CourseFault
from workbook.ui.spreadsheet import as_typed, csv_of

__all__ = ["PEOPLE", "Person", "keep_people", "people_in", "read_people"]

PEOPLE = "people.csv"
FIRST = "id,first_name,last_name,email"  # nbgrader's own names of the columns
HEADS = tuple(FIRST.split(","))
MOST = 2_000_000  # characters; some twenty thousand people
LONGEST = 128  # characters of a name, as many as the gradebook holds


class Person(NamedTuple):
    """One person of a class; all but the id may be empty."""

    id: str
    first_name: str = ""
    last_name: str = ""
    email: str = ""


def read_people(path: Path) -> list[Person]:
    """The people of a CSV file, in its order.

    Raises:
        CourseFault: it cannot be read or used; the sentence names the row and what to write.
    """
    try:
        text = Path(path).read_bytes()[: MOST + 1].decode("utf-8-sig")
    except FileNotFoundError:
        raise CourseFault(f"There is no file {path}. Check its name and folder.") from None
    except (OSError, UnicodeDecodeError):
        raise CourseFault(f"{path} can't be read. Save it as CSV UTF-8.") from None
    reader = csv.DictReader(StringIO(text, newline=""))
    heads = [(head or "").strip().lower() for head in reader.fieldnames or ()]
    if "id" not in heads:
        raise CourseFault(f"{path} has no column “id”. Its first line is: {FIRST}")
    reader.fieldnames = heads
    return list(_rows(path, reader))


def _rows(path: Path, reader: csv.DictReader) -> Iterator[Person]:
    seen: dict[str, int] = {}
    for row in reader:
        found = {head: as_typed((row.get(head) or "").strip()) for head in HEADS}
        if not any(found.values()):
            continue
        where = f"{path}, line {reader.line_num}"
        try:
            found["id"] = person_id(found["id"])
        except SolverError as fault:
            raise CourseFault(f"{where}: {fault}") from None
        if (before := seen.setdefault(found["id"], reader.line_num)) != reader.line_num:
            raise CourseFault(
                f"{where}: “{found['id']}” is already in line {before}. Keep one of them."
            )
        yield Person(**{head: _checked(where, text) for head, text in found.items()})


def _checked(where: str, text: str) -> str:
    """A name that also nbgrader's list of grades can hold, which knows no quotation marks."""
    if len(text) > LONGEST or "," in text or not text.isprintable():
        raise CourseFault(
            f"{where}: “{text[:40]}” is too long, or has a comma or a line end. Fix or remove it."
        )
    return text


def keep_people(course: Course, people: list[Person]) -> Path:
    """Write the people of a course into its own file, and return where it stands."""
    path = course.root / PEOPLE
    try:
        path.write_bytes(csv_of([HEADS, *people]).removeprefix(b"\xef\xbb\xbf"))
    except OSError as error:
        raise CourseFault(f"{path} can't be written: {error.strerror}.") from error
    return path


def people_in(course: Course) -> set[str]:
    """The ids of a course's people; empty where it has no list."""
    path = course.root / PEOPLE
    return {person.id for person in read_people(path)} if path.exists() else set()

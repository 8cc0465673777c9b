"""The people of a class: a list as it comes, from any spreadsheet or school system, and the course's own.

Headings may be any of those below, in any order; cells may be parted by commas, semicolons or tabs; the
letters may be those of any Windows spreadsheet. What cannot be told for certain is refused by its line.
"""

import csv
from collections.abc import Iterator
from io import StringIO
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.ui.spreadsheet import as_typed, csv_of

if TYPE_CHECKING:
    from .course import Course

__all__ = [
    "PEOPLE", "CourseFault", "Person", "counted_people", "keep_people", "listed", "names_in", "people_in",
    "read_people",
]  # fmt: skip

PEOPLE = "people.csv"
FIRST = "id,first_name,last_name,email"  # nbgrader's own names of the columns
HEADS = tuple(FIRST.split(","))
ALSO = {
    "id": "id,student id,user id,username,user name,login,login id,number,no,student number,"
    "employee id,employee number,badge,id number,person",
    "first_name": "first name,first,given name",
    "last_name": "last name,last,surname,family name",
    "email": "email,e-mail,email address,e-mail address,mail",
    "name": "name,full name,student,student name,learner,operator,employee",
    "group": "group,section,class,crew,shift",
}
KNOWN = {said: head for head, names in ALSO.items() for said in names.split(",")}
MARKS = ";\t,|"  # what may part the cells
MOST = 2_000_000  # characters; some twenty thousand people
LONGEST = 128  # characters of a name, as many as the gradebook holds


class CourseFault(SolverError):
    """A course that cannot be made or worked in; the sentence says what to do."""


class Person(NamedTuple):
    """One person of a class; all but the id may be empty."""

    id: str
    first_name: str = ""
    last_name: str = ""
    email: str = ""
    group: str = ""

    @property
    def name(self) -> str:
        """The first and the last name, as far as they are there."""
        return " ".join(filter(None, (self.first_name, self.last_name)))


def read_people(path: Path) -> list[Person]:
    """The people of a list, in its order.

    Raises:
        CourseFault: it cannot be read or used; the sentence names the row and what to write.
    """
    try:
        data = Path(path).read_bytes()[: MOST + 1]
    except FileNotFoundError:
        raise CourseFault(f"There is no file {path}. Check its name and folder.") from None
    except OSError:
        raise CourseFault(f"{path} can't be read. Save it as CSV UTF-8.") from None
    lines = _text(path, data).splitlines(keepends=True)
    skipped = 0
    while lines and (not lines[0].strip() or lines[0].lower().startswith("sep=")):
        lines, skipped = lines[1:], skipped + 1
    text = "".join(lines)
    mark = max(MARKS, key=(lines[0] if lines else "").count)
    reader = csv.DictReader(StringIO(text, newline=""), delimiter=mark)
    heads = _heads(reader.fieldnames or ())
    if "id" not in heads and "email" not in heads:
        raise CourseFault(f"{path} has no column “id”. Its first line is: {FIRST}")
    reader.fieldnames = heads
    return list(_rows(path, reader, skipped))


def _text(path: Path, data: bytes) -> str:
    """The letters of a list: as their mark says, else UTF-8, else those of a Windows spreadsheet."""
    if b"\0" in data and not data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise CourseFault(f"{path} isn't a CSV file. In the spreadsheet, save it as CSV UTF-8.")
    codings = ["utf-16"] if data.startswith((b"\xff\xfe", b"\xfe\xff")) else ["utf-8-sig", "cp1252"]
    for coding in codings:
        try:
            return data.decode(coding)
        except UnicodeDecodeError:
            continue
    raise CourseFault(f"{path} can't be read. Save it as CSV UTF-8.")


def _heads(names) -> list[str]:
    """The headings as they are called here; of two that mean the same, the first is meant."""
    found: list[str] = []
    for number, name in enumerate(names):
        said = " ".join((name or "").lower().replace("_", " ").split())
        head = KNOWN.get(said, f"column {number}")
        found.append(head if head not in found else f"column {number}")
    return found


def _rows(path: Path, reader: csv.DictReader, skipped: int) -> Iterator[Person]:
    seen: dict[str, int] = {}
    for row in reader:
        found = {head: as_typed((row.get(head) or "").strip()) for head in (*ALSO,)}
        if not any(found.values()):
            continue
        line = reader.line_num + skipped
        where = f"{path}, line {line}"
        _split_name(found)
        try:
            found["id"] = person_id(found["id"] or (found["email"] if "id" not in row else ""))
        except SolverError as fault:
            raise CourseFault(f"{where}: {fault}") from None
        if (before := seen.setdefault(found["id"], line)) != line:
            raise CourseFault(
                f"{where}: “{found['id']}” is already in line {before}. Keep one of them."
            )
        yield Person(**{head: _checked(where, found[head]) for head in Person._fields})


def _split_name(found: dict[str, str]) -> None:
    """A name in one cell: "Ruiz, Ana" or "Ana Ruiz"."""
    name = " ".join(found.pop("name").split())
    if not name or found["first_name"] or found["last_name"]:
        return
    last, comma, first = (part.strip() for part in name.partition(","))
    if not comma:
        first, _, last = name.rpartition(" ")
        first, last = (first, last) if first else (last, "")
    found["first_name"], found["last_name"] = first, last


def _checked(where: str, text: str) -> str:
    if len(text) > LONGEST or not text.isprintable():
        raise CourseFault(
            f"{where}: “{text[:40]}” is too long, or has a line end. Fix or remove it."
        )
    return text


def counted_people(many: int) -> str:
    """A number of people.

    >>> counted_people(1), counted_people(1200)
    ('1 person', '1,200 people')
    """
    return "1 person" if many == 1 else f"{many:,} people"


def keep_people(course: "Course", people: list[Person]) -> Path:
    """Write the people of a course into its own file, and return where it is.

    Raises:
        CourseFault: it cannot be written.
    """
    path = course.root / PEOPLE
    heads = Person._fields if any(one.group for one in people) else HEADS
    try:
        rows = [one[: len(heads)] for one in people]
        path.write_bytes(csv_of([heads, *rows]).removeprefix(b"\xef\xbb\xbf"))
    except OSError as error:
        raise CourseFault(f"{path} can't be written: {error.strerror}.") from error
    return path


def listed(course: "Course") -> list[Person]:
    """The people of a course, in the order of its list; none where it has no list."""
    path = course.root / PEOPLE
    return read_people(path) if path.exists() else []


def names_in(course: "Course") -> dict[str, str]:
    """How each person of the list is called where a trainer reads it: "Ana Ruiz (op03)", by id."""
    return {one.id: f"{one.name} ({one.id})" for one in listed(course) if one.name}


def people_in(course: "Course", group: str = "") -> set[str]:
    """The ids of a course's people, or of a group of them; empty where it has no list."""
    return {one.id for one in listed(course) if not group or one.group == group}

"""A course folder that nbgrader works in, with its settings and its list of people.

    class/
      nbgrader_config.py    how nbgrader marks here
      people.csv            who is in the class: an id each, a name or an address where wanted
      source/week-3/        a set as the trainer has it: set.toml and the notebook
      release/week-3/       what goes out to people
      submitted/ana.r/week-3/   what came back

Besides these nbgrader keeps its gradebook, `gradebook.db`, and what it has marked.
"""

import csv
import os
import re
import sys
from collections.abc import Iterator
from io import StringIO
from pathlib import Path
from typing import NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.ui.spreadsheet import as_typed, csv_of

__all__ = [
    "CONFIG",
    "PEOPLE",
    "Course",
    "CourseFault",
    "Person",
    "course_at",
    "keep_people",
    "make_course",
    "names_in",
    "people_in",
    "read_people",
]

CONFIG = "nbgrader_config.py"
NAME = re.compile(r"[\w.-]{1,60}", re.ASCII)
SETTINGS = '''\
"""How nbgrader grades this class. Wire to Water wrote it once; what you change here stays."""

import os

c = get_config()
c.CourseDirectory.course_id = {name!r}
c.CourseDirectory.root = os.path.dirname(os.path.abspath(__file__))
{exchange}

# Nothing that was turned in is run. The trainer's own notebook takes the place of the one turned
# in, and is filled in with the grades from the answer sheet.
c.Autograde.exporter_class = "workbook.trainer.only_grade_cells.TrainersNotebook"
c.Autograde.sanitize_preprocessors = ["nbgrader.preprocessors.CheckCellMetadata"]
c.Autograde.autograde_preprocessors = [
    "workbook.trainer.only_grade_cells.MarkGradeCells",
    "workbook.trainer.gradebook.saving.SaveMarks",
    "nbgrader.preprocessors.AssignLatePenalties",
    "nbgrader.preprocessors.CheckCellMetadata",
]

c.GenerateFeedback.preprocessors.insert(0, "workbook.trainer.only_grade_cells.OnlyMarks")

# When each set is due and what being late costs is in the file of that set.
c.GenerateAssignment.preprocessors.append("workbook.trainer.gradebook.saving.SaveDue")
c.AssignLatePenalties.plugin_class = "workbook.trainer.gradebook.saving.LateShare"
'''
EXCHANGE = "c.Exchange.root = {!r}"
NO_EXCHANGE = (
    '# c.Exchange.root = "/srv/exchange"  # a folder that everyone on this computer shares'
)
PEOPLE = "people.csv"
FIRST = "id,first_name,last_name,email"  # nbgrader's own names of the columns
HEADS = tuple(FIRST.split(","))
MOST = 2_000_000  # characters; some twenty thousand people
LONGEST = 128  # characters of a name, as many as the gradebook holds


class CourseFault(SolverError):
    """A course that cannot be made or worked in; the sentence says what to do."""


class Course(NamedTuple):
    """A course folder: where it is, its name, the address of its gradebook, its exchange.

    `exchange` is the folder that nbgrader hands work out and takes it in by; "" where there is none.
    """

    root: Path
    name: str
    gradebook: str
    exchange: str = ""

    def folder(self, step: str, name: str, person: str = ".") -> Path:
        """Where a set stands at a step: source, release, submitted, autograded or feedback."""
        return self.root / step / person / name

    def handed_in(self, name: str) -> list[str]:
        """The folder names of all who have handed in this set, in order."""
        with os.scandir(self.root / "submitted") as found:
            return sorted(
                each.name for each in found if os.path.isdir(os.path.join(each.path, name))
            )


def make_course(folder: Path, *, name: str = "", exchange: str = "") -> Course:
    """Make a course folder, or take the one that is there as it is.

    Raises:
        CourseFault: the name cannot be used, or the folder not be written to.
    """
    root = Path(folder).expanduser().absolute()
    try:
        if not (root / CONFIG).exists():
            text = _settings(_named(name or root.name), exchange)
            root.mkdir(parents=True, exist_ok=True)
            (root / CONFIG).write_text(text, encoding="utf-8")
        for step in ("source", "submitted"):
            (root / step).mkdir(exist_ok=True)
    except OSError as error:
        raise CourseFault(
            f"{error.filename or root} can't be written: {error.strerror}. Choose another folder."
        ) from error
    return course_at(root)


def _named(name: str) -> str:
    if not NAME.fullmatch(name):
        raise CourseFault(
            f"“{name[:60]}” can't be the name of a class. Use letters, digits, hyphens and periods: "
            "--name pumps-2026."
        )
    return name


def _settings(name: str, exchange: str) -> str:
    where = str(Path(exchange).expanduser().absolute()) if exchange else ""
    return SETTINGS.format(name=name, exchange=EXCHANGE.format(where) if where else NO_EXCHANGE)


def course_at(folder: Path) -> Course:
    """The course in a folder, as its settings have it.

    Raises:
        CourseFault: there is none; the sentence says how to make one.
    """
    root = Path(folder).expanduser().absolute()
    if not (root / CONFIG).is_file():
        raise CourseFault(
            f"There is no course in {root}. To make one, type: "
            f"{Path(sys.executable).stem} -m workbook course {folder}"
        )
    found = _read(root)
    here = found.get("CourseDirectory", {})
    return Course(
        root,
        here.get("course_id", ""),
        here.get("db_url", f"sqlite:///{root / 'gradebook.db'}"),
        found.get("Exchange", {}).get("root", ""),
    )


def _read(root: Path) -> dict:
    """The settings as nbgrader would read them."""
    from traitlets.config.loader import PyFileConfigLoader

    try:
        return PyFileConfigLoader(CONFIG, path=str(root)).load_config()
    except Exception as error:  # whatever a trainer's own lines may raise
        raise CourseFault(
            f"{root / CONFIG} can't be read: {error}. Undo your last change."
        ) from error


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
    """Write the people of a course into its own file, and return where it is.

    Raises:
        CourseFault: it cannot be written.
    """
    path = course.root / PEOPLE
    try:
        path.write_bytes(csv_of([HEADS, *people]).removeprefix(b"\xef\xbb\xbf"))
    except OSError as error:
        raise CourseFault(f"{path} can't be written: {error.strerror}.") from error
    return path


def names_in(course: Course) -> dict[str, str]:
    """How each person of the list is called where a trainer reads it: "Ana Ruiz (op03)", by id."""
    path = course.root / PEOPLE
    people = read_people(path) if path.exists() else []
    named = {one.id: " ".join(filter(None, (one.first_name, one.last_name))) for one in people}
    return {person: f"{name} ({person})" for person, name in named.items() if name}


def people_in(course: Course) -> set[str]:
    """The ids of a course's people; empty where it has no list."""
    path = course.root / PEOPLE
    return {person.id for person in read_people(path)} if path.exists() else set()

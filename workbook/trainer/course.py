"""A course folder that nbgrader works in, with its settings and its list of people.

    class/
      nbgrader_config.py    how nbgrader marks here
      people.csv            who is in the class: an id each, a name or an address where wanted
      source/week-3/        a set as the trainer has it: set.toml and the notebook
      release/week-3/       what goes out to people
      submitted/ana.r/week-3/   what came back

Besides these nbgrader keeps its gradebook, `gradebook.db`, and what it has marked.
"""

import os
import re
import sys
from pathlib import Path
from typing import NamedTuple

from .people import (
    PEOPLE,
    CourseFault,
    Person,
    keep_people,
    names_in,
    people_in,
    read_people,
)

__all__ = [
    "CONFIG",
    "PEOPLE",
    "SEND",
    "Course",
    "CourseFault",
    "Person",
    "course_at",
    "keep_people",
    "lacks_taking_in",
    "make_course",
    "names_in",
    "people_in",
    "read_people",
]

CONFIG = "nbgrader_config.py"
SEND = "to-send"  # the folder for what is given to people, and for what is saved
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

# Work counts as turned in when it came, by nbgrader's own collect and zip_collect too.
c.ExchangeFactory.collect = "workbook.trainer.coming_in.by_nbgrader.ReceivedCollect"
c.ZipCollectApp.extractor_plugin = "workbook.trainer.coming_in.by_nbgrader.TakeIn"
'''
TAKING_IN = SETTINGS[SETTINGS.index("# Work counts as turned in") :]
EXCHANGE = "c.Exchange.root = {!r}"
NO_EXCHANGE = (
    '# c.Exchange.root = "/srv/exchange"  # a folder that everyone on this computer shares'
)


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


def lacks_taking_in(course: Course) -> str:
    """What to add to the settings of a course that an earlier version made; "" where nothing is missing."""
    if "ExchangeFactory" in _read(course.root):
        return ""
    return (
        "This class is from an earlier version. If you type nbgrader's own collect or zip_collect, they "
        "count the time that people's own files say. To count when the work came, add these lines at "
        f"the end of {course.root / CONFIG}:\n{TAKING_IN.rstrip()}"
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

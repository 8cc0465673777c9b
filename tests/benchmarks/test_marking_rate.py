"""How fast a class is marked, set against nbgrader's own autograde of the same notebooks, and of an empty one.

    python -m pytest tests/benchmarks/test_marking_rate.py --benchmark-enable

A figure is the time of one submission, of twelve questions: the best of some rounds, all in one run,
and without the start of a program. The empty notebook has one cell, and its course nbgrader's own settings.
The goals: 1.15 times its time at most in a settled course; and for a class marked at once, as the command does,
a five-hundredth of what nbgrader takes for the same notebooks with its own settings. What one processor takes is
told too. On a busy computer nbgrader's figure suffers more than ours, as it starts a kernel for each notebook.
"""

import shutil
import subprocess
import sys
from pathlib import Path

import nbformat
import pytest

from tests.workbook.trainer.a_class import handed_in, people
from tests.workbook.trainer.week_three import NAME, WEEK
from workbook.start import child
from workbook.trainer.course import CONFIG, make_course
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.sets.notebook import write_source

FEW, MANY, ROUNDS = 6, 1000, 3
PLAIN = 'c = get_config()\nc.CourseDirectory.course_id = "plain"\n'
AUTOGRADE = """
import sys, time
from nbgrader.apps import AutogradeApp
app = AutogradeApp()
app.initialize([sys.argv[1], "--force", "--Application.log_level=CRITICAL"])
started = time.perf_counter()
app.start()
print(time.perf_counter() - started)
"""
MARK = """
import sys, time
from pathlib import Path
from workbook.trainer.course import course_at
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.marking.feedback_pages import write_feedback
from workbook.trainer.marking.sharding import shared

root, name = Path.cwd(), sys.argv[1]
course = course_at(root)
gradebook = root / "gradebook.db"
empty = gradebook.read_bytes()


def at_hand():
    with shared() as mapper:
        mark_all(root, name, mapper=mapper)


def timed(step):
    started = time.perf_counter()
    step()
    print(time.perf_counter() - started)


timed(at_hand)
timed(at_hand)
timed(lambda: write_feedback(course, name))
gradebook.write_bytes(empty)
timed(lambda: mark_all(root, name))
gradebook.write_bytes(empty)
"""
AT_ONCE = (
    "a class at once",
    "a class at once, again",
    "feedback pages besides",
    "by one processor",
)


def run(course: Path, *words: str) -> str:
    """What a program of Python's says that must end well."""
    command = [sys.executable, *words]
    options = {"env": child.environment(), "check": True, "capture_output": True, "text": True}
    return subprocess.run(command, cwd=course, **options).stdout


def handed_in_by(course: Path, many: int) -> None:
    """The released notebook with a sheet of answers, from this many people."""
    released = (course / f"release/{NAME}/{NAME}.ipynb").read_bytes()
    for person, sheet in handed_in(WEEK, people(many)):
        folder = course / "submitted" / person / NAME
        folder.mkdir(parents=True)
        (folder / f"{NAME}.ipynb").write_bytes(released)
        (folder / SHEET).write_bytes(sheet)


def empty_course(root: Path) -> Path:
    """A course with an empty notebook, and nbgrader's own settings."""
    (root / "source" / NAME).mkdir(parents=True)
    page = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell("")])
    page.metadata["kernelspec"] = {"name": "python3", "display_name": "Python 3"}
    nbformat.write(page, root / "source" / NAME / f"{NAME}.ipynb")
    (root / CONFIG).write_text(PLAIN)
    return root


def our_course(root: Path, settings: str = "") -> Path:
    """A course with our set; a settled one, or one with these settings."""
    write_source(WEEK, make_course(root).root)
    if settings:
        (root / CONFIG).write_text(settings)
    return root


@pytest.fixture(scope="module")
def seconds(tmp_path_factory) -> dict[str, float]:
    """Seconds of a submission, by the way it was marked."""
    base, found = tmp_path_factory.mktemp("rate"), {}
    courses = {
        "empty notebook": empty_course(base / "empty"),
        "our set, settled course": our_course(base / "settled"),
        "our set, plain course": our_course(base / "plain", PLAIN),
    }
    for course in courses.values():
        run(course, "-m", "nbgrader", "generate_assignment", NAME)
    many = base / "many"
    shutil.copytree(courses["our set, settled course"], many)
    handed_in_by(many, MANY)
    for course in courses.values():
        handed_in_by(course, FEW)
    for _ in range(ROUNDS):
        for way, course in courses.items():
            found.setdefault(way, []).append(float(run(course, "-c", AUTOGRADE, NAME)) / FEW)
        for way, took in zip(AT_ONCE, run(many, "-c", MARK, NAME).split(), strict=True):
            found.setdefault(way, []).append(float(took) / MANY)
    assert MANY == mark_all(many, NAME).people
    return {way: min(times) for way, times in found.items()}


def test_a_settled_course_takes_little_longer_than_an_empty_notebook(seconds, table):
    empty = seconds["empty notebook"]
    same = seconds["our set, plain course"]
    for way, each in seconds.items():
        table[way] = (
            f"{1000 * each:8.2f} ms a submission   1/{empty / each:.1f} of an empty one"
            f"   1/{same / each:.1f} of the same one"
        )
    assert seconds["our set, settled course"] < 1.15 * empty


def test_a_class_at_once_is_five_hundred_times_as_fast(seconds):
    assert 500 * seconds["a class at once"] < seconds["our set, plain course"]

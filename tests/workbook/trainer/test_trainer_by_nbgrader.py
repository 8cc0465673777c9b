"""nbgrader's own collect, zip_collect and autograde, typed by hand: the same work, times and marks as ours."""

import os
import shutil
import sys
from datetime import UTC, datetime
from pathlib import Path
from zipfile import ZipFile

import pytest

from tests.workbook.trainer.in_course import kept_in, typed
from tests.workbook.trainer.marked import ANA, BEN, made_ready
from tests.workbook.trainer.sheets import right
from tests.workbook.trainer.week_three import NAME, POINTS, answers
from workbook.trainer import course as settings
from workbook.trainer.coming_in.exchange_clock import take_exchange_times
from workbook.trainer.coming_in.taking_in import take_in
from workbook.trainer.coming_in.times import kept_times
from workbook.trainer.course import CONFIG, course_at, lacks_taking_in, make_course
from workbook.trainer.gradebook.given import (
    Extension,
    Override,
    keep_extension,
    keep_override,
)
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.marking.bulk import mark_all

CLEO = "cleo"
SAID = "2025-11-25 20:00:00 UTC"  # a day before the set is due, by the learner's own word
CAME = datetime(2025, 11, 26, 13, tzinfo=UTC)  # an hour late


def by_exchange(course, person):
    folder = Path(course.exchange, course.name, "inbound", f"{person}+{NAME}+{SAID}+abc")
    folder.mkdir(parents=True)
    notebook = course.folder("release", NAME) / f"{NAME}.ipynb"
    shutil.copy(notebook, folder)
    (folder / SHEET).write_bytes(answers(person, right))
    (folder / "timestamp.txt").write_text(SAID)
    (folder / "submission_secret.txt").write_text("a secret")


def by_mail(folder, person, notebook):
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{NAME}-{person}.zip"
    with ZipFile(path, "w") as pack:
        pack.writestr(f"{person}/{NAME}/{SHEET}", answers(person, right))
        pack.writestr(f"{person}/{NAME}/timestamp.txt", SAID)
        pack.write(notebook, f"{person}/{NAME}/{NAME}.ipynb")
    os.utime(path, (CAME.timestamp(), CAME.timestamp()))


@pytest.fixture(scope="module")
def both(tmp_path_factory):
    """The course taken in and graded by hand in nbgrader, and a copy of it by our own commands."""
    base = tmp_path_factory.mktemp("by nbgrader")
    course = made_ready(base / "hand", exchange=str(base / "exchange"))
    by_exchange(course, ANA)
    archive = course.root / f"downloaded/{NAME}/archive"
    for person in (BEN, CLEO):
        by_mail(archive, person, course.folder("release", NAME) / f"{NAME}.ipynb")
    (archive / "torn.zip").write_bytes(b"PK\x03\x04")
    until = CAME.replace(tzinfo=None, hour=14)
    keep_extension(course.root, NAME, CLEO, Extension(until, "was sick"))
    keep_override(course.root, NAME, CLEO, 2, Override(0.5, "shown at the board"))
    shutil.copytree(course.root, base / "ours")
    said = ""
    for step in ("collect", "zip_collect", "autograde"):
        said += typed([sys.executable, "-m", "nbgrader", step, NAME], course.root)
    ours = course_at(base / "ours")._replace(name=course.name, exchange=course.exchange)
    shutil.copytree(course.folder("submitted", NAME, ANA), ours.folder("submitted", NAME, ANA))
    take_exchange_times(ours, NAME)
    take_in(ours, NAME, ours.root / f"downloaded/{NAME}/archive")
    mark_all(ours.root, NAME)
    return course, ours, said


def test_both_give_the_same_marks_times_and_cost_of_being_late(both):
    hand, ours, _ = both
    rows = kept_in(hand.root / "gradebook.db")
    assert rows == kept_in(ours.root / "gradebook.db")
    assert {ANA, BEN, CLEO} == {row.person for row in rows}
    assert {POINTS} == {row.score for row in rows}
    cost = {row.person: row.penalty for row in rows}
    assert (None, True, True) == (cost[CLEO], cost[ANA] > 0, cost[BEN] == cost[ANA])
    assert [0.5] == [row.by_hand for row in rows if row.by_hand is not None]


def test_both_keep_the_time_that_a_file_says_beside_the_time_it_came(both):
    hand, ours, said = both
    times = kept_times(hand, NAME)
    assert times == kept_times(ours, NAME)
    assert {SAID[:19]} == {row["said"][:19] for row in times.values()}
    assert f"{CAME:%Y-%m-%d %H}" == times[BEN]["counts"][:13]
    assert "received" == times[ANA]["which"]
    assert "torn.zip couldn't be opened" in said


def test_a_course_of_an_earlier_version_is_told_what_to_add(tmp_path):
    course = make_course(tmp_path / "pumps")
    assert "" == lacks_taking_in(course)
    config = course.root / CONFIG
    text = config.read_text("utf-8")
    config.write_text(text.removesuffix(settings.TAKING_IN), "utf-8")
    missing = lacks_taking_in(course)
    with config.open("a", encoding="utf-8") as file:
        file.write(missing.partition(":\n")[2])
    assert "" == lacks_taking_in(course)

"""A class that works in a real course: what its people and their trainer type, and what came of it."""

import os
import sqlite3
import subprocess
import sys
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple
from zipfile import ZipFile

from tests.workbook.trainer.week_three import NAME, Person, files_of
from workbook.start import child

__all__ = ["Kept", "by_exchange", "by_mail", "kept_in", "trainer", "typed"]

LATE = datetime(2025, 11, 26, 12, 1, tzinfo=UTC).timestamp()
IN_TIME = datetime(2025, 11, 25, 20, tzinfo=UTC).timestamp()
KEPT = """
select work.student_id, cell.name, grade.auto_score, grade.manual_score, grade.needs_manual_grade,
    comment.auto_comment, page.late_submission_penalty, work.timestamp, page.flagged
from submitted_assignment work
join submitted_notebook page on page.assignment_id = work.id
join grade on grade.notebook_id = page.id
join base_cell cell on cell.id = grade.cell_id
left join comment on comment.notebook_id = page.id and comment.cell_id = cell.id
order by work.student_id, cell.name
"""


class Kept(NamedTuple):
    """A row of the gradebook: one question of one person."""

    person: str
    cell: str
    score: float | None
    by_hand: float | None
    look: bool
    said: str | None
    penalty: float | None
    when: str | None
    flagged: bool


def kept_in(gradebook: Path) -> list[Kept]:
    """All that a gradebook says, without its ids."""
    database = sqlite3.connect(gradebook)
    try:
        rows = database.execute(KEPT).fetchall()
    finally:
        database.close()
    return [Kept(*row)._replace(look=bool(row[4]), flagged=bool(row[8])) for row in rows]


def typed(command: Sequence[str], folder: Path, **more: str) -> str:
    """Run a command that must end well; what it said."""
    environment = child.environment(WIRE_TO_WATER_SET_UP_FOR="requirements-class.txt", **more)
    done = subprocess.run(
        command, cwd=folder, env=environment, text=True, stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
    )  # fmt: skip
    assert 0 == done.returncode, done.stdout
    return done.stdout


def trainer(*words: str, folder: Path) -> str:
    """What a trainer types after `python3 -m workbook`."""
    return typed([sys.executable, "-m", "workbook", *words], folder)


def by_exchange(people: Sequence[Person], home: Path, exchange: Path, course: str) -> None:
    """Each fetches the set, works on it and submits it, by nbgrader's own commands."""

    def work(person: Person) -> None:
        own = home / person.id
        own.mkdir(parents=True)

        def nbgrader(step: str) -> None:
            words = [step, NAME, f"--course={course}", f"--student={person.id}"]
            command = [sys.executable, "-m", "nbgrader", *words, f"--Exchange.root={exchange}"]
            typed(command, own, JUPYTER_DATA_DIR=str(own / "data"), HOME=str(own))

        nbgrader("fetch_assignment")
        _put(own / NAME, files_of(person, (own / NAME / f"{NAME}.ipynb").read_bytes()))
        nbgrader("submit")

    with ThreadPoolExecutor(2) as pool:
        list(pool.map(work, people))


def by_mail(people: Sequence[Person], mail: Path, released: bytes) -> None:
    """A zip file or a folder from each, as they come to a trainer."""
    for number, person in enumerate(people):
        files = files_of(person, released)
        if person.way == "folder":
            _put(mail / person.id, files)
            for path in (mail / person.id).iterdir():
                os.utime(path, (IN_TIME, IN_TIME))
            continue
        path = mail / f"{NAME}-{person.id}.zip"
        path.parent.mkdir(parents=True, exist_ok=True)
        with ZipFile(path, "w") as packed:
            for name, data in files.items():
                packed.writestr(f"{person.id}/{NAME}/{name}", data)
            packed.writestr(f"{person.id}/{NAME}/person.txt", person.id)
        saved = LATE if person.late else IN_TIME + 60 * number
        os.utime(path, (saved, saved))


def _put(folder: Path, files: dict[str, bytes]) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    for name, data in files.items():
        (folder / name).write_bytes(data)

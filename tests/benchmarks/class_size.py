"""What marking a class costs, from two dozen people on: `python -m tests.benchmarks.class_size`.

    python -m tests.benchmarks.class_size 10000          up to that many people; 100,000 where left out
    python -m tests.benchmarks.class_size 10000 --postgres      on a PostgreSQL server

Each line is marked by a program of its own, into an empty gradebook: by one process, by all processors
that are at hand, as the command does, and by two workers of dask's. Times are of the clock and, in
all processes together, of the processor; a computer with other work shows them apart.
"""

import argparse
import json
import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager, nullcontext
from functools import partial
from pathlib import Path

from sqlalchemy import create_engine, text

from solver.sets.work_set import set_of
from tests.workbook.trainer.a_class import handed_in
from tests.workbook.trainer.nbgrader_steps import nbgrader
from tests.workbook.trainer.postgres import postgres, programs
from workbook.trainer.course import Course, course_at, make_course
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.marking.sharding import copies, shared
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.set_file import Assigned

NAME = "week-1"
WEEK = Assigned(NAME, "Week 1", set_of(chapters=["horsepower", "head"], count=12, seed=5))
SIZES = (24, 100, 500, 1_000, 5_000, 10_000, 100_000)
WORKERS = 2
ALONE, AT_HAND, DASK = WAYS = "one", "all", "dask"
AT_ONCE = 250
MARK = [sys.executable, "-m", "tests.benchmarks.class_size", "--mark"]
HEAD = "people  processes  seconds  ms each  processor ms each  memory MB  gradebook MB"


def hand_in(course: Course, first: int) -> None:
    """What some people hand in: their sheets, and the notebook as they got it."""
    ids = [f"operator-{number:06}" for number in range(first, first + AT_ONCE)]
    page = course.folder("release", NAME) / f"{NAME}.ipynb"
    for person, sheet in handed_in(WEEK, ids, seed=first):
        folder = course.folder("submitted", NAME, person)
        folder.mkdir(parents=True)
        (folder / SHEET).write_bytes(sheet)
        # One copy for them all: a file system has room for so many names of a file, and not for more.
        (shutil.copy if person == ids[0] else os.link)(page, folder / page.name)
        page = folder / page.name


def mark(root: Path, gradebook: str, way: str, people: int) -> dict[str, float]:
    """Mark once; seconds of the clock and the processor, and bytes of memory."""
    course, start = course_at(root), time.perf_counter()
    sharing = {ALONE: nullcontext(map), AT_HAND: shared(), DASK: shared(WORKERS)}[way]
    others = {ALONE: 0, AT_HAND: copies(), DASK: WORKERS}[way]
    with sharing as mapper:
        who = course.handed_in(NAME)[:people]
        assert people == mark_all(root, NAME, gradebook, people=who, mapper=mapper).people
    clock = time.perf_counter() - start
    used = [resource.getrusage(whose) for whose in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    processor = sum(each.ru_utime + each.ru_stime for each in used)
    memory = used[0].ru_maxrss + others * used[1].ru_maxrss
    return {"clock": clock, "processor": processor, "memory": memory * 1024}


@contextmanager
def empty_gradebook(course: Course, on_a_server: bool) -> Iterator[str]:
    """The address of a gradebook that has the set, and nobody in it yet."""
    if on_a_server:
        with postgres(programs()) as address:
            nbgrader(course.root, NAME, "generate_assignment", gradebook=address)
            yield address
    else:
        path = course.root / "marked.db"
        shutil.copy(course.root / "gradebook.db", path)
        yield f"sqlite:///{path}"
        path.unlink()


def size_of(address: str) -> int:
    """Bytes that a gradebook takes on a disk."""
    if address.startswith("sqlite"):
        return Path(address.removeprefix("sqlite:///")).stat().st_size
    engine = create_engine(address)
    with engine.connect() as connection:
        return connection.execute(text("select pg_database_size('postgres')")).scalar_one()


def line(course: Course, people: int, way: str, on_a_server: bool) -> str:
    """Mark so many people, and say what it took."""
    with empty_gradebook(course, on_a_server) as address:
        words = [str(course.root), address, way, str(people)]
        done = subprocess.run([*MARK, *words], check=True, stdout=subprocess.PIPE)
        took, held = json.loads(done.stdout), size_of(address)
    each = [1000 * took[which] / people for which in ("clock", "processor")]
    memory, disk = took["memory"] / 1e6, held / 1e6
    return (
        f"{people:6,}{way:>11}{took['clock']:9,.1f}{each[0]:9.2f}{each[1]:19.2f}"
        f"{memory:11,.0f}{disk:14,.1f}"
    )


def main(most: int, on_a_server: bool) -> None:
    """Grow a class, and mark it at each size in each way."""
    with tempfile.TemporaryDirectory() as folder, ProcessPoolExecutor() as pool:
        course, there = make_course(Path(folder) / "state"), 0
        write_source(WEEK, course.root)
        nbgrader(course.root, NAME, "generate_assignment")
        print(HEAD)
        for people in (size for size in SIZES if size <= most):
            list(pool.map(partial(hand_in, course), range(there, people, AT_ONCE)))
            there = people + -people % AT_ONCE
            for way in WAYS:
                print(line(course, people, way, on_a_server), flush=True)


if __name__ == "__main__":
    reader = argparse.ArgumentParser()
    reader.add_argument("most", type=int, nargs="?", default=SIZES[-1])
    reader.add_argument("--postgres", action="store_true")
    reader.add_argument("--mark", nargs=4)
    asked = reader.parse_args()
    if asked.mark:
        root, gradebook, way, people = asked.mark
        print(json.dumps(mark(Path(root), gradebook, way, int(people))))
    else:
        main(asked.most, asked.postgres)

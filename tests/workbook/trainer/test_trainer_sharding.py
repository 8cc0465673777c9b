"""Marking shared out among processes: the same marks, one writer, and a lost worker loses nothing."""

import os
import shutil
import signal
import sys
import time
from collections import Counter
from functools import partial

import pytest
from distributed import LocalCluster

from solver.sets.work_set import set_of
from tests.workbook.trainer.a_class import handed_in, people
from tests.workbook.trainer.in_course import kept_in, trainer
from tests.workbook.trainer.nbgrader_steps import nbgrader
from workbook.trainer.course import make_course
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.marking import sharding
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.marking.sharding import NotShared, shared
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.set_file import Assigned

WEEK = Assigned("week-1", "Week 1", set_of(chapters=["horsepower", "head"], count=6, seed=5))
MANY = 120
ANY_PORT = "127.0.0.1:0"


@pytest.fixture(scope="module")
def course(tmp_path_factory):
    """A course in which a made-up class has handed in; some of it is odd."""
    course = make_course(tmp_path_factory.mktemp("shared") / "pumps")
    write_source(WEEK, course.root)
    nbgrader(course.root, "week-1", "generate_assignment")
    for person, sheet in handed_in(WEEK, people(MANY)):
        folder = course.folder("submitted", "week-1", person)
        folder.mkdir(parents=True)
        (folder / SHEET).write_bytes(sheet[:-20] if person.endswith("7") else sheet)
    return course


@pytest.fixture(scope="module")
def alone(course):
    """What one process makes of it: the summary, and what the gradebook says then."""
    return marked(course, "alone.db", map)


def marked(course, name, mapper):
    gradebook = course.root / name
    shutil.copy(course.root / "gradebook.db", gradebook)
    summary = mark_all(course.root, "week-1", f"sqlite:///{gradebook}", mapper=mapper)
    return summary, kept_in(gradebook)


@pytest.fixture(scope="module")
def cluster():
    """Two workers, each a process that is started again when it is lost."""
    with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=ANY_PORT) as cluster:
        yield cluster


@pytest.fixture
def small_pieces(monkeypatch):
    monkeypatch.setattr(sharding, "PEOPLE", 5)


def test_two_processes_of_this_computer_give_the_marks_that_one_gives(course, alone, tmp_path):
    summary, kept = alone
    assert (MANY, 12) == (summary.people, len(summary.to_look_at))
    shutil.copytree(course.root, tmp_path / "pumps")
    said = trainer("mark", "week-1", "--course", "pumps", "--workers", "2", folder=tmp_path)
    assert f"“week-1” is graded for {MANY} people; 0 of them were late." == said.splitlines()[0]
    assert "You need to look at the work of 12 people:" == said.splitlines()[1]
    assert kept == kept_in(tmp_path / "pumps/gradebook.db")


@pytest.mark.usefixtures("small_pieces")
def test_what_a_lost_worker_had_not_given_back_is_done_by_another(course, alone, cluster, tmp_path):
    victim = next(iter(cluster.workers.values())).pid
    done, lost = set(), set()

    def killing(score, handed):
        for result in mapper(partial(_traced, tmp_path / "trace", score), handed):
            done.add(result[0].person)
            if len(done) == 10:
                lost.update(_wait_for_work(tmp_path / "trace", victim, done))
                os.kill(victim, signal.SIGKILL)
            yield result

    with shared(scheduler=cluster.scheduler_address) as mapper:
        assert alone == marked(course, "lost.db", killing)
    times = Counter(person for _, person in _trace(tmp_path / "trace"))
    assert set(people(MANY)) == set(times)
    assert lost <= {person for person, many in times.items() if many > 1}


def _traced(trace, score, handed):
    """What `score` gives, slowly, with a line that says which process was at whose work."""
    with trace.open("a") as file:
        file.write(f"{os.getpid()} {handed.person}\n")
    time.sleep(0.01)
    return score(handed)


def _trace(path):
    return [line.split() for line in path.read_text().splitlines()]


def _wait_for_work(trace, victim, done):
    """Those whose work this process has begun, and not given back."""
    while not (begun := {who for pid, who in _trace(trace) if int(pid) == victim} - done):
        time.sleep(0.01)
    return begun


@pytest.mark.usefixtures("small_pieces")
def test_work_is_sent_out_as_it_is_asked_for_and_not_all_at_once(course, cluster):
    read = Counter()

    def counted():
        for person, sheet in handed_in(WEEK, people(60)):
            read["people"] += 1
            yield sharding.Handed(person, sheet, None)

    with shared(scheduler=cluster.scheduler_address) as mapper:
        next(iter(mapper(len, counted())))
    assert read["people"] <= 5 * (sharding.AHEAD * 2 + 1)


def test_a_worker_with_another_edition_of_the_workbook_marks_nothing(course, cluster, monkeypatch):
    monkeypatch.setattr(sharding, "_edition", lambda: "another")
    with shared(scheduler=cluster.scheduler_address) as mapper:
        with pytest.raises(NotShared, match="another version of the workbook"):
            marked(course, "edition.db", mapper)
        assert [] == kept_in(course.root / "edition.db")


def test_an_error_of_a_worker_is_a_sentence_and_nothing_is_written(course, cluster):
    def failing(score, handed):
        return mapper(_fail, handed)

    with shared(scheduler=cluster.scheduler_address) as mapper:
        with pytest.raises(NotShared, match=r"couldn't grade: no room\. Nothing in the"):
            marked(course, "failed.db", failing)
        assert [] == kept_in(course.root / "failed.db")


def _fail(handed):
    raise OSError("no room")


def test_work_that_ends_every_worker_is_given_up_with_a_sentence(course, cluster, monkeypatch):
    def ending(score, handed):
        return mapper(_end, handed)

    monkeypatch.setattr(cluster.scheduler, "allowed_failures", 0)
    with shared(scheduler=cluster.scheduler_address) as mapper:
        with pytest.raises(NotShared, match="Several workers were lost at the same work"):
            marked(course, "ended.db", ending)
        assert [] == kept_in(course.root / "ended.db")


def _end(handed):
    os._exit(1)


def test_without_a_worker_it_is_said_that_there_is_none(monkeypatch):
    monkeypatch.setattr(sharding, "PATIENCE", 1)
    with (
        LocalCluster(n_workers=0, dashboard_address=ANY_PORT) as empty,
        shared(scheduler=empty.scheduler_address) as mapper,
        pytest.raises(NotShared, match=r"There are no workers\. Start some"),
    ):
        next(mapper(len, [sharding.Handed("ana", b"", b"")]))


def test_a_scheduler_that_does_not_answer_is_named(monkeypatch):
    monkeypatch.setattr(sharding, "PATIENCE", 1)
    with (
        pytest.raises(NotShared, match="No scheduler answers at tcp://127"),
        shared(scheduler="tcp://127.0.0.1:9"),
    ):
        pass


def test_without_its_packages_it_is_said_what_to_type(monkeypatch):
    monkeypatch.setitem(sys.modules, "distributed", None)
    with pytest.raises(NotShared, match="-m pip install distributed"), shared(workers=2):
        pass


# Without workers or a scheduler: copies of the program.


@pytest.fixture
def two_copies(monkeypatch):
    """Two processors are at hand, and nothing forbids copies: the tests themselves may have threads."""
    monkeypatch.setattr(sharding, "copies", lambda: 2)


def with_copies(score, handed):
    with shared() as mapper:
        yield from mapper(score, handed)


@pytest.mark.usefixtures("small_pieces", "two_copies")
def test_copies_of_the_program_give_the_marks_that_one_gives(course, alone):
    used = set()

    def watched(score, handed):
        for pid, result in with_copies(partial(_with_pid, score), handed):
            used.add(pid)
            yield result

    assert alone == marked(course, "copies.db", watched)
    assert used
    assert os.getpid() not in used


def _with_pid(score, handed):
    return os.getpid(), score(handed)


@pytest.mark.usefixtures("small_pieces", "two_copies")
def test_a_copy_that_ends_suddenly_is_told_and_nothing_is_written(course):
    with pytest.raises(NotShared, match=r"came to a sudden end while it graded\. Nothing in the"):
        marked(course, "broken.db", lambda score, handed: with_copies(_end, handed))
    assert [] == kept_in(course.root / "broken.db")


@pytest.mark.usefixtures("two_copies")
def test_a_small_class_and_a_program_with_threads_are_marked_without_copies(monkeypatch):
    few = [sharding.Handed(f"p{number}", b"", None) for number in range(100)]
    assert {os.getpid()} == {pid for pid, _ in with_copies(partial(_with_pid, len), few)}
    monkeypatch.undo()
    monkeypatch.setattr(sharding.os, "listdir", lambda _: ["1", "2"])
    assert 1 == sharding.copies()

"""Whose work it is and when it came: the trainer's word, both times, the list that travels with a set."""

import os
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from tests.workbook.trainer.tamper_cases import (
    ANA,
    BEN,
    FULL,
    MARIA,
    NAME,
    WEEK,
    of_ben,
    packed,
    right_sheet,
)
from workbook.trainer.coming_in.exchange_clock import keep_mailed, take_exchange_times
from workbook.trainer.coming_in.handed_in import read_handed
from workbook.trainer.coming_in.taking_in import BATCH, take_in
from workbook.trainer.coming_in.times import RECEIVED, SAID, kept_times, times_of
from workbook.trainer.course import Course, CourseFault, Person, keep_people, make_course
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.learner.class_list import CLASS_LIST, keep_class_list
from workbook.trainer.learner.own_set import NotListed, OwnSet
from workbook.trainer.learner.set_panel import SetTop
from workbook.trainer.marking.bulk import marks_of
from workbook.trainer.sets.notebook import write_source

NOON = datetime(2025, 11, 26, 12)
PEOPLE = [Person(MARIA, "Maria"), Person(BEN, "Ben"), Person(ANA, "Ana")]


@pytest.fixture
def course(tmp_path):
    course = make_course(tmp_path / "pumps", exchange=str(tmp_path / "exchange"))
    write_source(WEEK, course.root)
    keep_people(course, PEOPLE)
    return course


@pytest.fixture
def mail(tmp_path):
    folder = tmp_path / "mail"
    folder.mkdir()
    return folder


def points(course, person=BEN):
    return {handed.person: marked.points for handed, marked in marks_of(course, NAME)}.get(person)


def test_one_file_is_taken_for_somebody_else_once_the_trainer_says_so(course, mail):
    packed(mail / "homework.zip", of_ben())
    packed(mail / f"{NAME}-{ANA}.zip", of_ben({"person.txt": BEN}))
    assert (BEN,) == take_in(course, NAME, mail).people
    again = take_in(course, NAME, mail, said_as={f"{NAME}-{ANA}.zip": ANA})
    assert ((ANA,), 1) == (again.people, again.again)
    assert 0 == points(course, ANA)  # it is taken, and still holds Ben's answers


def test_a_mistyped_id_stays_mapped_at_every_marking_and_can_be_said_after_the_fact(course, mail):
    packed(mail / f"{NAME}-{MARIA}.zip", {SHEET: right_sheet("maria")})
    (note,) = take_in(course, NAME, mail).notes
    assert note.endswith(f"If that is the same person, type: --as maria={MARIA}")
    assert 0 == points(course, MARIA)
    take_in(course, NAME, mail, said_as={"maria": MARIA})
    assert [FULL, FULL] == [points(course, MARIA), points(course, MARIA)]
    assert f"set,typed,id\r\n{NAME},maria,{MARIA}\r\n" == (course.root / "typed-as.csv").read_text(
        "utf-8-sig"
    ).replace("\n", "\r\n")


@pytest.mark.parametrize(
    ("said", "told"),
    [({"maria": "op99"}, "“op99” isn't on the list"), ({BEN: ANA}, "“op02” is somebody else")],
)
def test_a_word_of_the_trainers_that_cannot_be_is_told(course, mail, said, told):
    with pytest.raises(CourseFault, match=told):
        take_in(course, NAME, mail, said_as=said)


def test_both_times_are_kept_and_the_trainer_chooses_which_counts(course, mail):
    at = (NOON + timedelta(hours=9)).replace(tzinfo=UTC).timestamp()
    packed(mail / f"{NAME}-{BEN}.zip", of_ben({"timestamp.txt": "2025-11-26 11:00:00 UTC"}), at)
    take_in(course, NAME, mail)
    row = kept_times(course, NAME)[BEN]
    assert ("2025-11-26 11:00:00.000000 UTC", "2025-11-26 21:00:00.000000 UTC") == (
        row["said"],
        row["received"],
    )
    assert (RECEIVED, row["received"]) == (row["which"], row["counts"])
    place = course.folder("submitted", NAME, BEN)
    assert NOON + timedelta(hours=9) == read_handed(place, NAME, BEN).when
    assert (BEN,) == take_in(course, NAME, mail, prefer=SAID).people
    assert datetime(2025, 11, 26, 11) == read_handed(place, NAME, BEN).when
    assert ((), 1) == take_in(course, NAME, mail)[::2]


def test_files_saved_at_one_go_count_by_what_they_say_and_that_is_told(course, mail):
    for person in (MARIA, BEN, ANA):
        sent = of_ben({"timestamp.txt": "2025-11-26 11:00:00 UTC"}, person)
        packed(mail / f"{NAME}-{person}.zip", sent, NOON.replace(tzinfo=UTC).timestamp() + 60)
    found = take_in(course, NAME, mail)
    assert (BATCH,) == found.notes
    assert {SAID} == {row["which"] for row in kept_times(course, NAME).values()}


@pytest.mark.parametrize(
    ("said", "received", "told"),
    [
        (NOON + timedelta(days=900), NOON, "which hasn't come yet"),
        (NOON, NOON + timedelta(days=2), "but it came at"),
        (NOON + timedelta(hours=1), NOON, "but it came at"),
        (NOON, NOON + timedelta(days=900), "which hasn't come yet"),
        (NOON, NOON + timedelta(hours=2), ""),
    ],
)
def test_times_that_cannot_be_are_told(said, received, told):
    found = times_of(said, received, None, NOON + timedelta(days=3))
    assert told in found.note
    assert bool(told) == bool(found.note)
    assert found.counts <= NOON + timedelta(days=3)


def _in_exchange(course: Course, person: str, when: str) -> Path:
    folder = Path(course.exchange, course.name, "inbound", f"{person}+{NAME}+{when}+abc")
    folder.mkdir(parents=True)
    (folder / SHEET).write_bytes(right_sheet(person))
    (folder / "timestamp.txt").write_text(when)
    (folder / "submission_secret.txt").write_text(f"secret of {person}")
    place = course.folder("submitted", NAME, person)
    place.mkdir(parents=True, exist_ok=True)
    for each in folder.iterdir():
        (place / each.name).write_bytes(each.read_bytes())
    return folder


def test_the_exchanges_own_clock_counts_and_not_the_learners_stamp(course):
    folder = _in_exchange(course, BEN, "2025-11-26 11:00:00 UTC")
    os.utime(folder, (1, 1))  # what a learner can set back
    before = datetime.now(UTC).replace(tzinfo=None) - timedelta(minutes=1)
    (note,) = take_exchange_times(course, NAME)
    assert "Its file says Nov 26, 2025" in note
    assert before < read_handed(course.folder("submitted", NAME, BEN), NAME, BEN).when
    assert [] == take_exchange_times(course, NAME)
    assert "2025-11-26 11:00:00.000000 UTC" == kept_times(course, NAME)[BEN]["said"]


def test_work_that_came_by_mail_is_kept_before_the_exchange_takes_its_place(course, mail):
    packed(mail / f"{NAME}-{BEN}.zip", of_ben())
    take_in(course, NAME, mail)
    Path(course.exchange, course.name, "inbound", f"{BEN}+{NAME}+2025-11-26 11:00:00 UTC+x").mkdir(
        parents=True
    )
    keep_mailed(course, NAME)
    keep_mailed(course, NAME)
    kept = list((course.root / "earlier" / BEN).iterdir())
    assert [right_sheet(BEN)] == [(one / SHEET).read_bytes() for one in kept]


def test_an_id_that_is_not_on_the_list_is_doubted_once_in_the_notebook(course, tmp_path):
    source = course.folder("source", NAME)
    keep_class_list(source, WEEK.work.code, [one.id for one in PEOPLE])
    own = tmp_path / "own" / NAME
    own.mkdir(parents=True)
    for each in source.iterdir():
        (own / each.name).write_bytes(each.read_bytes())
    assert not any(one.id in (own / CLASS_LIST).read_text() for one in PEOPLE)
    top = SetTop(OwnSet(own), clock=iter(range(0, 10_000, 5)).__next__)
    for _ in range(2):
        assert not top.own.person.id
        top.name.box.value = "Maria"
        top.use.click()
        assert ("on your trainer" in top.said.value) == (not top.own.person.id)
    assert "maria" == top.own.person.id
    fresh = OwnSet(own)
    fresh.begin_as("OP01")
    with pytest.raises(NotListed, match="“op09” isn't on your trainer's list"):
        fresh.begin_as("op09")
    (own / CLASS_LIST).unlink()
    fresh.begin_as("op09")

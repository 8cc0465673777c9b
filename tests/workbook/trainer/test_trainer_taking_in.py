"""Work that came by mail: whose it is, what of it is taken, and that nothing leads out of its place."""

import os
import stat
from datetime import datetime
from io import BytesIO
from zipfile import ZipFile, ZipInfo

import pytest

from workbook.trainer.coming_in import opened
from workbook.trainer.coming_in.handed_in import read_handed
from workbook.trainer.coming_in.packed import work_as_zip
from workbook.trainer.coming_in.taking_in import take_in
from workbook.trainer.course import CourseFault, Person, keep_people, make_course
from workbook.trainer.learner.answer_sheet import SHEET

NAME = "week-3"
PAGE = f"{NAME}.ipynb"


@pytest.fixture
def course(tmp_path):
    return make_course(tmp_path / "pumps")


@pytest.fixture
def mail(tmp_path):
    folder = tmp_path / "mail"
    folder.mkdir()
    return folder


def zipped(path, files, at=None):
    with ZipFile(path, "w") as pack:
        for name, data in files.items():
            pack.writestr(name, data)
    if at:
        os.utime(path, (at, at))
    return path


def sheet_of(course, person):
    return read_handed(course.folder("submitted", NAME, person), NAME, person).sheet


@pytest.mark.parametrize(
    "inside",
    ["ana.r/week-3/", "submitted/ana.r/week-3/", "", "week-3/", "My work/week-3 copy/"],
)
def test_a_zip_file_is_taken_in_however_it_was_packed(course, mail, inside):
    zipped(mail / f"{NAME}-ana.r.zip", {f"{inside}{SHEET}": "a", f"{inside}{PAGE}": "b"})
    assert (("ana.r",), ()) == take_in(course, NAME, mail)[:2]
    folder = course.folder("submitted", NAME, "ana.r")
    assert [SHEET, "submission_secret.txt", "timestamp.txt", PAGE] == sorted(os.listdir(folder))
    assert b"a" == sheet_of(course, "ana.r")


def test_the_file_that_a_learners_page_makes_is_taken_in_with_its_time(course, mail, tmp_path):
    own = tmp_path / "own" / NAME
    own.mkdir(parents=True)
    (own / SHEET).write_bytes(b"a")
    data, lacks = work_as_zip(own, "ana.r")
    path = mail / "download (4).zip"
    path.write_bytes(data)
    os.utime(path, (4_000_000_000, 4_000_000_000))
    found = take_in(course, NAME, mail)
    assert ((PAGE,), ("ana.r",)) == (tuple(lacks), found.people)
    (note,) = found.notes
    assert "The file was saved at Oct 2, 2096" in note
    assert "which hasn't come yet. It counts as turned in at" in note
    handed = read_handed(course.folder("submitted", NAME, "ana.r"), NAME, "ana.r")
    assert (b"a", True) == (handed.sheet, handed.when < datetime(2096, 1, 1))


def test_folders_and_single_files_are_taken_in_too(course, mail):
    (mail / "Ana.R").mkdir()
    (mail / "Ana.R" / SHEET).write_bytes(b"a")
    assert ("ana.r",) == take_in(course, NAME, mail).people
    one = zipped(mail / "bo.zip", {SHEET: "b"})
    assert ("bo",) == take_in(course, NAME, one).people


def test_files_saved_under_other_names_get_their_own(course, mail):
    zipped(mail / "ana.r.zip", {"week-3 (1).ipynb": "b", "answer-sheet (1).jsonl": "a"})
    take_in(course, NAME, mail)
    handed = read_handed(course.folder("submitted", NAME, "ana.r"), NAME, "ana.r")
    assert (b"a", b"b") == (handed.sheet, handed.notebook)


def test_the_time_is_that_of_the_file_or_the_one_that_is_said(course, mail):
    zipped(mail / "ana.r.zip", {SHEET: "a"}, at=1_700_000_000)
    take_in(course, NAME, mail)
    place = course.folder("submitted", NAME, "ana.r")
    assert datetime(2023, 11, 14, 22, 13, 20) == read_handed(place, NAME, "ana.r").when
    take_in(course, NAME, mail, datetime(2023, 12, 1))
    assert datetime(2023, 12, 1) == read_handed(place, NAME, "ana.r").when


def test_newer_work_takes_the_place_of_older_which_is_kept(course, mail):
    zipped(mail / "a.zip", {f"ana.r/{NAME}/{SHEET}": "one\ntwo\n"}, at=1_700_000_100)
    zipped(mail / "b.zip", {f"ana.r/{NAME}/{SHEET}": "one\n"}, at=1_700_000_000)
    people, notes, _ = take_in(course, NAME, mail)
    assert ("ana.r",) == people
    (note,) = notes
    kept = course.root / f"earlier/ana.r/{NAME}-1"
    assert note.startswith("a.zip takes the place of the work of ")
    assert note.endswith(f"that ana.r turned in before. That is kept in {kept}.")
    assert b"one\ntwo\n" == sheet_of(course, "ana.r")
    assert b"one\n" == (course.root / f"earlier/ana.r/{NAME}-1/{SHEET}").read_bytes()


def test_the_same_work_again_is_counted_and_nothing_else_is_said(course, mail):
    zipped(mail / "ana.r.zip", {SHEET: "a"}, at=1_700_000_000)
    take_in(course, NAME, mail)
    again = take_in(course, NAME, mail)
    assert ((), (), 1) == again
    assert not (course.root / "earlier").exists()


# Whose it is.


def test_who_is_not_in_the_class_is_told_and_left_out(course, mail):
    keep_people(course, [Person("ana.r")])
    zipped(mail / "ana.r.zip", {SHEET: "a"})
    zipped(mail / "eve.zip", {SHEET: "a"})
    found = take_in(course, NAME, mail)
    assert ("ana.r",) == found.people
    assert found.notes[0].startswith("eve.zip: “eve” isn't on the list of this class. Add")
    assert found.notes[0].endswith("or say who it is: --as eve=ID")


def test_a_file_named_after_one_person_with_the_work_of_another_is_not_taken(course, mail):
    zipped(mail / f"{NAME}-eve.zip", {f"ana.r/{NAME}/{SHEET}": "a"})
    found = take_in(course, NAME, mail)
    (note,) = found.notes
    assert () == found.people
    assert note.startswith("week-3-eve.zip has the work of ana.r in it. Nothing of it was taken.")
    assert note.endswith("type: --as week-3-eve.zip=ana.r")


def test_a_file_of_which_nobody_can_say_whose_it_is_is_told(course, mail):
    zipped(mail / "my homework!.zip", {SHEET: "a"})
    (note,) = take_in(course, NAME, mail).notes
    assert note.startswith(
        "my homework!.zip: the file name doesn't say whose work this is. An id has up to"
    )


def test_a_file_without_any_work_in_it_is_told(course, mail):
    zipped(mail / "ana.r.zip", {"photo.jpg": "a"})
    (note,) = take_in(course, NAME, mail).notes
    assert "ana.r.zip has no answer sheet and no notebook of “week-3”." == note


# What somebody may send.


def test_a_spoilt_file_is_told_and_the_others_are_taken(course, mail):
    whole = BytesIO()
    with ZipFile(whole, "w") as pack:
        pack.writestr(SHEET, "a" * 1000)
    (mail / "bo.zip").write_bytes(whole.getvalue()[:500])
    (mail / "cleo.pdf").write_bytes(b"%PDF")
    zipped(mail / "ana.r.zip", {SHEET: "a"})
    found = take_in(course, NAME, mail)
    assert (("ana.r",), 2) == (found.people, len(found.notes))
    assert all(
        "couldn't be opened, because it isn't a whole zip file" in note
        and "Ask for it again" in note
        for note in found.notes
    )


@pytest.mark.parametrize(
    "name", ["../evil.txt", "/evil.txt", "C:/evil.txt", "a/../../evil.txt", "..\\evil.txt"]
)
def test_no_name_leads_out_of_the_folder(course, mail, name, tmp_path):
    zipped(mail / "ana.r.zip", {SHEET: "a", name: "evil"})
    assert ("ana.r",) == take_in(course, NAME, mail).people
    assert [] == list(tmp_path.rglob("*evil*"))


def test_links_are_left_out(course, mail):
    info = ZipInfo(PAGE)
    info.external_attr = (stat.S_IFLNK | 0o777) << 16
    with ZipFile(mail / "ana.r.zip", "w") as pack:
        pack.writestr(SHEET, "a")
        pack.writestr(info, "/etc/passwd")
    (mail / "bo").mkdir()
    (mail / "bo" / SHEET).write_bytes(b"b")
    (mail / "bo" / PAGE).symlink_to("/etc/passwd")
    assert {"ana.r", "bo"} == set(take_in(course, NAME, mail).people)
    for person in ("ana.r", "bo"):
        assert not (course.folder("submitted", NAME, person) / PAGE).exists()


@pytest.mark.parametrize(("name", "most"), [("MOST_FILES", 2), ("MOST_BYTES", 1000)])
def test_far_too_much_is_told_and_not_unpacked(course, mail, monkeypatch, name, most):
    monkeypatch.setattr(opened, name, most)
    zipped(mail / "ana.r.zip", {SHEET: "a", "b.ipynb": "b" * 990, "c.ipynb": "c" * 990})
    (note,) = take_in(course, NAME, mail).notes
    assert note.startswith("ana.r.zip has more than")
    assert note.endswith("Ask for just the folder of the set.")
    assert not course.folder("submitted", NAME, "ana.r").exists()


def test_a_time_and_a_secret_that_were_sent_along_are_not_kept(course, mail):
    sent = {SHEET: "a", "timestamp.txt": "soon", "submission_secret.txt": "mine"}
    zipped(mail / "ana.r.zip", sent, at=1_700_000_000)
    take_in(course, NAME, mail)
    folder = course.folder("submitted", NAME, "ana.r")
    assert "2023-11-14 22:13:20.000000 UTC" == (folder / "timestamp.txt").read_text()
    assert 128 == len((folder / "submission_secret.txt").read_text())


def test_a_folder_that_is_not_there_is_told(course, tmp_path):
    with pytest.raises(CourseFault, match=r"The folder .*none can't be read: No such file"):
        take_in(course, NAME, tmp_path / "none")

"""A class of thirty through the whole of nbgrader's walk, and through the bulk way beside it."""

import csv
import json
import shutil
import sys
from functools import cache
from pathlib import Path
from typing import NamedTuple
from zipfile import ZipFile

import pytest

from solver.sets.work_set import cases_for
from tests.workbook.trainer.class_of_thirty import CLASS, SLIPPING
from tests.workbook.trainer.in_course import by_exchange, by_mail, kept_in, trainer, typed
from tests.workbook.trainer.tampering import STOLEN
from tests.workbook.trainer.week_three import COUNT, NAME, SET, WEEK, kind_of, kinds_of
from workbook.trainer.marking.bulk import Summary, mark_all
from workbook.trainer.sets.guessing import guessing

PEOPLE = pytest.mark.parametrize("person", CLASS, ids=[f"{p.id}: {p.about}" for p in CLASS])


class Walked(NamedTuple):
    """The course after the walk, what the commands said, and the bulk way's own gradebook."""

    root: Path
    home: Path
    said: dict[str, str]
    bulk: Path
    summary: Summary

    def kept(self, person: str, gradebook: Path | None = None) -> list:
        found = kept_in(gradebook or self.root / "gradebook.db")
        return [row for row in found if row.person == person]


@pytest.fixture(scope="module")
def walked(tmp_path_factory) -> Walked:
    """The class, from an empty folder to the feedback; marked in both ways."""
    base = tmp_path_factory.mktemp("walk")
    root, home, mail, said = base / "pumps", base / "home", base / "mail", {}
    people, week = base / "class.csv", base / "week.toml"
    names = [f"{p.id},{p.id.split('.')[0].title()},Invented,{p.id}@example.org" for p in CLASS]
    people.write_text("\n".join(["id,first_name,last_name,email", *names]))
    week.write_text(SET)

    def type_in(*words: str) -> None:
        said[words[0]] = trainer(*words, folder=base)

    type_in("course", "pumps", "--people", "class.csv", "--exchange", "exchange")
    type_in("set", NAME, "--course", "pumps", "--file", "week.toml", "--release")
    by_exchange([p for p in CLASS if p.way == "exchange"], home, base / "exchange", "pumps")
    released = (root / f"release/{NAME}/{NAME}.ipynb").read_bytes()
    by_mail([p for p in CLASS if p.way != "exchange"], mail, released)
    shutil.copy(root / "gradebook.db", base / "bulk.db")
    type_in(
        *("mark", NAME, "--course", "pumps", "--collect", "--hand-in", "mail"),
        *("--nbgrader", "--feedback", "--release", "--grades", "grades.csv"),
    )
    summary = mark_all(root, NAME, f"sqlite:///{base / 'bulk.db'}")
    return Walked(root, home, said, base / "bulk.db", summary)


def test_the_commands_say_what_they_did_in_short_sentences(walked):
    root = walked.root
    assert f"The course is in {root}.\n30 people are on its list.\n" == walked.said["course"]
    assert (
        f"The set is saved in {root}/source/{NAME}/set.toml, with its notebook next to it.\n"
        f"Right answers get full points.\n{guessing(WEEK)}\n"
        f"Give people the folder {root}/release/{NAME}.\n"
        f"As one file to send, it is {root}/to-send/{NAME}.zip.\n"
        f"It is given out through the exchange in {root.parent}/exchange.\n"
    ) == walked.said["set"]
    assert (
        "Work from 28 people was taken in.\n"
        "week-3-eve.f.zip: not part of the work, so not taken: “eve.f/week-3/workbook.py”, "
        "“eve.f/week-3/ipykernel_launcher.py”, “eve.f/week-3/sitecustomize.py”.\n"
        "quin.r: no notebook was turned in. The answer sheet counts without it.\n"
        f"nbgrader has graded “{NAME}”.\n30 feedback pages are in {root}/feedback.\n"
        f"To send them out, unpack {root}/to-send/{NAME}-feedback.zip: each has its person's name.\n"
        "The feedback is given out through the exchange.\nThe grades are in grades.csv.\n"
    ) == walked.said["mark"]


@PEOPLE
def test_everybody_gets_the_points_that_are_theirs(walked, person):
    assert person.points == tuple(row.score for row in walked.kept(person.id))


@PEOPLE
def test_somebody_must_look_just_where_something_is_odd_and_the_reason_is_told(walked, person):
    kept = walked.kept(person.id)
    assert person.look == tuple(at for at, row in enumerate(kept, 1) if row.look)
    for at in person.look:
        assert person.reason in kept[at - 1].said


@PEOPLE
def test_both_ways_of_marking_say_the_same_of_everybody(walked, person):
    kept = walked.kept(person.id)
    assert COUNT == len(kept)
    assert kept == walked.kept(person.id, walked.bulk)


def test_the_bulk_way_tells_how_many_were_marked_and_at_whose_work_to_look(walked):
    summary = walked.summary
    assert (30, 3, ()) == (summary.people, summary.late, summary.notes)
    looked = dict(summary.to_look_at)
    assert {p.id for p in CLASS if p.look} == set(looked)
    assert all(
        p.reason in looked[p.id] or "Look at question" in looked[p.id] for p in CLASS if p.look
    )


def test_only_who_was_late_loses_a_share_of_the_score(walked):
    taken = {row.person: row.penalty for row in kept_in(walked.root / "gradebook.db")}
    cost = {p.id: round(sum(p.points) - p.score, 4) if p.late else None for p in CLASS}
    assert cost == taken


def test_the_grades_that_nbgrader_writes_are_those_of_the_class(walked):
    with open(walked.root.parent / "grades.csv", newline="") as file:
        rows = list(csv.DictReader(file))
    written = {row["student_id"]: round(float(row["score"]), 6) for row in rows}
    assert {p.id: p.score for p in CLASS} == written
    assert {"24.0"} == {row["max_score"] for row in rows}
    assert {"Invented"} == {row["last_name"] for row in rows}


def test_every_kind_of_known_mistake_in_the_set_was_handed_in_and_named(walked):
    named = set()
    for person in SLIPPING:
        kept = walked.kept(person)
        for row, case in zip(kept, cases_for(WEEK.work, person), strict=True):
            named |= {kind_of(slip) for slip in case.single_mistakes if slip.says in row.said}
    assert set().union(*map(kinds_of, SLIPPING)) == named


def test_nothing_that_anybody_wrote_was_run(walked):
    assert [] == list(walked.root.parent.rglob(STOLEN))


@PEOPLE
def test_a_marked_notebook_is_the_trainers_own(walked, person):
    trainers = json.loads((walked.root / f"release/{NAME}/{NAME}.ipynb").read_bytes())
    marked = json.loads((walked.root / f"autograded/{person.id}/{NAME}/{NAME}.ipynb").read_bytes())
    assert [cell["id"] for cell in trainers["cells"]] == [cell["id"] for cell in marked["cells"]]
    code = [
        [c["source"] for c in page["cells"] if c["cell_type"] == "code"]
        for page in (trainers, marked)
    ]
    assert code[0] == code[1]


@cache
def codes_of(person: str) -> frozenset[str]:
    """The codes of the problems that somebody of the class got."""
    return frozenset(case.code for case in cases_for(WEEK.work, person))


@PEOPLE
def test_feedback_has_the_worked_solutions_of_ones_own_numbers(walked, person):
    page = (walked.root / f"feedback/{person.id}/{NAME}/{NAME}.html").read_text(encoding="utf-8")
    own = codes_of(person.id)
    for code in own:
        assert f"Code of this problem: {code}<" in page
    others = frozenset().union(*(codes_of(p.id) for p in CLASS))
    assert not [code for code in others - own if f"of this problem: {code}<" in page]
    score = (
        f"(Score: {person.score:g} / 24.0)"
        if person.score % 1
        else f"(Score: {person.score:.1f} / 24.0)"
    )
    assert score in page


def test_the_feedback_that_nbgrader_made_is_one_file_to_send_with_names(walked):
    with ZipFile(walked.root / f"to-send/{NAME}-feedback.zip") as packed:
        assert {
            f"{NAME} {p.id.split('.')[0].title()} Invented ({p.id}).html" for p in CLASS
        } == set(packed.namelist())
        page = packed.read(f"{NAME} Ada Invented (ada.b).html")
    assert (walked.root / f"feedback/ada.b/{NAME}/{NAME}.html").read_bytes() == page


@pytest.mark.browser
def test_no_script_that_came_with_a_notebook_runs_where_its_feedback_is_read(walked, page):
    feedback = walked.root / f"feedback/cleo.d/{NAME}/{NAME}.html"
    assert "document.title=" in feedback.read_text(encoding="utf-8")  # it is shown, as text
    page.goto(feedback.as_uri())
    assert "taken" != page.title()
    assert page.evaluate("[...document.scripts].every(one => !one.text.includes('taken'))")
    assert 0 == page.locator("img[src=x]").count()


def test_who_handed_in_by_the_exchange_can_fetch_the_feedback(walked):
    own = walked.home / "ada.b"
    typed(
        [
            *(sys.executable, "-m", "nbgrader", "fetch_feedback", NAME, "--course=pumps"),
            *("--student=ada.b", f"--Exchange.root={walked.root.parent / 'exchange'}"),
        ],
        own, JUPYTER_DATA_DIR=str(own / "data"), HOME=str(own),
    )  # fmt: skip
    (page,) = own.glob(f"{NAME}/feedback/*/{NAME}.html")
    assert (walked.root / f"feedback/ada.b/{NAME}/{NAME}.html").read_text() == page.read_text()


def test_marking_again_changes_nothing(walked):
    before = kept_in(walked.bulk)
    mark_all(walked.root, NAME, f"sqlite:///{walked.bulk}")
    assert before == kept_in(walked.bulk)


PLAIN = """
c = get_config()
c.CourseDirectory.course_id = "plain"
"""
HONEST = ("cleo.d", "sol.t", "tess.u", "bob.c")


def test_a_course_with_nbgraders_own_settings_gives_the_same_points_by_running_the_cells(
    walked, tmp_path
):
    shutil.copytree(walked.root / "source", tmp_path / "source")
    for person in HONEST:
        work = f"submitted/{person}/{NAME}"
        shutil.copytree(walked.root / work, tmp_path / work)
    (tmp_path / "nbgrader_config.py").write_text(PLAIN)
    for step in ("generate_assignment", "autograde"):
        typed([sys.executable, "-m", "nbgrader", step, NAME], tmp_path)
    points = {p: [] for p in HONEST}
    for row in kept_in(tmp_path / "gradebook.db"):
        points[row.person].append(row.score)
    assert {p.id: list(p.points) for p in CLASS if p.id in HONEST} == points

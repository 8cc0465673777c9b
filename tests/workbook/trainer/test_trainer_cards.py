"""The page of a set: who works here, its cards, how it stands, handing in. Without a browser."""

import io
import zipfile
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from html import unescape

import pytest

from solver import grade
from solver.sets.work_set import cases_for, set_of
from tests.workbook.said import type_in, words
from workbook import page
from workbook.log import NotKept, NotRead
from workbook.trainer.coming_in.handed_in import read_handed
from workbook.trainer.coming_in.packed import work_as_zip
from workbook.trainer.learner.answer_sheet import SHEET, AnswerSheet, read_sheet
from workbook.trainer.learner.own_set import SAY_WHO, OwnSet
from workbook.trainer.learner.set_card import SetCard
from workbook.trainer.learner.set_panel import HandIn, SetTop
from workbook.trainer.learner.standing import due_in_words, standing
from workbook.trainer.learner.who import PERSON, keep_person, person_at
from workbook.trainer.marking.marked import mark
from workbook.trainer.sets.as_toml import toml_of
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.controls import PAUSE
from workbook.ui.pages import sets_of_work

WORK = set_of(families=["brake_power", "water_power"], level=1, count=4, seed=48213)
WEEK = Assigned("week-3", "Week 3", WORK, points=5.0, tries=3)
CASES = cases_for(WORK, "ana.r")
NASTY = "<img src=x onerror=alert(1)>"
DUE = datetime(2026, 12, 1, 18, tzinfo=UTC)


class Clock:
    """A clock that moves by a second each time it is read."""

    now, step = 0.0, 1.0

    def __call__(self):
        self.now += self.step
        return self.now


class Page:
    """The page of a set, as running all its cells makes it."""

    def __init__(self, folder):
        self.folder = folder
        self.own = OwnSet(folder)
        self.run()

    def run(self):
        clock = Clock()
        self.top = SetTop(self.own, clock)
        self.cards = [SetCard(self.own, number, clock) for number in range(1, 5)]
        self.end = HandIn(self.own, clock)

    def begin(self, name="Ana.R"):
        type_in(self.top.name, name)
        return self

    def answer(self, number, text):
        type_in(self.cards[number - 1].answer, text)
        return self.said(number)

    def said(self, number):
        return words(self.cards[number - 1].said.value)

    def lines(self):
        path = self.folder / SHEET
        return read_sheet(path.read_bytes() if path.exists() else None).lines


def right(number):
    return f"{CASES[number - 1].answer:.5g} hp"


def mistaken(number):
    return f"{CASES[number - 1].mistakes[0].value:.5g} hp"


def shown(part):
    return part.layout.display != "none"


@pytest.fixture(autouse=True)
def nobody_signed_in(monkeypatch):
    monkeypatch.delenv("JUPYTERHUB_USER", raising=False)


def write_set(folder, assigned=WEEK):
    own = folder / assigned.name
    own.mkdir()
    (own / "set.toml").write_text(toml_of(assigned), encoding="utf-8")
    return own


@pytest.fixture
def folder(tmp_path):
    return write_set(tmp_path)


@pytest.fixture
def opened(folder):
    """The page of somebody who has given their name."""
    return Page(folder).begin()


# Who works here


def test_the_name_is_asked_first_and_the_questions_wait_for_it(folder):
    at = Page(folder)
    assert shown(at.top.asking)
    assert [SAY_WHO] * 4 == [words(card.problem.value) for card in at.cards]
    assert not any(shown(card.answering) for card in at.cards)
    at.begin()
    assert not shown(at.top.asking)
    assert "ana.r" in words(at.top.head.value)
    assert [case.question for case in CASES] == [card.asked.case.question for card in at.cards]
    assert all(shown(card.answering) for card in at.cards)


def test_the_name_is_kept_beside_the_page_and_asked_only_once(opened, folder):
    assert "ana.r\n" == (folder / PERSON).read_text(encoding="utf-8")
    again = Page(folder)
    assert not shown(again.top.asking)
    assert CASES[0] == again.cards[0].asked.case


@pytest.mark.parametrize("name", ["", "ana/r", "x" * 41, NASTY])
def test_a_name_that_cannot_be_used_is_told_and_stays_to_be_mended(folder, name):
    at = Page(folder).begin(name)
    assert words(at.top.said.value).startswith("? Not read")
    assert name == at.top.name.box.value
    assert "<img" not in at.top.said.value
    assert shown(at.top.asking)
    assert not (folder / PERSON).exists()


def test_a_name_can_be_changed_while_nothing_is_answered(opened, folder):
    opened.top.other.click()
    assert (True, "ana.r") == (shown(opened.top.asking), opened.top.name.box.value)
    assert not shown(opened.cards[0].answering)
    opened.begin("bo")
    assert cases_for(WORK, "bo")[0] == opened.cards[0].asked.case
    assert "bo\n" == (folder / PERSON).read_text(encoding="utf-8")


def test_enter_pressed_twice_on_a_name_does_not_ask_for_it_again(folder):
    at = Page(folder)
    at.top.clock.step = PAUSE / 10
    at.begin()
    at.top.other.click()
    assert not shown(at.top.asking)


def test_that_a_name_can_be_changed_is_said_until_something_is_answered(opened):
    assert "change it before you answer" in words(opened.top.said.value)
    opened.answer(1, right(1))
    assert "" == words(opened.top.said.value)


def test_a_name_with_answers_stays_and_what_to_do_is_said(opened):
    opened.answer(1, right(1))
    opened.top.other.click()
    assert "Answers are kept as ana.r, so the name stays." in words(opened.top.said.value)
    assert "get a fresh copy of the folder from your trainer" in words(opened.top.said.value)
    assert CASES[0] == opened.cards[0].asked.case


def test_who_is_signed_in_on_a_hub_is_not_asked(folder, monkeypatch):
    monkeypatch.setenv("JUPYTERHUB_USER", "Ana.R")
    at = Page(folder)
    assert CASES[0] == at.cards[0].asked.case
    assert [] == list(filter(shown, (at.top.asking, at.top.changing)))
    assert "open Assignment List in the Nbgrader menu" in words(at.end.stands.value)
    assert not (folder / PERSON).exists()


def test_on_a_hub_a_name_in_the_folder_that_is_not_who_is_signed_in_is_told(folder, monkeypatch):
    keep_person(folder, "bo")
    monkeypatch.setenv("JUPYTERHUB_USER", "ana.r")
    assert "person.txt says bo, but you are signed in" in words(Page(folder).top.said.value)


def test_a_signed_in_name_that_cannot_be_used_is_asked_for_instead(folder, monkeypatch):
    monkeypatch.setenv("JUPYTERHUB_USER", "ana/r")
    at = Page(folder)
    assert shown(at.top.asking)
    assert "The name you signed in with can't be used." in words(at.top.said.value)


UNUSABLE = f"The name in the file {PERSON} can't be used. Type your name or number again."
UNREADABLE = f"The file {PERSON} can't be read, so type your name or number again."


@pytest.mark.parametrize(
    ("data", "said"),
    [(b"", UNUSABLE), (b"\xff\xfe", UNREADABLE), (b"a b/c", UNUSABLE), (b"x" * 5000, UNUSABLE)],
)
def test_a_spoilt_file_of_the_name_is_told_and_asked_again(folder, data, said):
    (folder / PERSON).write_bytes(data)
    found = person_at(folder)
    assert ("", said) == (found.id, found.note)


def test_a_file_that_another_editor_saved_is_read(folder):
    (folder / PERSON).write_bytes(b"\xef\xbb\xbf Ana.R\r\n")
    assert "ana.r" == person_at(folder).id


def test_a_name_that_cannot_be_kept_is_said_and_no_question_opens(folder, monkeypatch):
    def refuses(*_):
        raise NotKept("Your name could not be kept there.")

    monkeypatch.setattr("workbook.trainer.learner.own_set.keep_person", refuses)
    at = Page(folder).begin()
    assert "Your name could not be kept there." in words(at.top.said.value)
    assert not shown(at.cards[0].answering)


def test_a_folder_that_is_gone_refuses_a_name_with_a_sentence(tmp_path):
    with pytest.raises(
        NotKept, match=r"Your name couldn't be saved in .*Make that folder writable"
    ):
        keep_person(tmp_path / "gone", "ana.r")


# Answers


def test_a_right_answer_is_told_kept_and_marked(opened, folder):
    said = opened.answer(1, right(1))
    assert said.startswith("✓ Right")
    assert said.endswith("Try 1.")
    [line] = opened.lines()
    assert (CASES[0].code, WORK.code, "ana.r", "right", 1) == (
        line.code,
        line.of,
        line.who,
        line.status,
        line.tries,
    )
    marked = mark(WEEK, "ana.r", (folder / SHEET).read_bytes())
    assert (5.0, False) == (marked.questions[0].points, marked.needs_person)


def test_a_wrong_answer_is_named_and_the_tries_left_are_told(opened):
    said = opened.answer(1, mistaken(1))
    assert CASES[0].mistakes[0].says in said
    assert "Try 1. You have 2 tries left." in said
    assert "You have one try left." in opened.answer(1, "7 hp")
    assert "Try 3. You have no tries left." in opened.answer(1, "8 hp")


def test_after_the_last_try_nothing_is_graded_or_kept_and_the_answers_stay(opened):
    for text in ("7 hp", "8 hp", "9 hp"):
        opened.answer(1, text)
    said = opened.answer(1, right(1))
    assert "You have used 3 tries. This answer doesn't count." in said
    assert "Right" not in said
    assert ["7 hp", "8 hp", "9 hp"] == [line.typed for line in opened.lines()]


def test_without_a_limit_no_number_of_tries_is_told(tmp_path):
    at = Page(write_set(tmp_path, WEEK._replace(tries=0))).begin()
    assert "tries" not in words(at.cards[0].problem.value)
    assert at.answer(1, "7 hp").endswith("Try 1.")


@pytest.mark.parametrize("text", ["", "twelve", "12 psi", NASTY])
def test_what_cannot_be_read_is_no_try_and_is_not_kept(opened, text):
    said = opened.answer(1, text)
    assert said.startswith("? Not read")
    assert "This doesn't count as a try." in said
    assert "<img" not in opened.cards[0].said.value
    assert () == opened.lines()


def test_the_same_answer_again_is_no_try(opened):
    opened.answer(1, "700 hp")
    assert "You already gave this answer" in opened.answer(1, "700.0")
    assert 1 == len(opened.lines())


def test_where_the_last_answer_counts_going_back_to_an_earlier_one_is_a_try(tmp_path):
    at = Page(write_set(tmp_path, WEEK._replace(counts="last"))).begin()
    for text in ("7 hp", "8 hp", "8", "7"):
        at.answer(1, text)
    assert ["7 hp", "8 hp", "7"] == [line.typed for line in at.lines()]


def test_the_right_answer_leads_on_to_the_next_question_and_the_last_one_nowhere(opened):
    opened.answer(1, right(1))
    first, second, *_, last = (card.answer for card in opened.cards)
    assert "Next" == first.main
    asked = second.focus_asked
    first.press()
    assert asked + 1 == second.focus_asked
    opened.answer(len(CASES), right(len(CASES)))
    assert ("Check", True) == (last.main, "w2w-right" in opened.cards[-1].said.value)


def test_after_the_right_answer_nothing_more_counts(opened):
    opened.answer(1, right(1))
    assert "You already have the right answer" in opened.answer(1, "7 hp")
    assert 1 == len(opened.lines())


def test_no_worked_solution_and_no_hint_is_shown_before_handing_in(opened):
    opened.answer(4, mistaken(4))
    card = opened.cards[3]
    shown_html = card.problem.value + card.said.value
    assert not any(step.why in unescape(shown_html) for step in CASES[3].steps)
    assert "Check" == card.answer.main
    assert not hasattr(card, "worked")


def test_everybody_has_one_problem_where_the_set_says_so(tmp_path):
    at = Page(write_set(tmp_path, WEEK._replace(work=replace(WORK, each=False)))).begin("bo")
    assert cases_for(at.own.assigned.work, "ana.r")[0] == at.cards[0].asked.case
    assert "The numbers in your questions come from it" not in at.top._about()


def test_an_answer_that_could_not_be_written_is_told_and_goes_with_the_next(opened, monkeypatch):
    with monkeypatch.context() as broken:
        broken.setattr("workbook.log.store.add_lines", _refuse)
        assert "This was not saved. The disk is full." in opened.answer(1, "7 hp")
    opened.answer(2, right(2))
    assert ["7 hp", right(2)] == [line.typed for line in opened.lines()]


def _refuse(*_):
    raise NotKept("This was not saved. The disk is full.")


def test_a_sheet_that_cannot_be_read_is_told_and_the_answer_stays_in_the_box(opened, monkeypatch):
    def refuses(*_):
        raise NotRead("Your log couldn't be read.")

    monkeypatch.setattr(AnswerSheet, "read", refuses)
    said = opened.answer(1, "7 hp")
    assert "Your log couldn't be read. Your answer wasn't checked." in said
    assert "7 hp" == opened.cards[0].answer.value


# Coming back


def test_a_page_that_is_opened_again_stands_as_it_was_left(opened, folder):
    opened.answer(1, right(1))
    opened.answer(2, "7 hp")
    opened.answer(2, mistaken(2))
    again = Page(folder)
    assert (right(1), mistaken(2), "") == tuple(card.answer.value for card in again.cards[:3])
    assert again.said(1).startswith("✓ Right")
    assert "This answer is kept. Try 2. You have one try left." in again.said(2)
    assert "" == again.said(3)
    assert "You have one try left." in again.said(2)
    assert "You have no tries left." in again.answer(2, "9 hp")


def test_cells_that_run_again_keep_what_was_typed_and_not_checked(opened):
    opened.answer(1, "12 psi")
    opened.cards[1].answer.value = "77"
    opened.own.read()
    opened.run()
    assert ("12 psi", "77") == tuple(card.answer.value for card in opened.cards[:2])
    assert () == opened.lines()


def test_what_another_person_typed_never_comes_into_ones_own_question(opened):
    opened.cards[0].answer.value = "12.5"
    opened.top.other.click()
    opened.begin("bo")
    assert "" == opened.cards[0].answer.value


def test_two_pages_of_one_folder_share_the_tries(opened, folder):
    other = Page(folder)
    opened.answer(1, "7 hp")
    other.answer(1, "8 hp")
    assert "Try 3. You have no tries left." in opened.answer(1, "9 hp")


def test_a_set_that_was_changed_is_taken_in_when_the_page_runs_again(opened, folder):
    (folder / "set.toml").write_text(toml_of(WEEK._replace(tries=5)), encoding="utf-8")
    opened.own.read()
    opened.run()
    assert "You have 5 tries for this question." in words(opened.cards[0].problem.value)


# What is missing or spoilt


def test_without_the_file_of_the_set_one_plain_sentence_says_what_to_do(tmp_path):
    at = Page(tmp_path)
    told = words(at.top.said.value)
    assert "The file set.toml isn't in the same folder as this page" in told
    assert "Get the whole folder from your trainer again" in told
    assert [] == list(filter(shown, (at.top.asking, at.top.changing, at.end.packing)))
    assert {"This question can't be shown. The reason is at the top of this page."} == {
        words(card.problem.value) for card in at.cards
    }


def test_a_spoilt_file_of_the_set_is_told_by_what_is_wrong_with_it(folder):
    (folder / "set.toml").write_text("draw = 1\ncount = 900\n")
    assert "set.toml: count is 900." in words(Page(folder).top.said.value)


def test_a_question_that_the_set_does_not_have_is_told(opened):
    card = SetCard(opened.own, 5)
    assert "There is no question 5; this set has 1 to 4." == words(card.problem.value)


def test_a_page_of_another_set_or_edition_asks_nothing(tmp_path):
    at = write_source(WEEK, tmp_path).parent
    other = WEEK._replace(work=replace(WORK, seed=1))
    (at / "set.toml").write_text(toml_of(other), encoding="utf-8")
    told = words(Page(at).top.said.value)
    assert (
        f"This page was made for the set {WORK.code}, but here the set is {other.work.code}."
        in told
    )


def test_what_is_tried_out_in_a_course_does_not_go_out_to_people(tmp_path):
    at = write_source(WEEK, tmp_path).parent
    (tmp_path / "nbgrader_config.py").touch()
    before = sorted(at.iterdir())
    tried = Page(at).begin()
    assert "Right" in tried.answer(1, right(1))
    assert "What you try here isn't kept." in words(tried.top.head.value)
    assert before == sorted(at.iterdir())


# How it stands


def test_how_the_work_stands_is_told_as_it_goes(opened):
    assert "You have answered 0 of 4 questions." == words(opened.top.stands.value)
    opened.answer(2, "7 hp")
    opened.cards[2].answer.value = "12"
    for part in (opened.top, opened.end):
        told = words(part.stands.value)
        assert "You have answered 1 of 4 questions. Not answered yet: 1, 3 and 4." in told
        assert "Typed but not checked: 3. Press Check there." in told
    for number in (1, 3, 4):
        opened.answer(number, right(number))
    assert ["You have answered every question."] == standing(opened.own)


def test_no_points_are_told_before_the_work_is_marked(opened):
    opened.answer(1, right(1))
    told = opened.top.stands.value + opened.end.stands.value + opened.cards[0].said.value
    assert "point" not in told


def test_when_it_is_due_is_told_and_what_being_late_costs():
    week = WEEK._replace(due=DUE, late=0.1)
    [due] = due_in_words(week, DUE - timedelta(minutes=1))
    here = DUE.astimezone()
    assert f"It is due {here:%A}, {here:%B} {here.day}, 2026, at {here:%H:%M}" in due
    late = due_in_words(week, DUE + timedelta(minutes=1))
    assert [due, "That time has passed. 10% of the score is taken off work turned in now."] == late
    free = due_in_words(week._replace(late=0.0), DUE + timedelta(minutes=1))
    assert "That time has passed. Nothing is taken off work turned in now." == free[1]
    assert [] == due_in_words(WEEK, DUE)


# Handing in


def test_the_work_as_one_file_is_what_a_course_takes_in(opened, folder, tmp_path):
    opened.answer(1, right(1))
    (folder / "week-3.ipynb").write_text('{"cells": []}')
    data, lacks = work_as_zip(folder, "ana.r")
    assert [] == lacks
    with zipfile.ZipFile(io.BytesIO(data)) as packed:
        packed.extractall(tmp_path / "submitted")
    handed = read_handed(tmp_path / "submitted" / "ana.r" / "week-3", "week-3", "ana.r")
    assert (folder / SHEET).read_bytes() == handed.sheet
    assert b'{"cells": []}' == handed.notebook
    assert timedelta(minutes=2) > datetime.now(UTC).replace(tzinfo=None) - handed.when
    assert WEEK == OwnSet(tmp_path / "submitted" / "ana.r" / "week-3").assigned


def test_the_file_is_made_when_asked_for_and_gone_when_more_is_answered(opened, folder):
    (folder / "week-3.ipynb").write_text("{}")
    opened.answer(1, right(1))
    opened.end.pack.click()
    assert 'download="week-3-ana.r.zip"' in opened.end.saved.value
    assert "The file is ready." in words(opened.end.said.value)
    opened.answer(2, "7 hp")
    assert "" == opened.end.saved.value


def test_what_the_file_lacks_is_said(opened):
    opened.end.pack.click()
    told = words(opened.end.said.value)
    assert "It doesn't have week-3.ipynb, because that isn't in the folder." in told
    assert "It doesn't have answer-sheet.jsonl" in told


def test_a_file_that_cannot_be_packed_is_said(opened, folder):
    (folder / "week-3.ipynb").mkdir()
    opened.end.pack.click()
    assert "week-3.ipynb couldn't be read" in words(opened.end.said.value)
    assert "" == opened.end.saved.value


# Where no widget can be shown


def outputs(panel, monkeypatch):
    kept = []
    monkeypatch.setattr("IPython.display.display", lambda data, raw: kept.append(data))
    panel._ipython_display_()
    return kept[0]


def test_a_page_without_widgets_shows_the_question_and_where_to_write(opened, monkeypatch):
    output = outputs(opened.cards[0], monkeypatch)
    assert "application/vnd.jupyter.widget-view+json" in output
    told = words(output["text/html"])
    assert CASES[0].question in told
    assert "write your answer in the cell below this one" in told


def test_a_page_without_widgets_says_how_to_give_a_name(folder, monkeypatch):
    told = words(outputs(Page(folder).top, monkeypatch)["text/html"])
    assert "type it into a file named person.txt next to this page" in told


def test_the_calls_of_a_page_share_one_set(folder, monkeypatch):
    monkeypatch.chdir(folder)
    top, card, end = page.set_work(), page.set_question(2), page.set_work("end")
    type_in(top.name, "ana.r")
    assert CASES[1] == card.asked.case
    type_in(card.answer, right(2))
    assert "You have answered 1 of 4 questions." in words(end.stands.value)


# The opening page


def test_the_opening_page_lists_work_that_was_sent_and_no_other_notebook(tmp_path, monkeypatch):
    for name in ("a", "b/c"):
        own = write_source(WEEK._replace(title="Week *3*"), tmp_path / "made").parent
        (tmp_path / "own" / name).mkdir(parents=True)
        own.rename(tmp_path / "own" / name / "week-3")
    (tmp_path / "own" / "week-3").mkdir()
    (tmp_path / "own" / "week-3" / "week-3.ipynb").write_text("{}")
    (tmp_path / "own" / "d").mkdir()
    (tmp_path / "own" / "d" / "d.ipynb").write_text('{"cells": [], "metadata": []}')
    assert [("a/week-3/week-3.ipynb", "Week *3*")] == sets_of_work(tmp_path / "own")
    assert [("week-3/week-3.ipynb", "Week *3*")] == sets_of_work(tmp_path / "own" / "b" / "c")
    monkeypatch.chdir(tmp_path / "own")
    monkeypatch.setenv("WIRE_TO_WATER_KEPT", str(tmp_path / "kept"))
    (sent,) = page._begun()
    assert ("Week *3*", "From your trainer.", "a/week-3/week-3.ipynb") == sent
    keep_person(tmp_path / "own" / "a" / "week-3", "ana.r")
    (begun,) = page._begun()
    assert begun.says.startswith("From your trainer. You have answered 0 of ")


def test_each_answer_of_a_card_is_graded_as_the_solver_grades_it(opened):
    for number, case in enumerate(CASES, 1):
        for mistake in case.mistakes[:2]:
            typed = f"{mistake.value:.6g} hp"
            assert grade(case, typed).says in opened.answer(number, typed)

"""Group study without a browser: a set made and opened, answers kept, a result saved."""

import json
import re
from html import unescape
from urllib.parse import quote

import pytest

from solver import case_from_code
from solver.engine.code import Code
from solver.sets.paper import CHAPTERS
from tests.workbook.group.members import CASES, RIGHT, WEDNESDAY, answer_text, saved
from tests.workbook.group.panels import answer, held, paste, slow
from tests.workbook.said import words
from workbook.group.make_panel import MakePanel
from workbook.group.own_group import OwnGroup
from workbook.group.posed import Posed
from workbook.group.set_text import questions_of, read_set, set_of
from workbook.group.work_panel import WorkPanel
from workbook.log import Log, made
from workbook.ui import static_site


def typed(own):
    return [(each.code, each.typed, each.of, each.who) for each in own.kept.attempts]


# A set is opened


def test_a_set_opens_as_cards_in_its_order(page):
    heads = [words(card.problem.value) for card in page.cards.values()]
    titles = [f"Question {n}. {case.family.title}" for n, case in enumerate(CASES, 1)]
    assert all(head.startswith(title) for head, title in zip(heads, titles, strict=True))
    assert "“Wednesday pumps” is open below, with 3 questions." in page.said.value
    assert WEDNESDAY.mark in page.head.value


def test_a_message_around_the_text_does_no_harm(own):
    panel = slow(WorkPanel(own))
    paste(panel, f"Hi all – until Wednesday:\n\n> {WEDNESDAY.text.replace('-', '–')}\n\nBen")
    assert WEDNESDAY == own.problems


def test_a_broken_text_leaves_the_open_set_with_all_answers(page, own):
    answer(page, 1, "12.5")
    paste(page, WEDNESDAY.text[:-3])
    assert "The end of the set is missing." in page.said.value
    assert "The set you had open is still open." in page.said.value
    assert WEDNESDAY == own.problems
    assert 1 == len(typed(own))


def test_a_title_is_shown_as_it_was_typed_and_runs_nothing(own):
    panel = slow(WorkPanel(own))
    paste(panel, set_of("<img src=x onerror=alert(1)>", WEDNESDAY.codes).text)
    for html in (panel.head.value, panel.said.value):
        assert "<img" not in html
        assert "<img src=x onerror=alert(1)>" in unescape(html)


def test_problems_of_another_edition_are_told_and_the_others_open(own):
    codes = [NEWER, WEDNESDAY.codes[1], str(Code("ZZ", 1, "us", 1, 7))]
    panel = slow(WorkPanel(own))
    paste(panel, set_of("Mixed editions", codes).text)
    assert [WEDNESDAY.codes[1]] == list(panel.cards)
    told = words(panel.faults.value)
    assert (
        "Question 1: A newer version of the workbook made this code of “Brake horsepower at" in told
    )
    assert "Question 3: This workbook has no problem ZZ at level 1." in told
    assert "The others are below." in told
    assert "Question 2." in panel.cards[WEDNESDAY.codes[1]].problem.value


def test_what_was_typed_and_not_checked_is_told_when_another_set_takes_its_place(page):
    card = page.cards[WEDNESDAY.codes[0]]
    card.answer.value = "12 or <i>13"
    paste(page, set_of("Other", WEDNESDAY.codes[1:]).text)
    told = f"You typed this but didn&#39;t check it: “12 or &lt;i&gt;13” for {CASES[0].code}."
    assert told in page.said.value


def test_the_set_in_the_address_opens_by_itself_once(own, monkeypatch):
    monkeypatch.setattr(static_site, "_told", {})
    query = f"path=17-group-study.ipynb&set={quote(WEDNESDAY.text)}"
    static_site.tell(quote("https://example.org/", safe=""), quote(query, safe=""))
    panel = slow(WorkPanel(own))
    assert 3 == len(panel.cards)
    paste(panel, set_of("Other", WEDNESDAY.codes[1:]).text)
    assert 2 == len(WorkPanel(own).cards)


@pytest.mark.parametrize(
    "text", ["<script>alert(1)</script>", "W2W[" * 30, "W2W[a] %00 [1-56C829]"]
)
def test_a_hostile_address_gives_a_sentence_and_opens_nothing(own, monkeypatch, text):
    monkeypatch.setattr(static_site, "_told", {})
    static_site.tell("", quote(f"set={quote(text)}", safe=""))
    panel = WorkPanel(own)
    assert "There is no set in this link." in panel.said.value
    assert "<script" not in panel.said.value
    assert own.problems is None
    assert "none" == panel.working.layout.display


# Answers are kept, under a name or none


def test_an_answer_goes_into_the_log_as_of_the_set_and_by_the_name(page, own):
    page.name.box.value = "  Ana\n"
    told = answer(page, 1, f"{CASES[0].answer:.5g}")
    assert "Try 1." in told
    assert [(CASES[0].code, f"{CASES[0].answer:.5g}", WEDNESDAY.key, "Ana")] == typed(own)
    assert "You have answered 1 of 3 questions. Not answered yet: 2 and 3." in page.stands.value


def test_what_was_answered_shows_again_in_a_new_page(page, own, tmp_path):
    page.name.box.value = "Ana"
    answer(page, 1, "987654321")
    answer(page, 2, answer_text(CASES[1], RIGHT))
    fresh = OwnGroup(Log(own.kept.path))
    again = slow(WorkPanel(fresh))
    paste(again, WEDNESDAY.text)
    assert "Ana" == again.name.box.value
    first, second, third = again.cards.values()
    assert "987654321" == first.answer.value
    assert "Try 1. This answer is kept." in first.said.value
    assert "w2w-right" in second.said.value
    assert "" == third.answer.value
    assert "You already gave this answer" in answer(again, 1, "987654321")
    assert "Try 2." in answer(again, 1, "12345678")
    assert "You already have the right answer" in answer(again, 2, "1")


def test_the_right_answer_leads_on_to_the_next_question(page):
    answer(page, 1, answer_text(CASES[0], RIGHT))
    first, second = (card.answer for card in list(page.cards.values())[:2])
    assert "Next" == first.main
    first.press()
    assert 1 == second.focus_asked


def test_a_worked_solution_that_was_opened_still_counts_after_a_restart(page, own):
    help = next(iter(page.cards.values())).help
    help.worked.click()
    help.steps.rest.click()
    again = slow(WorkPanel(OwnGroup(Log(own.kept.path))))
    paste(again, WEDNESDAY.text)
    assert "You have seen the worked solution" in answer(again, 1, "12")
    assert ["shown"] == [each.status for each in again.own.kept.attempts]


def test_two_people_on_one_computer_each_have_their_own_answers(page, own):
    page.name.box.value = "Ana"
    answer(page, 1, "987654321")
    page.name.box.value = "Ben"
    first = next(iter(page.cards.values()))
    assert ("", True) == (first.answer.value, 'aria-live="polite"></div>' in first.said.value)
    assert "Answers are kept under “Ben” from now on." in page.named.value
    assert "Answers under “Ana” are kept too." in page.named.value
    answer(page, 1, "12345678")
    page.name.box.value = "Ana"
    assert "987654321" == first.answer.value


def test_what_was_answered_before_a_name_was_typed_goes_with_it(page, own):
    answer(page, 1, "987654321")
    page.name.box.value = "Ana"
    first = next(iter(page.cards.values()))
    assert ("987654321", True) == (first.answer.value, "w2w-wrong" in first.said.value)
    _, data = saved(own)
    assert {"Ana"} == {json.loads(line)["who"] for line in data.splitlines()}


def test_hints_stay_in_sight_when_a_name_is_typed(page):
    first = next(iter(page.cards.values()))
    first.help.more.click()
    page.name.box.value = "Ana"
    assert "Hint 1 of" in first.help.hints.value


def test_time_is_told_from_the_answer_before_as_all_questions_show_at_once(own):
    now = iter([0.0, 100.0, 160.0])
    own.clock = lambda: next(now)
    own._since = 0.0
    own.problems, own.questions = WEDNESDAY, questions_of(WEDNESDAY)
    for case, seconds in zip(CASES, (0, 100, 160), strict=True):
        clock = iter([0.0, float(seconds)])
        Posed(case, own.keep, lambda clock=clock: next(clock)).answer("987654321")
    assert [0.0, 100.0, 60.0] == [each.seconds for each in own.kept.attempts]


def test_a_full_disk_is_told_on_the_card(page, own):
    own.kept.path.parent.mkdir(parents=True, exist_ok=True)
    own.kept.path.symlink_to("/dev/full")
    assert "The disk is full." in answer(page, 1, "987654321")


# A result is saved


def test_a_result_has_the_lines_of_the_set_and_no_other(page, own):
    own.kept.keep(
        made(code=CASES[1].code, family="water_power", level=1, typed="1", status="wrong")
    )
    page.name.box.value = "Ana R."
    answer(page, 1, "987654321")
    page.save.click()
    name, data = held(page.saved.value)
    assert f"wire-to-water-group-{WEDNESDAY.mark.lower()}-ana-r.jsonl" == name
    assert ["987654321"] == [json.loads(line)["typed"] for line in data.splitlines()]
    assert "Your result is ready." in page.keeping.value
    answer(page, 2, "12")
    assert "" == page.saved.value  # that file would lack the new answer


def test_without_an_answer_there_is_nothing_to_save(page):
    page.save.click()
    assert "There is nothing to save yet." in page.keeping.value
    assert "" == page.saved.value


# A set is made


@pytest.fixture
def maker(own):
    return slow(MakePanel(own, pick=lambda most: 7))


def test_problems_are_drawn_of_a_chapter_and_a_level_and_added_to_what_stands_there(maker):
    maker.codes.box.value = CASES[0].code
    maker.chapter.value, maker.level.value, maker.units.value = ("balance",), 1, "si"
    maker.count.box.value = "4"
    maker.add.click()
    first, *drawn = maker.codes.box.value.split()
    cases = [case_from_code(code) for code in drawn]
    assert CASES[0].code == first
    assert {("balance", 1, "si")} == {(c.family.chapter, c.level, c.units) for c in cases}
    assert 4 == len({case.code for case in cases})
    assert "4 added. The set has 5 problems now" in maker.said.value


def test_a_set_gives_a_text_a_list_of_its_problems_and_opens_here(maker, own):
    maker.codes.box.value = ", ".join(WEDNESDAY.codes)
    maker.title.box.value = "Pumps ]<b>"
    maker.make.click()
    shown = re.search(r"<textarea[^>]*>(.*?)</textarea>", maker.made.value)[1]
    problems = read_set(unescape(shown))
    assert ("Pumps ]<b>", WEDNESDAY.codes) == problems
    assert "<b>" not in maker.made.value
    assert "href" not in maker.made.value
    assert "Brake horsepower at the pump shaft, level 2" in maker.made.value
    maker.here.click()
    assert problems == own.problems


def test_a_link_is_made_of_the_address_that_was_typed(maker):
    maker.codes.box.value = CASES[0].code
    maker.site.box.value = "https://example.org/pumps/index.html?path=00-start-here.ipynb#a"
    maker.make.click()
    href = unescape(re.search(r'href="([^"]*)"', maker.made.value)[1])
    assert href.startswith("https://example.org/pumps/?path=17-group-study.ipynb&set=W2W%5B%5D+BP-")


def test_inside_the_static_site_the_link_is_to_the_site_itself(own, monkeypatch):
    monkeypatch.setattr(static_site, "_told", {"base": "https://plant.example/w2w/", "query": ""})
    maker = slow(MakePanel(own))
    maker.codes.box.value = CASES[0].code
    maker.make.click()
    assert 'href="https://plant.example/w2w/?path=17-group-study.ipynb&amp;set=' in maker.made.value


NEWER = str(Code("BP", 2, "us", CASES[0].family.revision + 1, 7))
MAKING_FAULTS = [
    ("codes", "", "Choose “Add problems” to fill it"),
    ("codes", "BP-2U1-7-69", "Problem 1: “BP-2U1-7-69” has a wrong character somewhere."),
    ("codes", NEWER, "Problem 1: A newer version of the workbook made this code"),
    ("title", "a" * 61, "A title has up to 60 characters; yours has 61."),
    ("site", "javascript:alert(1)", "“javascript:alert(1)” isn't a web address."),
]


@pytest.mark.parametrize(("box", "value", "told"), MAKING_FAULTS)
def test_what_cannot_be_sent_is_told_before_it_is_sent(maker, box, value, told):
    maker.codes.box.value = CASES[0].code
    getattr(maker, box).box.value = value
    maker.make.click()
    assert told in words(maker.said.value)
    assert "" == maker.made.value


@pytest.mark.parametrize(
    ("count", "told"),
    [("0", "Type a whole number from 1 to 40."), ("40", "at most 40 problems; 1 are there.")],
)
def test_how_many_to_draw_is_a_number_that_fits(maker, count, told):
    maker.codes.box.value, maker.count.box.value = CASES[0].code, count
    maker.add.click()
    assert told in maker.said.value
    assert CASES[0].code == maker.codes.box.value


def test_every_chapter_draws(maker):
    for chapter in CHAPTERS:
        maker.chapter.value, maker.level.value = (chapter,), 3
        maker.codes.box.value, maker.count.box.value = "", "3"
        maker.add.click()
        assert 3 == len(maker.codes.box.value.split()), chapter

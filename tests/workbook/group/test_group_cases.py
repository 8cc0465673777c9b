"""A case of find the fault in a group's set: sent by its code, worked on its card, judged from its words."""

import pytest

from solver.fault.case import fault_case
from solver.fault.review import sure_way
from solver.fault.way import way_of
from tests.workbook.group.members import CASES
from tests.workbook.group.panels import paste, slow
from workbook.fault import attempt_of_way
from workbook.group.make_panel import MakePanel
from workbook.group.own_group import OwnGroup
from workbook.group.results import AT_ONCE, LATER, NOT_YET, UNTRIED, facts, read_result, result_file
from workbook.group.set_text import BadSet, read_set, set_of
from workbook.group.work_panel import WorkPanel
from workbook.log import Log, line_of

CASE = fault_case(1, "us", 7)
CODE = str(CASE.code)
SURE = sure_way(CODE).words
WRONG = next(f"name:{name}" for name in CASE.suspects if name != CASE.fault)
FRIDAY = set_of("Friday", [CASES[0].code, CODE])


@pytest.fixture
def friday(own):
    panel = slow(WorkPanel(own))
    paste(panel, FRIDAY.text)
    return panel


def test_the_set_that_is_sent_has_the_code_of_the_case():
    assert FRIDAY == read_set(FRIDAY.text)
    assert "W2W[Friday] BP-2U2-7-TBH FF-1U1-7-VCH [2-74DA76]" == FRIDAY.text
    with pytest.raises(BadSet, match="wrong character"):
        set_of("Friday", ["FF-1U1-7-XXX"])


def test_a_case_can_be_added_where_a_set_is_made(own):
    panel = slow(MakePanel(own, pick=lambda _: 7))
    panel.add_case.click()
    assert CODE == panel.codes.box.value
    panel.make.click()
    assert "Find the fault, level 1" in panel.made.value


def test_what_was_done_in_a_case_is_there_on_a_page_opened_again(own, friday):
    friday.cards[CODE].stand._do("gauges")
    again = slow(WorkPanel(own))
    assert ("gauges",) == again.cards[CODE].stand.story.way.words
    assert [1, 2] == own.unanswered()


def test_a_case_that_is_done_counts_and_shows_its_review(own, friday):
    friday.name.box.value = "Ana"
    card = friday.cards[CODE]
    for word in SURE[:-2]:
        card.stand._do(word)
    card.stand.fault.value = CASE.fault
    card.stand._name()
    card.stand.action.value = SURE[-1].removeprefix("do:")
    card.stand._act()
    assert "Your readings, one by one" in card.review.value
    assert [1] == own.unanswered()
    assert "You have answered 1 of 2 questions." in friday.stands.value
    friday.name.box.value = "Ben"
    assert not friday.cards[CODE].stand.story.way.words
    assert "Your readings" not in friday.cards[CODE].review.value


@pytest.mark.parametrize(
    ("words", "state"),
    [
        (SURE, AT_ONCE),
        ((WRONG, *SURE), LATER),
        (("insulation", *SURE), LATER),
        ((WRONG,), NOT_YET),
        (("gauges", "review"), NOT_YET),
    ],
)
def test_a_result_is_judged_from_the_words_alone(words, state):
    kept = attempt_of_way(way_of(CODE, words), FRIDAY.key, "Ana")
    forged = kept._replace(status="right", tries=1)
    for each in (kept, forged):
        result = read_result(f"{line_of(each)}\n".encode(), FRIDAY)
        told = facts(_questions(), [result])
        assert state == told.cells[1][0].state
        assert UNTRIED == told.cells[0][0].state


def _questions():
    own = OwnGroup(Log("nowhere"))
    own.open(FRIDAY)
    return own.questions


def test_a_members_file_has_the_way(own, friday):
    friday.cards[CODE].stand._do("gauges")
    friday.cards[CODE].stand.fault.value = WRONG.removeprefix("name:")
    friday.cards[CODE].stand._name()
    _, data = result_file(FRIDAY, "Ana", own.made())
    (line,) = read_result(data, FRIDAY).attempts
    assert f"gauges {WRONG}" == line.typed

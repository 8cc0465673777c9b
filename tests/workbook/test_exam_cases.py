"""Cases of find the fault in an exam: after the problems, no verdict before it is turned in, kept as they go."""

from io import BytesIO

import pytest
from pypdf import PdfReader

from solver import BadCode
from solver.fault.remedies import ACTIONS, RIGHT
from solver.fault.review import sure_way
from solver.sets.fault_part import FaultPart
from solver.sets.paper import Paper, read_paper
from solver.sets.paper_questions import cases_of, faults_of
from tests.workbook.group.panels import slow
from workbook.exam.outcome import Outcome
from workbook.exam.practice_exam import ExamPanel
from workbook.exam.printed import pdf_of
from workbook.exam.result import missed_html, rest_html, summary
from workbook.exam.sitting import HandedIn, Sitting, begin

PAPER = Paper(("horsepower",), 1, "us", 2, 60, True, 48213, 2, FaultPart(2, 1))
FIRST, SECOND = faults_of(PAPER)
SURE = sure_way(str(FIRST.code)).words
NAME, CALL = SURE[-2:]
OTHER = next(f"do:{one}" for one in ACTIONS if one not in RIGHT[FIRST.fault][0])
WRONG = next(name for name in FIRST.suspects if name != FIRST.fault)


@pytest.fixture
def sitting(tmp_path):
    return begin(PAPER, tmp_path)


@pytest.fixture
def log():
    return []


@pytest.fixture
def panel(tmp_path, log):
    found = slow(ExamPanel(tmp_path, log.extend, tmp_path))
    found._begin(PAPER)
    return found


def test_the_code_of_an_exam_holds_its_cases_and_leaves_its_problems():
    plain = read_paper("EXAM-1-1U-2-60-C-2-48213-KVQ")
    assert "EXAM-1-1U-2-60-C-2-48213-F112-VYS" == PAPER.code
    assert PAPER == read_paper(PAPER.code.lower())
    assert cases_of(plain) == cases_of(PAPER)
    assert ["FF-1U1-37436-RJY", "FF-1U1-22935-JUQ"] == [str(case.code) for case in (FIRST, SECOND)]
    assert 4 == PAPER.asked


def test_cases_of_another_version_are_refused_with_what_to_do():
    from solver.engine.code import sealed

    other = sealed(*PAPER.code.rpartition("-")[0].replace("F112", "F912").split("-"))
    with pytest.raises(BadCode, match="of another version of the workbook"):
        read_paper(other)


def test_what_is_done_in_a_case_is_there_again(sitting):
    sitting.did(3, "gauges")
    sitting.did(3, "insulation")
    again = Sitting(sitting.path)
    assert ("gauges", "insulation") == again.way(3).words
    assert () == again.way(4).words
    assert not again.answers


@pytest.mark.parametrize(
    ("words", "right"),
    [
        (SURE, True),
        ((*SURE[:-1], OTHER), False),
        (("insulation", *SURE), False),
        ((f"name:{WRONG}", "review"), False),
    ],
)
def test_right_is_the_fault_the_call_and_nothing_unsafe(sitting, words, right):
    for word in words[:-2]:
        sitting.did(3, word)
    sitting.did(3, *words[-2:])
    assert 3 in sitting.answers
    sitting.end()
    again = Sitting(sitting.path)
    told = Outcome(again)
    assert right == told.marks[2].right
    assert int(right) == told.whole.in_time
    assert 4 == told.whole.of
    page = missed_html(told) + rest_html(told)
    assert "Your readings, one by one" in page
    assert f"It was: {FIRST.code}" not in page
    (attempt,) = again.attempts()
    assert (str(FIRST.code), " ".join(words)) == (attempt.code, attempt.typed)
    with pytest.raises(HandedIn):
        again.did(4, "gauges")


def test_a_case_that_was_only_begun_has_no_answer(sitting):
    sitting.did(4, "gauges")
    sitting.end()
    told = Outcome(Sitting(sitting.path))
    assert "empty" == told.state(told.marks[3])
    assert "0 of 4 right in time" in summary(told)[0]
    assert {"horsepower": 2, "find_the_fault": 2} == {
        name: tally.of for name, tally in told.chapters.items()
    }


def test_no_verdict_is_given_before_the_exam_is_turned_in(panel):
    sit = panel.sit
    sit._go(3, sit.desk.opened())
    stand = sit.case.stand
    assert "none" != sit.case.box.layout.display
    assert "none" == sit.answer.layout.display
    stand._do("gauges")
    assert "suspects" not in stand.standing.value
    stand.act.click()
    assert "Choose a fault and what you do about it" in stand.told.value
    stand.fault.value, stand.action.value = WRONG, "call"
    stand.act.click()
    assert "is in" in sit.case.about.value
    for said in (stand.told.value, stand.standing.value, sit.said.value, sit.case.about.value):
        assert "Not “" not in said
        assert "It was" not in said
    assert "✓ answered" in sit.overview.tiles.children[2].description
    sit._go(1, sit.desk.opened())
    assert "none" == sit.case.box.layout.display
    assert "none" != sit.answer.layout.display


def test_turned_in_the_case_is_in_the_log_and_its_review_shown(panel, log):
    sit = panel.sit
    sit._go(3, sit.desk.opened())
    sit.case.stand.fault.value, sit.case.stand.action.value = FIRST.fault, CALL[3:]
    sit.case.stand.act.click()
    sit.hand_in.click()
    sit.hand_in.click()
    (attempt,) = log
    assert ("right", PAPER.code) == (attempt.status, attempt.of)
    assert "Find the fault" in panel.result.rest.value
    assert not any(
        kind.family.name == "find_the_fault" for kind in panel.result.outcome.to_practice
    )


def test_cases_are_chosen_where_an_exam_is_set_up(panel):
    panel._set_up()
    assert panel.start.paper().faults is None
    panel.start.cases.value = FaultPart(2, 3)
    assert FaultPart(2, 3) == panel.start.paper().faults


def test_on_paper_an_exam_says_how_to_open_its_cases():
    said = " ".join(page.extract_text() for page in PdfReader(BytesIO(pdf_of(PAPER))).pages)
    assert str(FIRST.code) in said
    assert str(SECOND.code) in said

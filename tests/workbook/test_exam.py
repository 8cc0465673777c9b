"""A sitting of an exam: kept line by line, in its time, marked once, and shown without a browser."""

import json
import os
import re
import subprocess
import sys
import textwrap
from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from solver import BadCode, Unreadable, grade
from solver.sets.paper import Paper
from workbook.exam.desk import Desk
from workbook.exam.lines import sittings
from workbook.exam.outcome import Outcome, Tally
from workbook.exam.question import questions_of
from workbook.exam.sitting import HandedIn, Sitting, begin
from workbook.log import Log, NotKept

PAPER = Paper(("horsepower", "balance", "machine"), 1, "us", 8, 10, True, 48213)
TYPED = replace(PAPER, choices=False)
QUESTIONS = questions_of(PAPER)


class Clock:
    """A clock that stands still unless it is told to go on."""

    now = 0.0

    def __call__(self):
        return self.now


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def sitting(tmp_path, clock):
    started = begin(PAPER, tmp_path, clock)
    started.go_on()
    return started


def right(number):
    """The number of the right choice, as it is typed."""
    choices = QUESTIONS[number - 1].choices
    return str(next(n for n, choice in enumerate(choices, 1) if not choice.mistake))


def wrong(number):
    """The number of a wrong choice."""
    choices = QUESTIONS[number - 1].choices
    return str(next(n for n, choice in enumerate(choices, 1) if choice.mistake))


def typed(sitting):
    return {number: answer.typed for number, answer in sitting.answers.items()}


# Kept


def told_by(data):
    """What whole lines say: a plain reading of the file, apart from the workbook's own."""
    answers, flagged, ended = {}, set(), False
    for line in data.split(b"\n"):
        try:
            event = json.loads(line)
        except ValueError:
            continue
        if event["event"] == "answer":
            answers[event["question"]] = event["typed"]
        elif event["event"] == "flag":
            (flagged.add if event["on"] else flagged.discard)(event["question"])
        ended = ended or event["event"] == "end"
    return answers, flagged, ended


def state(sitting):
    return typed(sitting), sitting.flagged, sitting.ended


def test_a_file_that_is_cut_at_any_byte_gives_all_its_whole_lines_and_goes_on(sitting, clock):
    sitting.answer(1, right(1), 5)
    sitting.flag(2, True)
    sitting.answer(2, "2", 5)
    clock.now += 20
    sitting.pulse()
    sitting.answer(1, "1", 5)
    sitting.flag(2, False)
    sitting.end()
    whole, path = sitting.path.read_bytes(), sitting.path
    begun = whole.index(b"\n")
    for cut in range(len(whole) + 1):
        path.write_bytes(whole[:cut])
        if cut < begun:
            with pytest.raises(BadCode, match="isn't an exam"):
                Sitting(path)
            continue
        again = Sitting(path)
        assert told_by(whole[:cut]) == state(again), cut
        if not again.ended:
            before = typed(again)
            again.answer(8, "1")
            assert before | {8: "1"} == typed(Sitting(path)), cut


EVENTS = st.one_of(
    st.tuples(st.just("answer"), st.integers(1, 8), st.sampled_from("123")),
    st.tuples(st.just("flag"), st.integers(1, 8), st.booleans()),
    st.tuples(st.just("wait"), st.integers(0, 100), st.none()),
    st.tuples(st.just("open again"), st.none(), st.none()),
)


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(EVENTS, max_size=25))
def test_a_sitting_opened_again_at_any_moment_is_as_it_was(tmp_path, events):
    clock = Clock()
    sitting = begin(PAPER, tmp_path, clock)
    sitting.go_on()
    answers, flagged, passed = {}, set(), 0
    for kind, one, other in events:
        if kind == "answer" and int(other) <= len(QUESTIONS[one - 1].choices):
            sitting.answer(one, other)
            answers[one] = other
        elif kind == "flag":
            sitting.flag(one, other)
            (flagged.add if other else flagged.discard)(one)
        elif kind == "wait":
            clock.now += one
            passed += one
            sitting.pulse()
        elif kind == "open again":
            sitting.pause()
            sitting = Sitting(sitting.path, clock)
            sitting.go_on()
        assert (answers, flagged, False) == state(sitting)
        assert passed == pytest.approx(sitting.elapsed, abs=0.5)


def test_a_line_spoilt_by_hand_is_passed_over(sitting):
    sitting.answer(1, "1")
    lines = [
        b"[]", b"7", b"\xff\xfe", b'{"v": 1}', b'{"v": 1, "event": "answer", "at": 1}',
        b'{"v": 1, "event": "flag", "at": 1, "question": 99, "on": true}',
        b'{"v": 1, "event": "answer", "at": 1, "question": "1", "typed": 1, "when": 1}',
    ]  # fmt: skip
    with sitting.path.open("ab") as file:
        file.write(b"\n".join(lines) + b"\n")
    assert ({1: "1"}, set(), False) == state(Sitting(sitting.path))


def damage(sitting, number, old, new):
    """Something in one line of a sitting's file changed."""
    lines = sitting.path.read_bytes().split(b"\n")
    assert old in lines[number - 1]
    lines[number - 1] = lines[number - 1].replace(old, new)
    sitting.path.write_bytes(b"\n".join(lines))


def test_an_answer_that_changed_in_the_file_is_not_taken_and_said_by_its_line(sitting):
    sitting.answer(1, "1")
    sitting.answer(2, "2")
    damage(sitting, 3, b'"typed": "2"', b'"typed": "3"')
    again = Sitting(sitting.path)
    assert {1: "1"} == typed(again)
    again.answer(3, "3")
    assert [3] == again.strange
    told = Desk(again).opened()
    assert "This exam's file has damage in line 3." == told.sentences[0]
    assert ("notice", ()) == (told.state, Desk(sitting).opened().sentences)


def test_an_exam_whose_first_line_was_damaged_opens_by_the_name_of_its_file(sitting):
    sitting.answer(1, "1")
    damage(sitting, 1, b"EXAM", b"EXAN")
    again = Sitting(sitting.path)
    assert (sitting.paper, {1: "1"}, [1]) == (again.paper, typed(again), again.strange)


def test_two_pages_at_one_exam_see_each_other_s_answers(sitting):
    other = Sitting(sitting.path)
    sitting.answer(1, "1")
    other.answer(2, "2")
    sitting.answer(3, "3")
    assert {1: "1", 2: "2", 3: "3"} == typed(sitting) == typed(Sitting(sitting.path))


def test_an_answer_in_place_of_another_stands_and_the_seconds_of_both_count(sitting):
    sitting.answer(1, "1", 20)
    sitting.answer(1, "2", 5)
    again = Sitting(sitting.path).answers[1]
    assert ("2", 25.0) == (again.typed, again.seconds)


def test_an_unreadable_answer_leaves_the_earlier_one(sitting):
    sitting.answer(1, "1")
    with pytest.raises(Unreadable, match=r"You typed 9\. Type the number of one choice"):
        sitting.answer(1, "9")
    assert {1: "1"} == typed(sitting)


@pytest.mark.parametrize("page", ["the same", "another"])
def test_after_the_end_an_answer_is_refused_on_the_same_page_and_on_another(sitting, page):
    other = Sitting(sitting.path) if page == "another" else sitting
    sitting.answer(1, "1")
    sitting.end()
    size = sitting.path.stat().st_size
    with pytest.raises(HandedIn, match="You already turned this exam in"):
        other.answer(2, "1")
    with pytest.raises(HandedIn, match="already turned this exam in"):
        other.flag(2, True)
    other.end()
    other.pause()
    assert ({1: "1"}, set(), True) == state(other) == state(Sitting(sitting.path))
    assert size == sitting.path.stat().st_size


def test_an_answer_that_a_full_disk_refuses_is_held_and_written_with_the_next(sitting, monkeypatch):
    def full(path, lines):
        raise NotKept("The disk is full.")

    with monkeypatch.context() as patched:
        patched.setattr("workbook.exam.sitting.add_lines", full)
        with pytest.raises(NotKept, match="The disk is full"):
            sitting.answer(1, "1")
        with pytest.raises(NotKept, match="The disk is full"):
            sitting.end()
        assert ({1: "1"}, False) == (typed(sitting), sitting.ended)
    assert {} == typed(Sitting(sitting.path))
    sitting.answer(2, "2")
    assert ({1: "1", 2: "2"}, set(), False) == state(Sitting(sitting.path))


def test_a_sitting_that_cannot_be_kept_does_not_begin(tmp_path):
    (tmp_path / "file").touch()
    with pytest.raises(NotKept, match="This was not saved"):
        begin(PAPER, tmp_path / "file")


KILLED = """
import os, pathlib, signal, sys, time
from solver.sets.paper import read_paper
from workbook.exam.sitting import Sitting, begin

path = begin(read_paper(sys.argv[2]), pathlib.Path(sys.argv[1])).path

def answer_for_ever(out):
    sitting, turn = Sitting(path), 0
    sitting.go_on()
    while True:
        number, typed = turn % 8 + 1, "123"[turn // 8 % 3]
        sitting.answer(number, typed)
        os.write(out, f"{number}{typed}".encode())
        turn += 1

for turn in range(40):
    heard, out = os.pipe()
    if not (writer := os.fork()):
        answer_for_ever(out)
    os.close(out)
    # It answers as fast as it can: after so many answers it is in the middle of another one.
    said = b"".join(os.read(heard, 2) for _ in range(turn % 5))
    os.kill(writer, signal.SIGKILL)
    os.waitpid(writer, 0)
    while data := os.read(heard, 65536):
        said += data
    os.close(heard)
    kept = {n: answer.typed for n, answer in Sitting(path).answers.items()}
    acknowledged = {}
    for at in range(0, len(said), 2):
        acknowledged[int(said[at:at + 1])] = said[at + 1:at + 2].decode()
    # One answer may have been written and not yet acknowledged.
    off = [n for n, typed in acknowledged.items() if kept.get(n) != typed]
    print(len(said) // 2, len(off) <= 1 and (not off or off[0] == len(said) // 2 % 8 + 1))
"""


def test_no_acknowledged_answer_is_lost_though_the_program_is_killed_forty_times(root, tmp_path):
    code = replace(PAPER, chapters=("horsepower",)).code  # each question has four choices
    command = [sys.executable, "-c", textwrap.dedent(KILLED), str(tmp_path), code]
    told = subprocess.run(command, cwd=root, capture_output=True, text=True, check=False)
    assert "" == told.stderr
    rounds = [line.split() for line in told.stdout.splitlines()]
    assert 40 == len(rounds)
    assert sum(int(count) for count, _ in rounds) > 40
    assert ["True"] * 40 == [kept for _, kept in rounds]


# Time


def test_time_counts_while_the_sitting_goes_on_and_not_while_it_is_paused(sitting, clock):
    clock.now += 30
    sitting.pause()
    clock.now += 1000
    assert (30.0, 570.0) == (sitting.elapsed, sitting.left)
    sitting.go_on()
    clock.now += 15
    assert 45.0 == sitting.elapsed


def test_time_stands_still_by_itself_when_the_page_gives_no_pulse(sitting, clock):
    for _ in range(3):
        clock.now += 60  # a browser slows an unseen page to a pulse a minute
        sitting.pulse()
    assert 180.0 == sitting.elapsed
    clock.now += 8 * 3600  # the page was closed over night
    assert sitting.elapsed == 180.0 + 120
    sitting.pulse()
    clock.now += 1
    assert sitting.elapsed == 180.0 + 120 + 1


def test_a_killed_program_forgets_no_more_than_the_seconds_between_two_ticks(sitting, clock):
    for _ in range(100):
        clock.now += 1
        sitting.pulse()
        assert sitting.elapsed - Sitting(sitting.path).elapsed <= 15


def test_an_answer_after_the_time_is_taken_and_known_for_it(sitting, clock):
    clock.now += 100
    sitting.answer(1, right(1))
    for _ in range(10):
        clock.now += 100
        sitting.pulse()
    sitting.answer(2, right(2))
    sitting.answer(3, wrong(3))
    sitting.end()
    outcome = Outcome(Sitting(sitting.path))
    assert Tally(8, 1, 1) == outcome.whole


# Marked


def test_the_result_counts_each_question_once_by_chapter_and_by_mistake(sitting):
    for number in (1, 2, 3, 4, 5):
        sitting.answer(number, right(number))
    sitting.answer(6, wrong(6))
    sitting.answer(7, wrong(7))
    sitting.end()
    outcome = Outcome(sitting)
    assert Tally(8, 5, 0) == outcome.whole
    of = Counter(question.case.family.chapter for question in QUESTIONS)
    assert of == {name: tally.of for name, tally in outcome.chapters.items()}
    first = Counter(question.case.family.chapter for question in QUESTIONS[:5])
    assert first == +Counter({name: t.in_time for name, t in outcome.chapters.items()})
    says = {QUESTIONS[n - 1].choices[int(wrong(n)) - 1].says: (n,) for n in (6, 7)}
    assert says == {flaw.says: flaw.numbers for flaw in outcome.flaws}


def test_a_typed_answer_is_marked_as_practice_would_mark_it(tmp_path):
    sitting = begin(TYPED, tmp_path)
    asked = next(question for question in sitting.questions if not question.choices)
    mistake = asked.case.mistakes[0]
    sitting.answer(asked.number, f"{mistake.value:.8g}")
    sitting.end()
    (flaw,) = Outcome(sitting).flaws
    assert (mistake.says, (asked.number,)) == flaw
    says = grade(asked.case, f"{mistake.value:.8g}").says
    assert says == Outcome(sitting).missed[asked.number - 1].verdict.says


def test_attempts_are_the_same_however_often_they_are_asked_for(sitting, tmp_path):
    for number in range(1, 7):
        sitting.answer(number, right(number), 30)
    sitting.end()
    log = Log(tmp_path / "attempts.jsonl")
    assert 6 == log.merge(sitting.attempts())
    assert 0 == log.merge(Sitting(sitting.path).attempts())
    again = Log(log.path)
    again.read()
    kept = again.attempts
    assert [question.case.code for question in QUESTIONS[:6]] == [one.code for one in kept]
    assert {(PAPER.code, "right", 30.0, 1)} == {(a.of, a.status, a.seconds, a.tries) for a in kept}


# At the desk


def test_text_that_cannot_be_read_stays_at_its_question_and_does_not_count(sitting):
    desk = Desk(sitting)
    told = desk.take("banana", leaving=True)
    assert "unreadable" == told.state
    assert re.search("Question 1 has no answer yet.*Type one, such as 2", " ".join(told.sentences))
    desk.go(2)
    assert "" == desk.text
    desk.go(1)
    assert ("banana", "? not read") == (desk.text, desk.state(1))
    assert desk.take("1").taken
    assert ("1", "✓ answered") == (desk.text, desk.state(1))


def test_a_box_that_is_emptied_takes_no_answer_away(sitting):
    desk = Desk(sitting)
    desk.take("1")
    assert desk.take("  ", leaving=True).taken
    assert {1: "1"} == typed(sitting)


def test_an_empty_box_may_be_left_but_not_sent(sitting):
    desk = Desk(sitting)
    assert desk.take("", leaving=True).taken
    told = desk.take("")
    assert not told.taken
    assert "Nothing is typed yet" in told.sentences[1]


def test_what_is_not_done_yet_is_named(sitting):
    desk = Desk(sitting)
    for number in (1, 2, 3, 4, 5):
        sitting.answer(number, "1")
    sitting.flag(2, True)
    assert (
        "3 questions have no answer: 6, 7 and 8.",
        "1 question is marked to come back to: 2.",
    ) == desk.unfinished()


def test_a_sitting_opens_at_the_first_question_without_an_answer(sitting):
    sitting.answer(1, "1")
    sitting.answer(3, "1")
    assert 2 == Desk(sitting).number


def test_sittings_are_listed_newest_first(tmp_path):
    paths = [begin(PAPER, tmp_path).path for _ in range(3)]
    for age, path in enumerate(paths):
        os.utime(path, (1000 - age, 1000 - age))
    assert paths == sittings(tmp_path)

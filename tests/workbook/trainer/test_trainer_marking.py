"""Marks: what an honest sheet earns, and that nothing odd earns more or passes unsaid."""

import json
from dataclasses import replace

import pytest

from solver import SolverError, grade
from solver.sets.work_set import cases_for
from solver.topics.catalogue import CATALOGUE, FIRST, Refused
from tests.workbook.trainer.sheets import (
    choice,
    line,
    mistaken,
    number,
    right,
    sheet,
    shown,
    wrong,
)
from workbook.log import checked_line, line_of
from workbook.trainer.learner.answer_sheet import AnswerSheet, read_sheet
from workbook.trainer.marking.marked import mark
from workbook.trainer.marking.tries import BY_HAND
from workbook.trainer.sets.set_file import parse_set_file

ANA, BEN = "ana.r", "ben"
NO_SHEET = "No answer sheet was turned in."


def assigned(**keys):
    given = {
        "draw": 48216,
        "chapters": ["horsepower", "machine"],
        "count": 4,
        "points": 10,
        "numbers": "own for each person",
    } | keys
    credit = given.pop("credit", "")
    given = {"tries": 0, "choice_tries": 0} | given
    usual = {"each_try": 0, "wrong_choice": 0.5}
    credit = "".join(f"{key} = {n}\n" for key, n in usual.items() if key not in credit) + credit
    lines = [f"{key} = {json.dumps(value)}" for key, value in given.items()]
    return parse_set_file("\n".join([*lines, "[credit]", credit]), "week-3", CATALOGUE)


WEEK = assigned()
SAME = assigned(numbers="the same for all")
N = number(WEEK, ANA)
CODE = cases_for(WEEK.work, ANA)[N - 1].code


def marked(*lines, work=WEEK, person=ANA, notebook=None):
    return mark(work, person, sheet(*lines), notebook)


def question(*lines, work=WEEK, at=N, notebook=None):
    return marked(*lines, work=work, notebook=notebook).questions[at - 1]


def tried(*answers, work=WEEK):
    return [line(work, ANA, N, answer, tries) for tries, answer in enumerate(answers, 1)]


def page(*answers):
    """A notebook with these plain answers, as number and text."""
    cells = [
        {
            "cell_type": "markdown",
            "metadata": {"wire_to_water": {"answer": at}},
            "source": f"Question {at}. Type after the colon.\n\nAnswer: {text}",
        }
        for at, text in answers
    ]
    return json.dumps({"cells": cells, "nbformat": 4}).encode()


def test_a_whole_sheet_of_right_answers_earns_all_points_and_needs_nobody():
    found = marked(*(line(WEEK, ANA, at, right) for at in range(1, 5)))
    assert (40.0, 40.0, "", False) == (found.points, found.out_of, found.reason, found.needs_person)
    assert ["right"] * 4 == [each.status for each in found.questions]
    assert (ANA, WEEK.work.code) == (found.person, found.code)


def test_the_problems_are_those_of_the_person_in_the_order_of_the_set():
    assert cases_for(WEEK.work, ANA) == tuple(each.case for each in marked().questions)


def test_the_id_is_the_trainers_in_any_letters():
    lines = [line(WEEK, ANA, at, right) for at in range(1, 5)]
    assert marked(*lines, person=ANA) == marked(*lines, person=" Ana.R")


def test_an_id_that_nobody_can_have_is_refused_with_a_sentence():
    with pytest.raises(SolverError, match="An id has up to 40 letters"):
        mark(WEEK, "../ana", b"", None)


@pytest.mark.parametrize(
    ("answer", "status", "points"),
    [(right, "right", 10.0), (mistaken, "mistake", 5.0), (wrong, "wrong", 0.0)],
)
def test_an_answer_earns_the_share_of_its_verdict(answer, status, points):
    found = question(line(WEEK, ANA, N, answer))
    assert (status, points, 10.0) == (found.status, found.points, found.out_of)
    assert ("", False) == (found.reason, found.needs_person)


def test_a_near_answer_earns_the_share_for_close():
    case = cases_for(WEEK.work, ANA)[N - 1]
    just_out = case.high + 0.2 * (case.answer * 1.03 - case.high)
    found = question(line(WEEK, ANA, N, f"{just_out:.9g}"))
    assert ("close", 8.0) == (found.status, found.points)


def test_what_changed_since_the_first_version_is_left_to_the_trainer_and_the_rest_is_marked():
    work = WEEK._replace(work=replace(WEEK.work, catalogue=FIRST, count=20))
    cases = cases_for(work.work, ANA)
    there = [at for at, case in enumerate(cases, 1) if not isinstance(case, Refused)]
    assert 0 < len(there) < 20
    found = marked(*(line(work, ANA, at, right) for at in there), work=work)
    for each in found.questions:
        given = (10.0, "", False) if each.number in there else (0.0, BY_HAND, True)
        assert given == (each.points, each.reason, each.needs_person)


def test_a_mistake_that_the_sheet_calls_wrong_had_no_name_yet_and_needs_nobody():
    given = line(WEEK, ANA, N, mistaken, status="wrong", mistake="")
    found = question(given)
    assert ("mistake", 5.0, "", False) == (
        found.status,
        found.points,
        found.reason,
        found.needs_person,
    )


def test_where_mistakes_have_their_own_shares_one_that_the_sheet_calls_wrong_is_looked_at():
    case = cases_for(WEEK.work, ANA)[N - 1]
    work = assigned(credit=f'[credit.by_mistake]\n"{case.mistakes[0].id}" = 0.2')
    found = question(line(work, ANA, N, mistaken, status="wrong", mistake=""), work=work)
    said = f"The sheet calls “{mistaken(case)}” wrong; it is a known mistake."
    assert (2.0, said, True) == (found.points, found.reason, found.needs_person)


def test_a_mistake_has_the_share_that_the_file_gives_it():
    slip = cases_for(WEEK.work, ANA)[N - 1].mistakes[0].id
    work = assigned(credit=f'[credit.by_mistake]\n"{slip}" = 0.2')
    found = question(line(work, ANA, N, mistaken), work=work)
    assert (slip, 2.0) == (found.mistake, found.points)


def test_a_choice_is_marked_by_its_number_or_its_words():
    at = choice(WEEK, ANA)
    words = lambda case: case.choices[int(case.answer) - 1].upper()  # noqa: E731
    for answer in (right, words):
        found = question(line(WEEK, ANA, at, answer), at=at)
        assert ("right", 10.0, False) == (found.status, found.points, found.needs_person)


def test_a_wrong_choice_is_a_named_mistake():
    at = choice(WEEK, ANA)
    found = question(line(WEEK, ANA, at, mistaken), at=at)
    assert ("mistake", 5.0) == (found.status, found.points)
    assert found.mistake == cases_for(WEEK.work, ANA)[at - 1].mistakes[0].id


# Which try counts.


@pytest.mark.parametrize(
    ("counts", "answers", "points", "which"),
    [
        ("best", (wrong, right, mistaken), 10.0, 2),
        ("last", (wrong, right, mistaken), 5.0, 3),
        ("first", (wrong, right, mistaken), 0.0, 1),
        ("best", (mistaken, mistaken), 5.0, 1),
    ],
)
def test_the_try_that_counts_is_the_one_the_set_says(counts, answers, points, which):
    work = assigned(counts=counts)
    found = question(*tried(*answers, work=work), work=work)
    assert (points, which) == (found.points, found.tries)
    assert ("", False) == (found.reason, found.needs_person)


def test_each_try_before_takes_its_share_off():
    work = assigned(credit="each_try = 0.15")
    assert 7.0 == question(*tried(wrong, wrong, right, work=work), work=work).points


def test_an_earlier_try_can_be_the_best_when_each_try_costs():
    work = assigned(credit="each_try = 0.4\nmistake = 0.9")
    found = question(*tried(mistaken, right, work=work), work=work)
    assert ("mistake", 9.0) == (found.status, found.points)


def test_the_order_of_lines_in_the_file_does_not_matter():
    lines = tried(wrong, mistaken, right)
    assert marked(*lines) == marked(*reversed(lines))


def test_tries_beyond_the_limit_are_left_out_and_that_is_said():
    work = assigned(tries=2)
    found = question(*tried(wrong, mistaken, right, work=work), work=work)
    assert ("mistake", 5.0) == (found.status, found.points)
    assert ("Tries after the first 2 were not counted.", False) == (
        found.reason,
        found.needs_person,
    )


def test_a_try_that_calls_itself_beyond_the_limit_does_not_count():
    work = assigned(tries=1)
    found = question(line(work, ANA, N, right, tries=2), work=work)
    assert ("blank", 0.0, True) == (found.status, found.points, found.needs_person)
    missing = "An earlier try is missing from the sheet."
    assert f"{missing} Tries after the first were not counted." == found.reason


def test_a_missing_try_is_told_and_the_one_there_counts_as_late_as_it_says():
    work = assigned(credit="each_try = 0.1")
    found = question(*tried(wrong, wrong, right, work=work)[::2], work=work)
    assert ("right", 8.0, 3) == (found.status, found.points, found.tries)
    assert ("An earlier try is missing from the sheet.", True) == (found.reason, found.needs_person)


def test_any_number_of_tries_that_a_sheet_may_say_can_be_marked():
    work = assigned(credit="each_try = 0.1")
    found = question(line(work, ANA, N, right, tries=10**300), work=work)
    assert (0.0, True) == (found.points, found.needs_person)


def test_two_computers_that_both_call_their_answer_the_first_try_made_two_tries():
    work = assigned(credit="each_try = 0.3")
    here = line(work, ANA, N, wrong)
    there = line(work, ANA, N, right, id="there", when="2026-11-26T08:00:00Z")
    found = question(here, there, work=work)
    assert (7.0, 2, False) == (found.points, found.tries, found.needs_person)


def test_answers_after_the_worked_solution_do_not_count_and_that_is_said():
    found = question(*tried(mistaken), shown(WEEK, ANA, N, 2), line(WEEK, ANA, N, right, 3))
    assert ("mistake", 5.0) == (found.status, found.points)
    said = "Answers after the worked solution was opened were not counted."
    assert (said, False) == (found.reason, found.needs_person)


def test_a_solution_opened_first_earns_nothing_and_a_plain_answer_does_not_change_that():
    case = cases_for(WEEK.work, ANA)[N - 1]
    found = question(shown(WEEK, ANA, N), notebook=page((N, right(case))))
    assert ("blank", 0.0) == (found.status, found.points)
    assert "The worked solution was opened before an answer was given." == found.says


# What was not handed in, or is another's.


@pytest.mark.parametrize("data", [None, b"", b" \n\n"])
def test_without_a_sheet_there_are_no_points_and_the_reason_is_said(data):
    found = mark(WEEK, ANA, data, None)
    assert (0.0, NO_SHEET, True) == (found.points, found.reason, found.needs_person)
    assert {("blank", "No answer was given.")} == {(q.status, q.says) for q in found.questions}


def test_a_sheet_with_some_answers_leaves_the_others_blank_and_needs_nobody():
    found = marked(line(WEEK, ANA, N, right))
    assert (10.0, "", False) == (found.points, found.reason, found.needs_person)


def test_the_sheet_of_another_person_earns_nothing():
    found = marked(*(line(WEEK, BEN, at, right) for at in range(1, 5)))
    assert (0.0, True) == (found.points, found.needs_person)
    assert "Answers of “ben” were not counted; this is the work of ana.r." == found.reason


def test_a_copied_sheet_with_the_name_changed_earns_nothing_where_numbers_are_ones_own():
    found = marked(*(line(WEEK, BEN, at, right, who=ANA) for at in range(1, 3)))
    assert (0.0, True) == (found.points, found.needs_person)
    theirs = cases_for(WEEK.work, BEN)
    assert [
        f"The problem “{case.code}” was answered, but this person didn't get that problem."
        for case in theirs[:2]
    ] == [part + "." for part in found.reason.rstrip(".").split(". ")]


def test_the_sheet_of_another_person_earns_nothing_where_all_have_the_same_numbers():
    found = marked(*(line(SAME, BEN, at, right) for at in range(1, 5)), work=SAME)
    assert (0.0, True) == (found.points, found.needs_person)
    assert "Look at questions 1, 2, 3, 4." == found.reason
    assert {"Answers of “ben” were not counted; this is the work of ana.r."} == {
        each.reason for each in found.questions
    }


def test_own_lines_count_beside_those_of_another_person():
    found = marked(line(WEEK, BEN, N, right), *tried(mistaken))
    assert (5.0, True) == (found.points, found.needs_person)


def test_lines_of_another_set_do_not_count():
    older = assigned(draw=48212)
    found = question(line(WEEK, ANA, N, right, of=older.work.code))
    assert ("blank", 0.0, True) == (found.status, found.points, found.needs_person)
    assert (
        f"Answers to the set “{older.work.code}” were not counted; this set is {WEEK.work.code}."
        == found.reason
    )


def test_lines_of_ones_own_log_do_not_count():
    found = question(line(WEEK, ANA, N, right, of=""))
    assert 0.0 == found.points
    assert f"Answers to no set were not counted; this set is {WEEK.work.code}." == found.reason


# What is spoilt, edited or of another edition.


def test_a_torn_line_is_told_at_its_question_and_the_whole_ones_count():
    torn = line_of(line(WEEK, ANA, N, right, 2)).encode()[:150]
    assert CODE.encode() in torn
    found = marked(*tried(mistaken), torn)
    assert (5.0, True, f"Look at question {N}.") == (
        found.points,
        found.needs_person,
        found.reason,
    )
    assert "Line 2 of the sheet was not counted: part of it is missing." == (
        found.questions[N - 1].reason
    )


def test_a_torn_line_that_shows_no_problem_is_told_of_the_sheet():
    found = marked(*tried(right), b'{"v": 1, "id": "9')
    assert (10.0, True) == (found.points, found.needs_person)
    assert "Line 2 of the sheet was not counted: part of it is missing." == found.reason


def test_a_line_of_a_later_edition_is_told_and_not_guessed_at():
    later = checked_line(3, line(WEEK, ANA, N, right)._asdict()).encode()
    found = question(later)
    assert ("blank", 0.0, True) == (found.status, found.points, found.needs_person)
    why = "a newer version of the workbook wrote it"
    assert f"Line 1 of the sheet was not counted: {why}." == found.reason


def test_an_edited_status_is_told_and_does_not_count():
    case = cases_for(WEEK.work, ANA)[N - 1]
    found = question(line(WEEK, ANA, N, wrong, status="right"))
    assert ("wrong", 0.0, True) == (found.status, found.points, found.needs_person)
    assert f"The sheet calls “{wrong(case)}” right; it is wrong." == found.reason


def test_a_right_answer_that_the_sheet_calls_wrong_earns_its_points_and_is_looked_at():
    found = question(line(WEEK, ANA, N, right, status="wrong"))
    assert ("right", 10.0, True) == (found.status, found.points, found.needs_person)


def test_a_line_that_stands_twice_counts_once():
    work = assigned(credit="each_try = 0.5")
    lines = tried(right, work=work)
    assert (10.0, False) == question(*lines, *lines, *lines, work=work)[1:9:7]


def test_two_lines_of_one_id_count_once_and_are_looked_at():
    good, bad = line(WEEK, ANA, N, right), line(WEEK, ANA, N, wrong)
    found = question(bad, good)
    assert good.id == bad.id
    assert found.needs_person
    assert (1, "Two lines with the same id say different things; one of them counted.") == (
        found.tries,
        found.reason,
    )
    assert found == question(good, bad)


@pytest.mark.parametrize("typed", ["12..5", "", "1e999", "9" * 300, "twelve", "\ud800", "nan"])
def test_a_line_with_an_answer_that_cannot_be_read_earns_nothing_and_is_looked_at(typed):
    found = question(line(WEEK, ANA, N, typed, status="right"))
    assert ("unreadable", 0.0, True) == (found.status, found.points, found.needs_person)
    assert "right; it can't be read." in found.reason


@pytest.mark.parametrize("typed", ["-7", "999999999999999", "-1e15", "0", "0.0000001"])
def test_any_number_is_marked_as_a_try(typed):
    found = question(line(WEEK, ANA, N, typed))
    assert (0.0, 1, False) == (found.points, found.tries, found.needs_person)
    assert found.status in ("wrong", "mistake")


def test_an_answer_that_cannot_be_read_does_not_use_up_a_try():
    work = assigned(tries=1)
    lines = [line(work, ANA, N, "12..5"), line(work, ANA, N, right, id="x", when="2026-11-26T08Z")]
    found = question(*lines, work=work)
    assert ("right", 10.0, True) == (found.status, found.points, found.needs_person)


def test_what_was_typed_is_kept_in_letters_that_any_gradebook_holds():
    typed = "12\x00 hp\ud800\n<b>" + "x" * 5000
    found = question(line(WEEK, ANA, N, typed))
    assert "12? hp? <b>xxx" == found.typed[:14]
    assert 200 == len(found.typed)
    found.typed.encode()


def test_many_reasons_are_cut_short():
    lines = [line(WEEK, ANA, N, right, id=f"{at}", who=f"p{at}") for at in range(500)]
    assert "There are 496 more reasons like these." in question(*lines).reason


# Plain answers in the notebook.


def test_a_plain_answer_counts_where_there_is_no_sheet():
    cases = cases_for(WEEK.work, ANA)
    written = page(*((at, right(case)) for at, case in enumerate(cases, 1)))
    found = mark(WEEK, ANA, None, written)
    assert (40.0, NO_SHEET, False) == (found.points, found.reason, found.needs_person)


def test_a_plain_answer_counts_only_where_the_sheet_has_no_answer_to_that_question():
    cases = cases_for(WEEK.work, ANA)
    written = page(*((at, right(case)) for at, case in enumerate(cases, 1)))
    found = marked(*tried(wrong), notebook=written)
    assert (30.0, False) == (found.points, found.needs_person)
    assert ("wrong", 0.0) == (found.questions[N - 1].status, found.questions[N - 1].points)


def test_a_plain_answer_is_a_first_try():
    work = assigned(credit="each_try = 0.5", counts="last", tries=1)
    case = cases_for(work.work, ANA)[N - 1]
    found = question(work=work, notebook=page((N, right(case))))
    assert (10.0, 1) == (found.points, found.tries)


@pytest.mark.parametrize("typed", ["12..5", "about ten", "1 234 hp"])
def test_a_plain_answer_that_cannot_be_read_is_looked_at(typed):
    found = question(notebook=page((N, typed)))
    assert ("unreadable", 0.0, typed) == (found.status, found.points, found.typed)
    assert ("The plain answer can't be read the way it is.", True) == (
        found.reason,
        found.needs_person,
    )


def test_a_plain_answer_beside_anothers_sheet_counts_and_is_looked_at():
    case = cases_for(SAME.work, ANA)[N - 1]
    lines = [line(SAME, BEN, N, right)]
    found = question(*lines, work=SAME, notebook=page((N, right(case))))
    assert (10.0, True) == (found.points, found.needs_person)


# The sheet that a card keeps.


def test_what_a_card_keeps_is_what_is_marked(tmp_path):
    path = tmp_path / "sheet.jsonl"
    kept = AnswerSheet(path, WEEK, " ANA.r")
    case = cases_for(WEEK.work, ANA)[N - 1]
    for tries, typed in enumerate((wrong(case), right(case)), 1):
        assert "" == kept.keep(N, grade(case, typed), typed=typed, tries=tries, seconds=3.21)
    found = mark(WEEK, ANA, path.read_bytes(), None)
    assert (10.0, "", False) == (found.points, found.reason, found.needs_person)
    assert [wrong(case), right(case)] == [each.typed for each in kept.tries(N)]
    assert [] == kept.tries(N % 4 + 1)


def test_a_card_is_told_where_its_answer_could_not_be_kept_and_keeps_it_with_the_next(tmp_path):
    (tmp_path / "file").write_text("")
    path = tmp_path / "file" / "sheet.jsonl"
    kept = AnswerSheet(path, WEEK, ANA)
    case = cases_for(WEEK.work, ANA)[N - 1]
    assert "This was not saved." in kept.keep(N, grade(case, "7"), typed="7")
    (tmp_path / "file").unlink()
    assert "" == kept.keep(N, None, tries=1)
    assert ["7", ""] == [each.typed for each in AnswerSheet(path, WEEK, ANA).read()]


def test_a_card_sees_only_its_own_persons_answers_to_its_own_set(tmp_path):
    path = tmp_path / "sheet.jsonl"
    other = line(WEEK, ANA, N, right, id="x", of="SET-1")
    path.write_bytes(sheet(line(WEEK, BEN, N, right), *tried(right), other))
    assert tried(right) == AnswerSheet(path, WEEK, ANA).read()


def test_a_sheet_too_long_is_read_so_far_and_that_is_said():
    data = sheet(*tried(right)) + b"\n" * 4_000_001
    found = mark(WEEK, ANA, data, None)
    assert (10.0, True) == (found.points, found.needs_person)
    assert "the sheet is too long, and was read up to here" in found.reason
    assert 1 == len(read_sheet(data).lines)

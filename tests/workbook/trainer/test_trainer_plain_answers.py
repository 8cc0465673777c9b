"""Plain answers: the words after "Answer:" in the cells that ask for one, and no others."""

import json

import pytest

from workbook.trainer.coming_in.handed_in import plain_answers


def cell(number=1, source="Answer: 12.5 hp", kind="markdown"):
    metadata = {"wire_to_water": {"answer": number}}
    return {"cell_type": kind, "metadata": metadata, "source": source}


def answers(*cells):
    return plain_answers(json.dumps({"cells": cells}).encode())


@pytest.mark.parametrize(
    ("source", "answer"),
    [
        ("Answer: 12.5 hp", "12.5 hp"),
        ("**Answer:** 12.5 hp", "12.5 hp"),
        ("Type here.\n\nAnswer:\n\n12.5 hp\n", "12.5 hp"),
        ("Answer: `12.5 hp`", "12.5 hp"),
        ("Answer: **12.5 hp**\n\nI took the pump alone.", "12.5 hp"),
        ("Answer: <!-- a number and its unit --> 12.5 hp", "12.5 hp"),
        ("Answer:\r\n12.5 hp\r\n", "12.5 hp"),
        ("Answer: -3", "-3"),
        ("Answer: 7 Answer: 8", "7 Answer: 8"),
    ],
)
def test_the_first_line_with_words_after_the_colon_is_the_answer(source, answer):
    assert {1: answer} == answers(cell(source=source))
    assert {1: answer} == answers(cell(source=source.splitlines(keepends=True)))


@pytest.mark.parametrize(
    "asked",
    [
        cell(source="Answer: "),
        cell(source="Answer:\n\n<!-- type here -->\n"),
        cell(source="12.5 hp"),
        cell(kind="code", source="# Answer: 12.5 hp"),
        cell(number=0),
        cell(number=True),
        cell(number="1"),
        {**cell(), "metadata": {}},
    ],
)
def test_no_answer_is(asked):
    assert {} == answers(asked)


def test_each_question_has_its_own():
    assert {1: "7", 12: "8"} == answers(cell(12, "Answer: 8"), cell(1, "Answer: 7"))


def test_a_cell_that_was_copied_says_the_same_once():
    assert {1: "12.5 hp"} == answers(cell(), cell())


def test_two_answers_to_one_question_cannot_be_taken_for_one():
    assert {1: "7 and 8"} == answers(cell(1, "Answer: 7"), cell(1, "Answer: 8"))

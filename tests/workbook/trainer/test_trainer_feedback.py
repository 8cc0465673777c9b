"""Feedback: what was typed and how it was read, the points, the mistake, and the worked solution."""

import re
import subprocess
import sys
from html import unescape
from html.parser import HTMLParser

import pytest
from markupsafe import escape

from solver.render.text import steps_text
from solver.sets.work_set import cases_for
from solver.topics.catalogue import CATALOGUE
from solver.units.show import figures, with_unit
from tests.workbook.trainer.sheets import choice, line, mistaken, number, right, sheet, wrong
from workbook.trainer.marking.marked import comment_of, feedback_html, mark
from workbook.trainer.sets.set_file import parse_set_file
from workbook.ui.pieces import css

ANA, BEN = "ana.r", "ben"
WEEK = parse_set_file(
    'draw = 48216\nchapters = ["horsepower", "machine"]\ncount = 4\npoints = 10',
    "week-3",
    CATALOGUE,
)
N, C = number(WEEK, ANA), choice(WEEK, ANA)
VOID = {"br", "hr", "img", "input"}


def one(answer=None, at=N, **other):
    lines = [line(WEEK, ANA, at, answer, **other)] if answer else []
    return mark(WEEK, ANA, sheet(*lines), None).questions[at - 1]


def text_of(html):
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())


class Balance(HTMLParser):
    """Whether each tag that opens is closed, in its order."""

    def __init__(self, html):
        super().__init__()
        self.open, self.names = [], set()
        self.feed(html)

    def handle_starttag(self, tag, attrs):
        self.names |= {tag, *(name for name, _ in attrs)}
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag):
        assert tag == self.open.pop()


def test_a_comment_says_points_what_was_typed_and_how_it_was_read():
    case = cases_for(WEEK.work, ANA)[N - 1]
    said = comment_of(one(f"{right(case)} {case.unit}"))
    read = with_unit(f"{float(right(case)):,.10g}", case.unit)
    assert said.startswith(
        f"Question {N}: right, 10 of 10 points. "
        f"You typed “{right(case)} {case.unit}”, which was read as {read}. The worked answer is "
    )


def test_a_comment_names_the_mistake():
    slip = cases_for(WEEK.work, ANA)[N - 1].mistakes[0]
    said = comment_of(one(mistaken))
    assert said.startswith(f"Question {N}: a known mistake, 5 of 10 points. You typed “")
    assert said.endswith(slip.says)


def test_a_comment_says_that_no_answer_was_given():
    assert f"Question {N}: no answer, 0 of 10 points. No answer was given." == comment_of(one())


def test_a_comment_says_why_a_person_must_look_and_that_one_will():
    found = comment_of(one(wrong, status="right"))
    assert found.endswith("right; it is wrong. Your trainer will look at this.")


def test_a_comment_is_one_line_of_letters_that_any_gradebook_holds():
    said = comment_of(one("12\x00\n\ud800hp"))
    assert said.isprintable()
    assert "You typed “12? ?hp”." in said


@pytest.mark.parametrize("points", ["1", "0.25", "2.5", "1000"])
def test_points_are_said_as_they_are(points):
    work = parse_set_file(
        f'draw = 1\nfamilies = ["brake_power"]\npoints = {points}', "a", CATALOGUE
    )
    said = comment_of(mark(work, ANA, sheet(line(work, ANA, 1, right)), None).questions[0])
    most = f"{float(points):,g}"
    noun = "point" if points == "1" else "points"
    assert f"{most} of {most} {noun}." in said


@pytest.mark.parametrize("at", [N, C], ids=["a number", "a choice"])
@pytest.mark.parametrize(
    "answer", [None, right, mistaken, "12..5"], ids=["none", "right", "mistaken", "unreadable"]
)
def test_feedback_has_the_question_and_every_step_of_these_very_numbers(at, answer):
    case = cases_for(WEEK.work, ANA)[at - 1]
    html = feedback_html(one(answer, at))
    assert escape(case.question) in html
    assert [] == Balance(html).open
    for step in case.steps:
        assert " ".join(step.why.split()) in text_of(html)
        if step.expr is not None:
            assert with_unit(figures(step.value, step.unit), step.unit) in text_of(html)
    assert case.code in html
    assert len(case.steps) == len(re.findall(r'class="w2w-step"', html))


def test_feedback_to_another_person_has_the_other_persons_numbers():
    mine, theirs = (mark(WEEK, who, None, None).questions[N - 1] for who in (ANA, BEN))
    assert steps_text(mine.case.steps, mine.case.known, mine.case.given, "us") != steps_text(
        theirs.case.steps, theirs.case.known, theirs.case.given, "us"
    )
    assert escape(theirs.case.question) in feedback_html(theirs)
    assert escape(theirs.case.question) not in feedback_html(mine)


def test_feedback_says_the_answer_where_it_was_not_found():
    case = cases_for(WEEK.work, ANA)[N - 1]
    answer = with_unit(figures(case.answer, case.unit), case.unit)
    assert f"The answer is {answer}." in text_of(feedback_html(one(wrong)))
    chosen = cases_for(WEEK.work, ANA)[C - 1]
    words = chosen.choices[int(chosen.answer) - 1].rstrip(".")
    html = text_of(feedback_html(one(mistaken, C)))
    assert f"The answer is choice {int(chosen.answer)}: {words}." in html


def test_feedback_shows_where_in_the_chain_the_mistake_stands():
    work = parse_set_file(
        'draw = 1\nfamilies = ["motor_power"]\ncount = 9\nlevel = 2', "a", CATALOGUE
    )
    for at, case in enumerate(cases_for(work.work, ANA), 1):
        slip = next(each for each in case.mistakes if each.id.startswith("brake_power."))
        lines = sheet(line(work, ANA, at, f"{slip.value:.10g}"))
        html = feedback_html(mark(work, ANA, lines, None).questions[at - 1])
        assert "brake horsepower" in re.search(r'<li class="w2w-here">(.*?)</li>', html)[1]


@pytest.mark.parametrize(
    "typed",
    [
        "<img src=x onerror=alert(1)>",
        "</section><script>alert(1)</script>",
        '" onload="x',
        "&lt;b>",
    ],
)
def test_what_was_typed_is_shown_as_text_and_nothing_else(typed):
    html = feedback_html(one(typed))
    assert not {"script", "img", "onerror", "onload"} & Balance(html).names
    assert f"You typed “{typed}”." in unescape(html)


def test_another_persons_id_and_a_code_from_a_sheet_are_shown_as_text():
    html = feedback_html(one(right, who="<b>ben</b>"))
    assert "<b>ben" not in html
    assert "&lt;b&gt;ben" in html


def test_marking_and_feedback_load_no_widgets(root):
    ask = "import sys, workbook.trainer.marking.marked as m; m.feedback_html; print('ipywidgets' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", ask], cwd=root, stdout=subprocess.PIPE, check=True)
    assert b"False" == done.stdout.strip()


@pytest.mark.browser
def test_a_page_of_feedback_breaks_no_rule_of_accessibility(page, axe):
    marks = [one(right), one(mistaken), one(wrong), one(), one("12..5"), one(mistaken, C)]
    pieces = (feedback_html(each._replace(number=at)) for at, each in enumerate(marks, 1))
    parts = "".join(f'<div class="w2w-panel">{piece}</div>' for piece in pieces)
    page.set_content(
        f"<!doctype html><html lang=en><title>Feedback</title>{css()}<main>{parts}</main></html>"
    )
    assert [] == axe(page, "main")

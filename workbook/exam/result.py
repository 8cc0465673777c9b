"""The result of an exam as HTML: what was missed and how, the chapters, every question."""

from solver import grade
from solver.fault.case import FaultCase
from workbook.fault import LOOK, head_html, review_html
from workbook.practice import after_state, question_html, worked_html
from workbook.ui.contents import titled
from workbook.ui.markup import Child, Markup, joined, tag
from workbook.ui.pieces import listed, table
from workbook.ui.time_left import duration

from .outcome import Outcome
from .question import Marked, said_of

__all__ = ["missed_html", "rest_html", "summary"]

COMPARE = "Compare each step and its units with the worked solution."
EMPTY = "You didn't answer this one."
NO_MISSED = "You got every question right."
STATES = {  # a mark, a word, and the class that gives the color
    "right": ("✓", "right", "right"),
    "late": ("✓", "right, with extra time", "right"),
    "wrong": ("✗", "not right", "wrong"),
    "unread": ("?", "not read", "close"),
    "empty": ("–", "no answer", "close"),
    "lost": ("–", "can't be graded any more", "close"),
}


def summary(outcome: Outcome, pass_mark: int | None = None) -> list[str]:
    """The result in sentences, held against a pass mark in percent where there is one."""
    whole, sitting = outcome.whole, outcome.sitting
    share = f" ({whole.in_time / whole.of:.0%})" if whole.of else ""
    said = [f"{whole.in_time} of {whole.of} right in time{share}."]
    if whole.of and pass_mark:
        above = "at or above" if 100 * whole.in_time >= pass_mark * whole.of else "below"
        said.append(f"That's {above} your pass mark of {pass_mark}%.")
    if outcome.lost:
        noun = "Question" if len(outcome.lost) == 1 else "Questions"
        said.append(f"{noun} {listed(outcome.lost)} can't be graded any more and don't count.")
    if whole.later:
        said.append(f"{whole.later} more right with extra time.")
    said.append(f"You used {duration(sitting.elapsed)} of {sitting.paper.minutes} min.")
    return said


def missed_html(outcome: Outcome) -> Markup:
    """Each question that was missed: what was done in it, the right answer, its solution to open."""
    missed = outcome.missed
    if not missed:
        return tag("p", NO_MISSED if outcome.whole.of else "") if not outcome.lost else Markup()
    repeated = [flaw for flaw in outcome.flaws if len(flaw.numbers) > 1]
    again = (
        tag("p", f"The same mistake in questions {listed(flaw.numbers)}: {flaw.says}")
        for flaw in repeated
    )
    return joined(
        tag("h4", f"What you missed: {len(missed)}"),
        again,
        (_missed(outcome, mark) for mark in missed),
    )


def _missed(outcome: Outcome, mark: Marked) -> Markup:
    asked, state = mark.question, outcome.state(mark)
    sign, word, color = STATES[state]
    title = "" if asked.why else f" {asked.case.family.title}"
    head = tag(
        "p",
        tag("span", sign, cls="w2w-mark", aria_hidden="true"),
        tag("b", f"Question {asked.number}: {word}."),
        title,
    )
    return tag(
        "div", head, tag("p", _given(mark), " ", what_was_done(outcome, mark)), _solution(outcome, mark),
        cls=f"w2w-missed w2w-{color}",
    )  # fmt: skip


def what_was_done(outcome: Outcome, mark: Marked) -> str:
    """What went wrong in a question, with the numbers of the answer where the mistake has a name."""
    verdict, asked = mark.verdict, mark.question
    if verdict is None:
        return EMPTY
    if outcome.state(mark) != "wrong" or isinstance(asked.case, FaultCase):
        return verdict.says
    if not verdict.mistake:
        return f"{after_state(verdict.says)} {COMPARE}"
    if asked.choices and not asked.problem.choices:
        told = grade(asked.problem, mark.text)  # the choice as if it had been typed
        return told.says if told.status == "mistake" else verdict.says
    return verdict.says


def _solution(outcome: Outcome, mark: Marked) -> Child:
    asked = mark.question
    if asked.why:
        return None
    if isinstance(asked.case, FaultCase):
        return tag("details", tag("summary", "The case and its review"), _case(outcome, mark))
    case = asked.problem
    return (
        tag("p", tag("b", f"The answer is {asked.answer}.")),
        tag(
            "details",
            tag("summary", "The question and its solution"),
            question_html(case, asked.texts),
            worked_html(case),
            tag("p", f"Code of this problem: {case.code}", cls="w2w-about"),
        ),
    )


def rest_html(outcome: Outcome) -> Markup:
    """The chapters, then every question that was right or cannot be graded, to open."""
    rest = [mark for mark in outcome.marks if mark not in outcome.missed]
    return joined(
        tag("h4", "By chapter"),
        _chapters(outcome),
        tag("h4", "What you got right") if rest else None,
        (_question(outcome, mark) for mark in rest),
    )


def _chapters(outcome: Outcome) -> Markup:
    tallies = outcome.chapters
    rows = [
        (title, tallies[name].in_time, tallies[name].later, tallies[name].of)
        for name, title in titled(tallies).items()
    ]
    heads = ("Chapter", "Right in time", "With extra time", "Questions")
    return table(rows, "Right answers", heads, "w2w-givens w2w-tallies")


def _question(outcome: Outcome, mark: Marked) -> Markup:
    """One question to open: its state and the answer given, then all of it with its solution."""
    sign, word, color = STATES[outcome.state(mark)]
    head = tag(
        "summary",
        tag("span", sign, cls="w2w-mark", aria_hidden="true"),
        tag("b", f"Question {mark.question.number}: {word}."),
        " ",
        _given(mark),
    )
    return tag("details", head, _inside(outcome, mark), cls=f"w2w-marked w2w-{color}")


def _given(mark: Marked) -> str:
    """The answer given, as it was read."""
    if not mark.answer:
        return ""
    typed = mark.answer.typed
    read = mark.verdict and mark.verdict.counts and not mark.question.why
    return f"You answered {said_of(mark.question, typed) if read else f'“{typed[:60]}”'}."


def _case(outcome: Outcome, mark: Marked) -> Child:
    """A case, and the review of what was done in it."""
    way = outcome.sitting.way(mark.question.number)
    return LOOK, head_html(way), tag("div", review_html(way), cls="w2w-review")


def _inside(outcome: Outcome, mark: Marked) -> Child:
    asked = mark.question
    if asked.why:
        return tag("p", asked.why)
    if isinstance(asked.case, FaultCase):
        return _case(outcome, mark)
    case = asked.problem
    return (
        question_html(case, asked.texts),
        tag("p", tag("b", f"The answer is {asked.answer}.")),
        worked_html(case),
        tag("p", f"Code of this problem: {case.code}", cls="w2w-about"),
    )

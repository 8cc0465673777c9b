"""The result of an exam as HTML: how much was right, by chapter, by mistake, and every question."""

from html import escape

from solver.units.show import figures, with_unit
from workbook.practice import question_html, worked_html
from workbook.ui.contents import titled
from workbook.ui.pieces import listed

from .clock import duration
from .outcome import Outcome
from .question import Marked, Question, said_of

__all__ = ["answer_of", "result_html", "summary"]

NO_FLAWS = "You made no mistake that this workbook knows by name."
STATES = {  # a mark, a word, and the class that gives the colour
    "right": ("✓", "right", "right"),
    "late": ("✓", "right, with extra time", "right"),
    "wrong": ("✗", "not right", "wrong"),
    "unread": ("?", "not read", "close"),
    "empty": ("–", "no answer", "close"),
    "lost": ("–", "can't be graded any more", "close"),
}


def summary(outcome: Outcome) -> list[str]:
    """The result in sentences."""
    whole, sitting = outcome.whole, outcome.sitting
    share = f" ({whole.in_time / whole.of:.0%})" if whole.of else ""
    said = [f"{whole.in_time} of {whole.of} right in time{share}."]
    if outcome.lost:
        noun = "Question" if len(outcome.lost) == 1 else "Questions"
        said.append(f"{noun} {listed(outcome.lost)} can't be graded any more and don't count.")
    if whole.later:
        said.append(f"{whole.later} more right with extra time.")
    said.append(f"You used {duration(sitting.elapsed)} of {sitting.paper.minutes} min.")
    return said


def result_html(outcome: Outcome) -> str:
    """Everything but the sentences on top."""
    questions = "".join(_question(outcome, mark) for mark in outcome.marks)
    return (
        f"<h4>By chapter</h4>{_chapters(outcome)}"
        f"<h4>What to look at</h4>{_flaws(outcome)}"
        f"<h4>Every question</h4><p>Open one to see its worked solution.</p>{questions}"
    )


def _chapters(outcome: Outcome) -> str:
    tallies = outcome.chapters
    rows = "".join(
        f'<tr><th scope="row">{escape(title)}</th><td>{tallies[name].in_time}</td>'
        f"<td>{tallies[name].later}</td><td>{tallies[name].of}</td></tr>"
        for name, title in titled(tallies).items()
    )
    heads = "".join(
        f'<th scope="col">{head}</th>'
        for head in ("Chapter", "Right in time", "With extra time", "Questions")
    )
    return (
        '<table class="w2w-givens w2w-tallies"><caption>Right answers</caption>'
        f"<thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>"
    )


def _flaws(outcome: Outcome) -> str:
    lines = [f"{escape(flaw.says)} {_where(flaw.numbers)}" for flaw in outcome.flaws]
    if outcome.unnamed:
        lines.append(
            f"Compare each step and its units with the worked solution. {_where(outcome.unnamed)}"
        )
    if outcome.empty:
        lines.append(f"You didn't answer. {_where(outcome.empty)}")
    items = "".join(f"<li>{line}</li>" for line in lines)
    return f'<ul class="w2w-flaws">{items}</ul>' if items else f"<p>{NO_FLAWS}</p>"


def _where(numbers: tuple[int, ...]) -> str:
    noun = "Question" if len(numbers) == 1 else "Questions"
    return f'<span class="w2w-about">{noun} {listed(numbers)}.</span>'


def _state(outcome: Outcome, mark: Marked) -> str:
    if mark.question.why and not mark.verdict:
        return "lost"
    if mark.answer is None:
        return "empty"
    if not mark.verdict.counts:
        return "unread"
    if not mark.right:
        return "wrong"
    return "late" if outcome.late(mark) else "right"


def answer_of(asked: Question) -> str:
    """The right answer; of choices, the number and the text of the right one."""
    case = asked.case
    if not asked.choices:
        return with_unit(figures(case.answer, case.unit), case.unit)
    right = next(n for n, choice in enumerate(asked.choices, 1) if not choice.mistake)
    return f"choice {right}, {asked.choices[right - 1].text}"


def _read_as(mark: Marked) -> str:
    typed = mark.answer.typed
    read = mark.verdict and mark.verdict.counts and not mark.question.why
    return said_of(mark.question, typed) if read else f"“{typed[:60]}”"


def _question(outcome: Outcome, mark: Marked) -> str:
    """One question to open: its state and the answer given, then all of it with its solution."""
    asked = mark.question
    if asked.why:
        return _to_open(outcome, mark, f"<p>{escape(asked.why)}</p>")
    says = mark.verdict.says if _state(outcome, mark) in ("wrong", "unread") else ""
    shown = question_html(asked.case, [choice.text for choice in asked.choices])
    return _to_open(
        outcome,
        mark,
        f"{shown}<p><b>The answer is {escape(answer_of(asked))}.</b> {escape(says)}</p>"
        f"{worked_html(asked.case)}"
        f'<p class="w2w-about">Code of this problem: {escape(asked.case.code)}</p>',
    )


def _to_open(outcome: Outcome, mark: Marked, inside: str) -> str:
    sign, word, colour = STATES[_state(outcome, mark)]
    given = f" You answered {_read_as(mark)}." if mark.answer else ""
    return (
        f'<details class="w2w-marked w2w-{colour}"><summary>'
        f'<span class="w2w-mark" aria-hidden="true">{sign}</span>'
        f"<b>Question {mark.question.number}: {word}.</b>{escape(given)}</summary>{inside}"
        "</details>"
    )

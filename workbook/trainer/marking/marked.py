"""Marks of one person's work, from what was handed in, as data: nothing of it is run or believed.

The person's id and the set come from the trainer's own copy. A line of the sheet counts only where
it is of this set, of this person and of a problem of theirs; its answer is graded again. What does
not fit gives no points, and a person is asked to look, with the reason. A sheet is not signed: it
can show that something is odd, and never that a learner worked alone.

`tries.py` says what becomes of the lines of one question; `feedback.py` puts a mark into words.
"""

import json
from collections.abc import Mapping, Sequence
from functools import lru_cache
from types import MappingProxyType
from typing import NamedTuple

from solver import Case
from solver.sets.work_set import WorkSet, cases_for, faults_for, person_id
from solver.topics.catalogue import Refused
from workbook.trainer.coming_in.handed_in import Handed, plain_answers
from workbook.trainer.learner.answer_sheet import read_sheet
from workbook.trainer.sets.set_file import Assigned

from .feedback import comment_of, feedback_html
from .lines import sorted_lines
from .odd import told
from .paper_case import by_paper
from .timed import NO_TIME, in_time
from .tries import QuestionMark, by_plain_answer, by_tries, not_gradable, unanswered
from .ways import by_way

__all__ = [
    "Marked", "QuestionMark", "comment_of", "feedback_html", "mark", "mark_handed", "mark_paper", "mark_typed",
]  # fmt: skip

TORN_PAPER = "The answers from paper can't be read. Type them in again."
NO_SHEET = "No answer sheet was turned in."
TYPED_AS = "This was typed as “{}”; your trainer says that is {}."


class Marked(NamedTuple):
    """The marks of one person for a set. `reason` says why a person must look, if one must."""

    person: str
    code: str
    questions: tuple[QuestionMark, ...]
    reason: str
    needs_person: bool

    @property
    def points(self) -> float:
        """The points of all questions together."""
        return round(sum(each.points for each in self.questions), 6)

    @property
    def out_of(self) -> float:
        """The points there are to have."""
        return round(sum(each.out_of for each in self.questions), 6)


def mark_handed(assigned: Assigned, handed: Handed) -> Marked:
    """The marks for what a person handed in, as it lies in the course; it raises as `mark` does."""
    if handed.paper and not handed.sheet:
        return mark_paper(assigned, handed.person, *_from_paper(handed.paper))
    return mark(assigned, handed.person, handed.sheet, handed.notebook, handed.typed)


def mark(
    assigned: Assigned,
    person: str,
    sheet: bytes | None,
    notebook: bytes | None = None,
    typed_as: str = "",
) -> Marked:
    """The marks for what a person handed in: the bytes of the sheet and of the notebook.

    `typed_as` is the name the person worked under, where the trainer says it was another; the
    questions were drawn for that. It never raises for what these hold. The same arguments give the same marks.

    Raises:
        SolverError: nobody can have the id `person`, which is the trainer's word.
    """
    person = person_id(person)
    under, work = person_id(typed_as) if typed_as else person, assigned.work
    cases, faults = _cases(work, under), faults_for(work, under)
    codes = [case.code for case in cases]
    every = [*codes, *(str(case.code) for case in faults)]
    found = sorted_lines(read_sheet(sheet), every, work.code, under)
    timed = in_time(assigned, found.opening, found.lines)
    in_words = {} if all(found.lines.values()) else plain_answers(notebook)
    marks = []
    for number, (code, case) in enumerate(zip(codes, cases, strict=True), 1):
        odd, said = found.odd.get(code, ()), timed.said.get(code, ())
        lines = timed.lines[code]
        if isinstance(case, Refused):
            typed = in_words.get(number, "")
            marks.append(not_gradable(assigned, number, case, odd, lines, typed))
        elif lines:
            marks.append(by_tries(assigned, number, case, lines, odd, said))
        elif number in in_words:
            odd = [*odd, NO_TIME] if assigned.minutes else odd
            marks.append(by_plain_answer(assigned, number, case, in_words[number], odd))
        else:
            marks.append(unanswered(assigned, number, case, odd, said))
    for number, fault in enumerate(faults, len(cases) + 1):
        code = str(fault.code)
        odd, said = found.odd.get(code, ()), timed.said.get(code, ())
        marks.append(by_way(assigned, number, fault, timed.lines[code], odd, said))
    whole = [TYPED_AS.format(under, person)] if under != person else []
    odd_whole = [*found.odd_whole, *timed.odd_whole]
    no_sheet = not (sheet or b"").strip()
    return _whole(assigned, person, marks, no_sheet, odd_whole, [*whole, *timed.said_whole])


def mark_paper(
    assigned: Assigned,
    person: str,
    answers: Mapping[int, str],
    odd: Mapping[int, str],
    odd_whole: Sequence[str],
) -> Marked:
    """The marks for answers typed from paper. One of which nobody can say what was meant earns nothing.

    The arguments and what it raises are those of `mark_typed`.
    """
    whys = {number: (why,) for number, why in odd.items()}
    found = mark_typed(assigned, person, answers, whys, odd_whole)
    questions = tuple(_certain(each, odd.get(each.number, "")) for each in found.questions)
    return found._replace(questions=questions)


def _certain(mark: QuestionMark, odd: str) -> QuestionMark:
    if not odd:
        return mark
    return mark._replace(points=0.0, status="unreadable", mistake="", says=odd, read_as="")


def _from_paper(data: bytes) -> tuple[dict[int, str], dict[int, str], list[str]]:
    """Answers, oddities by question and of the whole, as a file has them; a torn one has none."""
    try:
        held = json.loads(data)
        parts = [{int(n): str(t) for n, t in held[key].items()} for key in ("answers", "odd")]
        return parts[0], parts[1], [str(each) for each in held["whole"]]
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return {}, {}, [TORN_PAPER]


def mark_typed(
    assigned: Assigned,
    person: str,
    answers: Mapping[int, str],
    odd: Mapping[int, Sequence[str]] = MappingProxyType({}),
    odd_whole: Sequence[str] = (),
) -> Marked:
    """The marks for answers in words, by question, which somebody typed for a person.

    `odd` says by question, and `odd_whole` of all of it, why a person must look. It raises and
    returns as `mark` does.
    """
    person = person_id(person)
    marks = []
    for number, case in enumerate(_cases(assigned.work, person), 1):
        typed, strange = answers.get(number, ""), odd.get(number, ())
        if isinstance(case, Refused):
            marks.append(not_gradable(assigned, number, case, strange, (), typed))
        elif number in answers:
            marks.append(by_plain_answer(assigned, number, case, typed, strange))
        else:
            marks.append(unanswered(assigned, number, case, strange))
    for number, fault in enumerate(faults_for(assigned.work, person), assigned.work.count + 1):
        text, strange = answers.get(number, ""), odd.get(number, ())
        marks.append(by_paper(assigned, number, fault, text, strange))
    return _whole(assigned, person, marks, False, odd_whole)


def _cases(work: WorkSet, person: str) -> tuple[Case | Refused, ...]:
    return cases_for(work, person) if work.each else _same(work)


@lru_cache(maxsize=8)
def _same(work: WorkSet) -> tuple[Case | Refused, ...]:
    """The problems that everybody has; drawn once, for a class."""
    return cases_for(work, "")


def _whole(
    assigned: Assigned,
    person: str,
    marks: Sequence[QuestionMark],
    no_sheet: bool,
    odd: Sequence[str],
    said: Sequence[str] = (),
) -> Marked:
    reasons = [NO_SHEET] * no_sheet + [*odd, *said]
    look = [each.number for each in marks if each.needs_person]
    if look:
        noun = "question" if len(look) == 1 else "questions"
        reasons.append(f"Look at {noun} {', '.join(map(str, look))}.")
    nothing = no_sheet and all(each.status == "blank" for each in marks)
    needs = bool(odd or look or nothing)
    return Marked(person, assigned.work.code, tuple(marks), told(reasons), needs)

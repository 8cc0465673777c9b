"""One question of an exam: its choices, how an answer is read, and how it is marked."""

from collections.abc import Sequence
from typing import NamedTuple

from solver import Case, SolverError, Verdict, grade
from solver.engine.choices import Choice, choices_of
from solver.errors import Unreadable
from solver.fault.case import FaultCase
from solver.fault.remedies import RIGHT as RIGHT_CALLS
from solver.fault.way import Way, way_of
from solver.render.fault import outcome
from solver.sets.paper import Paper
from solver.sets.paper_questions import cases_of, faults_of
from solver.station.faults import FAULTS
from solver.topics.catalogue import Refused
from solver.units.reading import read
from workbook.fault import attempt_of_way
from workbook.log import Attempt, made
from workbook.practice import right_answer

__all__ = [
    "Answer",
    "Marked",
    "Question",
    "attempt_of",
    "check_askable",
    "marked",
    "questions_of",
    "said_of",
]


class Question(NamedTuple):
    """A question, and its choices where it has any.

    `case` is Refused where its problem is not here any more; `why` says so. It may be a case of find the fault.
    """

    number: int
    case: Case | Refused | FaultCase
    choices: Sequence[Choice]

    @property
    def why(self) -> str:
        """Why it cannot be asked; empty where it can."""
        return self.case.why if isinstance(self.case, Refused) else ""

    @property
    def problem(self) -> Case:
        """The problem that is asked.

        Raises:
            Unreadable: it can't be asked any more, the sentence says why; or it is no problem.
        """
        if isinstance(self.case, Refused):
            raise Unreadable(self.case.why)
        if isinstance(self.case, FaultCase):
            raise Unreadable("A case has no answer in one line.")
        return self.case

    @property
    def texts(self) -> list[str]:
        """The choices in words, or the steps to put in order."""
        if self.problem.ordered:
            return list(self.problem.choices)
        return [choice.text for choice in self.choices]

    @property
    def answer(self) -> str:
        """The right answer in words; of choices, the number and the text of the right one."""
        return right_answer(self.problem, self.choices)


class Answer(NamedTuple):
    """What was answered last: as typed, when, at which second of the exam, in how many seconds."""

    typed: str
    when: str
    at: float
    seconds: float


class Marked(NamedTuple):
    """A question, its answer if there is one, the verdict, and the answer in words."""

    question: Question
    answer: Answer | None
    verdict: Verdict | None
    text: str

    @property
    def right(self) -> bool:
        """Whether it was answered right."""
        return self.verdict is not None and self.verdict.status == "right"


def questions_of(paper: Paper) -> tuple[Question, ...]:
    """The questions of a paper in order, numbered from 1."""
    asked = (*cases_of(paper), *faults_of(paper))
    return tuple(Question(n, case, _choices(paper, case)) for n, case in enumerate(asked, 1))


def _choices(paper: Paper, case: Case | Refused | FaultCase) -> Sequence[Choice]:
    if not isinstance(case, Case):
        return ()
    return choices_of(case) if paper.choices or case.choices else ()


def check_askable(paper: Paper, all_of_it: bool = False) -> None:
    """Whether an exam has a question left to ask, or all of them.

    Raises:
        SolverError: it has not; the sentence says why, and what to do.
    """
    asked = questions_of(paper)
    lost = [each for each in asked if each.why]
    if len(lost) == len(asked):
        raise SolverError(
            "The questions of this exam have changed since its code was made, so none of them can "
            "be asked any more. Set up a fresh exam."
        )
    if lost and all_of_it:
        raise SolverError(f"Question {lost[0].number}: {lost[0].why} Set up a fresh exam to print.")


def said_of(question: Question, text: str) -> str:
    """What an answer is read as, as a reader would say it.

    Raises:
        Unreadable: the sentence says what to type instead.
    """
    if isinstance(question.case, FaultCase):
        return answered_case(way_of(str(question.case.code), text.split()))
    problem = question.problem
    if question.choices:
        chosen = _chosen(question, text)
        return f"choice {chosen}, {question.choices[chosen - 1].text}"
    verdict = grade(problem, text)
    if not verdict.counts:
        raise Unreadable(verdict.says)
    return verdict.echo


def _chosen(question: Question, text: str) -> int:
    number = int(read(text, "choice").value)
    if not 1 <= number <= len(question.choices):
        raise Unreadable(
            f"You typed {number}. Type the number of one choice, 1 to {len(question.choices)}."
        )
    return number


def marked(question: Question, answer: Answer | None, recorded: str = "") -> Marked:
    """A question with its answer marked. `recorded` is the status that it had when it was turned
    in; it stands where the question cannot be graded any more."""
    if answer is None:
        return Marked(question, None, None, "")
    if isinstance(question.case, FaultCase):
        return marked_case(question, answer)
    if question.why:
        return Marked(question, answer, Verdict(recorded, question.why) if recorded else None, "")
    problem = question.problem
    if not question.choices or problem.choices:
        verdict = grade(problem, answer.typed)
        return Marked(question, answer, verdict, verdict.echo)
    try:
        choice = question.choices[_chosen(question, answer.typed) - 1]
    except Unreadable as refusal:  # another edition could read it
        return Marked(question, answer, Verdict("unreadable", str(refusal)), "")
    status = "mistake" if choice.mistake else "right"
    mistake, unit = choice.mistake or None, problem.unit
    verdict = Verdict(status, choice.says, mistake, choice.value, unit, choice.text)
    return Marked(question, answer, verdict, choice.text)


def answered_case(way: Way) -> str:
    """What was answered in a case: the fault named, and the call where it was kept."""
    return FAULTS[way.names[-1]].label if way.names else "nothing"


def marked_case(question: Question, answer: Answer) -> Marked:
    """A case is right with the fault named, the right call made, and nothing unsafe tried."""
    way = way_of(str(question.case.code), answer.typed.split())
    call = way.named and way.action in RIGHT_CALLS[way.case.fault][0]
    right = call and not way.unsafe
    it_was, named, *_, safety = outcome(way)  # the review beside it has the rest
    says = " ".join([it_was, named, *[safety] * bool(way.unsafe)])
    verdict = Verdict("right" if right else "wrong", says)
    return Marked(question, answer, verdict, answered_case(way))


def attempt_of(mark: Marked, key: str, code: str) -> Attempt | None:
    """An answered question as it is in the log, None for any other; `code` is that of the paper."""
    answer, verdict = mark.answer, mark.verdict
    if mark.question.why or not answer or not verdict or not verdict.counts:
        return None
    if isinstance(mark.question.case, FaultCase):
        way = way_of(str(mark.question.case.code), answer.typed.split())
        line = attempt_of_way(way, code)
        return line._replace(id=key, when=answer.when, seconds=answer.seconds)
    case = mark.question.problem
    return made(
        code=case.code,
        family=case.family.name,
        level=case.level,
        typed=mark.text or answer.typed,
        status=verdict.status,
        mistake=verdict.mistake or "",
        seconds=answer.seconds,
        of=code,
    )._replace(id=key, when=answer.when)

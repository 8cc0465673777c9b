"""What people are told of a set above its questions: how much it is, and how tries and points count."""

from solver.sets.credit import in_points
from solver.units.show import counted
from workbook.trainer.learner.answer_sheet import in_words
from workbook.trainer.learner.timing import limit_in_words

from .set_file import Assigned

__all__ = ["about", "how"]

COUNTS = {
    "best": "Your best answer to a question counts.",
    "last": "Your last answer to a question counts.",
    "first": "Your first answer to a question counts. Later ones show you where you stand.",
}
CASES = (
    "In a case, everything you do is saved right away and can't be taken back. Name the fault, then say\n"
    "  what you do about it. Naming a fault is a try."
)


def about(assigned: Assigned) -> str:
    """How many questions there are, what each is worth, and whose numbers they have."""
    count = counted(assigned.work.count, "question")
    whose = "You have your own numbers." if assigned.work.each else "Everyone has the same numbers."
    said = f"Your trainer set you {count}. Each is worth {in_points(assigned.points)}. {whose}"
    if part := assigned.work.faults:
        cases, each = counted(part.count, "case"), in_points(assigned.faults.points)
        said += (
            f" Then you have {cases} of find the fault, worth {each}{' each' * (part.count > 1)}."
        )
    return said


def how(assigned: Assigned, where: str = "in this folder") -> list[str]:
    """How to work it, a line for each thing; `where` the answers are saved."""
    return [
        "Work each question on paper first, with the units.",
        f"Then type your answer and choose Check. Each answer is saved {where} right away.",
        "An answer that can't be read never counts as a try.",
        *_tries(assigned),
        *_cases(assigned),
        *_time(assigned),
    ]


def _tries(assigned: Assigned) -> list[str]:
    tries, each_try = assigned.tries, assigned.credit.each_try
    lines = [f"You have {in_words(tries)} for each question."] if tries else []
    if choice := assigned.choice_tries:
        lines.append(f"Where you choose from several answers, you have {in_words(choice)}.")
    if tries != 1:
        lines.append(COUNTS[assigned.counts])
    if tries != 1 and each_try:
        second = f"{max(0.0, assigned.credit.right - each_try):.0%}"
        lines.append(
            f"Each try after the first takes {each_try:.0%} off: right on the second try earns {second}."
        )
    return lines


def _time(assigned: Assigned) -> list[str]:
    if not assigned.minutes:
        return []
    return [f"{limit_in_words(assigned)} The clock goes on when you close the page."]


def _cases(assigned: Assigned) -> list[str]:
    unsafe = assigned.faults.unsafe
    if not assigned.work.faults:
        return []
    return [CASES, *([f"Each unsafe step in a case takes {unsafe:.0%} off."] if unsafe else [])]

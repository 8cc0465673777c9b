"""The mistakes of a class: each once, however many questions and kinds of problem it was made in."""

from typing import TYPE_CHECKING, NamedTuple

from solver import FAMILIES, Case, Mistake, Step
from solver.render.text import label_of

if TYPE_CHECKING:
    from workbook.trainer.marking import QuestionMark

__all__ = ["Flaw", "Flaws"]


class Flaw(NamedTuple):
    """A mistake: `people` made it, in the answer that counts, in these questions.

    `id` is what the file of a set calls it. `what` names the step or the kind of problem; `says`,
    what was done; `why`, the reason to teach again, in `chapter`. `varies` tells that its words
    were of one person's numbers.
    """

    id: str
    what: str
    says: str
    why: str
    chapter: str
    people: tuple[str, ...]
    questions: tuple[int, ...]
    varies: bool


class Flaws:
    """The mistakes taken so far."""

    def __init__(self):
        self._found: dict[tuple, _Made] = {}

    def take(self, one: "QuestionMark", person: str) -> None:
        """Count the mistake of a mark, if it has one."""
        if not one.mistake:
            return
        key = _key(one.case, one.mistake)
        made = self._found.get(key) or self._found.setdefault(key, _Made(one.case, one.mistake))
        made.people[person] = made.questions[one.number] = None

    @property
    def ranked(self) -> tuple[Flaw, ...]:
        """The mistakes that can be put in words, the one that most people made first."""
        flaws = [made.flaw() for made in self._found.values() if made.known]
        return tuple(sorted(flaws, key=_order))


def _order(flaw: Flaw) -> tuple:
    return -len(flaw.people), flaw.questions, flaw.id


class _Made:
    """A mistake, with one problem to take its words from, and where it was made."""

    def __init__(self, case: Case, mistake: str):
        self.case = case
        self.known: Mistake | None = next((m for m in case.mistakes if m.id == mistake), None)
        self.people: dict[str, None] = {}
        self.questions: dict[int, None] = {}

    def flaw(self) -> Flaw:
        case, known, step = self.case, self.known, _step(self.case, self.known.id)
        if step is None:
            said = case.family.title, known.says, case.steps[-1].rule
        else:
            said = (
                label_of(step.name, case.units),
                known.says.removesuffix(step.why).strip(),
                step.why,
            )
        people, questions = tuple(sorted(self.people)), tuple(sorted(self.questions))
        return Flaw(known.id, *said, _chapter(case, step), people, questions, step is None)


def _chapter(case: Case, step: Step | None) -> str:
    """Where it is taught: the chapter with a kind of problem for that very step, or the question's."""
    name = step.name if step else ""
    return next((each.chapter for each in FAMILIES if each.name == name), case.family.chapter)


def _step(case: Case, mistake: str) -> Step | None:
    """The step of a problem where a mistake is made; None for one of choices."""
    if case.choices:
        return None
    return next((step for step in case.steps if step.name == mistake.partition(".")[0]), None)


def _key(case: Case, mistake: str) -> tuple:
    """What makes two mistakes the same: the same thing done to the same formula.

    Choices are those of one kind of problem, and so is what was chosen in their place.
    """
    step = _step(case, mistake)
    return (mistake, step.why) if step else (mistake, case.family.name)

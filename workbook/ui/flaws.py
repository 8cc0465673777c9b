"""The mistakes of several people: each once, however many questions and kinds of problem it was made in."""

from typing import NamedTuple, Protocol

from solver import FAMILIES, Case, Mistake, Step
from solver.fault.case import FaultCase
from solver.render.text import label_of
from solver.topics.catalogue import Refused

__all__ = ["Answered", "Flaw", "Flaws"]


class Answered(Protocol):
    """An answer to a question of this number; `mistake` is the id of the one it has, or empty."""

    @property
    def number(self) -> int: ...
    @property
    def mistake(self) -> str: ...
    @property
    def case(self) -> Case | Refused | FaultCase: ...


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

    def __init__(self) -> None:
        self._found: dict[tuple[str, str], _Made] = {}

    def take(self, one: Answered, person: str) -> None:
        """Count the mistake of an answer, if it has one that can be put in words."""
        if not one.mistake or not isinstance(one.case, Case):
            return
        key = _key(one.case, one.mistake)
        made = self._found.get(key)
        if made is None:
            known = next((each for each in one.case.mistakes if each.id == one.mistake), None)
            if known is None:
                return
            made = self._found[key] = _Made(one.case, known)
        made.people[person] = made.questions[one.number] = None

    @property
    def ranked(self) -> tuple[Flaw, ...]:
        """The mistakes, the one that most people made first."""
        return tuple(sorted((made.flaw() for made in self._found.values()), key=_order))


def _order(flaw: Flaw) -> tuple[int, tuple[int, ...], str]:
    return -len(flaw.people), flaw.questions, flaw.id


class _Made:
    """A mistake, with one problem to take its words from, and where it was made."""

    def __init__(self, case: Case, known: Mistake):
        self.case, self.known = case, known
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


def _key(case: Case, mistake: str) -> tuple[str, str]:
    """What makes two mistakes the same: the same thing done to the same formula.

    Choices are those of one kind of problem, and so is what was chosen in their place.
    """
    step = _step(case, mistake)
    return (mistake, step.why) if step else (mistake, case.family.name)

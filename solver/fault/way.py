"""One person's way through a case: a list of words, each with what came of it.

A word is an act ("amps"), a step of `safety` ("tell", "lock", "qualified"), "name:FAULT", "do:ACTION", or
"review", which ends it. A way can be cut, replayed and marked: the same words always come to the same.
"""

from dataclasses import dataclass, replace
from functools import reduce

from solver.errors import BadDefinition

from .acts import CHECK, PULL_MINUTES
from .case import FaultCase, case_of
from .finding import Finding, finding
from .model import model_of
from .remedies import ACTIONS
from .safety import LOCKOUT, PERMIT, RESTORE, STEPS, Rule, stop_of, stop_of_step

__all__ = ["DO", "NAME", "REVIEW", "Told", "Way", "way_of"]

NAME, DO, REVIEW = "name:", "do:", "review"
MOST_WORDS = 200


@dataclass(frozen=True, slots=True)
class Told:
    """What came of one word: minutes, a finding, a rule that stopped it, or a sentence."""

    word: str
    minutes: int = 0
    found: Finding | None = None
    stopped: Rule | None = None
    says: str = ""


@dataclass(frozen=True)
class Way:
    """A case and all that was done in it so far."""

    case: FaultCase
    told: tuple[Told, ...] = ()
    done: tuple[str, ...] = ()  # the steps that hold now

    @property
    def words(self) -> tuple[str, ...]:
        """All that was done, as words."""
        return tuple(told.word for told in self.told)

    @property
    def minutes(self) -> int:
        """Minutes used."""
        return sum(told.minutes for told in self.told)

    @property
    def checked(self) -> bool:
        """Whether the instruments were held against others."""
        return any(told.found and told.found.act == CHECK for told in self.told)

    @property
    def found(self) -> tuple[Finding, ...]:
        """What was found so far, each act once, corrected once the instruments were checked."""
        acts, checked = dict.fromkeys(t.found.act for t in self.told if t.found), self.checked
        return tuple(finding(self.case, act, checked) for act in acts)

    @property
    def taken(self) -> frozenset[str]:
        """The acts that were done."""
        return frozenset(told.found.act for told in self.told if told.found)

    @property
    def unsafe(self) -> tuple[Told, ...]:
        """What was stopped by a rule."""
        return tuple(told for told in self.told if told.stopped)

    @property
    def names(self) -> tuple[str, ...]:
        """The faults that were named, in order."""
        return tuple(word.removeprefix(NAME) for word in self.words if word.startswith(NAME))

    @property
    def named(self) -> bool:
        """Whether the fault was named rightly."""
        return self.case.fault in self.names

    @property
    def action(self) -> str:
        """What was chosen to do next first, after the fault was named; "" with nothing yet."""
        return next((w.removeprefix(DO) for w in self.words if w.startswith(DO)), "")

    @property
    def ended(self) -> bool:
        """Whether it is over: named and acted on, or given up for the review."""
        return bool(self.named and self.action) or REVIEW in self.words

    def left(self) -> tuple[str, ...]:
        """The suspects that the findings leave."""
        return model_of(str(self.case.code)).left(self.found)

    def cost(self, act: str) -> int:
        """Minutes that an act would take now; the first that needs the pump out hoists it."""
        one = self.case.acts[act]
        up = one.pull and self.case.station.kind.submerged
        hoisted = any(self.case.acts[name].pull for name in self.taken)
        return one.minutes + (PULL_MINUTES if up and not hoisted else 0)

    def then(self, *words: str) -> "Way":
        """The way with one word more, or with several.

        Raises:
            BadDefinition: no such word here, or the way is over; the sentence says what there is.
        """
        return reduce(Way._with, words, self)

    def _with(self, word: str) -> "Way":
        if self.ended:
            raise BadDefinition("This case is over. Start it again, or take a new one.")
        if len(self.told) >= MOST_WORDS:
            raise BadDefinition(
                f"A case takes {MOST_WORDS} steps at most. Name the fault, or see the review."
            )
        told = self._told(word)
        done = self.done
        if word in STEPS and not told.stopped and word not in done:
            undone = (*LOCKOUT, PERMIT)
            done = tuple(d for d in done if d not in undone) if word == RESTORE else (*done, word)
        return replace(self, told=(*self.told, told), done=done)

    def _told(self, word: str) -> Told:
        case = self.case
        if word in case.acts:
            if stopped := stop_of(case.acts[word], self.done):
                return Told(word, stopped=stopped)
            again = word in self.taken
            return Told(word, 0 if again else self.cost(word), finding(case, word, self.checked))
        if word in STEPS:
            if stopped := stop_of_step(word, self.done):
                return Told(word, stopped=stopped)
            return Told(word, 0 if word in self.done else STEPS[word].minutes)
        if word == REVIEW:
            return Told(word)
        if word.startswith(NAME):
            return Told(word, says=self._against(word.removeprefix(NAME)))
        if word.startswith(DO) and word.removeprefix(DO) in ACTIONS:
            if not self.named:
                raise BadDefinition("First name the fault, then say what to do about it.")
            return Told(word)
        raise BadDefinition(
            f"Nothing here is called “{word[:40]}”. Readings: {', '.join(case.acts)}. "
            f"Steps: {', '.join(STEPS)}. Or {NAME}FAULT, then {DO}ACTION ({', '.join(ACTIONS)}), or {REVIEW}."
        )

    def _against(self, fault: str) -> str:
        """What speaks against a name; "" for the right one.

        Raises:
            BadDefinition: it is no suspect.
        """
        from .review import against

        if fault not in self.case.suspects:
            raise BadDefinition(
                f"“{fault[:40]}” isn't on this case's list. Name one of: {', '.join(self.case.suspects)}."
            )
        return "" if fault == self.case.fault else against(self, fault)


def way_of(code: str, words: tuple[str, ...] | list[str] = ()) -> Way:
    """The way through the case of a code that these words make.

    Raises:
        BadCode: no such case.
        BadDefinition: a word that means nothing there.
    """
    return Way(case_of(code)).then(*words)

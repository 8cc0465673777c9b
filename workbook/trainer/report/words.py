"""The sentences and the rows of a class report, as plain text; and who needs a hand, and why."""

from collections.abc import Iterable, Mapping
from hashlib import sha256
from statistics import median
from typing import NamedTuple

from solver.units.show import counted, figures
from workbook.trainer.people import counted_people
from workbook.ui.flaws import Flaw
from workbook.ui.pieces import listed

from .facts import ENOUGH, STATUSES, ClassFacts, PersonFacts, Question, Telling

__all__ = [
    "HAND_HEADS",
    "LOW",
    "QUESTION_HEADS",
    "Hand",
    "flaw_lines",
    "hand_rows",
    "hands",
    "names_for",
    "percent",
    "question_rows",
    "summary",
    "telling_lines",
    "tells",
]

LOW = 0.7  # share of the points; certification exams commonly ask for so much (common practice)
MANY_BLANK = 0.25  # share of the questions
ROUGH = 50  # people under which another class could give quite another number
WELL, LITTLE = 0.3, 0.2  # as textbooks on tests have it (common practice)
QUESTION_HEADS = (
    "Question", "Of the points", "Right", "Known mistake", "Close", "Other wrong", "Not read", "Blank",
    "Tells apart", "Best third", "Lowest third",
)  # fmt: skip
HAND_HEADS = ("Person", "Points", "Why")
LOOK = "Look at the sheet; the reason is in the report with names."


class Hand(NamedTuple):
    """One person who needs a hand; `why` may have several, the one to act on first."""

    person: PersonFacts
    why: tuple[str, ...]


def hands(people: Iterable[PersonFacts], low: float = LOW) -> list[Hand]:
    """Those who need one: first whose work must be looked at, then the lowest share of points."""
    found = [Hand(person, why) for person in people if (why := _why(person, low))]
    return sorted(
        found, key=lambda one: (not one.person.needs, one.person.share, one.person.person)
    )


def _why(person: PersonFacts, low: float) -> tuple[str, ...]:
    look = (person.reasons or ("Look at the sheet.",)) if person.needs else ()
    if not person.handed_in:
        return (*look, "Nothing was answered.")
    why = [*look]
    if person.blank >= MANY_BLANK * person.asked:
        why.append(f"{person.blank} of {person.asked} are blank.")
    if person.share < low:
        why.append(f"Under {low:.0%} of the points.")
    return tuple(why)


def percent(share: float) -> str:
    """A share as a whole percentage; only all is 100%, and only nothing is 0%.

    >>> percent(0.666), percent(0.999), percent(0.001)
    ('67%', '99%', '1%')
    """
    whole = round(100 * share)
    if 0 < share < 1:
        whole = min(max(whole, 1), 99)
    return f"{whole}%"


def names_for(told: ClassFacts, hidden: bool) -> dict[str, str]:
    """What each person is called; without names a number, which says nothing of the person.

    The numbers are the same each time for one set, and stand in no order of names or points.
    """
    ids = [person.person for person in told.people]
    if not hidden:
        return {person: told.called.get(person, person) for person in ids}
    mixed = sorted(ids, key=lambda person: sha256(f"{told.code} {person}".encode()).digest())
    return {person: f"Person {number}" for number, person in enumerate(mixed, 1)}


def summary(told: ClassFacts) -> list[str]:
    """How many there were, and how they did."""
    there, absent = told.there, len(told.people) - len(told.there)
    if not told.people:
        return ["Nobody has turned in anything yet."]
    nothing = [f"{counted_people(absent)} answered nothing."] * bool(absent)
    if not there:
        return nothing
    shares = [person.share for person in there]
    look = sum(person.needs and person.handed_in for person in told.people)
    looks = [f"{counted_people(look)} turned in a sheet you need to look at."] * bool(look)
    return [
        f"{counted_people(len(there))} answered {counted(len(told.questions), 'question')}.",
        *nothing,
        f"The middle person has {percent(median(shares))} of the points.",
        f"The lowest has {percent(min(shares))}, the highest {percent(max(shares))}.",
        *looks,
    ]


def flaw_lines(flaw: Flaw, there: int) -> list[str]:
    """Who made a mistake and where, what was done, and what to teach again."""
    where = f"question{'s' * (len(flaw.questions) > 1)} {listed(flaw.questions)}"
    for_example = "For example: " if flaw.varies else ""
    return [
        f"{counted_people(len(flaw.people))} of {there:,}, in {where}.",
        f"{for_example}{flaw.says}",
        f"Go over again: {_sentence(flaw.why)}",
    ]


def _sentence(text: str) -> str:
    """A rule as a sentence; those of choices are written without its ends."""
    return f"{text[:1].upper()}{text[1:]}{'' if text.endswith(('.', '?')) else '.'}"


def tells(told: Telling) -> str:
    """How well a question tells people apart, in a word with its number.

    >>> tells(Telling(0.42)), tells(Telling(-0.2)), tells(Telling())
    ('well (0.42)', 'the wrong way (−0.20)', '–')
    """
    if told.value is None:
        return "–"
    number = f"{told.value:.2f}".replace("-", "−")
    if told.value < 0:
        return f"the wrong way ({number})"
    words = ((WELL, "well"), (LITTLE, "a little"), (0.0, "hardly"))
    return f"{next(word for least, word in words if told.value >= least)} ({number})"


def telling_lines(people: int) -> list[str]:
    """What “tells apart” means, and how far it can be trusted with so many people."""
    if people < ENOUGH:
        return [
            f"With under {ENOUGH} people, this report doesn't say whether a question tells people apart.",
            "With so few, one person alone could turn the answer around.",
        ]
    lines = [
        "“Tells apart” shows whether people who did well on the rest did well here too.",
        "1 means always, 0 means no connection, and below 0 means they did worse here.",
        f"From {WELL} up, a question tells people apart well (common practice, no source).",
        "If it goes the wrong way, read the question and its answer again.",
        "A question nearly everyone got right can't tell people apart, and that's fine.",
        "The thirds are the people with the most and the fewest points on the other questions.",
    ]
    if people < ROUGH:
        off = (people - 3) ** -0.5
        lines.append(f"With {people} people this number is rough: it may be off by {off:.1f}.")
    return lines


def question_rows(questions: Iterable[Question]) -> tuple[tuple[str, ...], ...]:
    """A row of text for each question, under QUESTION_HEADS."""
    return tuple(
        (
            f"{one.number}. {one.family.title}",
            percent(one.share),
            *(f"{one.counts[status]:,}" for status in STATUSES),
            tells(one.telling),
            _third(one.telling.best),
            _third(one.telling.lowest),
        )
        for one in questions
    )


def _third(share: float | None) -> str:
    return "–" if share is None else percent(share)


def hand_rows(found: Iterable[Hand], names: Mapping[str, str]) -> tuple[tuple[str, ...], ...]:
    """A row of text for each person who needs a hand, under HAND_HEADS.

    A reason may quote ids, so that it is left out where people go without their names.
    """
    return tuple(_hand_row(one, names[one.person.person]) for one in found)


def _hand_row(one: Hand, name: str) -> tuple[str, ...]:
    person, why = one.person, list(one.why)
    if name != person.person and person.needs and person.reasons:
        why = [LOOK, *(line for line in why if line not in person.reasons)]
    points = f"{figures(person.points)} of {figures(person.out_of)}"
    return name, points, " ".join(why)

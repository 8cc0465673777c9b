"""A set of problems as a short text, which fits in a chat message and in a link; and its problems.

    W2W[Wednesday pumps] BP-2U1-7-KMZ WP-1U1-7-WTN [2-6C6E7E]

is a title, the codes in order, and the set's mark: how many they are, and six signs worked from
them. A bracket ] in the title is written twice. What stands around the text is left aside. On its
way it may get other hyphens, letters, spaces and line breaks, signs that nobody sees, and marks of
quoting between the codes. A code that was changed or got lost on the way does not go unnoticed.
"""

import re
from collections.abc import Sequence
from hashlib import sha256
from typing import NamedTuple
from unicodedata import category, normalize

from solver import BadCode, Case, SolverError, case_from_code
from solver.engine.code import read_code
from solver.fault.case import TAG, FaultCase, case_of
from solver.units.show import counted

__all__ = [
    "MOST",
    "MOST_NAME",
    "MOST_TITLE",
    "BadSet",
    "ProblemSet",
    "Question",
    "codes_in",
    "plain",
    "questions_of",
    "read_set",
    "set_of",
]

MOST = 40  # problems
MOST_TITLE = 60  # characters; as many emoji still fit into a link with the codes
MOST_NAME = 40  # characters of a member's name
LONGEST = 2_000  # characters of a set
MOST_PASTED = 5_000  # characters looked at, with the message around
TOLD = 5  # faults told at once
JOINERS = "\u200c\u200d"  # some scripts, and emoji, are written with them
_START = r"W2W\s*\["
_SHAPE = re.compile(  # *+ never goes back, so that no text takes long
    _START + r"(?P<title>(?:[^\]]|\]\])*+)\](?P<codes>[^\[\]]*+)\[(?P<mark>[^\[\]]*+)\]", re.I
)
_MARK = re.compile(r"([0-9]{1,2})-([0-9A-F]{6})")
_HYPHENS = re.compile("[\u2010-\u2015\u2212\ufe58\ufe63\uff0d-]+")

NOTHING = "Paste the text of a set first."
NO_SET = (
    "There is no set in this text. A set begins with W2W and a bracket: copy the whole message."
)
CUT = "The end of the set is missing. It ends with a number in brackets, such as [12-7F03A9]. Copy all of it."
TOO_LONG = "This text is too long for a set. Paste the message with the set alone."
CHANGED = "The codes or their order changed since the set was sent. Copy the message again."


class BadSet(SolverError, ValueError):
    """A text that is no set, or a set that cannot be; `sentences` say why and what to do."""

    def __init__(self, *sentences: str):
        super().__init__(" ".join(sentences))
        self.sentences = sentences


class ProblemSet(NamedTuple):
    """A title, which may be empty, and the codes of the problems in order."""

    title: str
    codes: tuple[str, ...]

    @property
    def mark(self) -> str:
        """How many problems there are, and which; the title does not matter.

        It is worked from the codes as version 0.1.0 wrote them, so that a set keeps its mark.
        """
        first = " ".join(read_code(code).as_first for code in self.codes)
        return f"{len(self.codes)}-{sha256(first.encode()).hexdigest()[:6].upper()}"

    @property
    def key(self) -> str:
        """What an attempt in the log is `of`."""
        return f"GROUP-{self.mark}"

    @property
    def name(self) -> str:
        """The title, or what is said where there is none."""
        return self.title or "A set without a title"

    @property
    def text(self) -> str:
        """The set as a text to send.

        >>> set_of("Pumps [A]", ["bp2u1768"]).text
        'W2W[Pumps [A]]] BP-2U1-7-KMZ [1-56C829]'
        """
        return f"W2W[{self.title.replace(']', ']]')}] {' '.join(self.codes)} [{self.mark}]"


def plain(text: str, most: int) -> str:
    """A title or a name in one line, without signs that nobody sees, cut to `most` characters.

    >>> plain("  Wednesday\\n pumps\\x00 ", 60)
    'Wednesday pumps'
    """
    seen = (
        sign if category(sign)[0] != "C" or sign in JOINERS else " " * sign.isspace()
        for sign in text
    )
    return normalize("NFC", " ".join("".join(seen).split()))[:most].strip()


def set_of(title: str, codes: Sequence[str]) -> ProblemSet:
    """The set of a title and of these codes, each as it may be typed.

    Raises:
        BadSet: a sentence for each code that is none or stands there twice, or for their number.
    """
    if not codes:
        raise BadSet("This set has no codes. Put in at least one.")
    if len(codes) > MOST:
        raise BadSet(f"A set has at most {MOST} problems; here are {len(codes):,}. Leave some out.")
    found, faults = _read(codes)
    if faults:
        more = [f"And {counted(len(faults) - TOLD, 'more fault')}."] * (len(faults) > TOLD)
        raise BadSet(*faults[:TOLD], *more)
    return ProblemSet(plain(title, MOST_TITLE), tuple(found))


def _read(codes: Sequence[str]) -> tuple[list[str], list[str]]:
    """The codes as they are shown, and a sentence for each that is none or stands there twice."""
    places: dict[str, int] = {}
    faults = []
    for number, typed in enumerate(codes, 1):
        try:
            code = str(read_code(typed))
        except BadCode as refusal:
            faults.append(f"Problem {number}: {refusal}")
            continue
        if first := places.get(code):
            faults.append(f"Problem {number} is the same as problem {first}: leave out one {code}.")
        places.setdefault(code, number)
    return list(places), faults


def codes_in(text: str) -> list[str]:
    """What stands where codes should, a piece at a time; hyphens are put right.

    >>> codes_in("bp–2u1–7-\\n> 68, *WP-1U1-7-WTN* - ")
    ['BP-2U1-7-68', 'WP-1U1-7-WTN']
    """
    seen = "".join(sign for sign in text if category(sign) != "Cf")
    spaced = re.sub(r"[^0-9A-Z-]+", " ", _HYPHENS.sub("-", seen).upper())
    joined = re.sub(r" ?- ?(?=[0-9]|[A-Z]{3}(?![0-9A-Z]| ?-))", "-", spaced)
    return [piece for word in joined.split() if (piece := word.strip("-"))]


def read_set(text: str) -> ProblemSet:
    """The set in a text, such as a message or what stood in a link.

    Raises:
        BadSet: the sentences say what is wrong with it.
    """
    if not text.strip():
        raise BadSet(NOTHING)
    if len(text) > MOST_PASTED:
        raise BadSet(TOO_LONG)
    if not (match := _SHAPE.search(text)):
        raise BadSet(CUT if re.search(_START, text, re.I) else NO_SET)
    if len(match[0]) > LONGEST:
        raise BadSet(TOO_LONG)
    codes = codes_in(match["codes"])
    sent = _MARK.fullmatch("-".join(codes_in(match["mark"])))
    if not sent:
        raise BadSet(CUT)
    found = set_of(match["title"].replace("]]", "]"), codes)
    if len(codes) != int(sent[1]):
        came = f"{counted(len(codes), 'problem')} came"
        raise BadSet(f"This set was sent with {int(sent[1])}, and {came}. Copy the whole message.")
    if found.mark.partition("-")[2] != sent[2]:
        raise BadSet(CHANGED)
    return found


class Question(NamedTuple):
    """A problem, or a case of find the fault, in its place, from 1. `fault` says why there is none."""

    number: int
    code: str
    case: Case | FaultCase | None
    fault: str = ""

    @property
    def title(self) -> str:
        """What it is called, and at which level."""
        case = self.case
        return f"{case.family.title}, level {case.level}" if case else self.code


def questions_of(problems: ProblemSet) -> tuple[Question, ...]:
    """The problems of a set in order; one that another edition made has a sentence instead."""
    return tuple(_question(number, code) for number, code in enumerate(problems.codes, 1))


def _question(number: int, code: str) -> Question:
    of = case_of if read_code(code).tag == TAG else case_from_code
    try:
        return Question(number, code, of(code))
    except BadCode as refusal:
        return Question(number, code, None, str(refusal))

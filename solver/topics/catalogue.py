"""Which kinds of problems there were when, so that what was handed out stays what it is.

The code of an exam or of a set holds the number of the catalogue that was there when it was made,
and draws only from what that had: its chapters, its families and their levels. So a family, a level
or a chapter that comes later changes no code. A family says since which catalogue it, its levels
and its revisions are there; one that was taken out leaves a line in GONE.

Only a question of a kind that changed since, or that is gone, cannot be asked. It is `Refused`, by
itself, with a sentence; the others keep their numbers and their marks.
"""

from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from solver.engine.code import Code, shown
from solver.engine.draw import Draw
from solver.engine.family import Family
from solver.errors import BadCode, BadDefinition

from .problems import FAMILIES

__all__ = [
    "BITS",
    "CATALOGUE",
    "CHAPTERS",
    "FIRST",
    "GONE",
    "Gone",
    "Kind",
    "Refused",
    "chapters_at",
    "check_known",
    "kinds_at",
    "level_at",
    "since_of",
]

# The place of a chapter is its bit in a code: a new one goes to the end, and none is taken out.
BITS = (
    "horsepower", "efficiency", "cost", "balance", "units", "head", "nameplate", "insulation",
    "wet_well", "speed", "machine", "curves", "electricity", "drives", "controls", "chemical", "mains",
    "standby", "order",
)  # fmt: skip
FIRST = 1  # the catalogue of version 0.1.0, which drew by its own rules: first_catalogue.py
_SECOND = 2
# The order that version 0.1.0 drew from. It is never changed; later catalogues go by the tags.
_FIRST_ORDER = (
    "WP BP MP FL HD WH IM PE ME WW ER PO OE TD MS LM IE KW KH EC CV PS MC SP BI PK TU SH "
    "PF CP UA UD UC UH UL VU VL DP DL DR AL AS AC RL RB RR CM CF CD CG CX CH CI CS CU CL "
    "CT CK CB CE CC CZ HS HY HK HF HC HM HQ HE HP HW HB HX HT HG HO HV HU HL HN HI HJ NA "
    "NK NL NF NQ NC NM NI NJ NU NY NP NR NG NZ NE NT NO NX NB NN NV NW ND NH GV GC GR GM "
    "GL GN GA GP GS GJ GI GK GY GD GB GX GF GH WV WD WR WI WL WB WG WX WY WF WT WC WS WN "
    "WM WZ WQ WE WU WK WJ WO SF SD SB SN SI SX SW SG SV SM SK SO SC SQ SR SJ SZ SS ST JL "
    "JP JR JC JS JB JD JO "
)
_FIRST_PLACES = {tag: place for place, tag in enumerate(_FIRST_ORDER.split())}
for _family in FAMILIES:
    if _family.since == FIRST and _family.tag not in _FIRST_PLACES:
        raise BadDefinition(
            f"family {_family.name!r} came after catalogue {FIRST}: write since= with the number of "
            "the next catalogue, which is one above the last in tests/golden/catalogue.json"
        )


class Gone(NamedTuple):
    """A family that was taken out: what is left of it. `until` is the last catalogue with it.

    `levels` has for each level the catalogue since which it was there.
    """

    tag: str
    name: str
    chapter: str
    title: str
    since: int
    until: int
    levels: tuple[int, ...]
    revised: tuple[int, ...] = ()


GONE: tuple[Gone, ...] = ()


class Kind(NamedTuple):
    """A kind of problem as a catalogue has it. `family` is None where it has changed since."""

    tag: str
    name: str
    chapter: str
    title: str
    revision: int
    levels: int
    gone: bool
    family: Family | None

    @property
    def why(self) -> str:
        """Why it cannot be asked any more; empty where it can."""
        if self.family:
            return ""
        how = "is no longer in the workbook" if self.gone else "has changed since this was made"
        return f"“{self.title}” {how}, so this question can't be asked or graded any more."


class Refused(NamedTuple):
    """A question that cannot be asked any more, in the place where a Case would be."""

    kind: Kind
    level: int
    units: str
    seed: int
    because: str = ""

    @property
    def family(self) -> Kind:
        """What is known of its family."""
        return self.kind

    @property
    def why(self) -> str:
        """Why, in a sentence, and what becomes of the others."""
        return f"{self.because or self.kind.why} The other questions still count."

    @property
    def code(self) -> str:
        """The code that its problem had, unless a seed was passed over for it."""
        kind = self.kind
        return str(Code(kind.tag, self.level, self.units, kind.revision, self.seed))


@lru_cache(maxsize=16)
def kinds_at(catalogue: int) -> tuple[Kind, ...]:
    """The kinds of problems that a catalogue has, chapter by chapter."""
    kinds = [_kind(each, catalogue) for each in FAMILIES if each.since <= catalogue]
    kinds += [_gone(each, catalogue) for each in GONE if each.since <= catalogue <= each.until]
    place = _FIRST_PLACES if catalogue == FIRST else {}
    return tuple(sorted(kinds, key=lambda k: (BITS.index(k.chapter), place.get(k.tag, 0), k.tag)))


def _kind(family: Family, catalogue: int) -> Kind:
    revision = _revision(family.revised, catalogue)
    levels = sum((level.since or family.since) <= catalogue for level in family.levels)
    same = family if revision == family.revision else None
    return Kind(
        family.tag, family.name, family.chapter, family.title, revision, levels, False, same
    )


def _gone(gone: Gone, catalogue: int) -> Kind:
    revision = _revision(gone.revised, catalogue)
    levels = sum(since <= catalogue for since in gone.levels)
    return Kind(gone.tag, gone.name, gone.chapter, gone.title, revision, levels, True, None)


def _revision(revised: tuple[int, ...], catalogue: int) -> int:
    return 1 + sum(at <= catalogue for at in revised)


def chapters_at(catalogue: int) -> tuple[str, ...]:
    """The chapters that a catalogue has."""
    return tuple(dict.fromkeys(kind.chapter for kind in kinds_at(catalogue)))


def since_of(names: Iterable[str]) -> int:
    """The first catalogue that has all of these chapters and families."""
    first: dict[str, int] = {}
    every: tuple[Family | Gone, ...] = (*FAMILIES, *GONE)
    for each in every:
        for name in (each.chapter, each.name):
            first[name] = min(first.get(name, each.since), each.since)
    return max((first.get(name, FIRST) for name in names), default=FIRST)


def check_known(catalogue: int, text: str) -> None:
    """Whether this version has the catalogue of the code in a text.

    Raises:
        BadCode: it has not; the sentence says what to do.
    """
    if not FIRST <= catalogue <= CATALOGUE:
        raise BadCode(
            f"“{shown(text)}” was made by a newer version of the workbook. "
            "Update this one, or ask for a code that it can read."
        )


def level_at(kind: Kind, level: int, chance: Draw) -> int:
    """The level asked for, or the kind's highest below it; 0 asks for any."""
    return min(level, kind.levels) if level else chance.pick(range(1, kind.levels + 1))


def _newest() -> int:
    each = (n for f in FAMILIES for n in (f.since, *f.revised, *(lv.since for lv in f.levels)))
    return max(_SECOND, *each, *(gone.until + 1 for gone in GONE))


CATALOGUE = _newest()  # what codes are made from now
CHAPTERS = chapters_at(CATALOGUE)  # those that there are now

"""What a trainer sets: questions of the same kinds for everybody, with each person's own numbers.

    SET-33-2U-10-E-1-48213-46

holds, in this order: the whole chapters, the tags of other families, the level and the units, how
many questions, E for each their own numbers or S for the same ones, the edition, the number drawn
from, the fingerprint of a plant of the trainer's own, and two check digits.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from difflib import get_close_matches
from functools import lru_cache
from typing import NamedTuple
from unicodedata import category, normalize

from .case import Case
from .case import draw as draw_case
from .code import MOST_SEED
from .coded import SYSTEMS, UNIT_LETTERS, coded, opened
from .draw import Draw
from .errors import BadCode, SolverError
from .families import FAMILIES
from .family import Family
from .kept_ranges import keeping
from .own_plant import Plant, Pump, set_at
from .paper import CHAPTERS, EDITION, chapters_in, level_at, mask_of, stands_in
from .scenario import PEOPLE

__all__ = [
    "MOST",
    "Asked",
    "WorkSet",
    "case_for",
    "cases_for",
    "person_id",
    "plan_of",
    "read_set",
    "set_of",
]

MOST = 60  # questions
SEEDS = 100_000
TRIED = 20  # draws among which a question is not one that the person has already
LONGEST_ID = 40
TOP = max(len(family.levels) for family in FAMILIES)
_BY_NAME = {family.name: family for family in FAMILIES}
_PATTERN = re.compile(
    r"SET-([0-9OIL]{1,6})(?:-(?P<tags>[A-Z]{2,4}(?:-[A-Z]{2,4})*))?-([0-9OIL][UM])-([0-9OIL]{1,2})"
    r"-([ES])-(?P<edition>[0-9OIL]{1,3})-([0-9OIL]{1,9})(?:-(P[0-9OIL]{6}))?-([0-9OIL]{2})"
)


_PLANTS = {  # whether the code has one, and whether one was given
    (True, False): "is of a plant of the trainer's own. Use it with the file of its set.",
    (True, True): "is of another plant, or of this one before it was changed.",
    (False, True): "was made without a plant. Leave the plant out.",
}


class Asked(NamedTuple):
    """The kind of one question."""

    family: Family
    level: int


class WorkSet(NamedTuple):
    """What people are set; `set_of` makes one, and says what cannot be.

    `families` are names, in the order of the vocabulary of families; `level` 0 is any; `count` is
    of questions; without `each` everybody has the same numbers.
    """

    families: tuple[str, ...]
    level: int
    units: str
    count: int
    each: bool
    seed: int
    plant: Plant | None = None

    @property
    def code(self) -> str:
        """The text that gives this same set on any machine with this edition.

        >>> set_of(chapters=["horsepower", "head"], level=2, seed=48213).code
        'SET-33-2U-10-E-1-48213-46'
        """
        return _code(self)


@lru_cache(maxsize=64)
def _code(work: WorkSet) -> str:
    chosen = set(work.families)
    whole = [name for name in CHAPTERS if {f.name for f in _of([name])} <= chosen]
    others = [_BY_NAME[n].tag for n in work.families if _BY_NAME[n].chapter not in whole]
    return coded(
        "SET",
        mask_of(whole),
        *others,
        f"{work.level}{UNIT_LETTERS[work.units]}",
        work.count,
        "E" if work.each else "S",
        EDITION,
        work.seed,
        *([work.plant.fingerprint] if work.plant else []),
    )


def _of(chapters: Iterable[str]) -> list[Family]:
    return [family for family in FAMILIES if family.chapter in chapters]


def read_set(text: str, plant: Plant | None = None) -> WorkSet:
    """The set of a code; one of a trainer's own plant needs that plant.

    >>> read_set("set-33-2u-10-e-1-48213-46").count
    10

    Raises:
        BadCode: the sentence says what is wrong with the code.
    """
    shown, parts = opened(text, _PATTERN, "a set of work", EDITION)
    mask, tags, (level, units), count, way, _, seed, fingerprint = parts
    if fingerprint != (plant.fingerprint if plant else ""):
        raise BadCode(f"“{shown}” {_PLANTS[bool(fingerprint), bool(plant)]}")
    by_tag = {family.tag: family.name for family in FAMILIES}
    names = tags.split("-") if tags else []
    if unknown := [tag for tag in names if tag not in by_tag]:
        raise BadCode(f"“{shown}” has a kind of problem, {unknown[0]}, which is not here.")
    try:
        return set_of(
            chapters=chapters_in(int(mask)),
            families=[by_tag[tag] for tag in names],
            level=int(level),
            units=SYSTEMS[units],
            count=int(count),
            each=way == "E",
            seed=int(seed),
            plant=plant,
        )
    except SolverError as fault:
        raise BadCode(f"“{shown}” cannot be used. {fault}") from None


def set_of(
    *,
    chapters: Iterable[str] = (),
    families: Iterable[str] = (),
    level: int = 0,
    units: str = "us",
    count: int = 10,
    each: bool = True,
    seed: int = 0,
    plant: Plant | None = None,
) -> WorkSet:
    """A set of whole chapters and of single families, by their names.

    Raises:
        SolverError: the sentence says what cannot be, and what to choose instead.
    """
    chapters, families = tuple(chapters), tuple(families)
    _known("chapter", chapters, CHAPTERS)
    _known("family", families, tuple(_BY_NAME))
    if not (chapters or families):
        raise SolverError("Choose at least one chapter or one family.")
    _within("level", level, 0, TOP)
    _within("count", count, 1, MOST)
    _within("seed", seed, 0, MOST_SEED)
    if units not in UNIT_LETTERS:
        raise SolverError(f"Units are “us” or “si”; you wrote “{units}”.")
    if not isinstance(each, bool):
        raise SolverError(f"Write each as true or false; you wrote “{each}”.")
    chosen = tuple(f.name for f in FAMILIES if f.chapter in chapters or f.name in families)
    work = WorkSet(chosen, level, units, count, each, seed, plant)
    if plant:
        _check_plant(work, plant)
    return work


def _known(kind: str, names: Sequence[str], known: Sequence[str]) -> None:
    for name in names:
        if name not in known:
            near = get_close_matches(f"{name}", known, n=1, cutoff=0.5)
            hint = f" Did you mean “{near[0]}”?" if near else f" One is “{known[0]}”."
            raise SolverError(f"There is no {kind} “{f'{name}'[:40]}”.{hint}")


def _within(name: str, value: object, least: int, most: int) -> None:
    if not isinstance(value, int) or isinstance(value, bool) or not least <= value <= most:
        raise SolverError(
            f"Write {name} as a whole number from {least} to {most:,}; you wrote “{value}”."
        )


def _check_plant(work: WorkSet, plant: Plant) -> None:
    if plant.units != work.units and any(pump.ranges for pump in plant.places):
        raise SolverError(
            f"The plant's ranges are in {plant.units} units, and the set is in {work.units}. "
            "Write both in the same units."
        )
    for family, level in {_kind(asked): asked for asked in plan_of(work)}.values():
        pumps = set_at(family, plant)
        if not pumps:
            raise SolverError(
                f"“{family.title}” cannot be asked of any pump of this plant. "
                "Add a pump of another kind, or leave it out."
            )
        for pump in pumps:
            keeping(family, level, work.units, pump).seed_from(0)


@lru_cache(maxsize=64)
def plan_of(work: WorkSet) -> tuple[Asked, ...]:
    """The kind of each question, the same for everybody: chapters in turn.

    No family comes again before all have been asked.
    """
    chance = Draw(f"plan {work.code}")
    turns = _in_turn([_BY_NAME[name] for name in work.families], chance)
    asked = (next(turns) for _ in range(work.count))
    return tuple(Asked(family, level_at(family, work.level, chance)) for family in asked)


def _in_turn(families: Sequence[Family], chance: Draw) -> Iterator[Family]:
    chapters = dict.fromkeys(family.chapter for family in families)
    while True:
        heaps = [
            chance.shuffled([family for family in families if family.chapter == chapter])
            for chapter in chance.shuffled(tuple(chapters))
        ]
        while heaps := [heap for heap in heaps if heap]:
            yield from (heap.pop() for heap in heaps)


def cases_for(work: WorkSet, person: str) -> tuple[Case, ...]:
    """A person's problems, in order; `person` counts only where each has their own.

    The same set and person give the same problems on any machine.

    Raises:
        SolverError: `person` cannot be anybody's id.
    """
    drawn: dict[tuple[str, int], list[Case]] = {}
    key = _key(work, person)
    return tuple(
        _drawn(work, key, number, asked, drawn.setdefault(_kind(asked), []))
        for number, asked in enumerate(plan_of(work), 1)
    )


def case_for(work: WorkSet, person: str, number: int) -> Case:
    """A person's problem `number`, from 1; only earlier ones of its very kind are drawn with it."""
    _within("number", number, 1, work.count)
    plan, key, drawn = plan_of(work), _key(work, person), []
    for at, asked in enumerate(plan[:number], 1):
        if _kind(asked) == _kind(plan[number - 1]):
            _drawn(work, key, at, asked, drawn)
    return drawn[-1]


def _kind(asked: Asked) -> tuple[str, int]:
    return asked.family.tag, asked.level


def _key(work: WorkSet, person: str) -> str:
    return f"set {work.code} {person_id(person)}" if work.each else f"set {work.code}"


def _drawn(work: WorkSet, key: str, number: int, asked: Asked, before: list[Case]) -> Case:
    """Question `number`, which joins those of its kind that came before."""
    chance = Draw(f"{key} {number}")
    pump, told = _told(work.plant, asked.family, chance)
    for _ in range(TRIED):
        seed = int(chance.between(0, SEEDS))
        if pump and pump.ranges:
            seed = keeping(asked.family, asked.level, work.units, pump).seed_from(seed)
        case = draw_case(asked.family, seed, work.units, asked.level, told)
        if not stands_in(case, before):
            break
    before.append(case)
    return case


def _told(plant: Plant | None, family: Family, chance: Draw) -> tuple[Pump | None, dict[str, str]]:
    """The pump a problem is about, and the words for it."""
    if plant is None:
        return None, {}
    pump = chance.pick(set_at(family, plant))
    return pump, {
        "place": f"{pump.name} at {pump.station}",
        "station": pump.station,
        "person": chance.pick(plant.people or PEOPLE),
    }


def person_id(text: str) -> str:
    """A person's id as it is used everywhere: trimmed, in small letters, each letter in one form.

    >>> person_id(" Ana.R ")
    'ana.r'

    Raises:
        SolverError: the sentence says what an id may be.
    """
    name = text.strip()
    for _ in range(2):  # what folding makes may have another form again
        name = normalize("NFKC", normalize("NFKC", name).casefold()).strip()
    letters = all(
        sign in "._-@" or category(sign)[0] in "LM" or category(sign) == "Nd" for sign in name
    )
    if not (1 <= len(name) <= LONGEST_ID and letters and name[0].isalnum() and name[-1] != "."):
        raise SolverError(
            f"An id has up to {LONGEST_ID} letters, digits and . _ - @, and begins with a letter "
            f"or a digit; you wrote “{' '.join(text[:LONGEST_ID].split())}”."
        )
    return name

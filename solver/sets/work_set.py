"""What a trainer sets: questions of the same kinds for everybody, with each person's own numbers.

    SET-33-2U-10-E-2-48213-VNE

holds, in this order: the whole chapters, their shares where they have any (shares.py), the tags of
other families, the level and the units, how
many questions, E for each their own numbers or S for the same ones, the catalogue it is drawn from
(catalogue.py), the number drawn from, the cases of find the fault (fault_part.py) and the fingerprint
of a plant of the trainer's own where there are any, and three check letters.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from difflib import get_close_matches
from types import MappingProxyType

from solver.engine.code import (
    CHECK,
    DIGIT,
    MOST_SEED,
    UNIT_LETTERS,
    UNITS_BY_LETTER,
    WRONG,
    number,
    opened,
    shown,
    written,
)
from solver.errors import BadCode, SolverError
from solver.scenario import kinds_of
from solver.topics.catalogue import CATALOGUE, FIRST, chapters_at, check_known, kinds_at
from solver.topics.problems import FAMILIES

from .fault_part import IN_CODE, FaultPart, part_in_code
from .kept_ranges import keeping
from .own_plant import Plant, set_at
from .paper import chapters_in
from .set_cases import case_for, cases_for, faults_for, person_id
from .set_questions import WorkSet, plan_of
from .shares import IN_CODE as SHARES_IN_CODE
from .shares import MOST_SHARE, shares_in

__all__ = [
    "MOST",
    "TOP",
    "WorkSet",
    "case_for",
    "cases_for",
    "faults_for",
    "person_id",
    "plan_of",
    "read_set",
    "set_of",
]

MOST = 60  # questions
NO_SHARES: Mapping[str, int] = MappingProxyType({})
TOP = max(len(family.levels) for family in FAMILIES)  # level
_SHAPE = re.compile(
    rf"SET-({DIGIT}{{1,6}}){SHARES_IN_CODE}(?:-(?P<tags>[A-Z]{{2,4}}(?:-[A-Z]{{2,4}})*))?-({DIGIT})([UM])"
    rf"-({DIGIT}{{1,2}})-([ES])-({DIGIT}{{1,3}})-({DIGIT}{{1,9}}){IN_CODE}(?:-P({DIGIT}{{6}}))?-{CHECK}"
)
_PLANTS = {  # whether the code has one, and whether one was given
    (True, False): "is for a trainer's own plant. Use it together with the set's file.",
    (True, True): "is for another plant, or for this one before it was changed.",
    (False, True): "was made without a plant. Leave the plant out.",
}


def read_set(text: str, plant: Plant | None = None) -> WorkSet:
    """The set of a code; one of a trainer's own plant needs that plant.

    >>> read_set("set-33-2u-10-e-1-48213-46").count
    10

    Raises:
        BadCode: the sentence says what is wrong with the code.
    """
    match = opened(text, _SHAPE, "a set of work")
    mask, shares, tags, level, units, count, way, catalogue, seed, _, fingerprint, _ = (
        match.groups()
    )
    check_known(number(catalogue), text)
    if (fingerprint or "") != (plant.fingerprint[1:] if plant else ""):
        raise BadCode(f"“{shown(text)}” {_PLANTS[bool(fingerprint), bool(plant)]}")
    by_tag = {kind.tag: kind.name for kind in kinds_at(number(catalogue))}
    names = tags.split("-") if tags else []
    if unknown := [tag for tag in names if tag not in by_tag]:
        raise BadCode(
            f"“{shown(text)}” has a kind of problem, {unknown[0]}, that isn't in this workbook."
        )
    chapters = chapters_in(number(mask))
    each_share = shares_in(shares)
    if each_share and len(each_share) != len(chapters):
        raise BadCode(f"“{shown(text)}” {WRONG}")
    try:
        work = set_of(
            chapters=chapters,
            families=[by_tag[tag] for tag in names],
            level=number(level),
            units=UNITS_BY_LETTER[units],
            count=number(count),
            each=way == "E",
            seed=number(seed),
            plant=plant,
            catalogue=number(catalogue),
            faults=part_in_code(match),
            shares=dict(zip(chapters, each_share, strict=False)),
        )
    except SolverError as fault:
        raise BadCode(f"“{shown(text)}” can't be used. {fault}") from None
    if work.code != written(match):
        raise BadCode(f"“{shown(text)}” {WRONG}")
    return work


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
    catalogue: int = CATALOGUE,
    faults: FaultPart | None = None,
    shares: Mapping[str, int] = NO_SHARES,
) -> WorkSet:
    """A set of whole chapters and of single families, by their names; then cases of find the fault.

    `shares` has the share of each chapter, and then no single families.
    `catalogue` is the number of the one it was made from; a new set is of the newest.

    Raises:
        SolverError: the sentence says what cannot be, and what to choose instead.
    """
    chapters, families = tuple(chapters) or tuple(shares), tuple(families)
    _within("catalogue", catalogue, 1, CATALOGUE)
    kinds = kinds_at(catalogue)
    _known("chapter", chapters, chapters_at(catalogue))
    _known("family", families, tuple(kind.name for kind in kinds))
    if not (chapters or families):
        raise SolverError("Choose at least one chapter or one family.")
    _within("level", level, 0, TOP)
    _within("count", count, 1, MOST)
    _within("seed", seed, 0, MOST_SEED)
    if units not in UNIT_LETTERS:
        raise SolverError(f"Units are “us” or “si”; you wrote “{units}”.")
    if not isinstance(each, bool):
        raise SolverError(f"Write each as true or false; you wrote “{each}”.")
    chosen = tuple(k.name for k in kinds if k.chapter in chapters or k.name in families)
    if faults and catalogue == FIRST:
        raise SolverError(
            "A set of catalogue 1 has no cases of find the fault. Take the line with catalogue out, or the cases."
        )
    work = WorkSet(
        chosen, level, units, count, each, seed, plant, catalogue, faults,
        _shares(shares, chapters, families, catalogue),
    )  # fmt: skip
    if plant:
        _check_plant(work, plant)
    return work


def _shares(
    shares: Mapping[str, int],
    chapters: Sequence[str],
    families: Sequence[str],
    catalogue: int,
) -> tuple[int, ...]:
    """The shares in the order of the catalogue's chapters."""
    if not shares:
        return ()
    if families or catalogue == FIRST:
        raise SolverError(
            "Shares are of whole chapters. Take out the single kinds of problems, or the shares."
        )
    if without := [name for name in chapters if name not in shares]:
        raise SolverError(f"“{without[0]}” has no share. Give each chapter one, or take it out.")
    if len(shares) > len(set(chapters)):
        other = next(name for name in shares if name not in chapters)
        raise SolverError(f"“{other}” has a share and isn't among the chapters. Add it there.")
    for name, share in shares.items():
        _within(f"the share of {name}", share, 1, MOST_SHARE)
    return tuple(shares[name] for name in chapters_at(catalogue) if name in shares)


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
    for kind, level in plan_of(work):
        if (family := kind.family) is None:
            continue
        pumps = set_at(family, level, plant)
        if not pumps:
            raise SolverError(
                f"No pump of this plant fits “{family.title}”. Leave that out, or add a pump of "
                f"the kind “{kinds_of(family.places)[0]}”."
            )
        for pump in pumps:
            keeping(family, level, work.units, pump).seed_from(0)

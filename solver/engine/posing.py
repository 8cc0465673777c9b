"""Drawing a problem: `draw(family, seed, units, level)` gives a Case with its whole solution.

A Case is drawn again, by the same chance and so the same everywhere, until the machine in it is
plausible and no mistake lands near the accepted band. `posed` makes one of given values instead,
or refuses them.
"""

from collections.abc import Mapping
from types import MappingProxyType

from solver.errors import BadDefinition, NotSolvable, SolverError, Unfit
from solver.scenario import PEOPLE

from .case import Case, Wording
from .code import MOST_SEED
from .draw import Draw
from .family import Drawn, Family
from .solution import be_plausible, judged, worked_out

__all__ = ["draw", "drawn_again", "drawn_values", "posed", "tried"]

ATTEMPTS = 400
WIDEST = 0.04  # a band wider than this, each way, would accept too much
# Real readings seldom have a round average, so that rounding on the way moves more.
WIDEST_GIVEN = 0.1
NOTHING_TOLD: Mapping[str, str] = MappingProxyType({})


def draw(
    family: Family,
    seed: int,
    units: str = "us",
    level: int = 1,
    told: Mapping[str, str] = NOTHING_TOLD,
) -> Case:
    """The problem number `seed` of a family, in "us" or "si" units, at a level from 1.

    `told` may say another {place}, {station} or {person}, which changes nothing else. The same
    arguments give the same Case on any machine and Python version.

    Raises:
        SolverError: there is no such system of units, or no such seed.
        BadDefinition: there is no such level, or its scene draws no fair problem.
        NotSolvable: no chain of formulas leads from what is given to what is asked.
    """
    if units not in ("us", "si"):
        raise SolverError(f"Units are “us” or “si”; got “{units}”.")
    if not 0 <= seed <= MOST_SEED:
        raise SolverError(f"A seed is a whole number from 0 to {MOST_SEED:,}; you typed {seed}.")
    why: SolverError | None = None
    for attempt in range(ATTEMPTS):
        try:
            return tried(family, level, units, seed, attempt, told)
        except Unfit as fault:
            why = fault
        except NotSolvable as fault:
            raise NotSolvable(
                f"family {family.name!r}, level {level}, {units}: {fault}. Give what a formula "
                "of the chapter needs, or add the formula"
            ) from None
    raise BadDefinition(
        f"family {family.name!r}, level {level}, {units}: no draw in {ATTEMPTS} makes a fair "
        f"problem. The last one: {why} Change what its scene draws"
    )


def tried(
    family: Family,
    level: int,
    units: str,
    seed: int,
    attempt: int = 0,
    told: Mapping[str, str] = NOTHING_TOLD,
) -> Case:
    """One attempt at a problem; Unfit where what was drawn makes no fair one."""
    drawn, chance = drawn_values(family, level, units, seed, attempt)
    return _case(family, level, units, seed, drawn, chance, told)


def drawn_values(
    family: Family, level: int, units: str, seed: int, attempt: int = 0
) -> tuple[Drawn, Draw]:
    """One attempt at a problem's numbers, fair or not, and the chance that goes on from them.

    Raises:
        BadDefinition: its scene leaves out a value that the level gives.
        Unfit: what was drawn has no such reading.
    """
    at = family.level(level)
    chance = Draw(f"{family.tag} {family.revision} {level} {units} {seed} {attempt}")
    drawn = family.scene_at(level)(chance, units)
    if left_out := [name for name in at.given if name not in drawn.values]:
        raise BadDefinition(
            f"family {family.name!r}, level {level}, {units}: its scene draws no "
            f"{' and no '.join(left_out)}, and the level gives it. Add it to what the scene returns"
        )
    return drawn, chance


def drawn_again(case: Case) -> Drawn | None:
    """What a problem's numbers were taken from; none where they were given and not drawn."""
    if case.seed is None:
        return None
    for attempt in range(ATTEMPTS):
        try:
            drawn, chance = drawn_values(case.family, case.level, case.units, case.seed, attempt)
            _case(case.family, case.level, case.units, case.seed, drawn, chance, NOTHING_TOLD)
            return drawn
        except Unfit:
            continue
    return None


def posed(
    family: Family, level: int, units: str, values: Mapping[str, float], told: Mapping[str, str]
) -> Case:
    """The problem of a family with these very values, in the units of the system.

    `values` has all that is given at the level, and may have more, which a judge may use; `told`
    may say another {place}, {station} or {person}. The same arguments give the same Case. It has
    no code.

    Raises:
        Unfit: no fair problem can be made of these values; the sentence says why.
    """
    given = {name: values[name] for name in family.level(level).given}
    chance = Draw(f"{family.tag} {family.revision} {level} {units} {given}")
    try:
        return _case(family, level, units, None, Drawn(values), chance, told)
    except Unfit:
        raise
    except (ArithmeticError, LookupError, ValueError) as fault:
        why = f": {fault}" if isinstance(fault, SolverError) else " with these values"
        raise Unfit(f"Its formula can't be calculated{why}.") from fault


def _case(
    family: Family,
    level: int,
    units: str,
    seed: int | None,
    drawn: Drawn,
    chance: Draw,
    told: Mapping[str, str],
) -> Case:
    """The problem with these values; Unfit where it would not be a fair one."""
    at, values = family.level(level), drawn.values
    given = {name: values[name] for name in at.given}
    be_plausible(at.given, given, units)
    judge = at.judge or family.judge
    if judge is None:
        found = worked_out(family, at, units, given, WIDEST_GIVEN if seed is None else WIDEST)
    else:
        found = judged(judge, family, at, units, given, values, chance)
    place = drawn.place or chance.pick(family.places)
    wording = Wording(found.asks, found.table, place, chance.pick(PEOPLE), dict(told))
    return Case(family, level, units, seed, wording, given, *found[:-2])

"""Which mistakes the problems of a set can name, so that a misspelt one is told of."""

from collections.abc import Iterable, Iterator

from solver import Family, draw
from solver.engine.common_slips import common_slips
from solver.engine.plan import find_plan
from solver.sets.work_set import WorkSet
from solver.topics.catalogue import kinds_at

from .set_checks import SET_FILE, SetFault, got, meant

__all__ = ["check_mistakes"]

DRAWS = 100  # of a judgement; twenty have had every choice but in two kinds, forty in all
INSTEAD = "Copy one from the class's report."


def check_mistakes(work: WorkSet, wanted: Iterable[str]) -> None:
    """Whether each of these mistakes is one that some problem of the set's kinds can name.

    Nobody can tell once one of the kinds has changed since the set was made.

    Raises:
        SetFault: it names the one that is none, and the nearest there is.
    """
    missing = set(wanted)
    known: set[str] = set()
    kinds = [kind for kind in kinds_at(work.catalogue) if kind.name in work.families]
    families = [kind.family for kind in kinds if kind.family]
    if len(families) < len(kinds):
        return
    for ids in _ids(families, work.units) if missing else ():
        known |= ids
        missing -= ids
        if not missing:
            return
    for name in sorted(missing):
        instead = meant(name, sorted(known)) or INSTEAD
        raise SetFault(
            f"{SET_FILE}: no problem of this set has the mistake {got(name)} of "
            f"credit.by_mistake. {instead}"
        )


def _ids(families: Iterable[Family], units: str) -> Iterator[set[str]]:
    """The mistakes of chains of formulas come first; those of judgements have to be drawn."""
    judged = []
    for family in families:
        if family.judge is None:
            for level in family.levels:
                plan = find_plan(level.given, family.asked, family.formulas, units)
                yield set(common_slips(plan))
        else:
            judged.append(family)
    for family in judged:
        yield from _drawn(family, units)


def _drawn(family: Family, units: str) -> Iterator[set[str]]:
    for level in range(1, len(family.levels) + 1):
        for seed in range(DRAWS):
            yield {mistake.id for mistake in draw(family, seed, units, level).mistakes}

"""What belongs to a chapter: its problem families, the formulas they use, their quantities."""

from collections.abc import Iterator

from solver import FAMILIES, Family
from solver.algebra.formula import Formula
from solver.engine.family import Level
from solver.engine.plan import find_plan
from solver.vocabulary import QUANTITIES, Quantity

__all__ = ["asked_in", "families_of", "formulas_of", "levels_of", "quantities_of"]

MOST_READINGS = 12  # as many boxes as a reader can look over


def families_of(name: str) -> tuple[Family, ...]:
    """The families of a chapter, or the one family of that name.

    Raises:
        LookupError: neither has this name; it lists the chapters.
    """
    found = tuple(f for f in FAMILIES if name in (f.chapter, f.name))
    if not found:
        chapters = ", ".join(dict.fromkeys(f.chapter for f in FAMILIES))
        raise LookupError(f"No chapter or family is called {name!r}. The chapters are: {chapters}.")
    return found


def formulas_of(name: str) -> tuple[Formula, ...]:
    """Every formula that a worked solution of the chapter uses, in the order of the library."""
    families = families_of(name)
    used = {id(formula) for family in families for _, formula in _used(family)}
    every = {id(f): f for family in families for f in family.formulas}
    return tuple(formula for key, formula in every.items() if key in used)


def levels_of(name: str) -> list[tuple[int, Formula]]:
    """Each formula that a level of a family of the chapter uses, with the number of the level."""
    return [pair for family in families_of(name) for pair in dict.fromkeys(_used(family))]


def _used(family: Family) -> Iterator[tuple[int, Formula]]:
    for number, level in enumerate(family.levels, 1):
        wanted = level.find if family.judge else (family.asks(level),)
        for units in ("us", "si"):
            for asked in wanted:
                plan = find_plan(level.given, asked, family.formulas, units)
                yield from ((number, link.formula) for link in plan.links)


def quantities_of(name: str) -> tuple[Quantity, ...]:
    """Every quantity that stands in a formula of a chapter, in the order of the vocabulary."""
    names = {n for formula in formulas_of(name) for n in formula.names}
    return tuple(quantity for quantity in QUANTITIES.values() if quantity.name in names)


def asked_in(name: str) -> dict[str, tuple[str, ...]]:
    """What a chapter's problems ask for, each with the readings that its problems work it from.

    Those of the first levels come first. Later levels are left out where they would be too many.
    """
    found: dict[str, dict[str, None]] = {}
    numeric = [f for f in families_of(name) if f.judge is None]
    levels = [(n, family, level) for family in numeric for n, level in enumerate(family.levels)]
    for _, family, level in sorted(levels, key=lambda each: each[0]):
        asked = family.asks(level)
        kept = found.setdefault(asked, {})
        wider = kept | dict.fromkeys(_readings(family, level))
        if len(wider) <= MOST_READINGS:
            found[asked] = wider
    return {asked: tuple(names) for asked, names in found.items()}


def _readings(family: Family, level: Level) -> tuple[str, ...]:
    """What a level gives that its answer needs; a problem may give more, to be left aside."""
    links = find_plan(level.given, family.asks(level), family.formulas, "us").links
    needed = {name for link in links for name in link.formula.names}
    return tuple(name for name in level.given if name in needed)

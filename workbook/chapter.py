"""What belongs to a chapter: its problem families, the formulas they use, their quantities."""

from collections.abc import Iterator

from solver import FAMILIES, Family
from solver.formula import Formula
from solver.plan import find_plan
from solver.vocabulary import QUANTITIES, Quantity

__all__ = ["asked_in", "families_of", "formulas_of", "quantities_of"]


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
    used = {id(formula) for family in families for formula in _used(family)}
    every = {id(f): f for family in families for f in family.formulas}
    return tuple(formula for key, formula in every.items() if key in used)


def _used(family: Family) -> Iterator[Formula]:
    for level in family.levels:
        wanted = level.find if family.judge else (family.asked,)
        for units in ("us", "si"):
            for asked in wanted:
                plan = find_plan(level.given, asked, family.formulas, units)
                yield from (link.formula for link in plan.links)


def quantities_of(name: str) -> tuple[Quantity, ...]:
    """Every quantity that stands in a formula of a chapter, in the order of the vocabulary."""
    names = {n for formula in formulas_of(name) for n in formula.names}
    return tuple(quantity for quantity in QUANTITIES.values() if quantity.name in names)


def asked_in(name: str) -> tuple[str, ...]:
    """The names of the quantities that a chapter's problems ask for."""
    return tuple(dict.fromkeys(f.asked for f in families_of(name) if f.judge is None))

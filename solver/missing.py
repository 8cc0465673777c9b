"""What a reader could add so that a quantity can be worked."""

from collections.abc import Mapping
from itertools import islice

from .follows import all_that_follows
from .formulas import FORMULAS
from .plan import reachable
from .vocabulary import QUANTITIES, Quantity, quantity_named

__all__ = ["missing_says", "what_would_unlock"]

MOST_HINTS = 4


def what_would_unlock(
    values: Mapping[str, float], find: str, units: str
) -> tuple[tuple[str, ...], ...]:
    """Sets of quantities, the smallest first, any of which would make `find` workable."""
    given = tuple(values)
    found = reachable(given, FORMULAS, units)
    direct = []
    for formula in FORMULAS:
        if find in formula.solvable and units in formula.systems:
            lacking = tuple(n for n in formula.names if n != find and n not in found)
            if lacking and lacking not in direct:
                direct.append(lacking)
    single = [(name,) for name in QUANTITIES if name not in found and name != find]
    ways = dict.fromkeys(sorted((*direct, *single), key=len))
    fitting = (way for way in ways if _unlocks(way, values, find, units))
    return tuple(islice(fitting, MOST_HINTS))


def _unlocks(way: tuple[str, ...], values: Mapping[str, float], find: str, units: str) -> bool:
    """Whether usual values of these quantities, added to those given, give `find`."""
    if find not in reachable((*values, *way), FORMULAS, units):
        return False
    typical = {name: quantity_named(name).typical(units) for name in way}
    return find in all_that_follows({**values, **typical}, units).known


def missing_says(asked: Quantity, missing: tuple[tuple[str, ...], ...]) -> str:
    """What to add, in words; or that no formula leads to the quantity."""
    if not missing:
        return f"The {asked.label} cannot be worked by any formula here. Measure it."
    ways = " or ".join(
        " and ".join(f"the {quantity_named(name).label} ({name})" for name in names)
        for names in missing
    )
    return f"The {asked.label} cannot be worked yet. Add {ways}."

"""Common slips that change more than one link of a chain, or none: named where they are apart.

Stopped at any step; the right number in another unit; one reading taken to be in another unit;
several slips together (slips_together.py). Unlike the mistakes of one link, no draw is thrown away
for them: one that comes near the right answer is left unnamed there.
"""

from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from itertools import chain
from types import MappingProxyType

from solver.algebra.expression import Expr, Known
from solver.algebra.tree import walk
from solver.units.spoken import spoken
from solver.vocabulary import quantity_named

from .mistakes import Change, mistaken_changes, stopped_at
from .other_units import other_units, taken_for
from .plan import Plan
from .slip import Answer, CommonSlip, worked_again
from .slips_together import every_one_alike, two_together

__all__ = ["common_slips"]


@lru_cache(maxsize=1024)
def common_slips(plan: Plan) -> Mapping[str, CommonSlip]:
    """Every common slip of a chain by its id, likelier first; those of one link (mistakes.py) lead."""
    slips = chain(
        (_of_one_link(plan, change) for change in mistaken_changes(plan)),
        _stops(plan),
        every_one_alike(plan),
        _other_units(plan),
        _given_in_another(plan),
        two_together(plan),
    )
    found: dict[str, CommonSlip] = {}
    for slip in slips:
        found.setdefault(slip.id, slip)
    return MappingProxyType(found)


def _of_one_link(plan: Plan, change: Change) -> CommonSlip:
    answer = worked_again(plan, {change.at: change.compute})
    of = plan.links[change.at].target
    return CommonSlip(change.id, answer, change.did, change.why, change.expr, of, change.form)


def _stops(plan: Plan) -> Iterator[CommonSlip]:
    """Stopped at any step but the last, the latest first."""
    for at in reversed(range(len(plan.links) - 1)):
        if not plan.only_renames(at):
            yield _of_one_link(plan, stopped_at(plan, at))


def _other_units(plan: Plan) -> Iterator[CommonSlip]:
    """The right number in another unit or at another scale."""
    quantity = quantity_named(plan.asked)
    for other in other_units(quantity, plan.units):
        why = f"The question asks for {other.asked}."
        yield CommonSlip(
            f"{plan.asked}.in_another_unit.{other.key}",
            lambda known, to=other.convert: to(known[plan.asked]),
            f"{{this}} is right {other.said}.",
            why,
        )


def _given_in_another(plan: Plan) -> Iterator[CommonSlip]:
    """One given quantity used as if it was in another unit, and so converted once more."""
    used = [name for link in plan.links for name in _names(link.expr) if name in plan.given]
    for name in dict.fromkeys(used):
        target = next(link.target for link in plan.links if name in _names(link.expr))
        for other in taken_for(quantity_named(name), plan.units):
            did = spoken(f"You read the {{{name}:name}} as {other.name}.", plan.units)
            why = f"The problem gives it in {other.asked}, so you don't need that conversion."
            answer = _from_given(plan, name, other.convert)
            yield CommonSlip(f"{target}.{name}_taken_for.{other.key}", answer, did, why)
            did = spoken(f"You changed the {{{name}:name}} to {other.name}.", plan.units)
            why = f"The formula takes {other.asked}."
            answer = _from_given(plan, name, other.back)
            yield CommonSlip(f"{target}.{name}_changed_to.{other.key}", answer, did, why)


def _names(expr: Expr) -> list[str]:
    return [node.name for node in walk(expr) if isinstance(node, Known)]


def _from_given(plan: Plan, name: str, to: Callable[[float], float]) -> Answer:
    """The chain with another number for one given quantity."""
    first = next(at for at, link in enumerate(plan.links) if name in _names(link.expr))
    functions = plan.functions[first:]

    def answer(known: Mapping[str, float]) -> float:
        again = dict(known)
        again[name] = to(known[name])
        for target, function in functions:
            again[target] = function(again)
        return again[plan.asked]

    return answer

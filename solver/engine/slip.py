"""One common slip of a chain, and how a chain is worked with other expressions for its links."""

from collections.abc import Callable, Iterator, Mapping
from typing import NamedTuple

from solver.algebra.expression import Constant, Expr, Fraction, Known, Percent, Product
from solver.algebra.solve import Compute, compiled
from solver.algebra.tree import walk
from solver.vocabulary import quantity_named

from .one_line import composed
from .plan import Plan

__all__ = [
    "Answer",
    "CommonSlip",
    "changed",
    "conversions",
    "efficiencies",
    "percents",
    "with_slips",
    "worked_again",
]

Answer = Callable[[Mapping[str, float]], float]


class CommonSlip(NamedTuple):
    """A way to a wrong answer. `answer` takes every quantity of the chain, with its right value.

    The rest is as in Change (mistakes.py); `of` is the quantity that `expr` was worked for.
    """

    id: str
    answer: Answer
    did: str
    why: str
    expr: Expr | None = None
    of: str = ""
    form: str = ""


def worked_again(plan: Plan, instead: Mapping[int, Compute]) -> Answer:
    """The chain with some links computed another way."""
    first = min(instead)
    functions = [
        (target, instead.get(at, function))
        for at, (target, function) in enumerate(plan.functions)
        if at >= first
    ]

    def answer(known: Mapping[str, float]) -> float:
        again = dict(known)
        for target, function in functions:
            again[target] = function(again)
        return again[plan.asked]

    return answer


def changed(plan: Plan, name: str, instead: Mapping[int, Expr], did: str, why: str) -> CommonSlip:
    """The chain with other expressions for some links."""
    computes = {at: compiled(expr, plan.units) for at, expr in instead.items()}
    whole = composed(plan, instead)
    return CommonSlip(name, worked_again(plan, computes), did, why, whole, plan.asked, "is")


def with_slips(expr: Expr, how: Mapping[str, str]) -> tuple[Expr, int]:
    """An expression with a kind of slip at each of some factors; how many of them it has."""
    match expr:
        case Percent(of):
            inner, done = with_slips(of, how)
            return Percent(inner), done
        case Product():
            sides = {"over": [], "under": []}
            count = 0
            for side, other in (("over", "under"), ("under", "over")):
                for factor in getattr(expr, side):
                    kind = how.get(_key(factor), "")
                    count += bool(kind)
                    if kind == "percent_as_whole":
                        sides[side].append(factor.of)
                    elif kind != "left_out":
                        sides[other if kind else side].append(factor)
            return Product(tuple(sides["over"]), tuple(sides["under"])), count
    return expr, 0


def _key(factor: Expr) -> str:
    match factor:
        case Fraction(Known(name)):
            return name
        case Constant():
            return factor.name
    return ""


def _leaves(plan: Plan, kind: type) -> Iterator[Expr]:
    return (node for link in plan.links for node in walk(link.expr) if isinstance(node, kind))


def percents(plan: Plan) -> set[str]:
    return {f.of.name for f in _leaves(plan, Fraction) if isinstance(f.of, Known)}


def efficiencies(plan: Plan) -> set[str]:
    return {name for name in percents(plan) if quantity_named(name).is_efficiency}


def conversions(plan: Plan) -> set[str]:
    return {constant.name for constant in _leaves(plan, Constant)}

"""One common slip of a chain, and those at several links: every one alike, or the two likeliest."""

import re
from collections.abc import Callable, Iterator, Mapping
from itertools import combinations
from typing import NamedTuple

from solver.algebra.expression import Constant, Expr, Fraction, Known, Percent, Product
from solver.algebra.tree import Compute, compiled, walk
from solver.vocabulary import quantity_named, spoken

from .changes import IS
from .plan import Link, Plan, composed, worked_on
from .steps import reason
from .variants import Variant, variants

__all__ = [
    "Answer",
    "CommonSlip",
    "changed",
    "every_one_alike",
    "two_together",
    "with_slips",
    "worked_again",
]

Answer = Callable[[Mapping[str, float]], float]
LIKELIEST = ("multiplied_by", "divided_by", "left_out")
PAIRS, SELDOM = 40, 4  # how many pairs at most, and how seldom both together
# The same slip at every link like it: the factors it touches, the kinds of slip, and what is said.
WASTE = (
    "Every machine wastes part of what it gets, so each one closer to the wire needs more power."
)
PASSES = "Every machine passes on only part of what it gets."
EVERY = {
    "every_wrong_way": "used every efficiency the wrong way",
    "every_left_out": "left out every efficiency",
    "every_percent_as_whole": "put every percent in as a whole number",
    "every_conversion_left_out": "left out every conversion factor",
    "every_conversion_wrong_way": "used every conversion factor the wrong way",
}
_BY = re.compile(r"(Divide|Multiply) by (.*)\.")


class CommonSlip(NamedTuple):
    """A way to a wrong answer. `answer` takes every quantity of the chain, with its right value.

    The rest is as in Change (changes.py); `of` is the quantity that `expr` was worked for.
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

    return lambda known: worked_on(dict(known), functions)[plan.asked]


def changed(plan: Plan, name: str, instead: Mapping[int, Expr], did: str, why: str) -> CommonSlip:
    """The chain with other expressions for some links."""
    computes = {at: compiled(expr, plan.units) for at, expr in instead.items()}
    whole = composed(plan, instead)
    return CommonSlip(name, worked_again(plan, computes), did, why, whole, plan.asked, IS)


def with_slips(expr: Expr, how: Mapping[str, str]) -> tuple[Expr, int]:
    """An expression with a kind of slip at each of some factors; how many of them it has."""
    if isinstance(expr, Percent):
        inner, done = with_slips(expr.of, how)
        return Percent(inner), done
    if not isinstance(expr, Product):
        return expr, 0
    over: list[Expr] = []
    under: list[Expr] = []
    count = 0
    for factors, here, there in ((expr.over, over, under), (expr.under, under, over)):
        for factor in factors:
            kind = how.get(_key(factor), "")
            count += bool(kind)
            if kind == "percent_as_whole" and isinstance(factor, Fraction):
                here.append(factor.of)
            elif kind != "left_out":
                (there if kind else here).append(factor)
    return Product(tuple(over), tuple(under)), count


def _key(factor: Expr) -> str:
    match factor:
        case Fraction(Known(name)):
            return name
        case Constant():
            return factor.name
    return ""


def _nodes(plan: Plan) -> Iterator[Expr]:
    return (node for link in plan.links for node in walk(link.expr))


def percents(plan: Plan) -> set[str]:
    """The quantities that a chain takes as decimals, by name."""
    shares = (node.of for node in _nodes(plan) if isinstance(node, Fraction))
    return {share.name for share in shares if isinstance(share, Known)}


def efficiencies(plan: Plan) -> set[str]:
    """The efficiencies among them."""
    return {name for name in percents(plan) if quantity_named(name).is_efficiency}


def conversions(plan: Plan) -> set[str]:
    """The constants of a chain, by name."""
    return {node.name for node in _nodes(plan) if isinstance(node, Constant)}


def every_one_alike(plan: Plan) -> Iterator[CommonSlip]:
    """The same slip at every link that it fits, where that is more than one."""
    for name, did in EVERY.items():
        kind = next(kind for kind in ("percent_as_whole", "left_out", "wrong_way") if kind in name)
        keys = efficiencies(plan) if "conversion" not in name else conversions(plan)
        how = dict.fromkeys(percents(plan) if kind == "percent_as_whole" else keys, kind)
        treated = [with_slips(link.expr, how) for link in plan.links]
        if sum(count for _, count in treated) > 1:
            instead = {at: expr for at, (expr, count) in enumerate(treated) if count}
            yield changed(plan, f"{plan.asked}.{name}", instead, f"You {did}.", _why(name, plan))


def _why(name: str, plan: Plan) -> str:
    if name == "every_percent_as_whole":
        return "Use decimals: 82% is 0.82."
    if "conversion" in name:
        return "Write the units beside each number and cancel them step by step."
    touching = _with_efficiencies(plan)
    if all(link.target.endswith("efficiency") for link in touching):
        return reason(touching[-1], plan.units)
    below = {link.target for link in plan.links if link.as_defined}
    back = {link.target for link in plan.links if not link.as_defined}
    touched = {link.target for link in touching}
    if touched <= below:
        return f"From water to wire you divide by each of them. {WASTE}"
    if touched <= back:
        return f"From wire to water you multiply by each of them. {PASSES}"
    return f"From water to wire you divide, and from wire to water you multiply. {PASSES}"


def _with_efficiencies(plan: Plan) -> list[Link]:
    """The links that multiply or divide by an efficiency."""
    shares = [Fraction(Known(name)) for name in efficiencies(plan)]
    return [link for link in plan.links if any(one in walk(link.expr) for one in shares)]


class _Single(NamedTuple):
    at: int
    variant: Variant
    rank: int


def two_together(plan: Plan) -> Iterator[CommonSlip]:
    """The two likeliest slips of one link together, the likelier pairs first."""
    singles = [
        _Single(at, v, _rank(v, plan))
        for at, link in enumerate(plan.links)
        for v in variants(link.expr, plan.units)
        if v.kind in LIKELIEST
    ]
    pairs = [
        (one, two)
        for one, two in combinations(singles, 2)
        if (one.at != two.at or one.variant.factor != two.variant.factor)
        and one.rank + two.rank <= SELDOM
    ]
    pairs.sort(key=lambda pair: pair[0].rank + pair[1].rank)
    for one, two in pairs[:PAIRS]:
        if instead := _both(plan, one, two):
            did, fix = (spoken(text, plan.units) for text in _both_told(one.variant, two.variant))
            why = f"{fix} {reason(plan.links[one.at], plan.units)}"
            name = ".".join((plan.asked, "both", *(_id(plan, s) for s in (one, two))))
            yield changed(plan, name, instead, did, why)


def _both_told(one: Variant, two: Variant) -> tuple[str, str]:
    """What was done and what to do instead, each in one sentence for both slips."""
    each = f"{one.instead.removesuffix('.')} each time."
    if one.did == two.did:
        return f"{one.did.removesuffix('.')} in two places.", each
    if one.factor == two.factor and one.instead == two.instead:
        return one.did, f"In another step, y{two.did[1:]} {each}"
    (did, what), (also, other) = _done(one), _done(two)
    done = f"{what} and {other}" if did == also else f"{what} and {also} {other}"
    (fix, by), (fix_also, by_other) = (_instead(v) for v in (one, two))
    if fix == fix_also:
        return f"You {did} {done}.", f"{fix.format('both')}."
    second = fix_also.format(by_other)
    return f"You {did} {done}.", f"{fix.format(by)} and {second[:1].lower()}{second[1:]}."


def _done(v: Variant) -> tuple[str, str]:
    """What was done, and with what: "multiplied by", "the pump efficiency"."""
    said = v.did.removeprefix("You ").removesuffix(".")
    verb = next(one for one in ("left out", "multiplied by", "divided by") if said.startswith(one))
    return verb, said.removeprefix(f"{verb} ")


def _instead(v: Variant) -> tuple[str, str]:
    """What to do instead, with a slot for what to do it with; and that."""
    if found := _BY.match(v.instead):
        return f"{found[1]} by {{}}", found[2]
    return "Add {} in", _done(v)[1]  # a term of a sum


def _rank(v: Variant, plan: Plan) -> int:
    """How seldom it is made: an efficiency the wrong way and a conversion left out come first."""
    share = v.factor in percents(plan)
    return 2 if v.kind == "left_out" else 1 if share else 4


def _id(plan: Plan, single: _Single) -> str:
    return f"{plan.links[single.at].target}-{single.variant.kind}-{single.variant.factor}"


def _both(plan: Plan, one: _Single, two: _Single) -> dict[int, Expr]:
    """Both slips in their links; none where one link has them and they do not go together."""
    if one.at != two.at:
        return {one.at: one.variant.expr, two.at: two.variant.expr}
    how = {single.variant.factor: single.variant.kind for single in (one, two)}
    expr, count = with_slips(plan.links[one.at].expr, how)
    return {one.at: expr} if count == 2 else {}

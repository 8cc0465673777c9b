"""Common slips that change more than one link of a chain, or none: named where they are apart.

Stopped at any step; every efficiency the wrong way; the right number in another unit; one reading
taken to be in another unit; the two likeliest slips together. Unlike the mistakes of one link, no
draw is thrown away for them: one that comes near the right answer is left unnamed there.
"""

from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from itertools import chain, combinations
from types import MappingProxyType
from typing import NamedTuple

from .algebra import Compute, compiled
from .constant import Constant
from .expression import Expr, Fraction, Known, Percent, Product
from .mistakes import Change, mistaken_changes, stopped_at
from .one_line import composed
from .other_units import other_units, taken_for
from .plan import Link, Plan
from .reasons import reason
from .spoken import spoken
from .tree import walk
from .variants import Variant, variants
from .vocabulary import quantity_named

__all__ = ["CommonSlip", "common_slips"]

Answer = Callable[[Mapping[str, float]], float]
LIKELIEST = ("multiplied_by", "divided_by", "left_out")
PAIRS, SELDOM = 40, 4  # how many pairs at most, and how seldom both together


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


@lru_cache(maxsize=1024)
def common_slips(plan: Plan) -> Mapping[str, CommonSlip]:
    """Every common slip of a chain by its id, likelier first; those of one link (mistakes.py) lead."""
    slips = chain(
        (_of_one_link(plan, change) for change in mistaken_changes(plan)),
        _stops(plan),
        _every(plan),
        _other_units(plan),
        _given_in_another(plan),
        _pairs(plan),
    )
    found: dict[str, CommonSlip] = {}
    for slip in slips:
        found.setdefault(slip.id, slip)
    return MappingProxyType(found)


def _of_one_link(plan: Plan, change: Change) -> CommonSlip:
    answer = _again(plan, {change.at: change.compute})
    of = plan.links[change.at].target
    return CommonSlip(change.id, answer, change.did, change.why, change.expr, of, change.form)


def _again(plan: Plan, instead: Mapping[int, Compute]) -> Answer:
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


def _stops(plan: Plan) -> Iterator[CommonSlip]:
    """Stopped at any step but the last, the latest first."""
    for at in reversed(range(len(plan.links) - 1)):
        if not plan.only_renames(at):
            yield _of_one_link(plan, stopped_at(plan, at))


# The same slip at every link like it: the factors it touches, the kinds of slip, and what is said.
WASTE = (
    "Every machine wastes part of what it gets, so each one closer to the wire needs more power."
)
PASSES = "Every machine passes on only part of what it gets."
EVERY = {
    "every_wrong_way": "used every efficiency the wrong way",
    "every_left_out": "left out every efficiency",
    "every_percent_as_whole": "put every percent in as a whole number",
    "every_conversion_left_out": "left out every conversion",
    "every_conversion_wrong_way": "did every conversion the wrong way",
}


def _every(plan: Plan) -> Iterator[CommonSlip]:
    for name, did in EVERY.items():
        kind = next(kind for kind in ("percent_as_whole", "left_out", "wrong_way") if kind in name)
        keys = _efficiencies(plan) if "conversion" not in name else _conversions(plan)
        how = dict.fromkeys(_percents(plan) if kind == "percent_as_whole" else keys, kind)
        treated = [_all_done(link.expr, how) for link in plan.links]
        if sum(count for _, count in treated) > 1:
            instead = {at: expr for at, (expr, count) in enumerate(treated) if count}
            yield _changed(plan, f"{plan.asked}.{name}", instead, f"You {did}.", _why(name, plan))


def _all_done(expr: Expr, how: Mapping[str, str]) -> tuple[Expr, int]:
    """An expression with a kind of slip at each of some factors; how many of them it has."""
    match expr:
        case Percent(of):
            inner, done = _all_done(of, how)
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


def _changed(plan: Plan, name: str, instead: Mapping[int, Expr], did: str, why: str) -> CommonSlip:
    """The chain with other expressions for some links."""
    computes = {at: compiled(expr, plan.units) for at, expr in instead.items()}
    whole = composed(plan, instead)
    return CommonSlip(name, _again(plan, computes), did, why, whole, plan.asked, "is")


def _leaves(plan: Plan, kind: type) -> Iterator[Expr]:
    return (node for link in plan.links for node in walk(link.expr) if isinstance(node, kind))


def _percents(plan: Plan) -> set[str]:
    return {f.of.name for f in _leaves(plan, Fraction) if isinstance(f.of, Known)}


def _efficiencies(plan: Plan) -> set[str]:
    return {name for name in _percents(plan) if quantity_named(name).is_efficiency}


def _conversions(plan: Plan) -> set[str]:
    return {constant.name for constant in _leaves(plan, Constant)}


def _why(name: str, plan: Plan) -> str:
    if name == "every_percent_as_whole":
        return "Use decimals: 82% is 0.82."
    if "conversion" in name:
        return "Write the units beside each number and cancel them step by step."
    if all(link.target.endswith("efficiency") for link in _with_efficiencies(plan)):
        return reason(_with_efficiencies(plan)[-1], plan.units)
    below = {link.target for link in plan.links if link.as_defined}
    back = {link.target for link in plan.links if not link.as_defined}
    touched = {link.target for link in _with_efficiencies(plan)}
    if touched <= below:
        return f"From water to wire you divide by each of them. {WASTE}"
    if touched <= back:
        return f"From wire to water you multiply by each of them. {PASSES}"
    return f"From water to wire you divide, and from wire to water you multiply. {PASSES}"


def _with_efficiencies(plan: Plan) -> list[Link]:
    """The links that multiply or divide by an efficiency."""
    shares = [Fraction(Known(name)) for name in _efficiencies(plan)]
    return [link for link in plan.links if any(one in walk(link.expr) for one in shares)]


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


class _Single(NamedTuple):
    at: int
    variant: Variant
    rank: int


def _pairs(plan: Plan) -> Iterator[CommonSlip]:
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
            did, why = _both_said(one, two, plan.units)
            why = f"{why} {reason(plan.links[one.at], plan.units)}"
            name = ".".join((plan.asked, "both", *(_id(plan, s) for s in (one, two))))
            yield _changed(plan, name, instead, did, why)


def _both_said(one: _Single, two: _Single, units: str) -> tuple[str, str]:
    """What was done twice or in two ways, and what to do instead."""
    first, second = (spoken(s.variant.did, units) for s in (one, two))
    fix, other = (spoken(s.variant.instead, units).removesuffix(".") for s in (one, two))
    if first == second:
        return f"{first.removesuffix('.')} in two places.", f"{fix} each time."
    if one.variant.factor == two.variant.factor and fix == other:
        return first, f"In another step, y{second[1:]} {fix} each time."
    also = f"You also {second.removeprefix('You ')}"
    verb = fix.partition(" by ")[0]
    if verb == other.partition(" by ")[0]:
        return first, f"{also} {verb} by both."
    return first, f"{also} {fix}, and {other[:1].lower()}{other[1:]}."


def _rank(v: Variant, plan: Plan) -> int:
    """How seldom it is made: an efficiency the wrong way and a conversion left out come first."""
    share = v.factor in _percents(plan)
    return 2 if v.kind == "left_out" else 1 if share else 4


def _id(plan: Plan, single: _Single) -> str:
    return f"{plan.links[single.at].target}-{single.variant.kind}-{single.variant.factor}"


def _both(plan: Plan, one: _Single, two: _Single) -> dict[int, Expr]:
    """Both slips in their links; none where one link has them and they do not go together."""
    if one.at != two.at:
        return {one.at: one.variant.expr, two.at: two.variant.expr}
    how = {single.variant.factor: single.variant.kind for single in (one, two)}
    expr, count = _all_done(plan.links[one.at].expr, how)
    return {one.at: expr} if count == 2 else {}

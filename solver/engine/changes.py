"""A mistake is the same chain with one link changed.

Mistakes come from the shape of each link's expression, whatever the topic (variants.py); a
formula adds the slips particular to it. Each is named by where it stands in the chain and what
was done there. A draw keeps these apart from the answer; other common slips (common_slips.py)
are named where they are apart by themselves.
"""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import chain
from typing import NamedTuple

from solver.algebra.expression import Constant, Expr, Fraction, Known, Product
from solver.algebra.tree import Compute, children, compiled, names
from solver.vocabulary import spoken

from .plan import Link, Plan
from .steps import reason
from .variants import Variant, variants

__all__ = ["IS", "SO_FAR", "STOPPED_AT", "Change", "mistaken_changes", "stopped_at"]

IS, SO_FAR = "is", "so far"
STOPPED_AT = ".stopped_at."  # in an id, before what was taken for the answer
MOVED = ("left_out", "multiplied_by", "divided_by")
_FIRST = re.compile(r"(?<=[.?])\s+(?=[A-Z{])")  # where the first sentence ends


class Change(NamedTuple):
    """Link number `at` computed by `compute` instead, which is `expr`.

    `did` is one sentence on what was done, `why` what is right and why. `form` tells how the
    numbers of `expr` stand before them: "Your 5 hp is ..." or "So far so good: ...".
    """

    id: str
    at: int
    compute: Compute
    did: str
    why: str
    expr: Expr | None = None
    form: str = IS

    @property
    def says(self) -> str:
        """The sentences without the learner's numbers."""
        return f"{self.did} {self.why}".strip()


@lru_cache(maxsize=1024)
def mistaken_changes(plan: Plan) -> tuple[Change, ...]:
    """Every mistake of one link: first the slips of its formulas, then those of its shape."""
    return tuple(_told_apart(chain(_slips(plan), _generic(plan), _stopped_early(plan))))


def _told_apart(changes: Iterable[Change]) -> Iterator[Change]:
    """Each with an id of its own: of two terms left out of one sum, the second has a number."""
    seen: Counter[str] = Counter()
    for change in changes:
        seen[change.id] += 1
        again = seen[change.id]
        yield change if again == 1 else change._replace(id=f"{change.id}.{again}")


def _slips(plan: Plan) -> Iterator[Change]:
    known = set(plan.given)
    for at, link in enumerate(plan.links):
        for slip in link.formula.slips if link.as_defined else ():
            if known >= set(names(slip.expr)):
                did, _, why = spoken(_FIRST.sub("\n", slip.says, 1), plan.units).partition("\n")
                why = why or reason(link, plan.units)
                name = f"{link.target}.{slip.id}"
                yield Change(name, at, compiled(slip.expr, plan.units), did, why, slip.expr)
        known.add(link.target)


def _generic(plan: Plan) -> Iterator[Change]:
    for at, link in enumerate(plan.links):
        for v in variants(link.expr, plan.units):
            name = ".".join(filter(None, (link.target, v.kind, v.factor)))
            did = spoken(v.did, plan.units)
            why = f"{_instead(v, link, plan.units)} {reason(link, plan.units)}"
            form = SO_FAR if _is_a_stop(v, at, plan) else IS
            yield Change(name, at, compiled(v.expr, plan.units), did, why, v.expr, form)


def _instead(v: Variant, link: Link, units: str) -> str:
    """What to do instead; with the way it goes, where one quantity becomes another."""
    over = link.expr.over if isinstance(link.expr, Product) else ()
    before = [factor for factor in over if isinstance(factor, Known)]
    if v.kind not in MOVED or len(before) != 1 or _shares(link.expr) != [v.factor]:
        return spoken(v.instead, units)
    verb = "divide" if v.instead.startswith("Divide") else "multiply"
    way = f"To get from the {{{before[0].name}:name}} to the {{{link.target}:name}}, {verb}."
    return spoken(way, units)


def _shares(expr: Expr) -> list[str]:
    """The percents among the factors of an expression, by name."""
    factors = children(expr) if isinstance(expr, Product) else ()
    return [f.of.name for f in factors if isinstance(f, Fraction) and isinstance(f.of, Known)]


def _is_a_stop(v: Variant, at: int, plan: Plan) -> bool:
    """Whether all that was done is right, and only a last constant is missing."""
    match plan.links[at].expr, v.expr:
        case Product(_, under), Product((_, _, *_), ()) if v.kind == "left_out":
            return at == len(plan.links) - 1 and len(under) == 1 and isinstance(under[0], Constant)
    return False


def _stopped_early(plan: Plan) -> Iterator[Change]:
    real = [at for at in range(len(plan.links)) if not plan.only_renames(at)]
    yield from (stopped_at(plan, at) for at in real[-2:-1])


def stopped_at(plan: Plan, at: int) -> Change:
    """The result of link number `at` taken for the answer."""
    here = plan.links[at].target
    left = _steps_after(plan, at)
    more = "one more step" if left == 1 else f"{left} more steps"
    did = spoken(f"You stopped at the {{{here}:name}}.", plan.units)
    why = spoken(f"The question asks for the {{{plan.asked}:name}}: {more}.", plan.units)
    name = f"{plan.asked}{STOPPED_AT}{here}"
    stop, last = compiled(Known(here), plan.units), len(plan.links) - 1
    return Change(name, last, stop, did, why, plan.links[at].expr, SO_FAR)


def _steps_after(plan: Plan, at: int) -> int:
    """How many steps lead on from link number `at`; one that only renames is none."""
    reached, steps = {plan.links[at].target}, 0
    for number, link in enumerate(plan.links[at + 1 :], at + 1):
        if not reached.isdisjoint(names(link.expr)):
            reached.add(link.target)
            steps += not plan.only_renames(number)
    return steps

"""The steps of worked chains: each link with its value, its unit and why it is so."""

from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

from .expression import Expr
from .plan import Link, Plan
from .reasons import reason
from .vocabulary import quantity_named

__all__ = ["Step", "worked_steps"]


class Step(NamedTuple):
    """One worked step: `name` gets `value` from `expr`, or by a judgement's `rule`."""

    name: str
    value: float
    unit: str
    why: str
    expr: Expr | None = None
    rule: str = ""
    numbers: str = ""


def worked_steps(plan: Plan, known: Mapping[str, float]) -> tuple[Step, ...]:
    """The links of a plan as steps with their values."""
    return tuple(
        Step(link.target, known[link.target], unit, why, link.expr)
        for link, unit, why in _step_frames(plan)
    )


@lru_cache(maxsize=1024)
def _step_frames(plan: Plan) -> tuple[tuple[Link, str, str], ...]:
    return tuple(
        (link, quantity_named(link.target).unit(plan.units), reason(link, plan.units))
        for link in plan.links
    )

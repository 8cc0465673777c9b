"""The steps of worked chains: each link with its value, its unit and why it is so.

The steps stand as on a whiteboard: one branch is finished before the next begins, water before
wire, and a link that only gives another name to the same number is no step of its own.
At the end of a chain, the step before it has that name.
"""

from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

from solver.algebra.expression import Expr, Known
from solver.algebra.tree import names
from solver.units.unit import unit
from solver.vocabulary import quantity_named

from .one_line import put_in
from .plan import Link, Plan
from .reasons import reason

__all__ = ["Step", "in_order", "worked_steps"]

WATER = ("flow", "length", "area", "volume", "pressure", "velocity")


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
        Step(link.target, known[link.target], unit_name, why, link.expr)
        for link, unit_name, why in _step_frames(plan)
    )


@lru_cache(maxsize=1024)
def _step_frames(plan: Plan) -> tuple[tuple[Link, str, str], ...]:
    """Each link that is a step, with its unit and why it is so.

    One that only renames is put into those after it, with its reason; the last gives its name to the
    one before.
    """
    renames = {link.target for at, link in enumerate(plan.links) if plan.only_renames(at)}
    frames, same, reasons = [], {}, {}
    for link in in_order(plan):
        expr = put_in(link.expr, same) if same else link.expr
        why = reason(link, plan.units)
        only_renames = link.target in renames and isinstance(expr, Known)
        if only_renames and link.target != plan.asked:
            same[link.target], reasons[link.target] = expr, why
            continue
        used = (reasons.pop(name) for name in names(link.expr) if name in reasons)
        why = f"{why} {next(used, '')}".strip()
        if only_renames and frames and frames[-1][0].target == expr.name:
            before, _, why = frames.pop()
            expr = before.expr
        unit_name = quantity_named(link.target).unit(plan.units)
        frames.append((link._replace(expr=expr), unit_name, why))
    return tuple(frames)


def in_order(plan: Plan) -> list[Link]:
    """The links of a plan so that each branch is finished before the next, water side first."""
    links = {link.target: link for link in plan.links}
    water: dict[str, bool] = {}
    for name in plan.given:
        water[name] = unit(quantity_named(name).unit(plan.units)).kind in WATER
    for link in plan.links:
        water[link.target] = all(water[name] for name in names(link.expr))
    placed: dict[str, Link] = {}

    def place(name: str) -> None:
        if name in links and name not in placed:
            for one in sorted(names(links[name].expr), key=water.get, reverse=True):
                place(one)
            placed[name] = links[name]

    place(plan.asked)
    return list(placed.values())

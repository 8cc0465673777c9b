"""The steps of worked chains: each link with its value, its unit and why it is so.

The steps stand as on a whiteboard: one branch is finished before the next begins, water before
wire, and a link that only gives another name to the same number is no step of its own.
At the end of a chain, the step before it has that name.

The reason of a step is told in the direction in which the step goes. A formula gives one as it is
defined, and may give another for the way back; where it gives none, the reason follows from the
shape of the rearranged formula.
"""

from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

from solver.algebra.expression import Constant, Expr, Fraction, Known, Product, Sum
from solver.algebra.tree import is_one, names
from solver.units.show import exact
from solver.units.unit import unit
from solver.vocabulary import quantity_named, spoken

from .plan import Link, Plan, put_in

__all__ = ["Step", "reason", "worked_steps"]

PASSES_ON = {
    "pump_efficiency": "The pump passes on",
    "motor_efficiency": "The motor passes on",
    "drive_efficiency": "The belts or gears pass on",
    "overall_efficiency": "Pump and motor together pass on",
}
OUT_OVER_IN = "Efficiency is what comes out divided by what goes in, as a percent."
LEFT_OF_ALL = (
    "{overall_efficiency:Name} is all the others multiplied together. Divide it by the ones you "
    "know, and the one you want is left."
)
WATER = ("flow", "length", "area", "volume", "pressure", "velocity")


def reason(link: Link, units: str) -> str:
    """One or two sentences on why the step is so; never empty."""
    formula = link.formula
    if link.as_defined:
        return spoken(formula.why, units)
    if link.target.endswith("efficiency"):
        whole = formula.result.endswith("efficiency")
        return spoken(LEFT_OF_ALL if whole else OUT_OVER_IN, units)
    return spoken(formula.back or _derived(link, units), units)


def _derived(link: Link, units: str) -> str:
    target, formula, expr = f"{{{link.target}:name}}", link.formula, link.expr
    result = f"{{{formula.result}:name}}"
    match expr:
        case Product(over, _) if share := _share(over):
            passes = PASSES_ON.get(share, f"The {{{share}:name}} lets through")
            return f"{passes} only part of what goes in. So the {target} is less than the {result}."
        case Sum(_, ()):
            return f"The {result} is a difference. Add back what was subtracted."
        case Sum() if isinstance(formula.expr, Sum) and not formula.expr.minus:
            return f"The {result} is a sum. Subtract the parts you know, and what is left is the {target}."
        case Sum((Known(first), *_), _) if first != formula.result:
            return f"The {result} is a difference, so take it from the {{{first}:name}}."
        case Product() if how := _conversion(expr, formula.result, units):
            return f"Going from the {result} back to the {target}, you {how}."
    return f"{formula.why} Rearranged for the {target}."


def _share(factors: tuple[Expr, ...]) -> str:
    """The efficiency among these factors, where there is just one."""
    found = [f.of.name for f in factors if isinstance(f, Fraction) and isinstance(f.of, Known)]
    return found[0] if len(found) == 1 and quantity_named(found[0]).is_efficiency else ""


def _conversion(expr: Product, result: str, units: str) -> str:
    """What is done with the constant that turns one unit into another; "" where it is no such step."""
    constants = [f for f in (*expr.over, *expr.under) if isinstance(f, Constant)]
    others = [f for f in (*expr.over, *expr.under) if not isinstance(f, Constant)]
    written = [one for one in constants if not is_one(one, units)]
    if others != [Known(result)] or len(written) != 1:
        return ""
    number = exact(written[0].figure(units).value)
    return f"{'multiply' if written[0] in expr.over else 'divide'} by {number}"


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
    frames: list[tuple[Link, str, str]] = []
    same: dict[str, Expr] = {}
    reasons: dict[str, str] = {}
    for link in _in_order(plan):
        expr = put_in(link.expr, same) if same else link.expr
        why = reason(link, plan.units)
        renamed = expr.name if link.target in renames and isinstance(expr, Known) else ""
        if renamed and link.target != plan.asked:
            same[link.target], reasons[link.target] = expr, why
            continue
        used = (reasons.pop(name) for name in names(link.expr) if name in reasons)
        why = f"{why} {next(used, '')}".strip()
        if renamed and frames and frames[-1][0].target == renamed:
            before, _, why = frames.pop()
            expr = before.expr
        unit_name = quantity_named(link.target).unit(plan.units)
        frames.append((link._replace(expr=expr), unit_name, why))
    return tuple(frames)


def _in_order(plan: Plan) -> list[Link]:
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
            for one in sorted(names(links[name].expr), key=lambda name: water[name], reverse=True):
                place(one)
            placed[name] = links[name]

    place(plan.asked)
    return list(placed.values())

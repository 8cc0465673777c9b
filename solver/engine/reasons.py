"""Why a step of a chain is so, told in the direction in which the step goes.

A formula gives its reason as it is defined, and may give another for the way back. Where it
gives none, the reason follows from the shape of the rearranged formula.
"""

from solver.algebra.expression import Constant, Expr, Fraction, Known, Product, Sum
from solver.algebra.tree import is_one
from solver.units.show import exact
from solver.units.spoken import spoken
from solver.vocabulary import quantity_named

from .plan import Link

__all__ = ["reason"]

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

"""The slips that people make most, worked here on their own, without the solver's own variants.

An expression is worked by its factors: each is kept, dropped, put on the other side of the line,
or taken as a whole number. That these are the commonest is common practice, no source.
"""

from collections.abc import Callable, Iterator, Mapping
from math import isfinite, prod
from typing import NamedTuple

from solver import Case
from solver.algebra.expression import Constant, Expr, Fraction, Known, Percent, Product
from solver.algebra.tree import compiled
from solver.engine.plan import Plan, find_plan
from solver.vocabulary import quantity_named

__all__ = ["KINDS", "Slipped", "slips_of"]

KEEP, DROP, FLIP, WHOLE = "keep", "drop", "flip", "whole"
Treat = Callable[[Expr], str]


class Slipped(NamedTuple):
    """A wrong answer, the kind of slip, and what ids a fitting name may have in it."""

    kind: str
    value: float


# What the name of a mistake may be, by the kind of slip: a stop one step early is the last factor
# left out too, and the right number in horsepower is "0.746 left out".
SAME = ("left_out", "stopped_at", "in_another_unit", "left_as_decimal")
KINDS = {
    "stopped at a step": SAME,
    "another unit or scale": (*SAME, "thousand", "hundred"),
    "every efficiency the wrong way": ("every_wrong_way", "multiplied_by", "divided_by"),
    "every efficiency left out": ("every_left_out", *SAME),
    "every percent as a whole number": ("every_percent", "percent_as_whole"),
    "horsepower not made kilowatts": SAME,
    "a reading in another unit": (
        "taken_for",
        "changed_to",
        "in_another_unit",
        "multiplied_by",
        "divided_by",
        "left_out",
        "twice",
    ),
    "two slips together": ("both", "every", *SAME, "multiplied_by", "divided_by"),
}

# How many of it make one of the unit asked: what an operator has on other gauges and sheets.
FACTORS = {
    "hp": (0.7457, 745.7), "kW": (1 / 0.7457, 1000), "W": (0.001,), "ft": (1 / 2.31, 12, 0.3048),
    "m": (9.807, 3.2808, 100), "psi": (2.31, 6.895), "kPa": (0.102, 0.14504, 0.01), "bar": (14.504, 100),
    "in": (1 / 12, 25.4), "mm": (0.1, 0.001, 1 / 25.4),
    "gpm": (60, 1440, 1440e-6, 1 / 448.83, 0.06309), "L/s": (3.6, 86.4, 60, 15.85),
    "MGD": (694.44, 1e6), "cfs": (448.83,), "gpd": (1 / 1440, 1e-6), "m3/day": (1 / 24, 1 / 86.4),
    "gal": (1 / 7.4805, 3.7854, 0.001), "m3": (1000, 264.17),
    "h/day": (60,), "min": (60, 1 / 60), "h": (60,), "year": (12, 365),
    "kWh": (0.001,), "kWh/year": (1 / 12, 1 / 365), "$/year": (1 / 12, 1 / 365), "$": (100,),
    "$/kWh": (100,), "kWh/MG": (0.001,), "megohm": (1000, 1e6), "kVA": (1000,), "kvar": (),
    "°C rise": (1.8,), "lb": (0.45359,), "kg": (2.2046,), "ft/s": (0.3048,), "m/s": (3.2808,),
    "starts/h": (24,),
}  # fmt: skip
# A reading in the first unit taken to be in another: what its number is multiplied by then.
MISREAD = {
    "hp": (0.746,), "kW": (1 / 0.746,), "ft": (2.31, 1 / 12), "psi": (1 / 2.31,), "in": (12,),
    "m": (0.102, 0.001), "kPa": (1 / 0.102,), "h": (1 / 60,), "min": (1 / 60, 60), "s": (60,),
    "h/day": (1 / 7,), "$/kWh": (0.01,),
}  # fmt: skip


def slips_of(case: Case) -> Iterator[Slipped]:
    """The slips of a problem that could be told from its right answer."""
    level = case.family.level(case.level)
    plan = find_plan(level.given, case.asked, case.family.formulas, case.units)
    seen: set[tuple[str, str]] = set()
    for kind, value in _all(case, plan):
        percent = quantity_named(case.asked).takes_decimal and value <= 1
        told = isfinite(value) and 1e-9 < value < 1e15 and not percent
        typed = f"{value:.4g}" if told else ""
        if told and not case.low <= float(typed) <= case.high and (kind, typed) not in seen:
            seen.add((kind, typed))
            yield Slipped(kind, value)


def _all(case: Case, plan: Plan) -> Iterator[Slipped]:
    answer = case.answer
    for at, link in enumerate(plan.links[:-1]):
        if not plan.only_renames(at):
            yield Slipped("stopped at a step", case.known[link.target])
    for factor in FACTORS.get(case.unit, (0.01,) if case.unit == "%" else ()):
        yield Slipped("another unit or scale", answer * factor)
    shares = [name for name in _shares(plan) if quantity_named(name).is_efficiency]
    for kind, how in (
        ("every efficiency the wrong way", FLIP),
        ("every efficiency left out", DROP),
    ):
        if shares:
            yield Slipped(kind, _worked(case, plan, _for(shares, how)))
    if percents := _shares(plan):
        yield Slipped("every percent as a whole number", _worked(case, plan, _for(percents, WHOLE)))
    if "kilowatts_per_horsepower" in _constants(plan) and case.units == "us":
        dropped = _worked(case, plan, _for(["kilowatts_per_horsepower"], DROP))
        yield Slipped("horsepower not made kilowatts", dropped)
        for share in shares:
            both = {share: FLIP, "kilowatts_per_horsepower": DROP}
            yield Slipped("two slips together", _worked(case, plan, both))
    for one in shares:
        for other in shares:
            if one != other:
                yield Slipped("two slips together", _worked(case, plan, {one: FLIP, other: DROP}))
    for name in case.given:
        for factor in MISREAD.get(quantity_named(name).unit(case.units), ()):
            value = _with(case, plan, name, case.given[name] * factor)
            if value is not None:
                yield Slipped("a reading in another unit", value)


def _for(names, how: str) -> dict[str, str]:
    return dict.fromkeys(names, how)


def _shares(plan: Plan) -> list[str]:
    return list(dict.fromkeys(n for link in plan.links for n in _share_names(link.expr)))


def _share_names(expr: Expr) -> Iterator[str]:
    match expr:
        case Product(over, under):
            for factor in over + under:
                yield from _share_names(factor)
        case Percent(of):
            yield from _share_names(of)
        case Fraction(Known(name)):
            yield name


def _constants(plan: Plan) -> set[str]:
    return {
        factor.name
        for link in plan.links
        for factor in (*getattr(link.expr, "over", ()), *getattr(link.expr, "under", ()))
        if isinstance(factor, Constant)
    }


def _worked(case: Case, plan: Plan, how: Mapping[str, str]) -> float:
    """The answer when some factors are treated wrong wherever they stand."""
    known = dict(case.given)
    try:
        for link in plan.links:
            known[link.target] = _value(link.expr, known, case.units, how)
    except (ArithmeticError, LookupError, ValueError, TypeError):
        return float("nan")
    return known[plan.asked]


def _with(case: Case, plan: Plan, name: str, value: float) -> float | None:
    """The answer with another number for one given; None where it does not change."""
    known = {**case.given, name: value}
    try:
        for link in plan.links:
            known[link.target] = compiled(link.expr, case.units)(known)
    except (ArithmeticError, LookupError, ValueError, TypeError):
        return None
    return known[plan.asked] if abs(known[plan.asked] / case.answer - 1) > 1e-9 else None


def _value(expr: Expr, known: Mapping[str, float], units: str, how: Mapping[str, str]) -> float:
    match expr:
        case Percent(of):
            return 100 * _value(of, known, units, how)
        case Product(over, under):
            factors = [(f, 1) for f in over] + [(f, -1) for f in under]
            return prod(_factor(f, sign, known, units, how) for f, sign in factors)
        case Fraction(Known(name)) if how.get(name) == WHOLE:
            return known[name]
    return compiled(expr, units)(known)


def _factor(factor: Expr, sign: int, known, units: str, how: Mapping[str, str]) -> float:
    match factor:
        case Fraction(Known(name)):
            treat = how.get(name, KEEP)
        case Constant():
            treat = how.get(factor.name, KEEP)
        case _:
            treat = KEEP
    if treat == DROP:
        return 1.0
    value = _value(factor, known, units, how)
    return value ** (-sign if treat == FLIP else sign)

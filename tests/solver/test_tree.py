"""Every equation of the library, worked and turned round, against sympy."""

from contextlib import suppress
from math import inf, isclose
from random import Random

import pytest
import sympy

from solver.algebra.expression import (
    Abs,
    Constant,
    Exponential,
    Expr,
    Fraction,
    Known,
    Largest,
    Lookup,
    Mean,
    Number,
    Percent,
    Power,
    Smallest,
    Sum,
)
from solver.algebra.tree import compiled, isolate, names, walk
from solver.errors import BadDefinition
from solver.topics.formulas import FORMULAS
from solver.vocabulary import quantity_named
from tests.in_one import in_one

from .drawn import EQUATIONS, equation
from .in_sympy import in_sympy, symbol

every_equation = in_one("formula, units", EQUATIONS, equation)
# What an equation is solved to depends on its shape, which is the same in both systems.
every_shape = in_one("formula, units", [e for e in EQUATIONS if e[1] == e[0].systems[0]], equation)
# A table is not arithmetic: the tests of the tables read those.
every_sum = in_one(
    "formula, units",
    [e for e in EQUATIONS if not any(isinstance(n, Lookup) for n in walk(e[0].expr))],
    equation,
)
flow, head, power, pump = map(Known, ("flow", "head", "water_power", "pump_efficiency"))
NO_WAY_BACK = (Abs, Exponential, Largest, Smallest, Lookup)


def samples(quantities, units: str, count: int = 8):
    """Values across each quantity's plausible range, the same at every run."""
    chance = Random(f"{units} {' '.join(quantities)}")
    for _ in range(count):
        yield {name: chance.uniform(*quantity_named(name).usual(units)) for name in quantities}


def possible(formula, units: str):
    """The samples of a formula that have a value: the root of less than zero has none."""
    work, found = compiled(formula.expr, units), 0
    for values in samples(names(formula.expr), units):
        with suppress(ValueError):
            work(values)
            found += 1
            yield values
    assert found > 0


def once_and_in_the_open(expr: Expr, name: str) -> bool:
    """Whether a name stands once, and not under a largest, a size, an exponent or a table."""
    shut = [node for node in walk(expr) if isinstance(node, NO_WAY_BACK)]
    hidden = any(name in names(node) for node in shut)
    return not hidden and sum(node == Known(name) for node in walk(expr)) == 1


@every_sum
def test_an_equation_has_the_value_that_sympy_works_out(formula, units):
    work, theirs = compiled(formula.expr, units), in_sympy(formula.expr, units)
    for values in samples(names(formula.expr), units):
        expected = theirs.evalf(30, subs={symbol(name): value for name, value in values.items()})
        if expected.is_real:
            assert isclose(float(expected), work(values), rel_tol=1e-12, abs_tol=1e-12)
        else:  # no triangle has a side longer than its longest
            with pytest.raises(ValueError, match="math domain error"):
                work(values)


@every_shape
def test_an_equation_turned_round_is_what_sympy_solves_it_to(formula, units):
    for name in formula.solvable[1:]:
        equation = sympy.Eq(symbol(formula.result), in_sympy(formula.expr, units))
        ours = in_sympy(formula.solved_for(name), units)
        if formula.empirical:  # sympy takes hours over a power such as 1.852: put ours back in
            back = sympy.expand_power_base(equation.rhs.subs(symbol(name), ours), force=True)
            left_over = sympy.powdenest(back, force=True) - equation.lhs
        else:
            (expected,) = sympy.solve(equation, symbol(name))
            left_over = expected - ours
        assert sympy.simplify(left_over) == 0, name


@every_equation
def test_an_equation_turned_round_gives_back_the_value_it_was_worked_from(formula, units):
    for name in formula.solvable[1:]:
        back = compiled(formula.solved_for(name), units)
        for values in possible(formula, units):
            known = values | {formula.result: compiled(formula.expr, units)(values)}
            expected = known.pop(name)
            assert isclose(expected, back(known), rel_tol=1e-9), name


@every_equation
def test_an_equation_turns_round_for_all_that_stands_once_and_in_the_open(formula, units):
    may = names(formula.expr) if formula.turns is None else formula.turns
    expected = {name for name in may if once_and_in_the_open(formula.expr, name)}
    assert expected == set(formula.solvable) - {formula.result}


@pytest.mark.parametrize(
    "expr",
    [
        flow * flow,
        flow + head / flow,
        (flow + head) / flow,
        Largest((flow, head)),
        Smallest((head, flow)),
        Abs(flow - head),
        Percent(Largest((flow, head)) / head),
        Lookup(flow, lambda value, units: value, "a table", ("gpm", "L/s"), ("gpm", "L/s")),
    ],
    ids=["product", "term and divisor", "sum and divisor", "largest", "smallest", "size",
         "deep inside", "table"],
)  # fmt: skip
def test_an_equation_is_not_turned_round_where_there_is_no_single_answer(expr):
    assert isolate(expr, "flow", power) is None


def test_a_name_that_is_not_in_an_equation_cannot_be_its_answer():
    assert isolate(flow * head, "pressure", power) is None


@pytest.mark.parametrize(
    ("expr", "name"),
    [
        (flow * head / Number(3960), "head"),
        (power / Fraction(pump), "pump_efficiency"),
        (power / Fraction(pump), "water_power"),
        (Percent(power / Known("brake_power")), "brake_power"),
        (flow - head, "head"),
        (flow - head, "flow"),
        (head - (flow + power), "flow"),
        (Power(flow, 2), "flow"),
        (Power(flow, 0.5) * head, "flow"),
        (Power(flow, head) * power, "flow"),
        (Mean((flow, head, power)), "head"),
        ((flow + head) / power, "head"),
        (power / (flow - head), "head"),
        (Number(1) / flow, "flow"),
        (Sum((flow, head), (power,)), "water_power"),
    ],
)
def test_any_shape_of_equation_turns_round_as_sympy_does(expr, name):
    result = Known("energy")
    equation = sympy.Eq(symbol("energy"), in_sympy(expr, "us"))
    solutions = sympy.solve(equation, symbol(name))
    ours = in_sympy(isolate(expr, name, result), "us")
    assert [0] == [sympy.simplify(solution - ours) for solution in solutions]


def test_other_values_may_stand_for_a_constant():
    formula = next(f for f in FORMULAS if f.result == "water_power")
    (constant,) = (n for n in walk(formula.expr) if isinstance(n, Constant))
    compute = compiled(formula.expr, "us", {constant: 3956})
    assert 100 * 50 / 3956 == compute({"flow": 100, "head": 50})


def test_what_is_not_an_expression_is_refused():
    with pytest.raises(BadDefinition, match="'head' stands in an expression: write Known"):
        flow * "head"


def test_a_quotient_below_the_line_turns_round():
    ours = compiled(power / (flow / head), "us")
    assert 6 * 5 / 3 == ours({"water_power": 6, "flow": 3, "head": 5})


def test_division_by_nothing_is_not_hidden():
    with pytest.raises(ZeroDivisionError, match="division"):
        compiled(power / flow, "us")({"water_power": inf, "flow": 0.0})

"""Every function that walks an expression, over one of each node: none loses a name or a value."""

from typing import get_args

import pytest

from solver.algebra.expression import (
    Abs,
    Constant,
    Exponential,
    Expr,
    Figure,
    Fraction,
    Known,
    Largest,
    Lookup,
    Mean,
    Number,
    Percent,
    Power,
    Product,
    Smallest,
    Sum,
)
from solver.algebra.formula import Formula, units_of
from solver.algebra.notation import LATEX
from solver.algebra.tree import children, compiled, isolate, names, walk, with_children
from solver.algebra.typeset import labelled, numbers, symbols, words
from solver.engine.band import accepted_band
from solver.engine.changes import mistaken_changes
from solver.engine.common_slips import common_slips
from solver.engine.plan import find_plan, in_one_line, put_in
from solver.engine.slips_together import with_slips
from solver.engine.steps import worked_steps
from solver.engine.variants import variants
from solver.units.show import exact, figures
from solver.vocabulary import quantity_named

flow, head, static, pump, water, brake = map(
    Known, ("flow", "head", "static_head", "pump_efficiency", "water_power", "brake_power")
)
READINGS = (head, static)
KNOWN = {
    "flow": 450.0, "head": 62.0, "static_head": 41.0, "pump_efficiency": 72.0,
    "water_power": 7.0, "brake_power": 9.5,
}  # fmt: skip
FACTOR = Constant(
    "factor", "factor", Figure(3960, "gpm ft / hp"), Figure(102, "L/s m / kW"), "here"
)

# One of each node; what it comes to with the values of KNOWN; what it may be rearranged for.
NODES = {
    Known: (flow, 450, {"flow"}),
    Number: (Number(4.0), 4, set()),
    Constant: (FACTOR, 3960, set()),
    Product: (Product((flow, head), (FACTOR,)), 450 * 62 / 3960, {"flow", "head"}),
    Sum: (Sum((head,), (static,)), 21, {"head", "static_head"}),
    Power: (Power(head, 2), 3844, {"head"}),
    Exponential: (Exponential(0.5, water / brake), 0.5 ** (7 / 9.5), set()),
    Fraction: (Fraction(pump), 0.72, {"pump_efficiency"}),
    Percent: (Percent(water / brake), 700 / 9.5, {"water_power", "brake_power"}),
    Abs: (Abs(static - head), 21, set()),
    Mean: (Mean(READINGS), 51.5, {"head", "static_head"}),
    Largest: (Largest(READINGS), 62, set()),
    Smallest: (Smallest(READINGS), 41, set()),
    Lookup: (Lookup(head, lambda value, units: value + 1, "the row", ("ft", "m"), ("ft", "m")), 63, set()),
}  # fmt: skip
each_node = pytest.mark.parametrize(
    ("expr", "value", "turns"), NODES.values(), ids=[kind.__name__ for kind in NODES]
)


def test_every_node_is_here():
    assert set(get_args(Expr)) == set(NODES)
    assert all(type(expr) is kind for kind, (expr, *_) in NODES.items())


@each_node
def test_it_is_worked_and_its_units_are_known(expr, value, turns):
    assert compiled(expr, "us")(KNOWN) == pytest.approx(value)
    assert all(power for power in units_of(expr, "us").values())


@each_node
def test_it_is_rearranged_for_what_can_be_undone_and_for_nothing_else(expr, value, turns):
    turned = {name: isolate(expr, name, Number(value)) for name in names(expr)}
    assert {name for name, back in turned.items() if back is not None} == turns
    for name in turns:
        assert compiled(turned[name], "us")(KNOWN) == pytest.approx(KNOWN[name])


@each_node
def test_it_is_made_again_of_its_children_and_of_others(expr, value, turns):
    assert expr == with_children(expr, children(expr))
    others = {name: Number(number) for name, number in KNOWN.items()}
    again = put_in(expr, others)
    assert () == names(again)
    assert compiled(again, "us")({}) == pytest.approx(value)


@each_node
@pytest.mark.parametrize("write", [words, labelled, symbols])
def test_every_quantity_in_it_is_written(expr, value, turns, write):
    written = write(expr, "us")
    for name in names(expr):
        quantity = quantity_named(name)
        assert (quantity.symbol("us") if write is symbols else quantity.label("us")) in written
    assert written


@each_node
def test_every_number_in_it_is_written(expr, value, turns):
    plain, latex = (numbers(expr, "us", KNOWN, set(KNOWN), *n) for n in ((), (LATEX,)))
    for node in walk(expr):
        if isinstance(node, Fraction):
            assert exact(KNOWN[node.of.name] / 100) in plain
        elif isinstance(node, Known) and not isinstance(expr, Fraction):
            assert figures(KNOWN[node.name]) in plain
            assert figures(KNOWN[node.name]) in latex


@each_node
def test_each_way_to_get_it_wrong_is_an_expression_of_the_same_quantities(expr, value, turns):
    for variant in variants(expr, "us"):
        assert set(names(variant.expr)) <= set(names(expr))
        assert variant.expr != expr
    assert (expr, 0) == with_slips(expr, {})


@each_node
def test_a_chain_of_it_has_steps_a_band_and_its_slips(expr, value, turns):
    formula = Formula("motor_power", expr, "a handbook", "It is so.", empirical=True)
    plan = find_plan(names(expr), "motor_power", (formula,), "us")
    known = plan.run({name: KNOWN[name] for name in names(expr)})
    low, high = accepted_band(plan, known)
    assert low < value < high
    assert [*map(quantity_named("motor_power").unit, ["us"])] == [
        step.unit for step in worked_steps(plan, known)
    ]
    assert in_one_line(plan) is None
    changes = mistaken_changes(plan)
    assert {change.id for change in changes} <= set(common_slips(plan))

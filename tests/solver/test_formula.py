"""A formula proves itself when it is defined; pint proves every dimension again, its own way."""

from math import isclose
from random import Random

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
from solver.algebra.formula import Formula, Slip
from solver.algebra.tree import compiled, names
from solver.errors import BadDefinition, SolverError
from solver.topics.tables import motor_sizes, table_rows
from solver.units.in_pint import registry
from solver.units.unit import unit, units
from solver.vocabulary import quantity_named, spoken
from tests.in_one import in_one

from .drawn import EQUATIONS, equation

flow, head, water_power, brake_power = map(Known, ("flow", "head", "water_power", "brake_power"))
pump = Fraction(Known("pump_efficiency"))
SOURCE, WHY = "a handbook", "It is so."


def of_pint(name: str):
    """One of a unit of ours, as pint has it; a difference where it is a temperature."""
    made = registry().Quantity(1.0, unit(name).pint)
    return made if made._is_multiplicative else registry().Quantity(1.0, f"delta_{unit(name).pint}")


def constant_unit(text: str):
    """The unit of a constant, read here without the solver's own reading: "gpm ft / hp"."""
    if text in units():
        return of_pint(text)
    above, _, below = f" {text} ".partition(" / ")
    made = registry().Quantity(1.0, "")
    for name in above.split():
        made = made * of_pint(name)
    for name in below.split():
        made = made / of_pint(name)
    return made


def in_pint(expr: Expr, units: str, values):
    """The expression worked in quantities with units; pint refuses what does not fit."""

    def each(nodes):
        return [in_pint(node, units, values) for node in nodes]

    match expr:
        case Known(name):
            return values[name] * of_pint(quantity_named(name).unit(units))
        case Number(value):
            return value
        case Constant():
            return expr.figure(units).value * constant_unit(expr.figure(units).unit)
        case Product(over, under):
            made = registry().Quantity(1.0, "")
            for factor in each(over):
                made = made * factor
            for factor in each(under):
                made = made / factor
            return made
        case Sum(plus, minus):
            first, *rest = each(plus) or [0 * each(minus)[0]]
            for term in rest:
                first = first + term
            for term in each(minus):
                first = first - term
            return first
        case Power(base, exponent):
            number = isinstance(exponent, int | float)
            return in_pint(base, units, values) ** (
                exponent if number else in_pint(exponent, units, values)
            )
        case Exponential(base, exponent):
            return base ** in_pint(exponent, units, values).to("dimensionless")
        case Fraction(of):
            return in_pint(of, units, values).to("dimensionless")
        case Percent(of):
            return in_pint(of, units, values).to("percent")
        case Abs(of):
            return abs(in_pint(of, units, values))
        case Mean(of):
            return in_pint(Sum(of), units, values) / len(of)
        case Largest(of):
            return max(each(of))
        case Smallest(of):
            return min(each(of))
        case Lookup(of, read, _, reads, gives):
            which = ("us", "si").index(units)
            inside = in_pint(of, units, values).to(of_pint(reads[which]).units)
            return read(inside.magnitude, units) * of_pint(gives[which])
    raise TypeError(f"no pint for {expr!r}")


def small(quantity, units: str, chance: Random) -> float:
    """A value from the lower part of its range, where every table has rows; or a size there is."""
    low, high = quantity.usual(units)
    if quantity.name == "motor_size":
        return chance.choice(motor_sizes(units))
    if quantity.name == "flume_throat":
        return chance.choice(table_rows("parshall"))[f"{units}_throat"]
    if quantity.name in ("apparent_power", "corrected_apparent_power"):  # not under its kilowatts
        low = quantity_named("input_power").usual(units)[1]
    return chance.uniform(low, low + 0.3 * (high - low))


# One fitted to measurements holds in its own units only; pint could not prove it.
WITH_UNITS = [each for each in EQUATIONS if not each[0].empirical]


@in_one("formula, units", WITH_UNITS, equation)
def test_pint_works_every_formula_to_the_same_number_in_the_same_unit(formula, units):
    chance = Random(formula.result)
    wanted = of_pint(quantity_named(formula.result).unit(units)).units
    for _ in range(5):
        values = {n: small(quantity_named(n), units, chance) for n in names(formula.expr)}
        expected = registry().Quantity(in_pint(formula.expr, units, values)).to(wanted).magnitude
        ours = compiled(formula.expr, units)(values)
        assert isclose(expected, ours, rel_tol=1e-9, abs_tol=1e-9)


@in_one("formula, units", EQUATIONS, equation)
def test_a_formula_has_a_source_and_one_plain_sentence_on_why(formula, units):
    assert formula.source.strip()
    for why in filter(None, (formula.why, formula.back)):
        said = spoken(why, units)
        assert said.endswith(".")
        assert "!" not in said
        assert max(len(sentence.split()) for sentence in said.split(". ")) < 20, said


def test_units_that_do_not_cancel_are_refused_by_the_name_of_the_result():
    with pytest.raises(
        BadDefinition, match=r"for 'water_power', in US units: .* gives gpm·ft, should give hp$"
    ):
        Formula("water_power", flow * head, SOURCE, WHY)


def test_a_wrong_unit_is_told_as_the_unit_that_the_equation_gives():
    with pytest.raises(BadDefinition, match=r"flow × cycle time gives gal, should give gpm$"):
        Formula("flow", flow * Known("cycle_time"), SOURCE, WHY)


def test_what_is_no_expression_is_refused():
    with pytest.raises(BadDefinition, match="'flow' is no expression"):
        Formula("flow", "flow", SOURCE, WHY)


def test_a_factor_of_the_wrong_size_is_refused_though_its_kind_is_right():
    per_minute = Constant("c", "c", Figure(1, "gph ft / hp"), Figure(102, "L/s m / kW"), SOURCE)
    with pytest.raises(BadDefinition, match=r"'water_power', .* gives gpm·hp/gph, should give hp$"):
        Formula("water_power", flow * head / per_minute, SOURCE, WHY)


def test_units_that_fit_in_one_system_only_are_refused_unless_only_that_is_named():
    constant = Constant("c", "c", Figure(3960, "gpm ft / hp"), Figure(102, "L/s m / hp"), SOURCE)
    expr = flow * head / constant
    with pytest.raises(BadDefinition, match=r"in metric units: .* gives hp, should give kW$"):
        Formula("water_power", expr, SOURCE, WHY)
    assert ("us",) == Formula("water_power", expr, SOURCE, WHY, systems=("us",)).systems


def test_terms_of_different_kinds_are_refused():
    with pytest.raises(
        BadDefinition, match=r"of one Sum are of one unit: flow gives gpm, should give hp$"
    ):
        Formula("water_power", water_power + flow, SOURCE, WHY)


def test_readings_of_different_kinds_are_not_averaged():
    with pytest.raises(
        BadDefinition, match=r"of one Mean .* total dynamic head gives ft, should give gpm$"
    ):
        Formula("flow", Mean((flow, head)), SOURCE, WHY)


def test_a_decimal_is_made_only_of_a_percentage():
    with pytest.raises(
        BadDefinition, match=r"as a decimal: total dynamic head gives ft, should give %$"
    ):
        Formula("brake_power", water_power * Fraction(head), SOURCE, WHY)


def test_a_percentage_is_made_only_of_a_pure_number():
    with pytest.raises(BadDefinition, match=r"flow gives gpm, should give a plain number$"):
        Formula("pump_efficiency", Percent(flow), SOURCE, WHY)


def test_a_percentage_left_as_it_is_does_not_pass_for_a_decimal():
    with pytest.raises(BadDefinition, match=r"'brake_power', .* gives hp/%, should give hp$"):
        Formula("brake_power", water_power / Known("pump_efficiency"), SOURCE, WHY)


def test_a_table_is_asked_only_in_its_own_units():
    table = Lookup(head, max, "table", ("hp", "kW"), ("hp", "kW"))
    with pytest.raises(
        BadDefinition, match=r"the table 'table': total dynamic head gives ft, should give hp$"
    ):
        Formula("motor_size", table, SOURCE, WHY)


@pytest.mark.parametrize("result", ["water_powr", "horsepower", ""])
def test_a_result_that_is_not_in_the_vocabulary_is_named(result):
    with pytest.raises(BadDefinition, match=f"no quantity is called '{result}'"):
        Formula(result, water_power / pump, SOURCE, WHY)


def test_a_name_on_the_right_that_is_not_in_the_vocabulary_is_named():
    with pytest.raises(BadDefinition, match="no quantity is called 'flwo'"):
        Formula("water_power", Known("flwo") * head, SOURCE, WHY)


def test_a_name_in_a_slip_that_is_not_in_the_vocabulary_is_named():
    slip = Slip("slip", Known("breake_power") * pump, "No.")
    with pytest.raises(BadDefinition, match="no quantity is called 'breake_power'"):
        Formula("brake_power", water_power / pump, SOURCE, WHY, slips=(slip,))


@pytest.mark.parametrize(("source", "why"), [("", WHY), (" ", WHY), (SOURCE, ""), (SOURCE, " \n")])
def test_a_formula_without_its_source_or_its_why_is_refused(source, why):
    with pytest.raises(BadDefinition, match="'brake_power': give both its source and its why"):
        Formula("brake_power", water_power / pump, source, why)


def test_a_constant_without_a_source_cannot_exist():
    with pytest.raises(BadDefinition, match="constant 'weight' has no source"):
        Constant("weight", "weight", Figure(8.34, "lb/gal"), Figure(1, "kg/L"), "  ")


def test_a_quantity_a_formula_cannot_give_is_named_with_those_it_can():
    formula = Formula("flow", Largest((flow, Known("daily_flow"))), SOURCE, WHY, systems=())
    with pytest.raises(BadDefinition, match="'flow' cannot be rearranged for 'daily_flow'; it g"):
        formula.solved_for("daily_flow")


def test_a_formula_turns_round_only_for_what_it_may():
    formula = Formula("brake_power", water_power / pump, SOURCE, WHY, turns=("water_power",))
    assert ("brake_power", "water_power") == formula.solvable
    with pytest.raises(BadDefinition, match="cannot be rearranged for 'pump_efficiency'"):
        formula.solved_for("pump_efficiency")


def test_what_a_formula_may_be_turned_for_stands_in_it():
    with pytest.raises(BadDefinition, match=r"turns names \['head'\], which is not in it"):
        Formula("brake_power", water_power / pump, SOURCE, WHY, turns=("head",))


@pytest.mark.parametrize("absent", ["unless", "yields_to"])
def test_what_a_formula_takes_to_be_absent_is_in_the_vocabulary(absent):
    with pytest.raises(BadDefinition, match="no quantity is called 'belt_slp'"):
        Formula("brake_power", water_power / pump, SOURCE, WHY, **{absent: ("belt_slp",)})


def test_no_two_slips_of_a_formula_have_one_id():
    slip = Slip("turned", pump / water_power, "You turned it. Divide by the efficiency.")
    with pytest.raises(BadDefinition, match="'brake_power': give each slip an id of its own"):
        Formula("brake_power", water_power / pump, SOURCE, WHY, slips=(slip, slip))


def test_a_bad_definition_is_both_the_solvers_own_error_and_a_type_error():
    assert issubclass(BadDefinition, SolverError)
    assert issubclass(BadDefinition, TypeError)

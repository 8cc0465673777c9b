"""Expressions written out: in words, in numbers, in symbols; and the written sum is the sum."""

import pytest
from matplotlib.mathtext import MathTextParser

from solver import draw
from solver.algebra.expression import (
    Abs,
    Constant,
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
from solver.algebra.notation import LATEX, TEXT
from solver.algebra.tree import walk
from solver.algebra.typeset import numbers, symbols, words
from solver.render.html import formula_latex
from solver.render.print import MARKED
from solver.render.text import step_texts
from solver.topics.constants import GPM_PER_MGD, KW_PER_HP, WATER_POWER
from solver.topics.formulas import FORMULAS

from .arithmetic import figures_in, worked_out
from .drawn import IN_TURN, SEEDS, each, seeds

flow, head, water, brake, motor = map(
    Known, ("flow", "head", "water_power", "brake_power", "motor_power")
)
pump = Fraction(Known("pump_efficiency"))
FRICTION = Constant(
    "friction", "friction constant", Figure(1.212e12, ""), Figure(1.212e12, ""), "Hazen-Williams"
)
VALUES = {
    "flow": 1250.0, "head": 62.0, "water_power": 19.5707, "brake_power": 26.0942,
    "motor_power": 30.0, "pump_efficiency": 75.0, "flume_head": 0.42, "flume_exponent": 1.522,
}  # fmt: skip
GIVEN = {"flow", "head", "motor_power", "pump_efficiency", "flume_head", "flume_exponent"}


@pytest.mark.parametrize(
    ("expr", "in_words", "in_numbers"),
    [
        (flow * head / WATER_POWER, "flow × total dynamic head / 3,960", "1,250 gpm × 62 ft / 3,960"),
        (water * WATER_POWER / flow, "water horsepower × 3,960 / flow",
         "19.57 hp × 3,960 / 1,250 gpm"),
        (water / pump, "water horsepower / pump efficiency (as a decimal)", "19.57 hp / 0.75"),
        (Percent(water / brake), "water horsepower / brake horsepower × 100%",
         "19.57 hp / 26.09 hp × 100%"),
        (Percent(Product((brake - water,))), "(brake horsepower − water horsepower) × 100%",
         "(26.09 hp − 19.57 hp) × 100%"),
        (motor * KW_PER_HP, "motor horsepower × 0.746", "30 hp × 0.746"),
        (flow * FRICTION, "flow × 1.212 × 10^12", "1,250 gpm × 1.212 × 10^12"),
        (flow / FRICTION, "flow / (1.212 × 10^12)", "1,250 gpm / (1.212 × 10^12)"),
        (water / (brake * pump), "water horsepower / (brake horsepower × pump efficiency (as a decimal))",
         "19.57 hp / (26.09 hp × 0.75)"),
        ((water + brake) / motor, "(water horsepower + brake horsepower) / motor horsepower",
         "(19.57 hp + 26.09 hp) / 30 hp"),
        (water / (brake - motor), "water horsepower / (brake horsepower − motor horsepower)",
         "19.57 hp / (26.09 hp − 30 hp)"),
        (brake - (water + motor), "brake horsepower − (water horsepower + motor horsepower)",
         "26.09 hp − (19.57 hp + 30 hp)"),
        (Mean((water, brake)), "(water horsepower + brake horsepower) / 2", "(19.57 hp + 26.09 hp) / 2"),
        (Largest((Abs(water - brake), motor)),
         "largest of (|water horsepower − brake horsepower|, motor horsepower)",
         "largest of (|19.57 hp − 26.09 hp|, 30 hp)"),
        (Smallest((water, brake)), "smallest of (water horsepower, brake horsepower)",
         "smallest of (19.57 hp, 26.09 hp)"),
        (Power(water / brake, 2), "(water horsepower / brake horsepower)^2", "(19.57 hp / 26.09 hp)^2"),
        (Number(2) * Power(water, 2), "2 × (water horsepower)^2", "2 × (19.57 hp)^2"),
        (Power(water * brake, 0.5), "√(water horsepower × brake horsepower)", "√(19.57 hp × 26.09 hp)"),
        (Power(Known("flume_head"), Known("flume_exponent")), "(head in the flume)^exponent of the flume",
         "(0.42 ft)^1.522"),
        (Number(4) * water, "4 × water horsepower", "4 × 19.57 hp"),
        (Product((), (water,)), "1 / water horsepower", "1 / 19.57 hp"),
    ],
)  # fmt: skip
def test_an_expression_reads_as_a_teacher_writes_it(expr, in_words, in_numbers):
    assert in_words == words(expr, "us")
    assert in_numbers == numbers(expr, "us", VALUES, GIVEN)


def test_a_factor_of_one_is_not_written():
    assert "motor input power" == words(motor * GPM_PER_MGD, "si")
    assert "30 kW" == numbers(motor * GPM_PER_MGD, "si", VALUES, GIVEN)


def test_each_system_has_its_own_constant_and_units():
    expr = flow * head / WATER_POWER
    assert "flow × total dynamic head / 102" == words(expr, "si")
    assert "1,250 L/s × 62 m / 102" == numbers(expr, "si", VALUES, GIVEN)


@pytest.mark.parametrize(
    ("expr", "notation", "line"),
    [
        (flow * head / WATER_POWER, TEXT, "1,250 gpm × 62 ft / (3,960 gpm·ft/hp)"),
        (flow * head / (WATER_POWER * pump), TEXT, "1,250 gpm × 62 ft / (3,960 gpm·ft/hp × 0.75)"),
        (motor * KW_PER_HP, TEXT, "30 hp × 0.746 kW/hp"),
        (flow * FRICTION, TEXT, "1,250 gpm × 1.212 × 10^12"),
        (flow / GPM_PER_MGD, LATEX, r"\dfrac{1{,}250\ \text{gpm}}{694.4\ \text{gpm/MGD}}"),
        (flow / GPM_PER_MGD, MARKED, "<f><o>1,250 gpm</o><u>694.4 gpm/MGD</u></f>"),
    ],
)
def test_a_constant_of_a_worked_step_has_its_unit_to_cancel(expr, notation, line):
    assert line == numbers(expr, "us", VALUES, GIVEN, notation, cancel=True)


@pytest.mark.parametrize(
    ("expr", "units", "latex"),
    [
        (flow * head / WATER_POWER, "us", r"\dfrac{Q \times \mathrm{TDH}}{3{,}960}"),
        (flow * head / WATER_POWER, "si", r"\dfrac{Q \times H}{102}"),
        (water / pump, "us", r"\dfrac{\mathrm{WHP}}{\mathrm{Eff}_\mathrm{pump}}"),
        (motor * KW_PER_HP, "us", r"\mathrm{MHP} \times 0.746"),
        (Sum((water,), (brake,)), "us", r"\mathrm{WHP} - \mathrm{BHP}"),
        (flow / FRICTION, "si", r"\dfrac{Q}{1.212 \times {10}^{12}}"),
        (Power(water / brake, 2), "us", r"{(\dfrac{\mathrm{WHP}}{\mathrm{BHP}})}^{2}"),
        (Power(water, 2) * pump, "us", r"{\mathrm{WHP}}^{2} \times \mathrm{Eff}_\mathrm{pump}"),
        (Power(water * pump, 0.5), "us", r"\sqrt{\mathrm{WHP} \times \mathrm{Eff}_\mathrm{pump}}"),
        (Percent(water / brake), "us", r"\dfrac{\mathrm{WHP}}{\mathrm{BHP}} \times 100\%"),
    ],
)
def test_symbols_are_those_of_a_formula_sheet(expr, units, latex):
    assert latex == symbols(expr, units).replace("3,960", "3{,}960")


@pytest.mark.parametrize("units", ["us", "si"])
def test_matplotlib_can_set_every_formula_in_latex(units):
    """A reader of LaTeX that is not ours takes each one; it refuses what is not well formed."""
    setter = MathTextParser("path")
    for formula in FORMULAS:
        if units in formula.systems:
            width = setter.parse(f"${formula_latex(formula, units)}$").width
            assert width > 10, formula.result


@each(IN_TURN)
def test_the_numbers_put_in_come_to_the_result_that_stands_beside_them(problem):
    """Each line is worked again from what is written; figures shown are rounded to four."""
    family, level, units = problem
    for seed in seeds(SEEDS):
        case = draw(family, seed, units, level)
        for step in case.steps:
            _, put_in, result = step_texts(step, case.known, case.given, units)
            line = put_in.partition(" = ")[2]
            if step.expr is None or any(isinstance(node, Lookup) for node in walk(step.expr)):
                continue
            (shown,) = figures_in(result)
            # A difference of two rounded figures is as rough as the larger of them.
            rough = max(figures_in(line)) if "−" in line else shown
            assert shown == pytest.approx(worked_out(line), abs=2e-3 * max(rough, shown) + 0.005), (
                line
            )


@each(IN_TURN)
def test_words_and_numbers_have_one_shape(problem):
    """The numbers stand where the words stood: the same marks in the same order."""
    family, level, units = problem
    case = draw(family, 7, units, level)
    for step in case.steps:
        if step.expr is not None:
            in_words = words(step.expr, units)
            put_in = numbers(step.expr, units, case.known, case.given)
            assert marks(in_words) == marks(put_in), in_words


def marks(line: str) -> str:
    """The marks of a line that are not part of a unit or of a name."""
    plain = line.replace(" (as a decimal)", "")
    return "".join(mark for mark in plain if mark in "×−+|√^()=") + str(plain.count(" / "))

"""The solver's expressions as sympy has them: an outside opinion on values and on turning round."""

from fractions import Fraction as Ratio

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
    Product,
    Smallest,
    Sum,
)

__all__ = ["exactly", "in_sympy", "symbol"]


def symbol(name: str) -> sympy.Symbol:
    """A quantity as a symbol; every quantity of the vocabulary is above zero."""
    return sympy.Symbol(name, positive=True)


def exactly(value: float) -> sympy.Rational:
    """The decimal that is written, not the nearest binary number."""
    return sympy.Rational(Ratio(repr(value)))


def exponent_of(value: float) -> sympy.Rational:
    """An exponent as the short fraction it stands for: 1 / 1.852 is 250 / 463."""
    return sympy.Rational(Ratio(repr(value)).limit_denominator(1000))


def in_sympy(expr: Expr, units: str) -> sympy.Expr:
    """An expression in one system; a table is a function sympy knows nothing about."""

    def each(nodes):
        return [in_sympy(node, units) for node in nodes]

    match expr:
        case Known(name):
            return symbol(name)
        case Number(value):
            return exactly(value)
        case Constant():
            return exactly(expr.figure(units).value)
        case Product(over, under):
            return sympy.Mul(*each(over)) / sympy.Mul(*each(under))
        case Sum(plus, minus):
            return sympy.Add(*each(plus)) - sympy.Add(*each(minus))
        case Power(base, exponent):
            number = isinstance(exponent, int | float)
            return in_sympy(base, units) ** (
                exponent_of(exponent) if number else in_sympy(exponent, units)
            )
        case Exponential(base, exponent):
            return exactly(base) ** in_sympy(exponent, units)
        case Fraction(of):
            return in_sympy(of, units) / 100
        case Percent(of):
            return in_sympy(of, units) * 100
        case Abs(of):
            return sympy.Abs(in_sympy(of, units))
        case Mean(of):
            return sympy.Add(*each(of)) / len(of)
        case Largest(of):
            return sympy.Max(*each(of))
        case Smallest(of):
            return sympy.Min(*each(of))
        case Lookup(of, read):
            return sympy.Function(read.__name__)(in_sympy(of, units))
    raise TypeError(f"no sympy for {expr!r}")

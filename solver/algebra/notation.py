"""How an expression is written out, as plain text or as LaTeX: one walk over the tree serves both.

A `Notation` says how the marks look, and a function given to the `Writer` how a quantity is written.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import floor, isclose, log10
from typing import assert_never

from solver.units.show import constant_unit, exact, latex_with_unit, with_unit

from .expression import (
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
from .tree import is_one

__all__ = ["LATEX", "TEXT", "TOO_LONG", "Notation", "Writer"]

TOO_LONG = 1e10  # a constant above this is written as a power of ten, and called by its name


@dataclass(frozen=True)
class Notation:
    """The marks of one way of writing."""

    times: str
    minus: str
    word: Callable[[str], str]
    valued: Callable[[str, str], str]
    fraction: Callable[[str, str], str]
    root: Callable[[str], str]
    power: Callable[[str, str], str]
    percent: str
    stacked: bool = False  # fractions stand over a line, so they need no brackets


TEXT = Notation(
    times=" × ",
    minus=" − ",
    word=str,
    valued=with_unit,
    fraction=lambda over, under: f"{over} / {under}",
    root=lambda inner: f"√{inner}",
    power=lambda base, exponent: f"{base}^{exponent}",
    percent="100%",
)
LATEX = Notation(
    times=r" \times ",
    minus=" - ",
    word=lambda text: rf"\text{{{text}}}".replace("%", r"\%").replace("$", r"\$"),
    valued=latex_with_unit,
    fraction=lambda over, under: rf"\dfrac{{{over}}}{{{under}}}",
    root=lambda inner: rf"\sqrt{{{inner}}}",
    power=lambda base, exponent: f"{{{base}}}^{{{exponent}}}",
    percent=r"100\%",
    stacked=True,
)


@dataclass(frozen=True, slots=True)
class Writer:
    """One walk over an expression. `quantity` writes one by its name; or as a decimal, in percent."""

    units: str
    notation: Notation
    quantity: Callable[[str, bool], str]
    cancel: bool = False

    def written(self, expr: Expr) -> str:
        """The expression in this notation."""
        notation = self.notation
        match expr:
            case Known(name):
                return self.quantity(name, False)
            case Constant():
                figure = expr.figure(self.units)
                return self._number(figure.value, constant_unit(figure.unit) * self.cancel)
            case Number(value):
                return self._number(value)
            case Fraction(Known(name)):
                return self.quantity(name, True)
            case Fraction(of):
                return notation.fraction(_bracketed(of, self.written(of), True), "100")
            case Percent(of):
                of = _alone(of)
                share = _bracketed(of, self.written(of), isinstance(of, Sum))
                return share + notation.times + notation.percent
            case Product():
                return self._product(expr)
            case Sum(plus, minus):
                taken = (notation.minus + _bracketed(n, self.written(n), True) for n in minus)
                return (" + ".join(map(self.written, plus)) + "".join(taken)).lstrip()
            case Mean(readings):
                total = " + ".join(map(self.written, readings))
                over = total if notation.stacked else f"({total})"
                return notation.fraction(over, str(len(readings)))
            case Largest(readings):
                return self._one_of("largest of ", readings)
            case Smallest(readings):
                return self._one_of("smallest of ", readings)
            case Abs(of):
                return f"|{self.written(of)}|"
            case Lookup(of):
                return notation.word(f"{expr.rule} ") + self.written(of)
            case Power() | Exponential():
                return self._raised(expr)
            case _:
                assert_never(expr)

    def _number(self, value: float, behind: str = "") -> str:
        """A number of the equation itself, with the unit `behind` it that is to be canceled."""
        notation = self.notation
        if value >= TOO_LONG:
            exponent = floor(log10(value))
            ten = notation.power("10", str(exponent))
            return exact(value / 10**exponent) + notation.times + ten
        written = notation.valued(exact(value), behind) if behind else exact(value)
        return f"({written})" if " per " in behind else written

    def _one_of(self, which: str, readings: tuple[Expr, ...]) -> str:
        return self.notation.word(which) + f"({', '.join(map(self.written, readings))})"

    def _raised(self, expr: Power | Exponential) -> str:
        notation = self.notation
        match expr:
            case Power(base, exponent):
                within = self.written(base)
                if exponent == 0.5:
                    return notation.root(within if notation.stacked else _grouped(base, within))
                grouped = _grouped(base, within, notation.stacked)
                return notation.power(grouped, self._exponent(exponent))
            case Exponential(number, raised):
                above = self.written(raised)
                return notation.power(f"{number:g}", above if notation.stacked else f"({above})")
            case _:
                assert_never(expr)

    def _exponent(self, exponent: Expr | float) -> str:
        """An exponent; a third is written as one."""
        stacked = self.notation.stacked
        if not isinstance(exponent, int | float):
            raised = self.written(exponent)
            return raised if stacked or isinstance(exponent, Known) else f"({raised})"
        if isclose(exponent, 1 / 3):
            return "1/3" if stacked else "(1/3)"
        return f"{exponent:g}"

    def _product(self, expr: Product) -> str:
        """Factors side by side, over a line where some divide; what is one in this system is left out."""
        above, below = self._kept(expr.over), self._kept(expr.under)
        over = self._factors(above)
        if not below:
            return over
        alone = len(above) == 1 and isinstance(above[0], Sum)
        under = self._factors(below)
        if not self.notation.stacked:
            over = f"({over})" if alone else over
            under = f"({under})" if self._groups_under(below, under) else under
        return self.notation.fraction(over, under)

    def _kept(self, factors: tuple[Expr, ...]) -> list[Expr]:
        return [factor for factor in factors if not is_one(factor, self.units)]

    def _factors(self, factors: list[Expr]) -> str:
        many = len(factors) > 1
        written = (_bracketed(factor, self.written(factor), many) for factor in factors)
        return self.notation.times.join(written) or exact(1)

    def _groups_under(self, factors: list[Expr], text: str) -> bool:
        """Whether what is below a stroke needs parentheses."""
        strokes = self.notation.times in text or ("/" in text and not text.startswith("("))
        long = isinstance(factors[0], Constant) and strokes
        return len(factors) > 1 or isinstance(factors[0], Sum) or long


def _alone(expr: Expr) -> Expr:
    """What a product has where it has one factor, as where a slip left the others out."""
    match expr:
        case Product((factor,), ()):
            return factor
        case _:
            return expr


def _grouped(base: Expr, text: str, stacked: bool = False) -> str:
    """Parentheses around what a power or a root takes, unless it is one sign or is typeset as one.

    In plain text a quantity always has them, for its value has a unit behind it.
    """
    one_sign = isinstance(base, Constant | Number) and text.isalnum()
    typeset = isinstance(base, Known | Constant | Number) and stacked
    return text if one_sign or typeset else f"({text})"


def _bracketed(node: Expr, text: str, needed: bool) -> str:
    """Parentheses where a sum, or a percentage, stands among factors."""
    return f"({text})" if needed and isinstance(node, Sum | Percent) else text

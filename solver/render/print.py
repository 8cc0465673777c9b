"""Formulas as marked text, which a printed page reads as data and sets in its own letters.

The marks are XML, so that a label, a bracket and a fraction can stand side by side in one text,
and nothing in it is ever a program: `w` holds words, `f` a fraction (`o` over `u`), `r` what a
root covers, `p` a power (`b` raised to `e`). Each quantity has its unit behind it.
"""

from dataclasses import replace
from html import escape

from solver.algebra.formula import Formula
from solver.algebra.notation import TEXT
from solver.algebra.typeset import labelled, unit_after

__all__ = ["MARKED", "formula_marked"]


def _power(base: str, exponent: str) -> str:
    """A power; several words have brackets, or it would seem to be of the last one alone."""
    bare = base.startswith("(") or base.replace(".", "", 1).isdigit()
    return f"<p><b>{base if bare else f'({base})'}</b><e>{exponent}</e></p>"


MARKED = replace(
    TEXT,
    word=lambda text: f"<w>{escape(text, quote=False)}</w>",
    fraction=lambda over, under: f"<f><o>{over}</o><u>{under}</u></f>",
    root=lambda inner: f"<r>{inner}</r>",
    power=_power,
    stacked=True,
)


def formula_marked(formula: Formula, units: str) -> tuple[str, str]:
    """What a formula gives, with its unit; and what that equals, as marked text.

    >>> from solver.topics.formulas import POWER
    >>> formula_marked(POWER[3], "us")[1]
    '<x><f><o><w>flow (gpm)</w> × <w>total dynamic head (ft)</w></o><u>3,960</u></f></x>'
    """
    marked = labelled(formula.expr, units, MARKED)
    return unit_after(formula.result, units), f"<x>{marked}</x>"

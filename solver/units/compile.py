"""Compile the scales of tables/units.txt from pint, as the text of tables/unit_scales.txt.

    python -m solver.units.compile > scales.txt
    mv scales.txt solver/units/unit_scales.txt

It prints, since the solver writes no files; through another file, since it must not empty its own.
"""

from fractions import Fraction

from .in_pint import new_registry
from .unit import DIMENSIONS, definitions

__all__ = ["compiled"]

_HEAD = """\
# Compiled from units.txt by solver/units/compile.py, not written by hand.
# name | scale | offset | powers of length, mass, time, current, temperature, money
# A value times its scale, plus its offset, is the value in m, kg, s, A, K and dollars.
"""


def compiled() -> str:
    """The whole table, worked out in exact fractions and rounded once."""
    exact = new_registry(Fraction)
    lines = []
    for one in definitions():
        zero, first = (exact.Quantity(Fraction(n), one.pint).to_base_units() for n in (0, 1))
        powers = (int(first.dimensionality.get(f"[{name}]", 0)) for name in DIMENSIONS)
        offset = Fraction(zero.magnitude)
        scale = Fraction(first.magnitude) - offset
        row = (one.name, repr(float(scale)), repr(float(offset)), " ".join(map(str, powers)))
        lines.append(" | ".join(row))
    return _HEAD + "\n".join(lines) + "\n"


if __name__ == "__main__":
    print(compiled(), end="")

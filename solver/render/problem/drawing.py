"""What a drawing is: its title, the quantities it has a place for, and how it is drawn."""

from collections.abc import Callable
from typing import NamedTuple

from solver.units.quantity import Text

from .shown import Shown

__all__ = ["Drawing", "Drawn"]


class Drawn(NamedTuple):
    """SVG pieces, and how high they are (px)."""

    pieces: list[str]
    tall: float


class Drawing(NamedTuple):
    """A drawing for every problem of its quantities; `named` are those it names without a value too.

    Where `core` has names, one of them at least is given or asked, or there would be little to see.
    A family in `families` has this drawing whatever it gives: what is asked is read off it.
    """

    title: Text
    places: tuple[str, ...]
    draw: Callable[[Shown], Drawn]
    named: tuple[str, ...] = ()
    core: tuple[str, ...] = ()
    families: tuple[str, ...] = ()

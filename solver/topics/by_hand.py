"""The form of the sums by hand: what `BY_HAND` is in each topic's own by_hand.py.

They use nothing of the solver but published tables and one another, as the tests hold every numeric
answer to them.
"""

from collections.abc import Callable, Mapping

__all__ = ["ByHand", "Given"]

Given = Mapping[str, float]  # the plain numbers of a case, by quantity, in the units of its system
ByHand = Mapping[str, Callable[[Given, str], float]]  # by family, from those and "us" or "si"

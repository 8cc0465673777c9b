"""Drawing by chance, the same on every machine and Python version.

Only `random.Random(text).random()` is used: the other methods may change between versions.
"""

from collections.abc import Sequence
from random import Random
from typing import TypeVar

__all__ = ["Draw"]

T = TypeVar("T")


class Draw:
    """A stream of choices that depends on nothing but its key."""

    __slots__ = ("_random",)

    def __init__(self, key: str):
        self._random = Random(key).random

    def pick(self, items: Sequence[T]) -> T:
        """One of the items, each as likely."""
        return items[int(self._random() * len(items))]

    def between(self, low: float, high: float) -> float:
        """Any number from low to high."""
        return low + (high - low) * self._random()

    def step(self, low: float, high: float, step: float) -> float:
        """A round number: low, low + step ... up to high, each as likely."""
        count = int((high - low) / step + 1e-9) + 1
        return round(low + step * int(self._random() * count), 6)

    def shuffled(self, items: Sequence[T]) -> list[T]:
        """The items in an order of chance."""
        left = list(items)
        return [left.pop(int(self._random() * len(left))) for _ in items]

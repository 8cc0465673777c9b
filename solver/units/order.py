"""An order of lettered steps: how it is typed, and the number that it is kept as.

An answer everywhere is a number in a unit. So an order is the number whose digits are the steps' places
among the letters: C A B D is 3124, in the unit "order". `show.figures` writes it as letters again.
"""

import re
from collections.abc import Sequence
from unicodedata import normalize

from solver.errors import Unreadable

__all__ = ["LETTERS", "MOST_STEPS", "kept_as", "letters_of", "read_order", "steps_of"]

LETTERS = "ABCDEFGHI"
MOST_STEPS = len(LETTERS)
_LONGEST = 200  # characters; longer text is not looked at
_BETWEEN = re.compile(r"[\s,;.:>→()/|_\-–—]+|\bTHEN\b|\bAND\b")


def kept_as(steps: Sequence[int]) -> float:
    """The number of an order of steps, which count from 0.

    >>> kept_as([2, 0, 1, 3])
    3124.0
    """
    return float("".join(str(step + 1) for step in steps))


def steps_of(number: float) -> tuple[int, ...]:
    """The steps of such a number, in their order.

    >>> steps_of(3124.0)
    (2, 0, 1, 3)
    """
    return tuple(int(digit) - 1 for digit in f"{number:.0f}")


def letters_of(number: float) -> str:
    """The letters of such a number.

    >>> letters_of(3124.0)
    'C A B D'
    """
    return " ".join(LETTERS[step] for step in steps_of(number))


def read_order(text: str, count: int) -> float:
    """The order of `count` steps in letters as somebody typed them.

    >>> read_order("c, a, b, d", 4) == read_order("CABD", 4) == read_order("C > A > B > D", 4) == 3124
    True

    Raises:
        Unreadable: not every step is there once; the sentence says what to type.
    """
    such = f"Type all {count} letters, first step first, such as {_example(count)}."
    plain = normalize("NFKC", text[:_LONGEST]).upper().strip()
    typed = _BETWEEN.sub("", plain)
    if not plain:
        raise Unreadable(f"The steps haven't been put in order yet. Move them. Or {_small(such)}")
    if not typed or not re.fullmatch("[A-Z]+", typed) or len(typed) > 2 * count:
        said = " ".join(text[:30].split())
        raise Unreadable(f'"{said}" isn\'t an order of steps. {such}')
    known = LETTERS[:count]
    if strange := [letter for letter in typed if letter not in known]:
        raise Unreadable(
            f"There is no step {strange[0]} here. The steps are A to {known[-1]}. {such}"
        )
    if twice := next((letter for letter in known if typed.count(letter) > 1), ""):
        raise Unreadable(f"You typed {twice} more than once. {such}")
    if left_out := [letter for letter in known if letter not in typed]:
        *others, last = left_out
        said = f"{', '.join(others)} and {last}" if others else last
        raise Unreadable(f"You left out {said}. {such}")
    return kept_as([LETTERS.index(letter) for letter in typed])


def _example(count: int) -> str:
    """An order that nobody would take for the answer: the last step first."""
    return " ".join(reversed(LETTERS[:count]))


def _small(sentence: str) -> str:
    return sentence[:1].lower() + sentence[1:]

"""What a judgement comes to, and the options that somebody chooses from."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from solver.vocabulary import spoken

from .draw import Draw
from .order import Ordering

__all__ = ["Judge", "Judgement", "Option", "Orders"]


@dataclass(frozen=True, slots=True)
class Option:
    """One answer to choose: a short `id`, its text, and why it is right, or why it is not.

    Raises:
        BadDefinition: a text names a quantity that there is not.
    """

    id: str
    text: str
    says: str

    def __post_init__(self) -> None:
        spoken(self.text + self.says, "us")


@dataclass(frozen=True, slots=True)
class Judgement:
    """What a judgement comes to: the rule, the rule with its numbers, and the options.

    `numbers` may be empty where nothing is computed. The order of `wrong` does not matter: a
    draw shuffles all options by its code. `asks` is what the level's question has at {asks},
    where each draw asks another thing; it may use {place}, {station} and {person}. `table` is what
    only its picture shows, a label and a text in each row, for somebody who cannot see it. A judge
    gives None for a draw too close to call, which is then drawn again.

    Raises:
        BadDefinition: a text names a quantity that there is not.
    """

    rule: str
    numbers: str
    right: Option
    wrong: tuple[Option, ...]
    asks: str = ""
    table: tuple[tuple[str, str], ...] = ()

    def __post_init__(self) -> None:
        spoken(self.rule + self.numbers + self.asks, "us")


Judge = Callable[[Mapping[str, float], str, Draw], Judgement | None]
Orders = Callable[[Mapping[str, float], str, Draw], Ordering]

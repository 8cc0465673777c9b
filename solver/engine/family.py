"""The frozen definition of a problem family; it validates itself and names what is wrong.

A family says only what is given, what is asked and how the question is worded. The answer, the
worked steps, the hints, the mistakes and the metric form are derived (plan.py, changes.py).
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from string import Formatter
from typing import NamedTuple, Protocol

from solver.algebra.formula import Formula
from solver.errors import BadDefinition
from solver.scenario import PUMPS, Place
from solver.units.quantity import Text, in_system
from solver.vocabulary import quantity_named, spoken

from .draw import Draw
from .judgement import Judge, Orders

__all__ = ["Drawn", "Family", "Level", "Row", "Scene", "Small"]

Row = str | tuple[Text, Text]
SLOTS = {"place", "station", "person", "unit"}


class Drawn(NamedTuple):
    """What a scene gives: values by quantity in the units of the system, and where they were read.

    Without a place it may be any of the family's.
    """

    values: Mapping[str, float]
    place: Place | None = None


class Scene(Protocol):
    """Where a problem's numbers come from: the readings of a pump station, or a small draw.

    Called with the chance and "us" or "si" it gives numbers of a thing that could exist. It raises
    Unfit where this one has no such reading, and is then asked again.
    """

    @property
    def places(self) -> tuple[Place, ...]:
        """Those it may give."""

    def __call__(self, draw: Draw, units: str) -> Drawn: ...


@dataclass(frozen=True, slots=True)
class Small:
    """A scene of numbers that no station has, such as a tank's: `values` draws them."""

    values: Callable[[Draw, str], Mapping[str, float]]
    places: tuple[Place, ...] = PUMPS

    def __call__(self, draw: Draw, units: str) -> Drawn:
        return Drawn(self.values(draw, units))


@dataclass(frozen=True, slots=True)
class Level:
    """What is given at one level, and the question.

    The question has a slot in braces for every given ("{flow}" becomes "450 gpm"), and may use
    {place} ("Pump 2 at the Tannery Lane lift station"), {station}, {person} and {unit}, the unit
    asked for. Names of quantities may be slots too (vocabulary.py). A judgement that asks another
    thing at each draw has {asks}. `find` names the quantities a judgement needs worked before it
    judges; other families leave it empty. `scene`, `judge` and `asked` serve this level where the
    family's own do not fit: of volts, amps and ohms each level may ask another. `since` is the
    number of the catalogue (catalogue.py) that first had it; 0 is that of the family.

    A question of more than 60 words is a short lead-in, with the rest in a `table` under it: the
    name of a given, which then needs no slot, or a row of two texts, which may have slots, and each be
    Both(us, si).
    """

    given: tuple[str, ...]
    question: str
    find: tuple[str, ...] = ()
    table: tuple[Row, ...] = ()
    scene: Scene | None = None
    judge: Judge | Orders | None = None
    since: int = 0
    asked: str = ""


@dataclass(frozen=True)
class Family:
    """A kind of problem. `levels[0]` is level 1.

    `tag` opens its codes: two to four capital letters, never changed. `since` is the number of the
    catalogue (catalogue.py) that first had it, and `revised` those in which it changed so that an
    old code would give another problem. `scene` gives every quantity the levels give. `judge` makes it a
    judgement (choose one); then `asked` is "choice", or "order" where it gives steps to put in order.

    Raises:
        BadDefinition: it is not well formed; the sentence names the family, the level and what to do.
    """

    name: str
    tag: str
    chapter: str
    title: str
    asked: str
    levels: tuple[Level, ...]
    scene: Scene
    formulas: tuple[Formula, ...]
    judge: Judge | Orders | None = None
    since: int = 1
    revised: tuple[int, ...] = ()

    @property
    def places(self) -> tuple[Place, ...]:
        """Those it may be set at: a booster station has no wet well."""
        scenes = [level.scene or self.scene for level in self.levels]
        return tuple(place for place in PUMPS if any(place in scene.places for scene in scenes))

    @property
    def revision(self) -> int:
        """Which form of it this is, from 1."""
        return 1 + len(self.revised)

    def __post_init__(self) -> None:
        if not (self.name.isidentifier() and self.name.islower()):
            raise BadDefinition(f"family {self.name!r}: the name is lower case words joined by _")
        if not re.fullmatch("[A-Z]{2,4}", self.tag):
            raise BadDefinition(
                f"family {self.name!r}: tag {self.tag!r} is not two to four capital letters"
            )
        if not (1 <= self.revision <= 9 and len(self.levels) <= 9):
            raise BadDefinition(
                f"family {self.name!r}: a code has one figure for the revision and one for the "
                "level, 1 to 9; after revision 9 take a new tag"
            )
        if (self.asked in ("choice", "order")) is (self.judge is None):
            raise BadDefinition(
                f"family {self.name!r}: 'choice' is asked just when it judges, or 'order'"
            )
        if len(self.levels) < 2:
            raise BadDefinition(f"family {self.name!r}: give it two levels or more")
        numbers = [self.since, *self.revised]
        levels = [level.since or self.since for level in self.levels]
        if numbers != sorted(set(numbers)) or levels != sorted(levels) or levels[0] != self.since:
            raise BadDefinition(
                f"family {self.name!r}: `revised` goes up from `since` {self.since}, and levels "
                "come one after another; write the number of the next catalogue"
            )
        for number, level in enumerate(self.levels, 1):
            self._check_level(number, level)
        self._check_repeats()

    def _check_repeats(self) -> None:
        """Refuse a level that asks, gives, draws, finds and judges what another does."""
        first: dict[object, int] = {}
        for number, level in enumerate(self.levels, 1):
            asked = self.asks(level)
            does = (asked, frozenset(level.given), level.scene, level.find, level.judge)
            if first.setdefault(does, number) != number:
                raise BadDefinition(
                    f"family {self.name!r}, level {number}: it repeats level {first[does]}. Give "
                    "other quantities, or a scene or a judge of its own"
                )

    def _check_level(self, number: int, level: Level) -> None:
        where, asked = f"family {self.name!r}, level {number}", self.asks(level)
        if isinstance(level.given, str):
            raise BadDefinition(f"{where}: write a comma after what it gives: ({level.given!r},)")
        if asked in level.given:
            raise BadDefinition(
                f"{where}: it asks for {asked!r} and gives it. Give other quantities, or write "
                "asked= with what this level asks for"
            )
        if self.judge is None:
            quantity_named(asked)
        elif level.asked:
            raise BadDefinition(
                f"{where}: take out its asked=, as a judgment asks for a choice or an order"
            )
        told = [text for row in level.table if not isinstance(row, str) for text in row]
        rows = [in_system(text, units) for text in told for units in ("us", "si")]
        question = spoken(" ".join((*rows, level.question)), "us")
        slots = {slot for _, slot, _, _ in Formatter().parse(question) if slot is not None}
        judged = {"asks"} if level.judge or self.judge else set()
        in_table = {row for row in level.table if isinstance(row, str)}
        unknown = (slots - SLOTS - judged | in_table) - set(level.given)
        if unknown:
            raise BadDefinition(
                f"{where}: question has {sorted(unknown)} that is not given. Spell it as it is "
                "given, or add it to what is given"
            )
        if not level.question.rstrip().endswith(("?", ".", "{asks}")):
            raise BadDefinition(f"{where}: end its question with a full stop or question mark")
        if unsaid := set(level.given) - slots - in_table:
            raise BadDefinition(
                f"{where}: {sorted(unsaid)} is given, and the question does not say it, nor its "
                f"table. Write {' and '.join(f'{{{name}}}' for name in sorted(unsaid))} into it"
            )
        for name in (*level.given, *level.find):
            quantity_named(name)

    def asks(self, level: Level) -> str:
        """The quantity that a level asks for, or "choice" or "order"."""
        return level.asked or self.asked

    def scene_at(self, number: int) -> Scene:
        """What gives the numbers of level 1, 2 ...; errors as in `level`."""
        return self.level(number).scene or self.scene

    def level(self, number: int) -> Level:
        """Level 1, 2 ...

        Raises:
            BadDefinition: there is no such level; the sentence names those there are.
        """
        if 1 <= number <= len(self.levels):
            return self.levels[number - 1]
        raise BadDefinition(
            f"{self.name} has levels 1 to {len(self.levels)}; you asked for {number}."
        )

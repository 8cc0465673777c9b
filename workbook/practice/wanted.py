"""Mixed and guided practice as cards: the chapters, levels and units that are wanted, and what comes next."""

from collections.abc import Callable, Iterable
from time import monotonic

from ipywidgets import HTML, VBox, Widget

from workbook.ui.chapter_ticks import ChapterTicks
from workbook.ui.controls import UNIT_CHOICES, chooser, classed, group_of_ticks, tick
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say

from .card import Card
from .guided import Guided
from .keeper import codes_today
from .mixed import PROMISE, Mixed
from .practice import Practice

__all__ = ["guided_card", "mixed_card"]

MIXED_HOW = "About one problem in three is of a kind you missed, until you get it right."
GUIDED_HOW = (
    "A mistake you keep making comes first. Then what comes back today, then what is new. "
    "What you get right without help comes back later and later."
)
SHOWN = 5  # kinds that are named


def mixed_card(practice: Mixed, clock: Callable[[], float] = monotonic) -> Card:
    """One problem at a time, of any chapter and level that is checked; what went wrong comes back."""
    about = tag("p", PROMISE, " ", tag("span", MIXED_HOW, cls="w2w-about"))
    name = "What to practice"
    return _card(practice, clock, name, about, lambda: _returning(practice), choose_levels=True)


def guided_card(practice: Guided, clock: Callable[[], float] = monotonic) -> Card:
    """One problem at a time, in the order in which they are needed, each with why."""
    about, name = tag("p", GUIDED_HOW, cls="w2w-about"), "What comes next"
    return _card(practice, clock, name, about, lambda: _coming(practice), choose_levels=False)


def _card(
    practice: Mixed,
    clock: Callable[[], float],
    name: str,
    about: Markup,
    next_kinds: Callable[[], Markup],
    choose_levels: bool,
) -> Card:
    def choosing(card: Card) -> Wanted:
        return Wanted(card, practice, name, about, next_kinds, choose_levels)

    return classed(Card(practice, clock, choosing, done=codes_today), "w2w-mixed")


class Wanted:
    """Boxes for what is wanted, from the next problem on; `next_kinds` tells what comes then."""

    def __init__(
        self,
        card: Card,
        practice: Mixed,
        name: str,
        about: Markup,
        next_kinds: Callable[[], Markup],
        choose_levels: bool,
    ):
        self.name, self._practice, self._next_kinds = name, practice, next_kinds
        wanted, every = practice.wanted, practice.every
        changed = card.safely(lambda _: self._changed())
        self.chapters = ChapterTicks(card, every.chapters, wanted.chapters, self._changed)
        self.levels = {n: tick(f"Level {n}", n in wanted.levels, changed) for n in every.levels}
        self.units = chooser("Units", UNIT_CHOICES, changed, wanted.units)
        self.said, self.coming = HTML(say("")), HTML()
        levels = [group_of_ticks("Levels", self.levels, "w2w-few")] * choose_levels
        parts = [HTML(about), self.coming, self.chapters.box, *levels, self.units, self.said]
        self.box: Widget = classed(VBox(parts), "w2w-wanted")

    def show(self, practice: Practice) -> None:
        """What is wanted stays as it is, whatever problem is shown; what comes next may not."""
        self.coming.value = self._next_kinds()

    def _changed(self) -> None:
        levels = tuple(n for n, box in self.levels.items() if box.value)
        self._practice.want(chapters=self.chapters.chosen, levels=levels, units=self.units.value)
        missing = self._practice.stuck
        self.said.value = say("missing" if missing else "note", missing or self._next_is())
        self.show(self._practice)

    def _next_is(self) -> str:
        chapters, levels, _ = self._practice.wanted
        many = f"{len(chapters)} chapter{'s' * (len(chapters) > 1)}"
        level = f"level{'s' * (len(levels) > 1)} {', '.join(map(str, levels))}"
        return f"Starting with the next problem: {many}, {level}, {self.units.label}."


def _returning(practice: Mixed) -> Markup:
    """The kinds of problems that come back more often."""
    kinds = [f"{kind.family.title}, level {kind.level}" for kind in practice.returning]
    more = [f"and {len(kinds) - SHOWN} more"] * (len(kinds) > SHOWN)
    return _listed("Coming back until you get them right", "ul", kinds[:SHOWN] + more)


def _coming(practice: Guided) -> Markup:
    """The kinds of problems that are needed most."""
    kinds = (
        joined(f"{one.family.title}, level {one.level} ", tag("b", f"({one.short})"))
        for one in practice.next[:SHOWN]
    )
    return _listed("Most pressing now", "ol", kinds)


def _listed(title: str, kind: str, items: Iterable[str]) -> Markup:
    shown = [tag("li", item) for item in items]
    return joined(tag("p", title, cls="w2w-want"), tag(kind, shown)) if shown else Markup()

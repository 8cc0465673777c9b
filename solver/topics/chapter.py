"""What the families of one chapter share: its name and its formulas."""

from dataclasses import dataclass, replace

from solver.algebra.formula import Formula
from solver.engine.family import Family, Level, Scene
from solver.engine.judgement import Judge, Orders

__all__ = ["Chapter"]


@dataclass(frozen=True)
class Chapter:
    """A maker of the families of a chapter.

    `since` and `revised` are those of the family (catalogue.py); those of the first catalogue have
    had other numbers since `redrawn`. Both makers raise BadDefinition, which says what is wrong with a family.
    """

    name: str
    formulas: tuple[Formula, ...]
    redrawn: tuple[int, ...] = (2,)  # since then every number is read off a station

    def numeric(
        self,
        name: str,
        tag: str,
        title: str,
        asked: str,
        scene: Scene,
        *levels: Level,
        since: int = 1,
        revised: tuple[int, ...] = (),
    ) -> Family:
        """A family that asks for a number: the quantity `asked`."""
        return Family(
            name, tag, self.name, title, asked, levels, scene,
            self.formulas, since=since, revised=self._revised(since, revised),
        )  # fmt: skip

    def judged(
        self,
        name: str,
        tag: str,
        title: str,
        judge: Judge | Orders,
        scene: Scene,
        *levels: Level,
        since: int = 1,
        revised: tuple[int, ...] = (),
    ) -> Family:
        """A family that asks for a choice; each level may have another judge."""
        return Family(
            name, tag, self.name, title, "choice", levels, scene,
            self.formulas, judge, since, self._revised(since, revised),
        )  # fmt: skip

    def ordered(
        self,
        name: str,
        tag: str,
        title: str,
        judge: Judge | Orders,
        scene: Scene,
        *levels: Level,
        since: int = 1,
        revised: tuple[int, ...] = (),
    ) -> Family:
        """A family that asks for steps to be put in order; its judges give orderings."""
        chosen = self.judged(name, tag, title, judge, scene, *levels, since=since, revised=revised)
        return replace(chosen, asked="order")

    def _revised(self, since: int, revised: tuple[int, ...]) -> tuple[int, ...]:
        return tuple(sorted({*(n for n in self.redrawn if n > since), *revised}))

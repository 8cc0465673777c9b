"""What the numeric families of the cost chapter share."""

from solver.engine.family import Family, Level, Scene
from solver.topics.formulas import COST, POWER

__all__ = ["CHAPTER", "FORMULAS", "numeric"]

CHAPTER = "cost"
FORMULAS = (*POWER, *COST)


def numeric(name: str, tag: str, title: str, asked: str, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a number."""
    return Family(name, tag, CHAPTER, title, asked, levels, scene, FORMULAS)

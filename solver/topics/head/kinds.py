"""What the families of the head chapter share."""

from solver.engine.family import Family, Judge, Level, Scene
from solver.scenario import WITH_WET_WELL
from solver.topics.formulas import HEAD, POWER

__all__ = ["judged", "numeric"]

CHAPTER = "head"
FORMULAS = (*POWER, *HEAD)


def numeric(name: str, tag: str, title: str, asked: str, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a number."""
    return Family(name, tag, CHAPTER, title, asked, levels, scene, FORMULAS, places=WITH_WET_WELL)


def judged(name: str, tag: str, title: str, judge: Judge, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter where something is to be judged."""
    return Family(
        name, tag, CHAPTER, title, "choice", levels, scene, FORMULAS, judge, places=WITH_WET_WELL
    )

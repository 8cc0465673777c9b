"""What the families of the chapter on speed share: their definition."""

from ..family import Family, Judge, Level, Scene
from ..formulas import COST, HEAD, POWER, SPEED_AND_IMPELLER, WET_WELL

__all__ = ["judged", "numeric"]

FORMULAS = (*SPEED_AND_IMPELLER, *HEAD, *POWER, *COST, *WET_WELL)


def numeric(name: str, tag: str, title: str, asked: str, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a number."""
    return Family(name, tag, "speed", title, asked, levels, scene, FORMULAS)


def judged(name: str, tag: str, title: str, judge: Judge, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a choice."""
    return Family(name, tag, "speed", title, "choice", levels, scene, FORMULAS, judge)

"""What the families of the chapter on speed share: their definition."""

from functools import partial

from solver.engine.family import Family, Judge, Level, Scene
from solver.scenario import PUMPS, WITHOUT_LIFT, Place
from solver.topics.formulas import COST, HEAD, POWER, SPEED_AND_IMPELLER, WET_WELL

__all__ = ["FRICTION", "judged", "numeric", "without_lift"]

FRICTION = "All of its head is friction."
FORMULAS = (*SPEED_AND_IMPELLER, *HEAD, *POWER, *COST, *WET_WELL)


def numeric(
    name: str,
    tag: str,
    title: str,
    asked: str,
    scene: Scene,
    *levels: Level,
    places: tuple[Place, ...] = PUMPS,
) -> Family:
    """A family of the chapter that asks for a number."""
    return Family(name, tag, "speed", title, asked, levels, scene, FORMULAS, places=places)


without_lift = partial(numeric, places=WITHOUT_LIFT)


def judged(name: str, tag: str, title: str, judge: Judge, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a choice."""
    return Family(name, tag, "speed", title, "choice", levels, scene, FORMULAS, judge)

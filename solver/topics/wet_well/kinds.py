"""What the families of the wet well share: their definition, and words of their questions."""

from solver.engine.family import Family, Judge, Level, Scene
from solver.scenario import WITH_WET_WELL
from solver.topics.formulas import SPEED_AND_IMPELLER, WET_WELL

from .scenes import well

__all__ = ["FALLS", "LOSES", "PER_DEPTH", "TURNS", "judged", "numeric"]

PER_DEPTH = "The wet well of {station} holds {volume_per_depth} of depth."
FALLS = "With one pump running, it takes {drawdown_time} for the level to drop {drawdown_read}."
LOSES = "While {place} runs, the falling level shows that the wet well loses {drawdown_rate}."
TURNS = "The {alternating_pumps} pumps at {station} alternate."


def numeric(
    name: str, tag: str, title: str, asked: str, *levels: Level, scene: Scene = well
) -> Family:
    """A family of the chapter that asks for a number."""
    return Family(
        name, tag, "wet_well", title, asked, levels, scene, WET_WELL, places=WITH_WET_WELL
    )


def judged(name: str, tag: str, title: str, judge: Judge, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a choice."""
    return Family(
        name, tag, "wet_well", title, "choice", levels, scene, (*WET_WELL, *SPEED_AND_IMPELLER),
        judge, places=WITH_WET_WELL,
    )  # fmt: skip

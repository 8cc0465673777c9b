"""What the numeric families of the units chapter share."""

from solver.engine.family import Family, Level, Scene
from solver.topics.formulas import CONVERSIONS, POWER

__all__ = ["numeric"]


def numeric(name: str, tag: str, title: str, asked: str, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a number."""
    return Family(name, tag, "units", title, asked, levels, scene, (*POWER, *CONVERSIONS))

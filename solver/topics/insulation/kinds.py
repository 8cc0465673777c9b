"""What the families of the insulation chapter share: who tests, how safely, and their formulas."""

from solver.engine.family import Family, Judge, Level, Scene
from solver.topics.formulas import INSULATION, NAMEPLATE

__all__ = ["CAUTION", "TESTED", "judged", "numeric"]

CHAPTER = "insulation"
FORMULAS = (*INSULATION, *NAMEPLATE)

TESTED = (
    "A qualified person has isolated {place}, verified that it is dead, and disconnected any "
    "drive and surge protection. "
)
CAUTION = "Before anyone touches the winding, ground it for four times as long as the test."


def numeric(name: str, tag: str, title: str, asked: str, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a number."""
    return Family(name, tag, CHAPTER, title, asked, levels, scene, FORMULAS)


def judged(name: str, tag: str, title: str, judge: Judge, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a choice."""
    return Family(name, tag, CHAPTER, title, "choice", levels, scene, FORMULAS, judge)

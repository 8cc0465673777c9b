"""Around the machine: questions to think about, each with why every choice is right or wrong.

The questions are data in this folder, one file a topic. `MACHINE` has a family for each.
"""

from collections.abc import Mapping
from dataclasses import replace

from solver.engine.draw import Draw
from solver.engine.family import Family, Judge, Judgement, Level
from solver.topics.chapter import Chapter
from solver.topics.questions import questions
from solver.topics.scenes import NO_NUMBERS

__all__ = ["MACHINE"]

CHAPTER = Chapter("machine", (), redrawn=())


def judge(topic: str, level: int) -> Judge:
    """One question of a topic and level, drawn by chance."""

    def drawn(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
        found = draw.pick(questions(topic, level))
        right = replace(found.right, says=f"{found.right.says} Source: {found.source}.")
        return Judgement(found.rule, "", right, found.wrong, found.asks)

    return drawn


def family(topic: str, tag: str, title: str) -> Family:
    """The family of a topic's questions, which has a level for each of theirs."""
    levels = tuple(Level((), "{asks}", judge=judge(topic, level)) for level in (1, 2))
    return CHAPTER.judged(topic, tag, title, judge(topic, 1), NO_NUMBERS, *levels)


MACHINE = (
    family("lockout", "JL", "Lockout and verification"),
    family("permit_space", "JP", "Permit spaces"),
    family("rotation", "JR", "Rotation, and which legs to swap"),
    family("check_valve", "JC", "What the check valve arm tells you"),
    family("seal_oil", "JS", "Signs of trouble: seals, packing and oil"),
    family("bearings", "JB", "Signs of trouble: bearings"),
    family("drifting_readings", "JD", "Why a reading drifts"),
    family("out_of_balance", "JO", "Legs out of balance: what to check next"),
)

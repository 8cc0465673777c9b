"""Around the machine: questions to think about, each with why every choice is right or wrong.

The questions are data in this folder, one file a topic. `MACHINE` has a family for each.
"""

from solver.topics.chapter import Chapter
from solver.topics.questions import in_words

__all__ = ["MACHINE"]

CHAPTER = Chapter("machine", (), redrawn=())

MACHINE = (
    in_words(CHAPTER, "lockout", "JL", "Lockout and verification"),
    in_words(CHAPTER, "permit_space", "JP", "Permit spaces"),
    in_words(CHAPTER, "rotation", "JR", "Rotation, and which legs to swap"),
    in_words(CHAPTER, "check_valve", "JC", "What the check valve arm tells you"),
    in_words(CHAPTER, "seal_oil", "JS", "Signs of trouble: seals, packing and oil"),
    in_words(CHAPTER, "bearings", "JB", "Signs of trouble: bearings"),
    in_words(CHAPTER, "drifting_readings", "JD", "Why a reading drifts"),
    in_words(CHAPTER, "out_of_balance", "JO", "Legs out of balance: what to check next"),
)

"""Which marks a person must still look at. One rule, for both ways of marking."""

from typing import NamedTuple

__all__ = ["NEW", "Kept", "must_look"]


class Kept(NamedTuple):
    """What the gradebook has of one question: nbgrader's columns `auto_score`, `manual_score`,
    `needs_manual_grade` and `auto_comment`."""

    score: float | None
    by_hand: float | None
    to_look_at: bool
    said: str | None


NEW = Kept(None, None, True, None)


def must_look(needs_person: bool, score: float, said: str, kept: Kept) -> bool:
    """Whether a person must look, now that a question has this score and this sentence.

    What somebody has looked at stays so while score and sentence are the same. A score given by
    hand is looked at again once they differ.

    >>> must_look(True, 0.5, "An earlier try is missing.", NEW)
    True
    >>> must_look(True, 0.5, "An earlier try is missing.", Kept(0.5, 1.0, False, "An earlier try is missing."))
    False
    >>> must_look(False, 1.0, "Right.", Kept(0.5, 0.75, False, "Close."))
    True
    """
    seen = not kept.to_look_at and (kept.score, kept.said) == (score, said)
    return (needs_person or kept.by_hand is not None) and not seen

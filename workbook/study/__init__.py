"""The candidate's study: what the log says of each skill, when it is due, and what to do next."""

from .schedule import chance_now, due, reviewed
from .skills import LATELY, Recurring, Skill, firsts, level_of, moment, skill_of
from .study import Study
from .suggest import Suggestion, suggestions

__all__ = [
    "LATELY",
    "Recurring",
    "Skill",
    "Study",
    "Suggestion",
    "chance_now",
    "due",
    "firsts",
    "level_of",
    "moment",
    "reviewed",
    "skill_of",
    "suggestions",
]

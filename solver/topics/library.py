"""Finding a family by its name, and a problem by its code."""

from collections import Counter
from difflib import get_close_matches

from solver.engine.case import Case
from solver.engine.code import read_code
from solver.engine.family import Family
from solver.engine.posing import draw as draw_case
from solver.errors import BadCode, BadDefinition

from .catalogue import GONE
from .problems import FAMILIES

__all__ = ["case_from_code", "draw", "family_named"]

_BY_NAME = {family.name: family for family in FAMILIES}
_BY_TAG = {family.tag: family for family in FAMILIES}
_TIMES = Counter(text for family in FAMILIES for text in (family.name, family.tag))
if _TWICE := [text for text, times in _TIMES.items() if times > 1]:
    raise BadDefinition(
        f"two families share {' and '.join(_TWICE)}: give each a name and a tag of its own"
    )


def family_named(name: str) -> Family:
    """The family called `name`.

    Raises:
        BadDefinition: there is none; the sentence says which names are near it.
    """
    try:
        return _BY_NAME[name]
    except KeyError:
        near = get_close_matches(name.lower().replace(" ", "_"), _BY_NAME, n=3)
        meant = f"Did you mean {' or '.join(near)}? " if near else ""
        raise BadDefinition(
            f"No family is called “{name[:40]}”. {meant}To list them all, type: python -m solver families"
        ) from None


def draw(family: Family | str, seed: int, units: str = "us", level: int = 1) -> Case:
    """Problem number `seed` of a family (itself or its name), in "us" or "si", from level 1 up.

    The same arguments give the same Case on any machine, operating system and Python version.

    Raises:
        BadDefinition: there is no such family, or it has no such level.
        SolverError: units or seed are none that there are.

    >>> draw("brake_power", 3, "si", level=2).unit
    'kW'
    """
    return draw_case(
        family_named(family) if isinstance(family, str) else family, seed, units, level
    )


def case_from_code(text: str) -> Case:
    """The problem a code stands for.

    Raises:
        BadCode: it stands for none here; the sentence says why, and what to do.

    >>> case_from_code(draw("water_power", 7).code) == draw("water_power", 7)
    True
    """
    code = read_code(text)
    family = _BY_TAG.get(code.tag)
    if gone := next((one for one in GONE if one.tag == code.tag), None):
        raise BadCode(
            f"“{gone.title}” is no longer in the workbook, so this problem can't be asked or "
            "graded any more. Take another kind."
        )
    if family is None or code.level > len(family.levels):
        raise BadCode(
            f"This workbook has no problem {code.tag} at level {code.level}. "
            "A newer version may have it: update this one."
        )
    if code.revision > family.revision:
        raise BadCode(
            f"A newer version of the workbook made this code of “{family.title}”. "
            "Update this one, or ask for a new code."
        )
    if code.revision != family.revision:
        raise BadCode(
            f"“{family.title}” has changed since this code was made, so this problem can't be "
            "asked or graded any more. Take new numbers, or ask for a new code."
        )
    return draw_case(family, code.seed, code.units, code.level)

"""Every problem family, in the order of the chapters; `family_named` finds one.

A new family is added to its chapter's tuple and nowhere else.
"""

from ..errors import BadDefinition
from ..family import Family
from .horsepower import HORSEPOWER

__all__ = ["FAMILIES", "family_named"]

FAMILIES: tuple[Family, ...] = (*HORSEPOWER,)

_BY_NAME = {family.name: family for family in FAMILIES}


def family_named(name: str) -> Family:
    """The family called `name`; BadDefinition lists those there are."""
    try:
        return _BY_NAME[name]
    except KeyError:
        raise BadDefinition(
            f"no family is called {name!r}; there are: {', '.join(_BY_NAME)}"
        ) from None


if len(_BY_NAME) != len(FAMILIES) or len({f.tag for f in FAMILIES}) != len(FAMILIES):
    raise BadDefinition("two families share a name or a tag: give each its own")

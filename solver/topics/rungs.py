"""A rung of a ladder drawing in words: what a question says of it, and what its picture is drawn from.

    Stop, normally closed – Start, normally open or M, normally open – OL, normally closed – coil M

" – " parts what is in series, " or " branches side by side, " and " contacts in series in one branch.
The last is what the rung turns on: a coil, a timer, a light or a horn.
"""

from typing import NamedTuple

from solver.errors import BadDefinition

__all__ = ["OUTPUTS", "Contact", "Rung", "rung_of"]

OUTPUTS = ("coil", "timer", "light", "horn")
_STATES = {"normally open": False, "normally closed": True}


class Contact(NamedTuple):
    """A contact: whose it is, and whether it is closed while that is at rest."""

    name: str
    closed: bool


Branch = tuple[Contact, ...]


class Rung(NamedTuple):
    """Parts in series, each of branches side by side; and what the rung turns on."""

    parts: tuple[tuple[Branch, ...], ...]
    output: str
    name: str


def rung_of(text: str) -> Rung:
    """The rung that some words tell of.

    >>> rung_of("Float, normally open – coil M").parts
    (((Contact(name='Float', closed=False),),),)

    Raises:
        BadDefinition: the words are no rung; the sentence says where.
    """
    *parts, last = text.split(" – ")
    output, _, name = last.partition(" ")
    if not parts or output not in OUTPUTS or not name:
        raise BadDefinition(f"rung {text!r}: end it with a {', '.join(OUTPUTS)} and its name")
    return Rung(tuple(tuple(map(_branch, part.split(" or "))) for part in parts), output, name)


def _branch(text: str) -> Branch:
    return tuple(map(_contact, text.split(" and ")))


def _contact(text: str) -> Contact:
    name, _, state = text.rpartition(", ")
    if not name or state not in _STATES:
        raise BadDefinition(f"contact {text!r}: write its name, a comma and {' or '.join(_STATES)}")
    return Contact(name, _STATES[state])

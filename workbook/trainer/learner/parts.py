"""What shows a set on its page, and what is raised where there is nothing to show."""

from collections.abc import Sequence
from typing import NamedTuple, Protocol, runtime_checkable

from solver import SolverError

__all__ = ["Answering", "NotListed", "NothingToShow", "Packed", "Part"]


class Part(Protocol):
    """Something that shows the set as it stands."""

    def redraw(self) -> None:
        """Show it as it is now."""


@runtime_checkable
class Answering(Part, Protocol):
    """A part with a box: the number of its question, and what was typed there and is no answer yet."""

    number: int

    @property
    def unsent(self) -> str:
        """What stands in the box and was not checked, or could not be read."""


class Packed(NamedTuple):
    """A file to send: its name, its kind, what is in it, and what of the work it lacks."""

    name: str
    kind: str
    data: bytes
    lacks: Sequence[str] = ()


class NothingToShow(SolverError):
    """A question or a sheet that cannot be shown yet; the sentence says what to do."""


class NotListed(SolverError):
    """A name that is not on the trainer's list; the sentence says what to do."""

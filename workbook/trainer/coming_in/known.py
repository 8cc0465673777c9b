"""The people of a list, and what the trainer said of names and files that came."""

from collections.abc import Mapping, Sequence
from difflib import get_close_matches
from typing import NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.trainer.course import CourseFault, Person

__all__ = ["Class", "class_of", "possible"]


class Class(NamedTuple):
    """The people of a list, and what the trainer said of names and files, by name."""

    people: Sequence[Person] = ()
    said: Mapping[str, str] = {}

    def find(self, person: str) -> bool:
        """Whether this id is on the list; anybody's is where there is no list."""
        return not self.people or any(one.id == person for one in self.people)

    def has(self, person: str) -> bool:
        """Whether this id is on a list that there is."""
        return any(one.id == person for one in self.people)

    def near(self, typed: str) -> Person | None:
        """Who on the list may be meant: by a name of theirs, or by an id that is much alike."""
        by_name = [
            one
            for one in self.people
            if typed in (one.first_name.casefold(), one.last_name.casefold(), one.email.casefold())
        ]
        if len(by_name) == 1:
            return by_name[0]
        near = get_close_matches(typed, [one.id for one in self.people], 1, 0.75)
        return next((one for one in self.people if near and one.id == near[0]), None)


def possible(text: str) -> str:
    """The id a text is, or "" where nobody can have it."""
    try:
        return person_id(text)
    except SolverError:
        return ""


def class_of(people: Sequence[Person], said: Mapping[str, str]) -> Class:
    """The people of a list with what the trainer typed after `--as`, by the name before the =.

    Raises:
        CourseFault: an id cannot be used, or is somebody else's.
    """
    found: dict[str, str] = {}
    for typed, person in said.items():
        try:
            found[typed] = person_id(person)
            found[person_id(typed)] = found[typed]
        except SolverError as fault:
            if typed not in found:
                raise CourseFault(f"--as {typed}={person}: {fault}") from None
    known = Class(people, found)
    for typed, person in found.items():
        if not known.find(person):
            raise CourseFault(f"--as {typed}={person}: “{person}” isn't on the list of this class.")
        if known.has(typed) and typed != person:
            raise CourseFault(
                f"--as {typed}={person}: “{typed}” is somebody else on the list. To take one file "
                "for somebody, type the file's name before the =."
            )
    return known

"""Whose work it is: the id a trainer knows somebody by, asked once and kept beside the notebook."""

import os
from pathlib import Path
from typing import NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.log import NotKept
from workbook.ui.saving import whole_text

__all__ = ["PERSON", "Learner", "keep_person", "person_at"]

PERSON = "person.txt"
HUB_USER = "JUPYTERHUB_USER"
MOST = 1000  # bytes of the file that are looked at; an id is far shorter


class Learner(NamedTuple):
    """Somebody's id, empty where it is not known yet; whether a hub says it; a sentence about it."""

    id: str
    signed_in: bool = False
    note: str = ""


def person_at(folder: Path) -> Learner:
    """Who works in this folder: who is signed in, or else whom the file there names."""
    user = os.environ.get(HUB_USER, "")
    if not user:
        return _kept_in(folder)
    try:
        signed_in = person_id(user)
    except SolverError as refusal:
        asked = _kept_in(folder)
        why = f"The name you signed in with can't be used. {refusal}"
        return asked if asked.id else asked._replace(note=why)
    other = _kept_in(folder).id
    note = f"The file {PERSON} says {other}, but you are signed in, so the file isn't used."
    return Learner(signed_in, True, note if other not in ("", signed_in) else "")


def _kept_in(folder: Path) -> Learner:
    path = folder / PERSON
    try:
        with path.open("rb") as file:
            text = file.read(MOST).decode("utf-8-sig").strip()
    except FileNotFoundError:
        return Learner("")
    except (OSError, UnicodeDecodeError):
        return Learner(
            "", note=f"The file {PERSON} can't be read, so type your name or number again."
        )
    try:
        return Learner(person_id(text))
    except SolverError:
        return Learner(
            "", note=f"The name in the file {PERSON} can't be used. Type your name or number again."
        )


def keep_person(folder: Path, text: str) -> Learner:
    """Keep who works in this folder; the id as it is used everywhere.

    Raises:
        SolverError: nobody can have this id; the sentence says what to type.
        NotKept: it cannot be written there; the sentence says why.
    """
    found = person_id(text)
    try:
        with whole_text(folder / PERSON) as file:
            file.write(found + "\n")
    except OSError as error:
        why = error.strerror or error
        told = f"Your name couldn't be saved in {folder}: {why}. Make that folder writable, then try again."
        raise NotKept(told) from error
    return Learner(found)

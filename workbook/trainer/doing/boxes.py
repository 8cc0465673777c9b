"""Boxes of the page's steps, and the words of a command that come from them."""

import re
from collections.abc import Sequence

from ipywidgets import Combobox, FileUpload, Text

from workbook.trainer.people import Person
from workbook.ui.controls import AUTO, LABELLED, classed

__all__ = ["filled", "id_in", "person_box", "text_box", "upload_box", "who_is"]

ID = re.compile(r"\(([^()]+)\)\s*$")


def text_box(label: str) -> Text:
    """A box for a line of text."""
    return _typed(Text, label)


def person_box(label: str) -> Combobox:
    """A box for a person: typing a piece of the name shows who there is."""
    return _typed(Combobox, label)


def _typed(kind: type[Text], label: str) -> Text:
    """It is sent when it is left: letter by letter, a click could overtake the last ones."""
    box = kind(description=label, continuous_update=False, style=LABELLED, layout=AUTO)
    return classed(box, "w2w-field")


def upload_box(says: str, accept: str, many: bool = False) -> FileUpload:
    """A button that takes files."""
    made = FileUpload(accept=accept, multiple=many, description=says, layout=AUTO)
    return classed(made, "w2w-button")


def who_is(person: Person) -> str:
    """A person as the box shows them, with the id.

    >>> who_is(Person("op03", "Ana", "Ruiz")), who_is(Person("op04"))
    ('Ana Ruiz (op03)', 'op04')
    """
    return f"{person.name} ({person.id})" if person.name else person.id


def id_in(text: str) -> str:
    """The id in such a text; any other is taken as an id.

    >>> id_in("Ana Ruiz (op03)"), id_in(" op04 ")
    ('op03', 'op04')
    """
    found = ID.search(text)
    return found[1].strip() if found else text.strip()


def filled(words: Sequence[str], *boxes: tuple[str, Text]) -> list[str]:
    """The words, and those of the boxes that have something in them."""
    found = [word for word in words if word]
    for option, box in boxes:
        if text := box.value.strip():
            found += [option, text]
    return found

"""What a panel says, as a test reads it, and how a test types into it."""

import re
from html import unescape

from workbook.ui.answer import Answer

__all__ = ["type_in", "words"]


def words(html):
    """The words of some HTML, without its tags."""
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())


def type_in(place, text):
    """Type a text and press the button beside it."""
    if isinstance(place, Answer):
        place.value = text
        place.press()
    else:
        place.box.value = text
        place.gate.click()

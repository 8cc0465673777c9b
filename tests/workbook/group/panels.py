"""What a reader does with the panels of group study, and what they then see, without a browser."""

import re
from base64 import b64decode

from tests.workbook.said import words


def slow(panel):
    """The panel with a clock by which no click is half of a double one."""
    panel.clock = iter(range(0, 100_000, 5)).__next__
    return panel


def paste(panel, text):
    panel.pasted.box.value = text
    panel.open.click()


def answer(panel, number, text):
    card = list(panel.cards.values())[number - 1]
    card.answer.value = text
    card.answer.press()
    return words(card.said.value)


def held(html):
    """The name and the bytes of the file that a link holds."""
    name, data = re.search(r'download="([^"]*)" href="data:[^,]*,([^"]*)"', html).groups()
    return name, b64decode(data)

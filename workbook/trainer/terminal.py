"""The line for a terminal that does what a button does, as the trainer's pages show it."""

from collections.abc import Sequence

from workbook.ui.markup import Markup, tag

from .command import line_of

__all__ = ["in_terminal"]


def in_terminal(words: Sequence[str]) -> Markup:
    """A sentence with the line of these words, which runs as it is from any folder."""
    return tag("p", "The same in a terminal: ", tag("code", line_of(words)))

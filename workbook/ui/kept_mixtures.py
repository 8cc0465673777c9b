"""The mixtures of chapters that a reader or a trainer keeps by name: one file of text beside the log.

A line of it is a mixture (solver/sets/mixtures.py), so it can be read, changed and sent as it stands. A line
that can't be read stays in the file, and is told.
"""

from collections.abc import Mapping
from pathlib import Path

from solver import SolverError
from solver.sets.mixtures import mixture_named, mixture_of, mixtures_text, read_mixtures
from solver.topics.catalogue import CHAPTERS
from workbook.log import default_path

from .contents import titled
from .saving import whole_text

__all__ = ["KeptMixtures", "chapters_called", "mixture_asked"]

FILE = "mixtures.txt"


def chapters_called() -> dict[str, str]:
    """The chapters by their titles, without a number in front."""
    return {title.partition(". ")[2] or title: name for name, title in titled(CHAPTERS).items()}


class KeptMixtures:
    """The mixtures in a folder; without one, beside the log."""

    def __init__(self, folder: Path | None = None):
        self.path = (folder or default_path().parent) / FILE

    def read(self) -> dict[str, dict[str, int]]:
        """The shares of each mixture by its name, in the order of the names."""
        found: dict[str, dict[str, int]] = {}
        for line in self._lines():
            found |= _mixture_in(line)
        return dict(sorted(found.items(), key=lambda one: one[0].casefold()))

    def strange(self) -> list[str]:
        """The lines that can't be read."""
        return [line for line in self._lines() if not _mixture_in(line)]

    def keep(self, mixtures: Mapping[str, Mapping[str, int]]) -> list[str]:
        """Keep these beside the others; those that stood under one of their names, which they replace.

        Raises:
            OSError: the file can't be written.
        """
        there = self.read()
        replaced = [old for name in mixtures if (old := mixture_named(name, there))]
        self._write(
            {name: one for name, one in there.items() if name not in replaced} | {**mixtures}
        )
        return replaced

    def drop(self, name: str) -> None:
        """Keep this one no more.

        Raises:
            OSError: the file can't be written.
        """
        self._write({one: shares for one, shares in self.read().items() if one != name})

    def _lines(self) -> list[str]:
        try:
            text = self.path.read_text(encoding="utf-8", errors="replace")
        except OSError:
            return []
        return [line.strip() for line in text.splitlines() if line.strip()]

    def _write(self, mixtures: Mapping[str, Mapping[str, int]]) -> None:
        lines = [*mixtures_text(mixtures).splitlines(), *self.strange()]
        self.path.parent.mkdir(parents=True, exist_ok=True)
        with whole_text(self.path) as file:
            file.writelines(f"{line}\n" for line in lines)


def mixture_asked(text: str) -> dict[str, int]:
    """The shares of a mixture that is kept, by its name, or of a line such as "head 30, wet well 20".

    Raises:
        SolverError: it is neither; the sentence says what to write.
    """
    return mixture_of(text, KeptMixtures().read(), chapters_called())


def _mixture_in(line: str) -> dict[str, dict[str, int]]:
    """The mixture of a line, under its name; nothing where it can't be read or has none."""
    try:
        found = read_mixtures(line, chapters_called())
    except SolverError:
        return {}
    return {name: shares for name, shares in found.items() if name}

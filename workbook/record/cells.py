"""The cells of one line of a CSV file, and letters in them that another coding wrote."""

import csv

from solver.units.typed import quoted

__all__ = ["cells_of", "repaired"]


class _Once:
    """Gives the csv module one line, and tells whether it asked for another: a quote is open."""

    def __init__(self, line: str):
        self.line, self.asked = line, 0

    def __iter__(self):
        return self

    def __next__(self) -> str:
        self.asked += 1
        if self.asked > 1:
            raise StopIteration
        return self.line


def cells_of(line: str, separator: str, *, strict: bool = False) -> tuple[list[str], bool]:
    """The cells of a line, and whether a quotation mark is still open at its end.

    With `strict`, also where text follows a closing mark: then it closed nothing.

    >>> cells_of('Pump 2,"8 in, new",12', ",")
    (['Pump 2', '8 in, new', '12'], False)
    """
    once = _Once(line)
    try:
        found = next(csv.reader(once, delimiter=separator, strict=strict), [])
    except csv.Error:
        return [], True
    return found, once.asked > 1


def repaired(cells: list[str]) -> dict[int, str]:
    """Put letters that are not UTF-8 as older western spreadsheets write them; say where."""
    faults = {}
    for at, cell in enumerate(cells):
        if cell.isascii():
            continue
        if any("\udc80" <= mark <= "\udcff" for mark in cell):
            raw = cell.encode("utf-8", "surrogateescape")
            cells[at] = raw.decode("cp1252", "replace")
            faults[at] = (
                f"A character in column {at + 1} isn't UTF-8. It was read as {quoted(cells[at])}."
            )
        elif "\ufffd" in cell:
            faults[at] = f"A character in column {at + 1} can't be read: {quoted(cell)}."
    return faults

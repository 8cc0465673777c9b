"""A printed record: one PDF of pumps, whose data (printed_data.py) are set by typst with record.typ."""

import contextlib
from collections.abc import Iterator, Sequence
from pathlib import Path

from solver.own.record import Examined
from workbook.ui.printing import CannotPrint, compiled, needed, pictures
from workbook.ui.saving import whole_file

from .printed_data import Sheet, in_full, of_each_pump, printed
from .reading import Pump
from .results import CannotWrite, Write

__all__ = ["MOST_PUMPS", "MOST_ROWS", "pdf_of", "pdf_writer", "pictures_of"]

TEMPLATE = Path(__file__).with_name("record.typ")
# Measured: 100 pumps take half a minute and 700 MB, or some 900 pages.
MOST_PUMPS, MOST_ROWS = 100, 1000
TOO_MANY = (
    f"One PDF holds up to {MOST_PUMPS} pumps and {MOST_ROWS:,} rows, and here are more. "
    "Print them in parts, or write pages with --out."
)


def pdf_of(sheets: Sequence[Sheet]) -> bytes:
    """One PDF: each pump's newest day in full, its trends, and a line for each earlier day.

    Raises:
        CannotWrite: typst is not installed, or there are too many; the sentence says what to do.
    """
    _check_size(sheets)
    with _as_a_writer_says():
        return compiled(TEMPLATE, printed(sheets))


def pictures_of(sheets: Sequence[Sheet], dots: float = 96) -> list[bytes]:
    """The pages of the PDF as PNG pictures, `dots` an inch.

    Raises:
        CannotWrite: as `pdf_of` does.
    """
    _check_size(sheets)
    with _as_a_writer_says():
        return pictures(TEMPLATE, printed(sheets), dots)


def _check_size(sheets: Sequence[Sheet]) -> None:
    if len(sheets) > MOST_ROWS or sum(map(len, map(in_full, of_each_pump(sheets)))) > MOST_PUMPS:
        raise CannotWrite(TOO_MANY)


@contextlib.contextmanager
def _as_a_writer_says() -> Iterator[None]:
    try:
        yield
    except CannotPrint as fault:
        raise CannotWrite(str(fault)) from None


@contextlib.contextmanager
def pdf_writer(path: Path) -> Iterator[Write]:
    """Keeps the rows of a file and prints them at its end: a pump's years may stand far apart.

    Raises:
        CannotWrite: typst is missing, said before anything is read; or there are too many rows or pumps.
    """
    with _as_a_writer_says():
        needed()
    kept: list[Pump] = []

    def write(pump: Pump, examined: Examined) -> None:
        if len(kept) == MOST_ROWS:
            raise CannotWrite(TOO_MANY)
        kept.append(pump)

    with whole_file(path) as file:
        yield write
        file.write(pdf_of([Sheet.of(pump) for pump in kept]))

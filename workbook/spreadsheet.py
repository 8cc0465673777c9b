"""Rows for a spreadsheet, as CSV. What a person typed is never taken for a formula there."""

import csv
from collections.abc import Iterable, Sequence
from io import StringIO

__all__ = ["csv_of", "harmless"]

# A cell that begins so is worked as a formula; the wide letters are those of other keyboards.
FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


def harmless(text: str) -> str:
    """The text, with an apostrophe before it where a spreadsheet would work it as a formula.

    >>> harmless("=1+1"), harmless("ana.r"), harmless(" =1+1")
    ("'=1+1", 'ana.r', "' =1+1")
    """
    return f"'{text}" if text.lstrip(" \N{NO-BREAK SPACE}").startswith(FORMULA) else text


def csv_of(rows: Iterable[Sequence[object]]) -> bytes:
    """The rows as a CSV file; texts in them are made harmless, and numbers stay numbers.

    >>> csv_of([["who", "points"], ["@ana", 7.5]]).decode("utf-8-sig")
    "who,points\\r\\n'@ana,7.5\\r\\n"
    """
    text = StringIO(newline="")
    write = csv.writer(text)
    for row in rows:
        write.writerow([harmless(cell) if isinstance(cell, str) else cell for cell in row])
    # With its mark at the start, spreadsheets know the letters.
    return text.getvalue().encode("utf-8-sig")

"""Every CSV of the project is written here, and those it keeps are read here. What a person typed never becomes a formula there.

A spreadsheet works a cell as a formula where it begins with = + - @, whoever typed it. So an
apostrophe goes before it, which our own readers take away again: a file reads back as it was.
Spreadsheets of many countries write a decimal comma; it is told from a comma of thousands.
"""

import csv
import re
from collections.abc import Callable, Iterable, Sequence
from io import StringIO
from pathlib import Path
from typing import TextIO

__all__ = [
    "CODING",
    "as_typed",
    "csv_of",
    "harmless",
    "may_be_thousands",
    "row_writer",
    "rows_in",
    "with_point",
]

CODING = "utf-8-sig"  # with its mark at the start, spreadsheets know the letters
NUMBER = re.compile(r"[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?", re.ASCII)
# A cell may be cut again at these, by a spreadsheet of a country that parts its cells so.
CUTS = r"\t\r\n;|"
# The wide letters are those of other keyboards. Blanks before a formula do not stop it.
BEGINS = rf"(?=[^\S{CUTS}]*[\x00\ufeff\u200b]*[=+\-@＝＋－＠])"
FORMULA = re.compile(rf"(?:\A(?='*[\t\r\n])|(?:\A|(?<=[{CUTS}]))(?='*{BEGINS}))")
NEUTRAL = re.compile(rf"(?:\A'(?='*[\t\r\n])|(?:\A|(?<=[{CUTS}]))'(?='*{BEGINS}))")
DECIMAL = re.compile(
    r"([+-]?(?:\d+(?=,(?:\d{1,2}|\d{4,})(?!\d))|0(?=,\d))),(\d+)(?![\d.,])(.*)", re.DOTALL
)
PARTED = re.compile(
    r"([+-]?)([1-9]\d{0,2}(?:([ .\u00a0\u2009\u202f'])\d{3})(?:\3\d{3})*),(\d{1,2}|\d{4,})(?![\d.,])(.*)",
    re.DOTALL,
)
EITHER = re.compile(r"[+-]?[1-9]\d{0,2},\d{3}(?![\d.,])")


def harmless(text: str) -> str:
    """The text, with an apostrophe before it where a spreadsheet would work it as a formula.

    A number is none, so it stays as it is.

    >>> harmless("=1+1"), harmless("ana.r"), harmless(" =1+1"), harmless("-3.2")
    ("'=1+1", 'ana.r', "' =1+1", '-3.2')
    """
    return text if NUMBER.fullmatch(text) else FORMULA.sub("'", text)


def as_typed(cell: str) -> str:
    """The text that `harmless` made a cell of.

    >>> as_typed(harmless("=1+1")), as_typed("the pump's name")
    ('=1+1', "the pump's name")
    """
    return NEUTRAL.sub("", cell) if "'" in cell else cell


def row_writer(file: TextIO) -> Callable[[Sequence[object]], None]:
    """What writes a row into a file that is open as text, in `CODING` and with newline="".

    Texts are made harmless, and numbers stay numbers.
    """
    write = csv.writer(file).writerow
    return lambda row: write([harmless(one) if isinstance(one, str) else one for one in row])


def csv_of(rows: Iterable[Sequence[object]]) -> bytes:
    """The rows as a whole CSV file.

    >>> csv_of([["who", "points"], ["@ana", 7.5]]).decode("utf-8-sig")
    "who,points\\r\\n'@ana,7.5\\r\\n"
    """
    text = StringIO(newline="")
    write = row_writer(text)
    for row in rows:
        write(row)
    return text.getvalue().encode(CODING)


def rows_in(path: Path, heads: Sequence[str]) -> list[dict[str, str]]:
    """The rows of a CSV file that `csv_of` wrote, by these heads as they were typed; no file has none."""
    try:
        text = path.read_text(encoding=CODING)
    except OSError:
        return []
    rows = csv.DictReader(StringIO(text, newline=""))
    return [{head: as_typed(row.get(head) or "") for head in heads} for row in rows]


def may_be_thousands(text: str) -> bool:
    """Whether the comma may be either, so that nobody can tell.

    >>> may_be_thousands("1,234 gpm"), may_be_thousands("12,5"), may_be_thousands("0,125")
    (True, False, False)
    """
    return bool(EITHER.match(text.strip()))


def with_point(text: str) -> str:
    """The text with a point for the comma, where that can be nothing but a decimal one.

    >>> with_point("12,5 hp"), with_point("1,234"), with_point("1,234,567"), with_point("12.5")
    ('12.5 hp', '1,234', '1,234,567', '12.5')
    >>> with_point("1 234,5"), with_point("1.234,5"), with_point("1 234")
    ('1234.5', '1234.5', '1 234')
    """
    if parted := PARTED.fullmatch(text.strip()):
        sign, whole, mark, part, rest = parted.groups()
        return f"{sign}{whole.replace(mark, '')}.{part}{rest}"
    match = DECIMAL.fullmatch(text.strip())
    return "{}.{}{}".format(*match.groups()) if match else text

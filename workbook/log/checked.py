"""A line of a file that only grows: one JSON object, with a check on the line itself.

    {"v": 2, …, "check": "5d0c3a91"}

The check is the CRC-32 of all that comes before it, so a line in which anything changed is noticed
and set aside by its number. Lines of version 1 were written without one, and are still read.
"""

import json
from collections.abc import Mapping
from zlib import crc32

__all__ = ["NotALine", "checked_line", "fields_of"]

UNCHECKED = 1  # the last version of lines without a check
MARK = ', "check": "'
LENGTH = len('5d0c3a91"}')
BOM = b"\xef\xbb\xbf"


class NotALine(ValueError):
    """What cannot be read as a line; the sentence goes on from "line 7: "."""


def checked_line(version: int, fields: Mapping[str, object]) -> str:
    """These fields as a line of a version, without its end."""
    # Half of a letter, which no file can hold, becomes a question mark.
    said = json.dumps({"v": version, **fields}, ensure_ascii=False).encode("utf-8", "replace")[:-1]
    return f'{said.decode()}{MARK}{_check(said)}"}}'


def _check(said: bytes) -> str:
    return f"{crc32(said):08x}"


def fields_of(line: str | bytes, version: int) -> dict:
    """The fields of a line of this version or an earlier one; "v" among them.

    Raises:
        NotALine: it is torn, changed, none at all, or of a later version.

    >>> fields_of(checked_line(2, {"typed": "9"}), 2)
    {'v': 2, 'typed': '9'}
    >>> fields_of(checked_line(2, {"typed": "9"}).replace("9", "8", 1), 2)
    Traceback (most recent call last):
    workbook.log.checked.NotALine: something in it changed after it was written
    """
    raw = line.encode("utf-8", "replace") if isinstance(line, str) else line
    raw = raw.removeprefix(BOM).strip()  # an editor may have put either there
    said, mark, check = raw.rpartition(MARK.encode())
    if mark and len(check) < LENGTH:
        raise NotALine("part of it is missing")
    if mark and check != f'{_check(said)}"}}'.encode():
        raise NotALine("something in it changed after it was written")
    try:
        found = json.loads(said + b"}" if mark else raw)
    except (ValueError, RecursionError):
        raise NotALine("part of it is missing") from None
    if not isinstance(found, dict) or type(found.get("v")) is not int:
        raise NotALine("it isn't a line of a log")
    if found["v"] > version:
        raise NotALine("a newer version of the workbook wrote it")
    if found["v"] > UNCHECKED and not mark:
        raise NotALine("its check is missing, so something in it changed")
    return found

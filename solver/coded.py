"""Codes of several parts, with hyphens between them and check digits at the end.

An exam and a set of work have such codes. Letters may be small, hyphens may be spaces, and O and
0, I, L and 1 are taken for each other where a digit stands.
"""

import re

from .code import check_digits
from .errors import BadCode

__all__ = ["SYSTEMS", "UNIT_LETTERS", "coded", "opened"]

UNIT_LETTERS = {"us": "U", "si": "M"}
SYSTEMS = {letter: units for units, letter in UNIT_LETTERS.items()}
LONGEST = 1000  # signs; the code of a set of work may name many families
_DIGITS = str.maketrans("OIL", "011")


def coded(*parts: object) -> str:
    """Parts as one code.

    The hyphens count in its check digits, so that none can stand a place aside. As Z a hyphen is
    35, and no digit beside it weighs the same when the two are swapped.

    >>> coded("EXAM", 33, "2U", 20, 60, "C", 1, 48213)
    'EXAM-33-2U-20-60-C-1-48213-92'
    """
    body = "-".join(map(str, parts))
    return f"{body}-{check_digits(body.replace('-', 'Z'))}"


def opened(text: str, shape: re.Pattern, kind: str, edition: int) -> tuple[str, list[str]]:
    """A code as it is shown, and its parts: the groups of `shape`, "" for one that is not there.

    A group is what stands between two hyphens; the last is the check digits, which are left out.
    A letter is taken for the digit it looks like, but not in the group `tags`. `kind` is what the
    code is of, with its article.

    Raises:
        BadCode: the sentence says what is wrong, or that another edition made the code.
    """
    shown = " ".join(text[:40].split())
    start = shape.pattern.partition("-")[0]
    packed = re.sub(r"\s|[\u2010-\u2015\u2212]", "-", text[:LONGEST].strip()).upper()
    match = shape.fullmatch(packed)
    if not match or len(text) > LONGEST:
        raise BadCode(
            f"“{shown}” is not the code of {kind}. It begins with {start}; copy it whole."
        )
    tags = shape.groupindex.get("tags")
    *parts, check = (
        part if at == tags else part.translate(_DIGITS)
        for at, part in enumerate(match.groups(default=""), 1)
    )
    if not coded(start, *filter(None, parts)).endswith(f"-{check}"):
        raise BadCode(f"“{shown}” has a wrong character somewhere. Compare it with the original.")
    if int(parts[shape.groupindex["edition"] - 1]) != edition:
        raise BadCode(
            f"“{shown}” was made by another edition of the workbook, whose questions differ. "
            f"Use the same edition, or make a new {kind.partition(' ')[2]}."
        )
    return shown, parts

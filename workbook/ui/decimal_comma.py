"""A decimal comma, as spreadsheets of many countries write it, told from a comma of thousands."""

import re

__all__ = ["may_be_thousands", "with_point"]

_DECIMAL = re.compile(
    r"([+-]?(?:\d+(?=,(?:\d{1,2}|\d{4,})(?!\d))|0(?=,\d))),(\d+)(?![\d.,])(.*)", re.DOTALL
)
_PARTED = re.compile(
    r"([+-]?)([1-9]\d{0,2}(?:([ .\u00a0\u2009\u202f'])\d{3})(?:\3\d{3})*),(\d{1,2}|\d{4,})(?![\d.,])(.*)",
    re.DOTALL,
)
_EITHER = re.compile(r"[+-]?[1-9]\d{0,2},\d{3}(?![\d.,])")


def may_be_thousands(text: str) -> bool:
    """Whether the comma may be either, so that nobody can tell.

    >>> may_be_thousands("1,234 gpm"), may_be_thousands("12,5"), may_be_thousands("0,125")
    (True, False, False)
    """
    return bool(_EITHER.match(text.strip()))


def with_point(text: str) -> str:
    """The text with a point for the comma, where that can be nothing but a decimal one.

    >>> with_point("12,5 hp"), with_point("1,234"), with_point("1,234,567"), with_point("12.5")
    ('12.5 hp', '1,234', '1,234,567', '12.5')
    >>> with_point("1 234,5"), with_point("1.234,5"), with_point("1 234")
    ('1234.5', '1234.5', '1 234')
    """
    if parted := _PARTED.fullmatch(text.strip()):
        sign, whole, mark, part, rest = parted.groups()
        return f"{sign}{whole.replace(mark, '')}.{part}{rest}"
    match = _DECIMAL.fullmatch(text.strip())
    return "{}.{}{}".format(*match.groups()) if match else text

"""A number that goes by the name of a quantity: 9.03 mhp, .85 pf, TDH = 62 ft; or hp 12.5.

The name of another quantity of the same kind is read and told; of another kind, it is refused.
A unit inside the name counts: 9.03 mhp is in hp, 62 feet of water in ft, whatever is asked.
"""

import re
from functools import cache

from solver.errors import Unreadable
from solver.vocabulary import quantity_called

from .other_forms import other_form, without_hedge
from .quantity import Quantity
from .refusals import another_quantity, one, quoted
from .typed import NUMBER, Typed
from .unit import Unit, find_unit, unit

__all__ = ["by_name", "told_of_name"]

_EFFICIENCY = ("eff", "efficiency", "efficient")
_NAME_FIRST = re.compile(
    r"(?:the )?([a-z][^0-9=:]*?) ?(?:=|:|\b(?:is|of|was)\b)? ?"
    r"(?=(?:about |around |approx(?:imately|\.)? |roughly )?[-+$.~≈0-9½])(.+)",
    re.IGNORECASE,
)


def by_name(plain: str, wanted: Unit, quantity: Quantity | None) -> Typed | None:
    """The name of a quantity before or behind the number, or a unit before it."""
    if match := _NAME_FIRST.fullmatch(plain):
        return _with_name(match[1], match[2], wanted, quantity, first=True)
    match = NUMBER.match(plain)
    if not match:
        return None
    ends = [match.end(), *(at.end() for at in re.finditer(" (?:of )?", plain))]
    for end in ends:
        name = plain[end:].removesuffix(".")
        head = plain[:end].strip().removesuffix(" of")
        if end >= match.end() and (found := _with_name(name, head, wanted, quantity)):
            return found
    return None


def _with_name(
    name: str, number: str, wanted: Unit, quantity: Quantity | None, first: bool = False
) -> Typed | None:
    named = quantity_called(name)
    said = find_unit(name) if first else None
    efficiency = wanted.name == "%" and (quantity is None or quantity.is_efficiency)
    general = efficiency and name.casefold() in _EFFICIENCY
    typed = other_form(without_hedge(number), wanted) if named or said or general else None
    if typed is None or (said and typed.unit):
        return None
    if said:
        return typed._replace(unit=said, note=told_of_name(name, said, wanted, quantity))
    if general:
        return typed
    return _of_quantity(typed, name, named, wanted, quantity)


def _of_quantity(
    typed: Typed, name: str, named: Quantity, wanted: Unit, quantity: Quantity | None
) -> Typed | None:
    """The number of a quantity called by its name, which may not be the one that is asked."""
    other = quantity is not None and named is not quantity
    if unit(named.us).kind != wanted.kind or (other and wanted.kind == "ratio"):
        raise Unreadable(another_quantity(name, named, wanted, quantity))
    if typed.unit is None:
        typed = typed._replace(unit=_unit_said(name.casefold(), wanted.kind))
    if typed.unit is None and wanted.name not in (named.us, named.si):
        raise Unreadable(f"{quoted(name)} doesn't say its unit. Type {one(wanted)}.")
    return typed._replace(note=told_of_name(name, None, wanted, quantity))


@cache
def _unit_said(name: str, kind: str) -> Unit | None:
    """The unit inside a name: feet of water, mhp, million gallons pumped."""
    words = name.split()
    spans = [(i, j) for i in range(len(words)) for j in range(i + 1, len(words) + 1)]
    for i, j in sorted(spans, key=lambda span: span[0] - span[1]):
        text = " ".join(words[i:j])
        found = find_unit(text) if len(text) > 1 else None
        if found and found.kind == kind:
            return found
    return unit("hp") if kind == "power" and name.endswith("hp") else None


def told_of_name(name: str, said: Unit | None, wanted: Unit, quantity: Quantity | None) -> str:
    """What is told when the number was called by the name of another quantity than is asked."""
    if quantity is None or (said is not None and said.name != "hp"):
        return ""
    named = quantity_called(name)
    if named is None or named is quantity:
        return ""
    system = "us" if wanted.name == quantity.us else "si"
    return f"You wrote {quoted(name)}, but this asks for {quantity.spoken(system)}"

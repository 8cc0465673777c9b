"""Every unit by its kind: its size, and how else it may be typed."""

from collections import Counter
from functools import cache
from html import escape

from solver.units.show import with_unit
from solver.units.unit import Unit, convert, units
from solver.vocabulary import QUANTITIES

from .entry import RAISED, Entry, Part, folded, long, plain

__all__ = ["UNITS", "shown"]

BASES = ("m", "kg", "s", "A", "K", "$")
SEVEN = 7  # figures of a scale, as NIST SP 811 gives its factors


def shown(one: Unit) -> str:
    """A unit as it is written."""
    return with_unit("", one.name).strip() or "a plain number"


@cache
def _usual(system: str) -> dict[str, Unit]:
    """The unit of each kind that most quantities are in."""
    counted = Counter(q.unit(system) for q in QUANTITIES.values())
    every = units()
    return {every[name].kind: every[name] for name, _ in reversed(counted.most_common())}


def _kinds(system: str) -> list[Entry]:
    kinds: dict[str, list[Unit]] = {}
    for one in units().values():
        kinds.setdefault(one.kind, []).append(one)
    return [_kind(kind, of_kind, system) for kind, of_kind in kinds.items()]


def _kind(kind: str, of_kind: list[Unit], system: str) -> Entry:
    head = f"{kind[:1].upper()}{kind[1:]}: {', '.join(map(shown, of_kind))}"
    lines = [(shown(one), _said(one, of_kind, system)) for one in of_kind]
    items = "".join(f"<li><b>{escape(name)}</b> {escape(said)}</li>" for name, said in lines)
    body = f'<ul class="w2w-entries">{items}</ul>'
    words = plain(" ".join((head, *(f"{name} {said}" for name, said in lines))))
    return Entry(words, lambda opened: folded(escape(head), body, opened))


def _said(one: Unit, of_kind: list[Unit], system: str) -> str:
    """Its size in the usual unit and in base units, and its other spellings."""
    usual = _usual(system).get(one.kind, one)
    also = [text for text in one.spellings if text != shown(one)]
    typed = f"Also typed: {', '.join(also)}." if also else ""
    if one.offset or usual.offset:
        kelvin = f"times {long(one.scale, SEVEN)}, plus {long(one.offset, SEVEN)}, is K."
        return f"{kelvin} {typed}".strip()
    sizes = [] if usual is one else [with_unit(long(convert(1, one, usual), SEVEN), usual.name)]
    base = _base(one, of_kind)
    if base not in ("", shown(one), shown(usual)):
        sizes += [f"{long(one.scale, SEVEN)} {base}"]
    return f"{'= ' * bool(sizes)}{' = '.join(sizes)}{'.' * bool(sizes)} {typed}".strip()


def _base(one: Unit, of_kind: list[Unit]) -> str:
    """The unit of its kind that is one in base units, such as Pa; or its dimension in those."""
    for other in of_kind:
        if (other.scale, other.offset) == (1.0, 0.0):
            return shown(other)
    powers = zip(BASES, one.dimension, strict=True)
    return "·".join(
        base + (str(power).translate(RAISED) if power != 1 else "")
        for base, power in powers
        if power
    )


UNITS = Part("Units", "kind", _kinds, "Capitals, periods and hyphens don't matter.")

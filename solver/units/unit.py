"""Units: how the trade spells them, what kind each is, and the scale that converts it.

The rows are written by hand in units.txt. Their scales are compiled from pint into
unit_scales.txt beside it (see in_pint.py), so that converting needs no import of pint.
"""

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from types import MappingProxyType

from solver.errors import BadDefinition, SolverError

__all__ = [
    "DIMENSIONS",
    "SYSTEMS",
    "Powers",
    "Unit",
    "convert",
    "definitions",
    "factors",
    "find_unit",
    "measure",
    "mismatch",
    "unit",
    "units",
]

SYSTEMS = ("us", "si")  # of units: the customary ones of the United States, and metric
Powers = Mapping[str, float]  # units by their canonical names, each with its power

DIMENSIONS = ("length", "mass", "time", "current", "temperature", "money")
_TABLES = Path(__file__).parent
_LONGEST = 40  # characters; no spelling is longer

# Another case of these letters would be another unit, a thousand or a billion times the size,
# or (C) could be cents: they are taken only as the table spells them.
_CASE_MATTERS = {
    *("m", "mm", "ml", "ml/day", "mg", "mw", "mwh", "ma", "mv", "mpa", "mj"),
    *("mohm", "mohms", "mω", "m-ohm", "m-ohms", "m-ω", "k", "c"),
}
_SAID = {
    "": "a plain number",
    "%": "a percentage",
    "choice": "the number of a choice",
    "$": "an amount of money",
    "cents": "an amount of money",
}


_STROKE = re.compile(r"\s*/\s*|(?<=\S)\s+(?:(?i:per)|an?|each|every)\s+(?=\S)")


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: a value in it times `scale`, plus `offset`, is the value in SI base units."""

    name: str
    kind: str
    latex: str
    pint: str
    spellings: tuple[str, ...]
    scale: float = 1.0
    offset: float = 0.0
    dimension: tuple[int, ...] = (0,) * len(DIMENSIONS)

    @property
    def described(self) -> str:
        """Its kind as a sentence says it: "a flow", "an energy"."""
        article = "an" if self.kind[0] in "aeiou" else "a"
        return _SAID.get(self.name, f"{article} {self.kind}")


def rows(file: str) -> list[list[str]]:
    """The rows of a table whose columns stand between bars; lines that begin with # are notes."""
    lines = (_TABLES / file).read_text(encoding="utf-8").splitlines()
    return [[cell.strip() for cell in line.split("|")] for line in lines if line[:1] != "#"]


def definitions() -> list[Unit]:
    """Every unit as written by hand, not scaled yet."""
    return [
        Unit(name, kind, latex or rf"\text{{{name}}}" * bool(name), pint, tuple(said.split(", ")))
        for name, kind, latex, pint, said in rows("units.txt")
    ]


@cache
def units() -> Mapping[str, Unit]:
    """Every unit by its canonical name."""
    scales = {name: numbers for name, *numbers in rows("unit_scales.txt")}
    found = {}
    for plain in definitions():
        if plain.name not in scales:  # a new row: in_pint imports this before it has a scale
            continue
        scale, offset, exponents = scales[plain.name]
        dimension = tuple(int(power) for power in exponents.split())
        fields = (plain.name, plain.kind, plain.latex, plain.pint, plain.spellings)
        found[plain.name] = Unit(*fields, float(scale), float(offset), dimension)
    return MappingProxyType(found)


def unit(name: str) -> Unit:
    """The unit with this canonical name.

    Raises:
        BadDefinition: no unit has this name.

    >>> unit("gpm").described
    'a flow'
    """
    if name in units():
        return units()[name]
    near = find_unit(name)
    hint = f'write "{near.name}"' if near else "see solver/units/units.txt for the names"
    raise BadDefinition(f'No unit is named "{name}"; {hint}.')


def _key(text: str) -> str:
    """One form for all ways to write a spelling: m^3 per h and m³/h are both m3/h."""
    plain = text.translate({0x2019: "'", 0x2032: "'", 0x201D: '"', 0x2033: '"', 0x5E: None})
    plain = unicodedata.normalize("NFKC", plain).strip()
    plain = re.sub(r"(?<=[A-Za-z])\.", "", plain)
    plain = _STROKE.sub("/", plain)
    return re.sub(r"[\s·⋅‐-]+", "-", plain)


@cache
def _spellings() -> tuple[dict[str, Unit], dict[str, Unit]]:
    """The unit of each spelling, and of each spelling in lower case where that is clear."""
    exact: dict[str, Unit] = {}
    folded: dict[str, Unit] = {}
    clashes = _CASE_MATTERS.copy()
    for one in units().values():
        for key in map(_key, one.spellings):
            if exact.setdefault(key, one) is not one:
                raise BadDefinition(f'"{key}" spells both {exact[key].name} and {one.name}.')
            if folded.setdefault(key.casefold(), one) is not one:
                clashes.add(key.casefold())
    return exact, {key: one for key, one in folded.items() if key not in clashes}


@lru_cache(maxsize=1024)  # most readers type the same few units
def find_unit(text: str) -> Unit | None:
    """The unit a reader means by this spelling, or None when it is not known for certain.

    >>> find_unit("Gallons per minute").name, find_unit("m³/h").name, find_unit("mg")
    ('gpm', 'm3/h', None)
    """
    if len(text) > _LONGEST:
        return None
    exact, folded = _spellings()
    key = _key(text)
    found = exact.get(key) or folded.get(key.casefold())
    if found or "/" not in key:
        return found
    parts = [exact.get(part) or folded.get(part.casefold()) for part in key.split("/")]
    names = [part.name for part in parts if part]
    return exact.get(_key("/".join(names))) if len(names) == len(parts) else None


@lru_cache(maxsize=1024)
def factors(expression: str) -> Powers:
    """The units in a product of units, each with its power, for the unit of a constant.

    Spaces part the factors, and all that follows a lone stroke divides: "gpm ft / hp",
    "L/s m / kW". "" and "1" are pure numbers. A name that has a space in it stands alone.

    Raises:
        BadDefinition: a factor is not the canonical name of a unit.

    >>> dict(factors("gpm ft / hp"))
    {'gpm': 1, 'ft': 1, 'hp': -1}
    """
    if expression in units():
        return MappingProxyType({expression: 1.0} if expression else {})
    above, _, below = f" {expression} ".partition(" / ")
    found: dict[str, float] = {}
    for power, side in ((1, above), (-1, below)):
        for name in side.split():
            if name != "1":
                found[unit(name).name] = found.get(name, 0) + power
    return MappingProxyType(found)


def measure(powers: Powers) -> tuple[tuple[float, ...], float]:
    """The dimension and the SI scale of units with their powers.

    A temperature counts as a difference: its offset is left out.

    Raises:
        BadDefinition: a name is not that of a unit.

    >>> dimension, scale = measure(factors("kW / hp"))
    >>> round(scale, 4)
    1.341
    """
    dimension = [0.0] * len(DIMENSIONS)
    scale = 1.0
    for name, power in powers.items():
        one = unit(name)
        scale *= one.scale**power
        dimension = [d + p * power for d, p in zip(dimension, one.dimension, strict=True)]
    return tuple(dimension), scale


def mismatch(got: Unit, asked: Unit) -> str:
    """The sentence for a unit of the wrong kind."""
    place = f" in {asked.name}" if asked.name not in ("", "%", "choice") else ""
    return f"{got.name} is {got.described}; this asks for {asked.described}{place}."


def convert(value: float, from_unit: Unit | str, to_unit: Unit | str) -> float:
    """A value in one unit, in another of the same kind.

    Raises:
        SolverError: the two units are of different kinds.

    >>> convert(12_500, "W", "kW"), round(convert(1, "hp", "kW"), 4)
    (12.5, 0.7457)
    """
    start = from_unit if isinstance(from_unit, Unit) else unit(from_unit)
    end = to_unit if isinstance(to_unit, Unit) else unit(to_unit)
    if start.kind != end.kind:
        raise SolverError(mismatch(start, end))
    if start is end:
        return value
    if start.offset or end.offset:
        return (value * start.scale + (start.offset - end.offset)) / end.scale
    # Whichever ratio is above one is used, so that whole ratios stay whole: 35 % is 0.35.
    if start.scale < end.scale:
        return value / (end.scale / start.scale)
    return value * (start.scale / end.scale)

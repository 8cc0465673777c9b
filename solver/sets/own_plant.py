"""A trainer's own plant: its pumps, its people, and the values its problems keep to.

The plant changes the words of a problem, and by its ranges which problems are taken; never the
numbers of a problem. So the code of each problem stays valid.
"""

import json
from collections.abc import Mapping
from difflib import get_close_matches
from hashlib import sha256
from typing import NamedTuple
from unicodedata import normalize

from solver.engine.family import Family
from solver.errors import SolverError
from solver.scenario import Place, kind_of, kinds_of
from solver.units.show import figures, with_unit
from solver.vocabulary import QUANTITIES, Quantity, quantity_named

__all__ = ["Plant", "Pump", "Range", "between", "plant_of", "set_at", "table_of"]

KINDS = ("lift", "booster", "plant")
LONGEST_NAME = 60
LONGEST_SHOWN = 40
MOST = 50  # pumps, and people
MOST_VALUE = 1e12
KEYS = ("name", "units", "pumps", "people")
PUMP_KEYS = ("name", "station", "kind", "ranges")


class Range(NamedTuple):
    """Lowest and highest value of a quantity, in the plant's units."""

    quantity: str
    low: float
    high: float


class Pump(NamedTuple):
    """A pump as sentences say it, and the ranges its problems keep to.

    `kind` is "lift" (of a lift station), "booster" (which has no wet well) or "plant".
    """

    name: str
    station: str
    kind: str = "plant"
    ranges: tuple[Range, ...] = ()


class Plant(NamedTuple):
    """A plant. `units` are those of the ranges, "us" or "si"; no people means the invented ones."""

    name: str
    places: tuple[Pump, ...]
    people: tuple[str, ...] = ()
    units: str = "us"

    @property
    def fingerprint(self) -> str:
        """P and six digits, other ones for another plant but for one chance in a million."""
        digest = sha256(json.dumps(self).encode()).hexdigest()
        return f"P{int(digest, 16) % 10**6:06}"


def set_at(family: Family, level: int, plant: Plant) -> tuple[Pump, ...]:
    """The pumps that the problems of a level can be about: a booster station has no wet well.

    Where the plant has none of the level's own kinds, those that the family can be about.
    """

    def of_kind(places: tuple[Place, ...]) -> tuple[Pump, ...]:
        return tuple(pump for pump in plant.places if pump.kind in kinds_of(places))

    return of_kind(family.scene_at(level).places) or of_kind(family.places)


def plant_of(table: Mapping[str, object]) -> Plant:
    """The plant of a table, as a set's file has it.

    >>> plant = plant_of({
    ...     "name": "Marlow Bend",
    ...     "pumps": [{"name": "Pump 2", "station": "the Quarry Road lift station",
    ...                "ranges": {"flow": [300, 900]}}],
    ... })
    >>> plant.places[0].kind, plant.places[0].ranges
    ('lift', (Range(quantity='flow', low=300.0, high=900.0),))

    Raises:
        SolverError: the sentence names the key, what was got and what to write.
    """
    table = _table("plant", table, KEYS)
    units = table.get("units", "us")
    if not (isinstance(units, str) and units in ("us", "si")):
        raise SolverError(f"In plant, write units as “us” or “si”; you wrote {_shown(units)}.")
    pumps = _listed("plant.pumps", table.get("pumps"))
    if not pumps:
        raise SolverError("In plant, write at least one pump, with its name and its station.")
    people = _listed("plant.people", table.get("people", []))
    return Plant(
        _text("the name of the plant", table.get("name")),
        tuple(_pump(f"pump {at}", pump, units) for at, pump in enumerate(pumps, 1)),
        tuple(_text("each of plant.people", one) for one in people),
        units,
    )


def table_of(plant: Plant) -> dict[str, object]:
    """The table that gives this plant again, of texts, numbers, lists and dicts."""
    pumps = [
        {**pump._asdict(), "ranges": {name: [low, high] for name, low, high in pump.ranges}}
        for pump in plant.places
    ]
    people = list(plant.people)
    return {"name": plant.name, "units": plant.units, "people": people, "pumps": pumps}


def _pump(which: str, table: object, units: str) -> Pump:
    keys = _table(which, table, PUMP_KEYS)
    name = _text(f"the name of {which}", keys.get("name"))
    station = _text(f"the station of {which}", keys.get("station"))
    kind = keys.get("kind", kind_of(Place(name, station)))
    if not (isinstance(kind, str) and kind in KINDS):
        raise SolverError(
            f"Write the kind of {which} as “lift”, “booster” or “plant”; you wrote {_shown(kind)}."
        )
    ranges = keys.get("ranges", {})
    if not isinstance(ranges, Mapping):
        raise SolverError(
            f"Write the ranges of {which} like flow = [300, 900]; you wrote {_shown(ranges)}."
        )
    found = (_range(which, name, ends, units) for name, ends in ranges.items())
    return Pump(name, station, kind, tuple(sorted(found)))


def _range(which: str, name: object, ends: object, units: str) -> Range:
    if not (isinstance(name, str) and name in QUANTITIES):
        near = get_close_matches(f"{name}", QUANTITIES, n=1)
        raise SolverError(
            f"The ranges of {which} have {_shown(name)}, which isn't a quantity. "
            f"Write one such as {near[0] if near else 'flow'}."
        )
    here = f"the range {name} of {which}"
    if not (isinstance(ends, list | tuple) and len(ends) == 2 and all(map(_is_number, ends))):
        raise SolverError(
            f"Write {here} as lowest and highest, like [300, 900]; you wrote {_shown(ends)}."
        )
    low, high = map(float, ends)
    if low > high:
        raise SolverError(f"Write {here} with the lowest first; you wrote {_shown(ends)}.")
    quantity = quantity_named(name)
    least, most = quantity.usual(units)
    if low > most or high < least:
        raise SolverError(
            f"You wrote {here} as {_shown(ends)}. Write one within what problems have, "
            f"{between(quantity, least, most, units)}."
        )
    return Range(name, low, high)


def between(quantity: Quantity, low: float, high: float, units: str) -> str:
    """Two values of a quantity as a sentence says them."""
    unit = quantity.unit(units)
    return f"{figures(low, unit)} to {with_unit(figures(high, unit), unit)}"


def _is_number(value: object) -> bool:
    if isinstance(value, bool) or not isinstance(value, int | float):
        return False
    return abs(value) <= MOST_VALUE


def _table(key: str, table: object, known: tuple[str, ...]) -> Mapping[str, object]:
    """A table that has no keys but those known."""
    if not isinstance(table, Mapping):
        raise SolverError(f"Write {key} as a table with {known[0]}; you wrote {_shown(table)}.")
    if unknown := [name for name in table if name not in known]:
        raise SolverError(f"{key} has {_shown(unknown[0])}. It may have: {', '.join(known)}.")
    return table


def _listed(key: str, value: object) -> list[object]:
    if not isinstance(value, list | tuple) or len(value) > MOST:
        raise SolverError(f"Write {key} as a list of up to {MOST}; you wrote {_shown(value)}.")
    return list(value)


def _text(key: str, value: object) -> str:
    text = normalize("NFC", " ".join(value.split())) if isinstance(value, str) else ""
    if not (1 <= len(text) <= LONGEST_NAME and text.isprintable()):
        raise SolverError(
            f"Write {key} as a text of 1 to {LONGEST_NAME} letters; you wrote {_shown(value)}."
        )
    return text


def _shown(value: object) -> str:
    if value is None:
        return "nothing"
    text = f"{value}"
    return f"“{text}”" if len(text) <= LONGEST_SHOWN and text.isprintable() else "something else"

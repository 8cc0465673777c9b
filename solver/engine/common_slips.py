"""Common slips that change more than one link of a chain, or none: named where they are apart.

Stopped at any step; the right number in another unit; one reading taken to be in another unit;
several slips together (slips_together.py). Unlike the mistakes of one link (changes.py), no draw is
thrown away for them: one that comes near the right answer is left unnamed there.

Other units are any of the same kind in the table of units; feet with psi and meters with
kilopascals, for a head is both; minutes a day with hours a day. A length that no water presses on
(`NO_HEAD`) is never told to be psi.
"""

import re
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from itertools import chain
from types import MappingProxyType
from typing import NamedTuple

from solver.algebra.tree import names
from solver.units.quantity import Quantity
from solver.units.show import unit_spoken
from solver.units.unit import convert, unit, units
from solver.vocabulary import quantity_named, spoken

from .changes import Change, mistaken_changes, stopped_at
from .plan import Plan, worked_on
from .slips_together import Answer, CommonSlip, every_one_alike, two_together, worked_again

__all__ = ["common_slips"]

FEET_PER_PSI, METERS_PER_KPA = 2.31, 0.102
NEVER = (
    *("mW", "µA", "mV", "J", "kJ", "pu", "m3/s", "N/s", "ft-lb/s", "ft-lb/min", "hp-h", "in2"),
    *("mil", "oz", "g", "in/s", "mm/s", "mL", "mL/min", "L/h", "L/day"),
)
# What is no unit of the same kind, and is mixed up with it all the same: (from, to) and the factor.
ALSO = {
    ("ft", "psi"): 1 / FEET_PER_PSI,
    ("psi", "ft"): FEET_PER_PSI,
    ("m", "kPa"): 1 / METERS_PER_KPA,
    ("kPa", "m"): METERS_PER_KPA,
    ("h/day", "min"): 60,
    ("h/day", "s"): 3600,
    ("starts/h", "starts a day"): 24,
    ("starts/h", "starts a minute"): 1 / 60,
}
# Feet and meters that are no head. A length that was in 0.1.0 keeps what its problems named then.
NO_HEAD = frozenset(
    (
        *(
            "run_length",
            "lag_depth",
            "delay_drop",
            "crest_length",
            "crest_height",
            "contracted_crest",
        ),
        *("weir_head", "flume_head", "foot_flume_head", "upstream_depth", "downstream_head"),
    )
)
# What a given reading is taken for: the units that stand beside its own on gauges and nameplates.
BESIDE = {
    "hp": ("kW",), "kW": ("hp", "W"), "W": ("kW", "hp"), "kVA": ("VA",),
    "ft": ("psi", "in", "m"), "in": ("ft", "cm", "mm"), "m": ("kPa", "ft", "cm", "mm"),
    "mm": ("cm", "in"), "cm": ("mm", "in", "m"),
    "psi": ("ft", "kPa", "bar"), "kPa": ("m", "psi", "bar"), "bar": ("psi", "kPa"), "inHg": ("psi",),
    "gpm": ("L/s", "gph", "m3/h", "cfs"), "L/s": ("gpm", "m3/h", "L/min"), "MGD": ("gpm", "ML/day"),
    "gph": ("gpm",), "gpd": ("gpm",), "cfs": ("gpm",), "m3/h": ("L/s", "m3/day"),
    "m3/day": ("m3/h", "L/s"), "m3/s": ("L/s",),
    "s": ("min",), "min": ("s", "h"), "h": ("min", "day"), "day": ("h", "week"),
    "h/day": ("h/week", "h/month", "h/year"), "h/year": ("h/day", "h/month"),
    "°C": ("°F",), "°F": ("°C",), "°C rise": ("°F rise",), "°F rise": ("°C rise",),
    "V": ("kV",), "kV": ("V",), "A": ("mA",), "µA": ("mA", "A"),
    "ohm": ("milliohm",), "megohm": ("kilohm", "gigohm"),
    "kWh": ("MWh", "hp-h"), "kWh/year": ("kWh/month", "kWh/day"),
    "$/kWh": ("cents/kWh",), "$": ("cents",), "gal": ("ft3", "L"), "ft3": ("gal",),
    "m3": ("L", "gal"), "L": ("gal", "m3"), "lb": ("kg",), "kg": ("lb",),
    "kWh/MG": ("kWh/1000 gal",), "kWh/1000 m3": ("kWh/m3",), "ft/s": ("m/s",), "m/s": ("ft/s",),
}  # fmt: skip


@lru_cache(maxsize=1024)
def common_slips(plan: Plan) -> Mapping[str, CommonSlip]:
    """Every common slip of a chain by its id, likelier first; those of one link (changes.py) lead."""
    slips = chain(
        (_of_one_link(plan, change) for change in mistaken_changes(plan)),
        _stops(plan),
        every_one_alike(plan),
        _other_units(plan),
        _given_in_another(plan),
        two_together(plan),
    )
    found: dict[str, CommonSlip] = {}
    for slip in slips:
        found.setdefault(slip.id, slip)
    return MappingProxyType(found)


def _of_one_link(plan: Plan, change: Change) -> CommonSlip:
    answer = worked_again(plan, {change.at: change.compute})
    of = plan.links[change.at].target
    return CommonSlip(change.id, answer, change.did, change.why, change.expr, of, change.form)


def _stops(plan: Plan) -> Iterator[CommonSlip]:
    """Stopped at any step but the last, the latest first."""
    for at in reversed(range(len(plan.links) - 1)):
        if not plan.only_renames(at):
            yield _of_one_link(plan, stopped_at(plan, at))


def _other_units(plan: Plan) -> Iterator[CommonSlip]:
    """The right number in another unit or at another scale."""
    quantity = quantity_named(plan.asked)
    for other in _asked_in(quantity, plan.units):
        why = f"The question asks for {other.asked}."
        yield CommonSlip(
            f"{plan.asked}.in_another_unit.{other.key}",
            _converted(plan.asked, other.convert),
            f"{{this}} is right {other.said}.",
            why,
        )


def _converted(name: str, to: Callable[[float], float]) -> Answer:
    return lambda known: to(known[name])


def _given_in_another(plan: Plan) -> Iterator[CommonSlip]:
    """One given quantity used as if it was in another unit, and so converted once more."""
    used = [name for link in plan.links for name in names(link.expr) if name in plan.given]
    for name in dict.fromkeys(used):
        target = next(link.target for link in plan.links if name in names(link.expr))
        for other in _given_in(quantity_named(name), plan.units):
            did = spoken(f"You read the {{{name}:name}} as {other.name}.", plan.units)
            why = f"The problem gives it in {other.asked}, so you don't need that conversion."
            answer = _from_given(plan, name, other.convert)
            yield CommonSlip(f"{target}.{name}_taken_for.{other.key}", answer, did, why)
            did = spoken(f"You changed the {{{name}:name}} to {other.name}.", plan.units)
            why = f"The formula takes {other.asked}."
            answer = _from_given(plan, name, other.back)
            yield CommonSlip(f"{target}.{name}_changed_to.{other.key}", answer, did, why)


def _from_given(plan: Plan, name: str, to: Callable[[float], float]) -> Answer:
    """The chain with another number for one given quantity."""
    first = next(at for at, link in enumerate(plan.links) if name in names(link.expr))
    functions = plan.functions[first:]
    return lambda known: worked_on({**known, name: to(known[name])}, functions)[plan.asked]


class _OtherUnit(NamedTuple):
    """A unit in an id, by name, and after "right"; how the quantity's own unit is said.

    `convert` makes the wrong number of the right one; `back` is the other way.
    """

    key: str
    name: str
    said: str
    asked: str
    convert: Callable[[float], float]
    back: Callable[[float], float] = float


def _asked_in(quantity: Quantity, system: str) -> Iterator[_OtherUnit]:
    """The units that an answer may be right in, where another is asked."""
    own = quantity.unit(system)
    if own == "%":
        yield _OtherUnit(
            "decimal", "a decimal", "as a decimal", "percent", lambda value: value / 100
        )
        return
    if not own:
        if quantity.usual(system)[1] <= 2:
            yield _OtherUnit(
                "percent", "percent", "in percent", "a decimal", lambda value: value * 100
            )
        return
    for name, to in _others(own):
        if not _can_be(quantity, own, name):
            continue
        said = unit_spoken(name)
        yield _OtherUnit(_key(name), said, f"in {said}", unit_spoken(own), to)


def _others(own: str) -> Iterator[tuple[str, Callable[[float], float]]]:
    kind = unit(own).kind
    for name, other in units().items():
        if other.kind == kind and name not in (own, *NEVER):
            yield name, _to(own, name)
    for start, end in ALSO:
        if start == own:
            yield end, _to(own, end)


def _given_in(quantity: Quantity, system: str) -> Iterator[_OtherUnit]:
    """The units that a given reading may be taken for; what it then is in its own unit."""
    own = quantity.unit(system)
    for name in BESIDE.get(own, ()):
        if not _can_be(quantity, own, name):
            continue
        said = unit_spoken(name)
        yield _OtherUnit(
            _key(name), said, f"in {said}", unit_spoken(own), _to(name, own), _to(own, name)
        )


def _can_be(quantity: Quantity, own: str, other: str) -> bool:
    """Whether somebody may take it for this unit: a length that is no head is never a pressure."""
    return (own, other) not in ALSO or quantity.name not in NO_HEAD


def _to(start: str, end: str) -> Callable[[float], float]:
    if factor := ALSO.get((start, end)):
        return lambda value: value * factor
    return lambda value: convert(value, start, end)


def _key(name: str) -> str:
    """A unit in an id: letters, figures and underscores."""
    return re.sub(r"\W+", "_", name.replace("$", "dollars").replace("°", "degrees_")).strip("_")

"""What one pump's day can hold: every field once, in the order of the form and of the template.

A field of numbers is a quantity of the vocabulary and has its name; the others are texts. Any
may be missing.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from types import MappingProxyType

from solver.vocabulary import Quantity, quantity_named

__all__ = ["FIELDS", "GROUPS", "SAME", "Field", "field_named", "in_words"]


@dataclass(frozen=True, slots=True)
class Field:
    """One thing to write down. `also` are other headings that people give it.

    `choices` are the words a text may be; a text without them may be anything. Each choice comes
    with other ways to write it.
    """

    name: str
    group: str
    label: str
    also: tuple[str, ...] = ()
    choices: tuple[tuple[str, ...], ...] = ()
    is_text: bool = False

    @property
    def quantity(self) -> Quantity | None:
        """The quantity of the vocabulary, or None for a text."""
        return None if self.is_text else quantity_named(self.name)

    def unit(self, units: str) -> str:
        """The unit a bare number is in, in the system "us" or "si"; "" for a text."""
        return "" if self.is_text else quantity_named(self.name).unit(units)

    @property
    def words(self) -> tuple[str, ...]:
        """The choices as they are kept."""
        return tuple(choice[0] for choice in self.choices)


Choices = tuple[tuple[str, ...], ...]
Row = tuple[str, str, tuple[str, ...], Choices, bool]  # a field without its group


def text(name: str, label: str, *also: str, choices: Choices = ()) -> Row:
    """A field of words, under this heading and `also` these."""
    return name, label, also, choices, True


def number(name: str, label: str, *also: str) -> Row:
    """A field of numbers, which is the quantity of this name."""
    return name, label, also, (), False


def on_each(legs: str, name: str, label: str, *also: str) -> tuple[Row, ...]:
    """The same reading on each leg; {} stands for it: A, also L1; AB, also L1-L2."""
    return tuple(
        number(
            name.format(leg.lower()),
            label.format(" to ".join(leg)),
            *(one.format(said) for one in also for said in (leg, _numbered(leg))),
        )
        for leg in legs.split()
    )


def _numbered(leg: str) -> str:
    return "-".join(f"L{'ABC'.find(x) + 1 or x}" for x in leg)


def rolled(turn: int, when: str) -> tuple[Row, ...]:
    """Amps on each leg after the leads were rolled."""
    again = (f"{before}, {after}" for before in LEG_AMPS for after in (when, f"connection {turn}"))
    return on_each("A B C", f"amps_{{}}_{turn}", f"amps on leg {{}}, {when}", *again)


LEG_AMPS = ("amps {}", "leg {} amps", "leg {}", "phase {} amps", "current {}", "I{}", "{} amps")
ONE, THREE = ("1", "one", "single", "single phase", "1ph"), ("3", "three", "three phase", "3ph")
KINDS = (
    ("random-wound", "random", "random wound", "mush wound"),
    ("form-wound", "form", "form wound", "formed coils"),
    ("before 1970", "older", "old", "before about 1970", "pre 1970"),
)

_ROWS = {
    "pump": (
        text("station", "station", "lift station", "site", "location"),
        text("pump", "pump", "pump number", "pump no", "pump name", "equipment", "tag"),
        text("date", "date", "day", "date read", "reading date"),
        text("person", "read by", "who", "person", "operator", "technician", "initials"),
        text("notes", "notes", "note", "remarks", "comments", "comment"),
    ),
    "nameplate": (
        number("motor_size", "motor size", "nameplate power", "motor hp", "motor kW", "rated power", "hp"),
        number("rated_volts", "nameplate volts", "rated volts", "nameplate voltage", "rated V"),
        number("full_load_amps", "full-load amps", "FLA", "nameplate amps", "rated amps"),
        number("service_factor", "service factor", "SF"),
        number("rated_speed", "nameplate speed", "rated speed", "rpm", "speed"),
        number("poles", "poles", "number of poles"),
        number("frequency", "frequency", "line frequency", "hertz", "Hz"),
        text("phase", "phases", "phase", "number of phases", choices=(THREE, ONE)),
        number("motor_efficiency", "motor efficiency", "nameplate efficiency", "motor eff"),
        text(
            "insulation_class", "insulation class", "class", "ins class",
            choices=tuple((letter, f"class {letter}") for letter in "ABFH"),
        ),
        text("winding_kind", "winding kind", "winding", "winding type", choices=KINDS),
    ),
    "insulation": (
        number("test_volts", "test volts", "test voltage", "test volts DC"),
        number("insulation_30s", "insulation at 30 s", "megohms at 30 s", "30 s", "R30"),
        number(
            "insulation_1min", "insulation at 60 s", "insulation at 1 min", "megohms at 60 s",
            "megohms at 1 min", "60 s", "1 min", "R60", "insulation resistance", "megohms",
            "insulation",
        ),
        number(
            "insulation_10min", "insulation at 10 min", "megohms at 10 min", "10 min", "R600"
        ),
        number(
            "winding_temperature", "winding temperature", "temperature", "winding temp",
            "motor temperature", "temp",
        ),
    ),
    "windings": on_each(
        "12 23 31", "ohms_{}", "ohms {}", "ohms {}", "winding resistance {}", "resistance {}", "R{}",
        "winding ohms {}",
    ),
    "volts and amps": (
        *on_each(
            "AB BC CA", "volts_{}", "volts {}", "volts {}", "{} volts", "voltage {}", "line volts {}", "V{}"
        ),
        *on_each("A B C", "amps_{}", "amps on leg {}", *LEG_AMPS),
        number("power_factor", "power factor", "PF"),
    ),
    "rolled once": rolled(2, "rolled once"),
    "rolled twice": rolled(3, "rolled twice"),
    "drawdown": (
        number("well_diameter", "well diameter", "wet well diameter"),
        number("well_length", "well length", "wet well length"),
        number("well_width", "well width", "wet well width"),
        number("drawdown_level", "level drop", "drawdown", "drop", "level fall"),
        number("drawdown_time", "drawdown time", "time of the drop", "pump down time"),
        number("inflow", "inflow", "flow in", "incoming flow"),
        number("rise_level", "level rise, pumps off", "rise", "level rise", "fill"),
        number("rise_time", "rise time, pumps off", "time of the rise", "rise time", "fill time"),
    ),
    "gauges": (
        number("discharge_gauge", "discharge gauge", "discharge pressure", "discharge", "outlet gauge"),
        number(
            "discharge_gauge_height", "height of the discharge gauge", "discharge gauge height",
            "height of the discharge gauge over the pump",
        ),
        number("discharge_diameter", "discharge pipe", "discharge pipe size", "discharge diameter"),
        number("suction_gauge", "suction gauge", "suction pressure", "suction", "inlet gauge"),
        number("suction_vacuum", "suction vacuum", "vacuum", "vacuum gauge"),
        number(
            "suction_gauge_height", "height of the suction gauge", "suction gauge height",
            "height of the suction gauge over the pump",
        ),
        number("suction_diameter", "suction pipe", "suction pipe size", "suction diameter"),
        number("head", "total head", "head", "TDH", "total dynamic head"),
    ),
    "flow meter and power": (
        number("flow", "flow by meter", "flow", "flow meter", "flowrate", "flow rate"),
        number("rated_flow", "rated flow", "design flow", "nameplate flow"),
        number("input_power", "input power", "kW", "power", "kilowatts", "meter kW", "power in"),
        number("run_time", "hours run", "hours", "run hours", "run time", "runtime"),
        number("energy_price", "energy price", "price", "price of energy", "price per kWh", "tariff"),
    ),
}  # fmt: skip

GROUPS = tuple(_ROWS)
FIELDS = tuple(
    Field(name, group, label, also, choices, is_text)
    for group, rows in _ROWS.items()
    for name, label, also, choices, is_text in rows
)
_NAMED = MappingProxyType({field.name: field for field in FIELDS})

# The reading at one minute is the one that formulas call the insulation resistance.
SAME = MappingProxyType({"insulation": "insulation_1min"})
TOGETHER = (
    (("volts_ab", "volts_bc", "volts_ca"), "volts between the lines"),
    (("amps_a", "amps_b", "amps_c"), "amps on each leg"),
    (("amps_a_2", "amps_b_2", "amps_c_2"), "amps with the leads rolled once"),
    (("amps_a_3", "amps_b_3", "amps_c_3"), "amps with the leads rolled twice"),
    (("ohms_12", "ohms_23", "ohms_31"), "ohms of the three windings"),
    (("flow",), "flow"),
    (("head",), "head"),
)


def field_named(name: str) -> Field:
    """The field called `name`.

    Raises:
        KeyError: there is none.
    """
    return _NAMED[name]


def in_words(names: Iterable[str], units: str) -> str:
    """Quantities as a sentence names them; three legs of one kind in a few words.

    >>> in_words(["volts_ab", "volts_bc", "volts_ca", "input_power"], "us")
    'volts between the lines and the input power'
    """
    left, labels = list(names), []
    for legs, said in TOGETHER:
        if set(legs) <= set(left):
            left = [name for name in left if name not in legs]
            labels.append(said)
    *rest, last = (*labels, *(_label(name, units) for name in left))
    return f"{', the '.join(rest)} and the {last}" if rest else last


def _label(name: str, units: str) -> str:
    """What a quantity is called: as on the form, or as in the vocabulary."""
    one = _NAMED.get(SAME.get(name, name))
    return one.label if one else quantity_named(name).label(units)

"""Where each reading of a record is taken, in words; `solver/render/taken.py` draws it.

Live work is for qualified people, and the leads are off only while the motor is locked out (29 CFR 1910.333).
"""

from types import MappingProxyType
from typing import NamedTuple

from .fields import FIELDS

__all__ = ["PLACES", "Place", "place_of"]

VOLTS, AMPS = ("volts_ab", "volts_bc", "volts_ca"), ("amps_a", "amps_b", "amps_c")
ROLLED = tuple(f"{amps}_{turn}" for turn in (2, 3) for amps in AMPS)
PLATE = tuple(field.name for field in FIELDS if field.group == "nameplate")
LOCKED = "Locked out and tested dead, leads off the starter."


class Place(NamedTuple):
    """A place: its name, where it is in a sentence or two, the readings taken there."""

    name: str
    says: str
    fields: tuple[str, ...]


PLACES = (
    Place("plate", "On the motor's nameplate.", PLATE),
    Place(
        "leads", f"At the motor leads. {LOCKED} The tester goes from the leads to ground.",
        ("test_volts", "insulation_30s", "insulation_1min", "insulation_10min"),
    ),
    Place(
        "motor", "At the motor: by its own sensor, or of what is around it once it has cooled down.",
        ("winding_temperature",),
    ),
    Place(
        "windings", f"At the motor leads. {LOCKED} The meter goes between two leads at a time.",
        ("ohms_12", "ohms_23", "ohms_31"),
    ),
    Place("volts", "In the panel, between two legs at a time, pump running. Live: qualified people only.", VOLTS),
    Place("amps", "In the panel, the clamp around one leg at a time, pump running. Live: qualified people only.", AMPS),
    Place("rolled", "In the panel again, the clamp around one leg at a time, after the leads were rolled.", ROLLED),
    Place("power", "At the power meter, pump running.", ("power_factor", "input_power")),
    Place("hours", "At the hour meter of this pump.", ("run_time",)),
    Place("bill", "On the electric bill.", ("energy_price",)),
    Place("well", "Across the wet well, inside, from wall to wall.", ("well_diameter", "well_length", "well_width")),
    Place(
        "drop", "In the wet well, this pump running: how far the water falls by a tape, and how long that takes.",
        ("drawdown_level", "drawdown_time"),
    ),
    Place(
        "rise", "In the wet well, pumps off: how far the water rises by a tape, and how long that takes.",
        ("rise_level", "rise_time"),
    ),
    Place("inflow", "At the inlet, if it has a meter. If not, leave it empty and type the rise with pumps off.", ("inflow",)),
    Place("discharge", "At the gauge on the discharge pipe, pump running.", ("discharge_gauge",)),
    Place("discharge_height", "From the pump's centerline up to the middle of the discharge gauge.", ("discharge_gauge_height",)),
    Place("discharge_pipe", "Inside the pipe where the discharge gauge is.", ("discharge_diameter",)),
    Place(
        "suction", "At the gauge on the suction pipe, pump running. A submersible doesn't have one.",
        ("suction_gauge", "suction_vacuum"),
    ),
    Place(
        "suction_height", "From the pump's centerline up to the middle of the suction gauge. Below it counts as minus.",
        ("suction_gauge_height",),
    ),
    Place("suction_pipe", "Inside the pipe where the suction gauge is.", ("suction_diameter",)),
    Place("head", "Worked out, not read: leave it empty where you have the gauges.", ("head",)),
    Place("meter", "At the flow meter on the main, pump running.", ("flow",)),
    Place("pump", "On the pump's own nameplate.", ("rated_flow",)),
)  # fmt: skip
_OF = MappingProxyType({field: place for place in PLACES for field in place.fields})


def place_of(field: str) -> Place | None:
    """Where a reading is taken; None for what is not read at the pump, such as a name or a date.

    >>> place_of("amps_b").name, place_of("notes")
    ('amps', None)
    """
    return _OF.get(field)

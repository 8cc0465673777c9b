"""A station as text for people and as JSON for programs: nameplates, readings, curves."""

from collections.abc import Iterable
from typing import Any

from solver.station.curves import CurvePoint, curve_points
from solver.station.faults import FAULTS
from solver.station.readings import READINGS, SIGNS, NotRead
from solver.station.station import Station
from solver.units.quantity import Both, in_system
from solver.units.show import capital, exact, figures, with_unit
from solver.vocabulary import quantity_named

__all__ = ["nameplates", "plates", "station_json", "station_text"]

NAMEPLATES = {
    "Motor nameplate": (
        *("motor_size", "poles", "rated_volts", "full_load_amps", "rated_speed"),
        *("service_factor", "rated_rise", "locked_rotor_amps"),
    ),
    "Pump nameplate": ("rated_flow", "rated_head", "impeller_diameter", "stages"),
    "Main, from the drawings": (
        "pipe_diameter",
        "pipe_length",
        "c_factor",
        "static_head",
        "delivery_pressure",
    ),
    "Wet well, from the drawings": (
        *("well_diameter", "well_length", "well_width", "depth_to_floor"),
        *("on_level", "off_level", "alternating_pumps"),
    ),
}
SHOWN = {
    "Water": (
        *("flow", "head", "discharge_gauge", "suction_gauge", "velocity", "friction_head"),
        *("npsh_available", "npsh_required"),
    ),
    "Power": (
        *("volts_ab", "volts_bc", "volts_ca", "amps_a", "amps_b", "amps_c"),
        *("voltage_unbalance", "current_unbalance", "power_factor", "running_speed"),
        *("input_power", "motor_output", "brake_power", "water_power"),
        *("motor_load", "motor_efficiency", "drive_efficiency", "pump_efficiency"),
        "overall_efficiency",
    ),
    "Wet well": (
        *("water_depth", "on_level", "off_level", "inflow", "drawdown_rate", "rise_rate"),
        "starts_per_hour",
    ),
    "Motor tests": (
        *("insulation", "winding_temperature", "insulation_at_40", "polarization_index"),
        *("ohms_12", "ohms_23", "ohms_31", "overload_setting"),
    ),
    "By hand and eye": (
        "bearing_temperature",
        "vibration",
        "water_in_oil",
        "ring_clearance",
        "rags",
    ),
    "Bill": (
        *("hours_per_day", "days", "energy_per_volume", "energy_cost", "demand_charge", "bill"),
    ),
}
CURVES = (
    ("flow", "flow"),
    ("head", "pump head"),
    ("system_head", "system head"),
    ("efficiency", "pump efficiency"),
    ("brake_power", Both("BHP", "shaft power")),
    ("npsh_required", "NPSHr"),
)
CURVE_UNITS = ("flow", "head", "head", "pump_efficiency", "brake_power", "npsh_required")


def station_text(station: Station) -> str:
    """The station for people: what it is, nameplates, readings today (and before a fault), curves."""
    blocks = [_what(station), *_tables(NAMEPLATES, station)]
    blocks += _tables(SHOWN, station, then=station.then)
    blocks.append(_curves(station))
    return "\n\n".join(blocks)


def nameplates(station: Station) -> Iterable[str]:
    """Each nameplate and drawing as a table."""
    return _tables(NAMEPLATES, station)


def plates(station: Station) -> Iterable[tuple[str, list[tuple[str, str]]]]:
    """The title of each nameplate and drawing, and its rows: label and value."""
    for title, names in NAMEPLATES.items():
        rows = [(_label(name, station.system.name), _shown(station, name)) for name in names]
        if shown := [row for row in rows if row[1] != "–"]:
            yield title, shown


def station_json(station: Station) -> dict[str, Any]:
    """The station for programs: every reading unrounded, and as its instrument shows it."""
    place = station.place
    return {
        "units": station.system.name,
        "kind": station.kind.name,
        "place": f"{place.name} at {place.station}",
        "drive": station.drive.name,
        "fault": station.fault or None,
        "readings": _readings(station, READINGS),
        "before": _readings(station.then, READINGS) if station.then else None,
        "curves": [point._asdict() for point in curve_points(station, 25)],
    }


def _readings(station: Station, names: Iterable[str]) -> dict[str, Any]:
    found = {}
    for name in names:
        try:
            value = station.reading(name)
        except NotRead:
            continue
        unit = _unit(name, station.system.name)
        found[name] = {"value": value, "noted": station.noted(name), "unit": unit}
    return found


def _what(station: Station) -> str:
    place, supply = station.place, station.supply
    lines = [
        f"{place.name} at {place.station}",
        f"{capital(station.kind.says)}. The supply is {supply.nominal:g} V, "
        f"{station.system.hertz:g} Hz.",
    ]
    lines.append(f"{capital(station.drive.says)}.")
    if station.fault:
        lines.append(f"Fault: {FAULTS[station.fault].label}.")
    return "\n".join(lines)


def _unit(name: str, units: str) -> str:
    return SIGNS[name].unit(units) if name in SIGNS else quantity_named(name).unit(units)


def _label(name: str, units: str) -> str:
    return SIGNS[name].label if name in SIGNS else quantity_named(name).spoken(units)


def _shown(station: Station | None, name: str) -> str:
    """A reading with its unit; a dash where there is none."""
    if station is None:
        return ""
    try:
        value = station.noted(name)
    except NotRead:
        return "–"
    units = station.system.name
    unit = _unit(name, units)
    said = name not in SIGNS and quantity_named(name).says_unit(units)
    return exact(value, unit) if said else with_unit(exact(value, unit), unit)


def _tables(
    tables: dict[str, tuple[str, ...]],
    station: Station,
    then: Station | None = None,
) -> Iterable[str]:
    """Each table with a heading, its labels in one column; before a fault in a third."""
    for title, names in tables.items():
        rows = [
            (_label(name, station.system.name), *_now_and_then(station, then, name))
            for name in names
        ]
        rows = [row for row in rows if set(row[1:]) - {"", "–"}]
        if rows:
            heads = (title, "now", "before") if then else (title, "")
            yield _columns([heads, *rows])


def _now_and_then(station: Station, then: Station | None, name: str) -> tuple[str, ...]:
    now = _shown(station, name)
    return (now, _shown(then, name)) if then else (now,)


def _columns(rows: list[tuple[str, ...]]) -> str:
    """Rows in columns: the first to the left, numbers to the right."""
    wide = [max(len(row[place]) for row in rows) for place in range(len(rows[0]))]
    lines = []
    for label, *cells in rows:
        numbers = (cell.rjust(width) for cell, width in zip(cells, wide[1:], strict=True))
        lines.append("  ".join((label.ljust(wide[0]), *numbers)).rstrip())
    return "\n".join(lines)


def _curves(station: Station) -> str:
    units = station.system.name
    heads = tuple(in_system(label, units) for _, label in CURVES)
    in_unit = tuple(quantity_named(name).unit(units) for name in CURVE_UNITS)
    rows = [_curve_row(point) for point in curve_points(station)]
    return "Curves at this speed\n" + _columns([heads, in_unit, *rows])


def _curve_row(point: CurvePoint) -> tuple[str, ...]:
    return tuple(figures(float(f"{value:.3g}")) for value in point)

"""The formulas of the lessons hold the model to account: unrounded, with the exact constants, to 1e-6.

A formula is checked on each station that has all its quantities and none that it takes to be absent (`unless`).
`ALSO` and `INSTEAD` say when it holds; `NOT_CHECKED` names those that leave something out, each with what.
"""

from collections.abc import Callable, Mapping

import pytest

from solver.algebra.formula import Formula
from solver.algebra.tree import compiled, constants, names
from solver.station.faults import with_fault
from solver.station.need import Need
from solver.station.readings import READINGS
from solver.station.station import Station
from solver.topics.formulas import FORMULAS

from .stations import BOTH, all_readings, stations, various

NEAR = 1e-6
Key = tuple[str, tuple[str, ...]]
LOWER = "it leaves the fittings out"
HEIGHTS = "it leaves out gauge heights, velocity heads or both"
TANK = "a tank has its own small draw"

NOT_CHECKED: Mapping[Key, str] = {
    ("motor_size", ("motor_output",)): "now and then a motor a size larger is drawn",
    ("motor_size", ("brake_power",)): "now and then a motor a size larger is drawn",
    ("storage_time", ("storage_volume", "inflow")): "every sewer stores some water",
    ("water_height", ("tank_depth", "tap_height")): TANK,
    ("water_volume", ("volume_converted",)): TANK,
    ("water_weight", ("water_volume",)): TANK,
    ("water_volume", ("tank_volume", "empty_volume")): TANK,
    ("percent_full", ("water_volume", "tank_volume")): TANK,
    ("dynamic_suction_lift", ("suction_vacuum",)): HEIGHTS,
    ("dynamic_suction_lift", ("suction_vacuum", "suction_gauge_height")): HEIGHTS,
    ("discharge_head", ("discharge_gauge_head",)): HEIGHTS,
    ("discharge_head", ("discharge_gauge_head", "discharge_gauge_height")): HEIGHTS,
    ("discharge_head", ("discharge_gauge_head", "discharge_velocity_head")): HEIGHTS,
    ("suction_head", ("suction_gauge_head",)): HEIGHTS,
    ("suction_head", ("suction_gauge_head", "suction_gauge_height")): HEIGHTS,
    ("suction_head", ("suction_gauge_head", "suction_velocity_head")): HEIGHTS,
    ("head", ("discharge_gauge_head", "dynamic_suction_lift")): HEIGHTS,
    ("head", ("static_head", "friction_head")): LOWER,
    ("head", ("static_head", "friction_head", "outlet_velocity_head")): LOWER,
    ("head", ("static_head", "friction_head", "delivery_head")): LOWER,
    ("head", ("static_head", "friction_head", "outlet_velocity_head", "delivery_head")): LOWER,
    (
        "head",
        ("static_head", "friction_head", "minor_loss", "outlet_velocity_head", "delivery_head"),
    ): "no main drawn ends in both a nozzle and a pressure zone",
    (
        "slowed_power",
        ("input_power", "flow_ratio", "system_head", "head"),
    ): "it takes the pump to be as efficient at the new speed; against static head it is less so",
    (
        "new_energy_per_volume",
        ("energy_per_volume", "system_head", "head"),
    ): "it takes the pump to be as efficient at the new speed; against static head it is less so",
    (
        "parallel_flow",
        ("rated_flow", "spare_head", "shared_drop", "rated_friction"),
    ): "it takes the pump's curve to be a parabola",
}

When = Callable[[Station], bool]


def always(station: Station) -> bool:
    return True


def direct(station: Station) -> bool:
    """Nothing between motor and pump that takes power."""
    return station.drive.name in ("direct", "variable")


def no_drive(station: Station) -> bool:
    return station.drive.is_direct


def table_volts(station: Station) -> bool:
    return station.motor.rated_volts in (460, 400)


def level(station: Station) -> bool:
    """Gauges at one height, on pipes of one size, and as much water past both."""
    gauges, suction = station.gauges, station.suction
    return (
        suction is not None
        and gauges.discharge_height == gauges.suction_height
        and gauges.discharge_diameter == suction.diameter
    )


def no_static(station: Station) -> bool:
    return station.static == 0


def to_a_free_end(station: Station) -> bool:
    return not station.main.delivery


def at_rated(station: Station) -> bool:
    """Pumping what it is rated for, to a free end."""
    return to_a_free_end(station) and abs(station.running.flow / station.rated[0] - 1) < 1e-9


def tight(station: Station) -> bool:
    return not (station.main.passing or station.main.beside)


def one_stage(station: Station) -> bool:
    return station.pump.stages == 1


def at_line_frequency(station: Station) -> bool:
    return station.drive.turned == 1


ALSO: Mapping[Key, When] = {
    ("rated_slip_speed", ("synchronous_speed", "rated_speed")): at_line_frequency,
    ("brake_power", ("motor_size", "motor_load")): direct,
    ("new_motor_power", ("new_brake_power", "motor_efficiency")): no_drive,
    ("new_motor_power", ("brake_power", "new_motor_efficiency")): no_drive,
    ("new_motor_power", ("new_brake_power", "new_motor_efficiency")): no_drive,
    ("table_amps", ("motor_size",)): table_volts,
    ("system_head", ("static_head", "new_friction")): to_a_free_end,
    ("least_speed", ("pump_speed", "static_head", "shutoff_head")): to_a_free_end,
    ("spare_head", ("shutoff_head", "static_head")): to_a_free_end,
    ("flow", ("rated_flow", "spare_head", "curve_drop", "rated_friction")): at_rated,
    ("fill_time", ("working_volume", "inflow")): tight,
    ("tested_shutoff", ("shutoff_gauge", "closed_suction")): level,
}
# Said in place of what a formula takes to be absent, where a station always has that.
INSTEAD: Mapping[Key, When] = {
    ("flow", ("drawdown_rate", "rise_rate")): tight,
    ("npsh_available", ("atmospheric_head", "vapor_head", "dynamic_suction_lift")): always,
    ("pressure", ("discharge_gauge", "suction_gauge")): level,
    ("new_flow", ("flow", "speed_ratio")): no_static,
    ("new_head", ("head", "speed_ratio")): no_static,
    ("new_shaft_power", ("brake_power", "speed_ratio")): no_static,
    ("new_flow", ("flow", "trim_ratio")): no_static,
    ("new_head", ("head", "trim_ratio")): no_static,
    ("new_shaft_power", ("brake_power", "trim_ratio")): no_static,
    ("power_ratio", ("speed_ratio",)): no_static,
    ("slowed_power", ("input_power", "speed_ratio")): no_static,
    ("new_energy_per_volume", ("energy_per_volume", "speed_ratio")): no_static,
    ("stage_head", ("head",)): one_stage,
}
# Where the lesson counts more under a name than the station does: fittings as friction.
LOSSES = {("new_friction", ("friction_head", "flow_ratio"))}
LOSSES_GIVEN = {("friction_head", ("rated_friction", "flow", "rated_flow"))}
# Where the lesson leaves the suction pipe out: its loss is added.
NO_SUCTION = {
    ("head", ("static_head", "friction_head", "minor_loss")),
    ("head", ("static_head", "friction_head", "minor_loss", "outlet_velocity_head")),
    ("head", ("static_head", "friction_head", "minor_loss", "delivery_head")),
}


def key_of(formula: Formula) -> Key:
    return formula.result, names(formula.expr)


def some(units: str) -> list[Station]:
    """Stations in every state, and some whose check valve leaks."""
    wells = stations(units, Need(well=True), 1)
    return [*various(units), *(with_fault(station, "passing_check", 0.6) for station in wells)]


def holds(formula: Formula, station: Station, known: Mapping[str, float]) -> bool:
    """Whether a formula is one to check on this station."""
    key = key_of(formula)
    if not formula.quantities <= known.keys():
        return False
    if key in INSTEAD:
        return INSTEAD[key](station)
    there = known.keys() & set(formula.unless)
    return ALSO.get(key, always)(station) and not there


@pytest.mark.parametrize("units", BOTH)
def test_the_model_agrees_with_every_formula_that_can_be_checked(units):
    exact = {
        formula: compiled(
            formula.expr,
            units,
            {
                constant: figure.exact
                for constant in constants(formula.expr)
                if (figure := constant.figure(units)).exact is not None
            },
        )
        for formula in FORMULAS
        if units in formula.systems and key_of(formula) not in NOT_CHECKED
    }
    checked = set()
    for station in some(units):
        known = all_readings(station)
        losses = station.running.head - station.static
        for formula, worked in exact.items():
            if not holds(formula, station, known):
                continue
            key = key_of(formula)
            given = {**known, "friction_head": losses} if key in LOSSES else known
            wanted = losses if key in LOSSES_GIVEN else known[formula.result]
            got = worked(given) + (known.get("suction_loss", 0) if key in NO_SUCTION else 0)
            assert got == pytest.approx(wanted, rel=NEAR, abs=1e-9), (key, station.kind.name)
            checked.add(formula)
    read = {formula for formula in exact if formula.quantities <= READINGS.keys()}
    assert set() == {key_of(formula) for formula in read - checked}


def test_what_is_not_checked_is_a_formula():
    there = {key_of(formula) for formula in FORMULAS}
    named = NOT_CHECKED.keys() | ALSO.keys() | INSTEAD.keys() | NO_SUCTION | LOSSES | LOSSES_GIVEN
    assert set() == named - there

"""A fault changes a station in one place; every reading follows, and some instrument sees it."""

from dataclasses import fields, replace
from itertools import combinations

import pytest

from solver.errors import BadDefinition, NotSolvable
from solver.station.faults import FAULTS, applies, put, with_fault
from solver.station.instruments import BY_NAME, instrument_of
from solver.station.need import Need
from solver.station.readings import READINGS, NotRead
from solver.station.station import Station
from solver.station.telling_apart import telling

from .stations import BOTH, readable, stations

# A fault that says itself in two places: the supply's phases turn, and so does the pump.
TWO_PLACES = {
    "turned_supply": {"supply", "pump"},
    "shorted_turns": {"motor", "altered"},
    "failing_bearing": {"motor", "altered"},
}
# Which way readings go, for an ordinary radial pump: 1 up, -1 down, 0 as before.
WAYS = {
    "worn_rings": {"flow": -1, "discharge_gauge": -1, "ring_clearance": 1},
    "worn_impeller": {"flow": -1, "discharge_gauge": -1, "input_power": -1, "vane_wear": 1},
    "clogged_impeller": {"flow": -1, "discharge_gauge": -1, "rags": 1},
    "throttled_valve": {"flow": -1, "discharge_gauge": 1},
    "clogged_main": {"flow": -1, "discharge_gauge": 1},
    "broken_main": {"flow": 1, "discharge_gauge": -1},
    "passing_check": {"rise_rate": 1, "flow": 0, "leakage": 1},
    "open_seat": {"flow": -1, "discharge_gauge": -1, "drawdown_rate": -1},
    "blocked_suction": {"flow": -1, "suction_gauge": -1, "npsh_available": -1},
    "air_bound": {"flow": -1, "discharge_gauge": -1, "input_power": -1},
    "turned_supply": {"flow": -1, "shaft_rotation": -1, "phase_rotation": -1},
    "swapped_leads": {"flow": -1, "shaft_rotation": -1, "phase_rotation": 0},
    "open_leg": {"amps_a": -1, "amps_b": 1, "amps_c": 1},
    "loose_joint": {"amps_a": -1, "current_unbalance": 1, "voltage_unbalance": 0},
    "unbalanced_supply": {"voltage_unbalance": 1, "current_unbalance": 1},
    "low_volts": {"volts_ab": -1, "running_speed": -1, "slip": 1},
    "damp_winding": {"insulation": -1, "polarization_index": -1, "ohms_12": 0},
    "grounded_winding": {"insulation": -1},
    "shorted_turns": {"ohms_12": -1, "ohms_31": -1, "ohms_23": 0, "current_unbalance": 1},
    "failing_bearing": {"bearing_temperature": 1, "vibration": 1, "input_power": 1},
    "leaking_seal": {"water_in_oil": 1, "insulation": 0},
    "wrong_overload": {"overload_setting": 1, "setting_share": 1},
    "high_float": {"on_level": 1, "starts_per_hour": -1},
    "stuck_float": {"water_depth": -1},
    "short_cycling": {"on_level": -1, "starts_per_hour": 1},
}
WHERE = (  # where each fault can be tried
    Need(kinds=("lift",), drives=("direct",), volts=(480.0,)),
    Need(kinds=("lift",), drives=("direct",), volts=(400.0,)),
)


def test_each_fault_has_the_way_its_readings_go():
    assert set(FAULTS) == set(WAYS)
    assert all(name in READINGS for ways in WAYS.values() for name in ways)


def lifts(units: str, fault: str = "") -> tuple[Station, ...]:
    """Where faults are tried: lift stations, or pumps with a suction pipe."""
    need = WHERE[BOTH.index(units)]
    if fault and FAULTS[fault].needs == "suction":
        need = replace(need, kinds=("flooded", "above"))
    return stations(units, need, 1)


@pytest.mark.parametrize("units", BOTH)
@pytest.mark.parametrize("name", FAULTS)
def test_readings_go_the_way_they_should(name, units):
    for station in lifts(units, name):
        faulty = with_fault(station, name, 0.7)
        for reading, way in WAYS[name].items():
            before = station.reading(reading) if readable(station, reading) else 0.0
            after = faulty.reading(reading) if readable(faulty, reading) else 0.0
            change = after - before
            assert way == (0 if abs(change) < 1e-9 else 1 if change > 0 else -1), reading


@pytest.mark.parametrize("name", FAULTS)
def test_a_fault_changes_one_part_alone(name):
    for station in lifts("us", name):
        faulty = with_fault(station, name)
        assert station == faulty.then
        parts = {f.name for f in fields(Station)} - {"fault", "then"}
        changed = {part for part in parts if getattr(station, part) != getattr(faulty, part)}
        assert TWO_PLACES.get(name, changed) == changed
        assert len(changed) <= 2


@pytest.mark.parametrize("units", BOTH)
@pytest.mark.parametrize("name", FAULTS)
def test_an_instrument_sees_each_fault(name, units):
    fault = FAULTS[name]
    for station in stations(units, each=2):
        if applies(fault, station):
            for severity in (fault.least, (fault.least + 1) / 2, 1):
                assert telling(station, with_fault(station, name, severity)), severity


@pytest.mark.parametrize("units", BOTH)
@pytest.mark.parametrize("name", FAULTS)
def test_energy_is_kept_with_a_fault(name, units):
    for station in stations(units, each=1):
        if applies(FAULTS[name], station):
            faulty = with_fault(station, name, 0.8)
            water, shaft = faulty.reading("water_power"), faulty.reading("brake_power")
            assert 0 <= water < shaft < faulty.reading("motor_power")


@pytest.mark.parametrize("units", BOTH)
def test_nearly_every_pair_of_faults_is_told_apart_by_one_reading(units):
    pairs, alike = 0, []
    for station in lifts(units)[:20]:
        faulty = {
            name: with_fault(station, name, 0.7)
            for name, fault in FAULTS.items()
            if applies(fault, station)
        }
        for one, other in combinations(faulty, 2):
            pairs += 1
            if not telling(faulty[one], faulty[other]):
                alike.append((one, other))
    assert len(alike) <= pairs / 100, set(alike)


def test_a_sound_station_is_not_told_from_itself():
    station = lifts("us")[0]
    assert {} == telling(station, station)


@pytest.mark.parametrize("units", BOTH)
def test_no_instrument_is_asked_for_more_than_it_shows(units):
    for station in stations(units, each=1):
        faulty = [with_fault(station, name) for name, f in FAULTS.items() if applies(f, station)]
        for one in (station, *faulty):
            for name in BY_NAME:
                if readable(one, name):
                    most = instrument_of(name).reach[BOTH.index(units)]
                    assert one.reading(name) <= most, (name, one.fault)


def test_a_judgment_puts_its_station_where_it_wants_it():
    for units in BOTH:
        for station in lifts(units):
            wanted = 0.95 * station.running.flow
            worn = put(station, "worn_rings", "flow", wanted)
            assert wanted == pytest.approx(worn.reading("flow"), rel=1e-6)
            uneven = put(station, "unbalanced_supply", "voltage_unbalance", 2.5)
            assert 2.5 == pytest.approx(uneven.reading("voltage_unbalance"))
            assert uneven.reading("current_unbalance") > 10
            too_uneven = put(station, "unbalanced_supply", "voltage_unbalance", 5.5)
            with pytest.raises(NotRead, match="must not run"):
                too_uneven.reading("derating")
            with pytest.raises(NotSolvable, match="never 9"):
                put(station, "unbalanced_supply", "voltage_unbalance", 9)


def test_last_years_readings_are_those_of_the_sound_station():
    station = lifts("us")[0]
    worn = with_fault(station, "worn_rings")
    assert station.reading("flow") == worn.reading("earlier_flow")
    assert worn.reading("flow_drop") == pytest.approx(
        station.reading("flow") - worn.reading("flow")
    )


def test_a_fault_that_is_not_there_is_told():
    station = stations("us", Need(kinds=("booster",)), 1)[0]
    with pytest.raises(BadDefinition, match="No fault is called “rust”"):
        with_fault(station, "rust")
    with pytest.raises(BadDefinition, match="from 0 to 1; got 2"):
        with_fault(station, "worn_rings", 2)
    with pytest.raises(NotSolvable, match="no part that could have “off float stuck”"):
        with_fault(station, "stuck_float")


# Zones of the judgments: a reading, the values that fall in each, and the fault that brings it there.
ZONES = (
    ("voltage_unbalance", (0.7, 2.5, 5.5), "unbalanced_supply"),
    ("current_unbalance", (7.0, 12.0, 20.0), "unbalanced_supply"),
    ("insulation_at_40", (100.0, 30.0, 3.0), "damp_winding"),
    ("polarization_index", (1.9, 1.5, 1.3), "damp_winding"),
    ("resistance_unbalance", (1.5, 2.5, 4.0), "shorted_turns"),
    ("flow_share", (98.0, 92.0, 80.0), "throttled_valve"),
    ("leak_share", (3.0, 15.0, 30.0), "passing_check"),
    ("setting_share", (128.0, 135.0, 160.0), "wrong_overload"),
    ("starts_per_hour", (1.2, 2.0, 4.0), "short_cycling"),  # times what they were
)


@pytest.mark.parametrize("units", BOTH)
@pytest.mark.parametrize(("reading", "values", "fault"), ZONES, ids=lambda v: str(v)[:24])
def test_every_zone_of_a_judgment_can_be_reached(reading, values, fault, units):
    reached = 0
    for station in lifts(units):
        was = station.reading(reading) if reading == "starts_per_hour" else 1
        for value in values:
            try:
                there = put(station, fault, reading, value * was)
            except NotSolvable:
                continue
            # An overload has a dial with steps; everything else comes to the wanted value.
            near = 0.02 if fault == "wrong_overload" else 1e-6
            assert value * was == pytest.approx(there.reading(reading), rel=near)
            reached += 1
    assert reached >= 0.9 * len(values) * len(lifts(units))


@pytest.mark.parametrize("units", BOTH)
def test_a_need_can_ask_for_an_overloaded_motor(units):
    for station in stations(units, Need(load=(102, 118)), 1):
        assert 101 < station.reading("motor_load") < 120

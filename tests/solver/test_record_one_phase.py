"""A pump of one phase in the record, and a nameplate that cannot be."""

import pytest

from solver.own.record import LOOK, WITHIN, examine, read_entries

ONE = {
    "phase": "1",
    "rated_volts": "230",
    "full_load_amps": "10",
    "service_factor": "1.15",
    "motor_size": "2",
    "motor_efficiency": "80",
    "volts_ab": "228",
    "amps_a": "11",
    "input_power": "1.8",
}
OF_THREE = {
    "volts_level",
    "voltage_unbalance",
    "current_unbalance",
    "rolled_once",
    "rolled_twice",
    "amps_highest",
    "apparent_power",
    "power_factor",
    "load_by_amps",
    "derated_power",
    "resistance_unbalance",
}


def examined(**more):
    record, faults = read_entries(ONE | more)
    assert () == faults
    return examine(record)


def test_nothing_of_three_phases_is_worked_even_where_all_legs_are_filled_in():
    legs = {"amps_b": "3", "amps_c": "9", "volts_bc": "200", "volts_ca": "228", "ohms_12": "1"}
    found = examined(**legs, ohms_23="2", ohms_31="3")
    assert set() == OF_THREE & {one.name for one in found.findings}
    (says,) = found.notices
    assert "Unbalance, rolled leads, winding balance and three-phase power don't apply." in says


def test_its_one_current_and_its_volts_are_set_against_the_nameplate():
    found = examined()
    amps, volts = found.finding("amps_of_one_phase"), found.finding("volts_of_one_phase")
    assert (LOOK, 11) == (amps.state, amps.value)
    assert "11 A, over the full-load amps of 10 A" in amps.verdict.says
    assert WITHIN == volts.state
    assert "It reads 228 V, against the nameplate's 230 V: 0.87% off." == volts.verdict.says


def test_what_only_three_phases_have_is_not_called_missing():
    missing = examined().not_measured
    assert set() == {"windings", "rolled once", "rolled twice", "volts and amps"} & {*missing}
    assert [] == [one for one in missing if "leg" in one or "volts" in one or "ohms" in one]
    assert "insulation" in missing


@pytest.mark.parametrize("phase", ["3", ""])
def test_three_phases_are_not_held_to_the_rules_of_one(phase):
    names = {one.name for one in examined(phase=phase).findings}
    assert set() == {"volts_of_one_phase", "amps_of_one_phase"} & names


def test_a_nameplate_below_zero_volts_is_looked_into_and_stops_nothing():
    record, _ = read_entries({"rated_volts": "-460", "test_volts": "500", "pump": "Pump 1"})
    found = examine(record).finding("test_volts")
    assert LOOK == found.state
    assert "The nameplate volts come to -460 V. It can't be below 0 V." in found.verdict.says


def test_a_reading_is_not_asked_for_to_tell_itself():
    assert [] == [one for one in examined().next_checks if "the test volts too" in one]

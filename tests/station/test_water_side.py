"""The water side of a station: its levels, check valves, wet well and main."""

from dataclasses import replace

import pytest

from solver.station.faults import with_fault
from solver.station.need import Need
from solver.station.readings import NotRead

from .stations import BOTH, stations

each_system = pytest.mark.parametrize("units", BOTH)


@each_system
def test_the_water_is_near_the_altitude_of_its_pump_and_the_end_is_higher_by_the_static_head(units):
    for station in stations(units, Need(well=True), 3):
        water, end = map(station.reading, ("suction_elevation", "discharge_elevation"))
        assert end - water == pytest.approx(station.reading("static_head"))
        if station.suction:
            assert 0 < water - station.reading("altitude") < station.system.rounded(100, 50)


def test_stations_are_not_all_at_one_elevation():
    seen = {station.noted("suction_elevation") for station in stations("us", Need(well=True))}
    assert len(seen) > 8


@each_system
def test_what_leaks_back_is_the_sum_of_two_check_valves_and_a_closed_valve_takes_one_away(units):
    for station in stations(units, Need(kinds=("lift",)), 2):
        root = station.static**0.5
        main = replace(station.main, passing=0.3 / root, beside=0.2 / root)
        leaking = replace(station, main=main)
        inflow = leaking.reading("inflow")
        assert leaking.reading("leakage") == pytest.approx(0.5)
        assert leaking.reading("rise_rate") == pytest.approx(inflow + 0.5)
        assert leaking.reading("rise_rate_1") == pytest.approx(inflow + 0.2)
        assert leaking.reading("rise_rate_2") == pytest.approx(inflow + 0.3)


@each_system
def test_a_well_fills_sooner_when_a_check_valve_leaks(units):
    for station in stations(units, Need(kinds=("lift",)), 2):
        leaking = with_fault(station, "passing_check", 0.5)
        assert leaking.reading("fill_time") < station.reading("fill_time")
        assert leaking.reading("starts_per_hour") > station.reading("starts_per_hour")


@each_system
def test_a_pump_alone_takes_no_turns_and_its_floats_are_half_a_foot_apart_or_more(units):
    for station in stations(units, Need(pumps=1), 2):
        with pytest.raises(NotRead, match="takes no turns"):
            station.reading("alternating_pumps")
        assert station.reading("motor_cycle") == station.reading("cycle_time")
        assert 60 / station.reading("most_starts") == pytest.approx(station.reading("least_cycle"))
        assert station.reading("least_depth") * station.system.feet >= 0.49


@pytest.mark.parametrize(("units", "size"), [("us", 300.0), ("si", 200.0)])
def test_above_the_cycle_table_the_maker_decides(units, size):
    station = stations(units, Need(well=True), 1)[0]
    large = replace(station, motor=replace(station.motor, size=size))
    with pytest.raises(NotRead, match="to their maker"):
        large.reading("cycle_floor")


@each_system
def test_a_need_of_the_water_side_is_met(units):
    for station in stations(units, Need(kinds=("lift",), head=(20, 60), fittings=5), 1):
        assert 20 <= station.rated[1] * station.system.feet <= 60
        assert station.reading("minor_loss") / station.reading("head") >= 0.05 - 1e-9
    for station in stations(units, Need(pumps=3), 1):
        assert station.reading("alternating_pumps") == 3


@each_system
def test_a_nozzle_is_narrower_than_its_main_by_a_fifth_to_two_fifths(units):
    for station in stations(units, Need(nozzle=True), 2):
        assert 0.6 <= station.main.nozzle / station.main.diameter <= 0.9

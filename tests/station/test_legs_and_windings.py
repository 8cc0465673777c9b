"""Legs, volts and windings of a sound station, and those that a problem puts them to."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver.engine.draw import Draw
from solver.scenario import kind_of
from solver.station.drawn import draw_station
from solver.station.faults import with_fault
from solver.station.instruments import evened
from solver.station.motor import table_amps
from solver.station.need import Need
from solver.station.readings.legs import leg_amps
from solver.station.scene import OneOf, Readings

from .stations import BOTH, stations

each_system = pytest.mark.parametrize("units", BOTH)


@each_system
def test_a_sound_station_is_well_within_the_limits_of_its_legs_and_windings(units):
    for station in stations(units):
        assert station.reading("voltage_unbalance") < 0.5
        assert station.reading("current_unbalance") < 4.5
        assert station.reading("resistance_unbalance") < 1
        assert station.reading("insulation_at_40") > 150


@each_system
def test_volts_can_be_so_uneven_that_amps_are_as_uneven_as_wanted(units):
    for station in stations(units):
        level = replace(station, motor=replace(station.motor, own=(0.0, 0.0, 0.0)))
        put = replace(level, supply=station.supply.pulling((9.0, -3.0, -6.0)))
        a, b, c = leg_amps(put)
        average = (a + b + c) / 3
        assert [9, -3, -6] == pytest.approx([100 * (leg / average - 1) for leg in (a, b, c)])
        assert 9 / station.supply.gain == pytest.approx(put.reading("voltage_unbalance"))


@given(st.lists(st.floats(10, 99), min_size=3, max_size=3), st.sampled_from([0.01, 0.1, 1.0]))
def test_three_readings_are_noted_near_what_they_are_and_average_to_a_step(real, step):
    noted = evened(real, step)
    assert all(abs(shown - true) <= step * 1.51 for shown, true in zip(noted, real, strict=True))
    average = sum(noted) / 3 / step
    assert round(average) == pytest.approx(average, abs=1e-6)


@pytest.mark.parametrize(
    ("size", "amps"),
    # M: NEC (NFPA 70) Table 430.250, 2,300 V.
    [(75, 20), (100, 26), (125, 31), (150, 37), (200, 49)],
)
def test_amps_at_medium_volts_are_near_those_of_the_code(size, amps):
    assert amps == pytest.approx(table_amps(size, 2300, "us"), rel=0.06)


@pytest.mark.parametrize(
    ("units", "volts", "rated"),
    [("us", (2400, 4160), {2300, 4000}), ("si", (3000, 3300), {3000, 3300})],
)
def test_medium_volts_feed_large_motors_in_the_dry(units, volts, rated):
    need = Need(kinds=("flooded", "booster"), sizes=(75, 500), volts=volts)
    some = [draw_station(Draw(f"large {n}"), units, need) for n in range(20)]
    assert rated == {station.motor.rated_volts for station in some}
    assert all(station.motor.size >= 75 for station in some)
    assert {"plant", "booster"} == {kind_of(station.place) for station in some}


@each_system
def test_medium_volts_are_not_drawn_unless_asked_for(units):
    assert {s.motor.rated_volts for s in stations(units)} <= {200, 230, 460, 575, 400}


@each_system
def test_the_dampest_winding_falls_while_it_is_tested(units):
    for station in stations(units)[:40]:
        damp = with_fault(station, "damp_winding")
        for ratio in ("absorption_ratio", "polarization_index"):
            assert damp.reading(ratio) < 1 < station.reading(ratio)
        assert 0.5 < damp.reading("insulation_at_40") < 5


def test_one_of_several_scenes_is_drawn_and_each_of_their_places_may_be():
    low, high = (Readings(Need(kinds=(kind,), load=(60, 90))) for kind in ("lift", "booster"))
    both = OneOf((low, high))
    assert set(both.places) == {*low.places, *high.places}
    drawn = [both(Draw(f"one of {n}"), "us").place for n in range(30)]
    assert {"lift", "booster"} == {kind_of(place) for place in drawn}

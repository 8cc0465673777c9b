"""The invented town's pumps: stations of the model, each of the kind that its building says."""

from solver.scenario import PUMPS, kind_of
from solver.station.town import town_station


def test_each_pump_of_the_town_is_a_sound_station_of_its_kind():
    for place in PUMPS:
        station = town_station(place)
        assert (place, kind_of(place), "") == (station.place, station.kind.place, station.fault)
        assert 60 <= station.reading("motor_load") <= 90


def test_pumps_of_one_building_are_alike_and_differ_in_their_condition():
    first, second = (town_station(place) for place in PUMPS[:2])
    assert first.rated == second.rated
    assert first.motor == second.motor
    assert first.condition != second.condition

"""Over thousands of stations: duty on both curves, energy kept, readings that could be, no error of the trade."""

from math import pi

import pytest

from solver.engine.draw import Draw
from solver.errors import BadDefinition, NotSolvable
from solver.station.drawn import attempt, draw_station
from solver.station.kinds import KINDS
from solver.station.motor import efficiency_of, locked_amps
from solver.station.need import Need
from solver.station.readings import NOT_READ, READINGS, SIGNS, NotRead
from solver.station.well import Well
from solver.vocabulary import QUANTITIES

from .stations import BOTH, all_readings, readable, stations, various

each_system = pytest.mark.parametrize("units", BOTH)


@each_system
def test_the_duty_is_on_both_curves(units):
    for station in stations(units):
        now, suction = station.running, station.suction
        asked = station.main.lift + station.main.lost(now.flow)
        asked += suction.lost(now.flow) if suction else 0
        assert asked == pytest.approx(now.head, rel=0.005)
        assert station.pump.head_at(now.flow, now.speed) == pytest.approx(now.head, rel=0.005)
        assert station.rated == pytest.approx((now.flow, now.head), rel=1e-6)


@each_system
def test_energy_is_kept_at_every_link_from_the_wire_to_the_water(units):
    for station in stations(units):
        read = station.reading
        wire = read("motor_power")
        links = [read("pump_efficiency"), read("motor_efficiency"), 100 * station.drive.efficiency]
        assert all(0 < link <= 100 for link in links)
        through = wire * links[0] * links[1] * links[2] / 1e6
        assert through == pytest.approx(read("water_power"), rel=1e-9)
        assert read("water_power") < read("brake_power") < wire


@each_system
def test_each_reading_is_one_that_could_be(units):
    outside = {}
    for station in stations(units):
        for name, value in all_readings(station).items():
            if name in QUANTITIES:
                low, high = QUANTITIES[name].usual(units)
                if not low <= value <= high:
                    outside.setdefault(name, []).append(value)
    few = len(stations(units)) / 500
    assert {} == {name: values[:3] for name, values in outside.items() if len(values) > few}


def test_each_reading_is_a_quantity_or_a_sign_and_what_is_not_read_has_its_reason():
    assert set() == (READINGS.keys() | NOT_READ.keys()) - SIGNS.keys() - QUANTITIES.keys()
    assert set() == READINGS.keys() & (NOT_READ.keys() | SIGNS.keys() & QUANTITIES.keys())


@each_system
def test_each_quantity_is_read_of_some_station(units):
    seen = {name for s in various(units) for name in READINGS if readable(s, name)}
    assert {"leakage", "leak_share"} == READINGS.keys() - seen  # of a check valve that leaks


@each_system
def test_the_same_key_gives_the_same_station(units):
    one, other = (draw_station(Draw("the same"), units) for _ in range(2))
    assert one == other
    assert all_readings(one) == all_readings(other)


@each_system
def test_a_need_is_met(units):
    sizes = (15, 75) if units == "us" else (11, 55)
    for station in stations(units, Need(kinds=("lift", "above"), load=(92, 100), sizes=sizes), 1):
        assert station.kind.name in ("lift", "above")
        assert 92 <= station.reading("motor_load") <= 100.5
        assert sizes[0] <= station.motor.size <= sizes[1]
    for station in stations(units, Need(static=False, drives=("variable",)), 1):
        assert station.drive.is_variable
        with pytest.raises(NotRead, match="nothing to lift"):
            station.reading("static_head")
    for station in stations(units, Need(level_gauges=True), 1):
        across = station.reading("discharge_gauge") - station.reading("suction_gauge")
        assert across == pytest.approx(station.reading("pressure"))
    for station in stations(units, Need(stages=True), 1):
        assert station.reading("stages") >= 2


@each_system
def test_a_need_of_motor_or_main_is_met(units):
    for station in stations(units, Need(service=(1.15,)), 1):
        assert station.reading("service_factor") == 1.15
    for station in stations(units, Need(old_plate=True), 1):
        with pytest.raises(NotRead, match="no service factor"):
            station.reading("service_factor")
        low = station.reading("rated_rise") <= 40
        assert station.reading("overload_percent") == (125 if low else 115)  # NEC 430.32(A)(1)
    for station in stations(units, Need(kinds=("lift", "flooded"), part=(30, 60)), 1):
        assert 25 <= station.reading("static_share") <= 60.5  # the suction pipe takes a little
    for station in stations(units, Need(specific=(6500, 8000), stages=False), 1):
        assert 6000 <= station.reading("specific_speed") * station.system.us_specific <= 8600


@each_system
def test_a_pump_turned_down_slips_by_its_torque_and_still_moves_water(units):
    for station in stations(units, Need(drives=("variable",), turned_down=True), 1):
        now, field = station.running, station.reading("synchronous_speed")
        assert station.reading("frequency") <= 0.98 * station.system.hertz
        assert field == pytest.approx(120 * station.reading("frequency") / station.motor.poles)
        assert 0 < now.flow < station.rated[0]
        torque = now.load.share * station.motor.synchronous_speed / field
        slip = field - now.motor_speed
        at_full = station.motor.synchronous_speed - station.motor.rated_speed
        assert slip == pytest.approx(at_full * torque / station.supply.ratio**2)


@each_system
def test_a_speed_that_stalls_cannot_hold_the_static_head(units):
    for station in stations(units, Need(kinds=("lift", "above"), change="stall"), 1):
        assert station.reading("new_shutoff_head") < station.static


def test_a_need_that_nothing_meets_says_so():
    with pytest.raises(NotSolvable, match="ask less of it"):
        draw_station(Draw("x"), "us", Need(kinds=("booster",), lift=True))


def test_a_reading_that_no_station_has_is_refused():
    with pytest.raises(BadDefinition, match="no station has a reading called 'tank_depth'"):
        draw_station(Draw("x"), "us").reading("tank_depth")


@each_system
@pytest.mark.parametrize("kind", KINDS)
def test_half_of_the_draws_of_a_kind_or_more_are_stations(kind, units):
    need = Need(kinds=(kind,))
    made = sum(attempt(Draw(f"half {n}"), units, need) is not None for n in range(300))
    assert made >= 150


# Errors of the trade that were seen in older draws


@each_system
def test_a_motor_has_the_efficiency_of_its_table_and_starts_within_the_codes_amps(units):
    for station in stations(units):
        motor = station.motor
        assert motor.efficiency == efficiency_of(motor.size, motor.poles, motor.grade, units)
        assert station.reading("motor_efficiency") >= motor.efficiency - 5
        assert 0.85 <= motor.full_load_amps / station.reading("table_amps") <= 1.01
        if units == "us":
            most = locked_amps(motor.size, motor.rated_volts)
            assert 0.87 * most <= motor.locked_rotor_amps <= 1.01 * most


@each_system
def test_an_impeller_fits_its_duty(units):
    for station in stations(units):
        pump, system = station.pump, station.system
        inches = pump.diameter / (1 if units == "us" else 25.4)
        rim = pi * inches * station.running.speed / 720
        made = pump.head_at(0, station.running.speed) * system.feet / pump.stages
        specific = station.reading("specific_speed") * system.us_specific
        most = 1.01 if specific < 3000 else 2.2  # mixed flow and propellers leave inside the rim
        assert 0.92 <= rim / (2 * 32.174 * made) ** 0.5 <= most
        assert rim <= 131.5
        assert 500 <= specific <= 14_000


@each_system
def test_a_small_pump_is_not_as_good_as_a_large_one(units):
    for station in stations(units):
        gpm = station.running.flow * station.system.gpm
        assert station.reading("pump_efficiency") <= (72 if gpm < 100 else 79 if gpm < 300 else 85)


@each_system
def test_water_stands_where_people_build(units):
    feet = 1 if units == "us" else 0.3048
    for station in stations(units):
        if station.suction:
            assert -25 * feet <= station.suction.lift <= 25 * feet
            margin = station.reading("npsh_available") - station.reading("npsh_required")
            assert margin >= station.suction.margin - 1e-9
        if station.well:
            apart = station.reading("working_depth")
            assert 0.49 * feet <= apart <= 6.01 * feet
            for test in ("drawdown_level", "rise_level", "closed_rise_level"):
                assert station.reading(test) <= apart + feet / 10


@each_system
def test_no_pump_is_sped_up_or_trimmed_below_85(units):
    for station in stations(units):
        change = station.plans.change
        if change == "speed":
            assert 0.58 <= station.reading("speed_ratio") < 1
        else:
            assert 0.84 <= station.reading("trim_ratio") < 1


@each_system
def test_numbers_are_round_in_their_own_system(units):
    for station in stations(units, each=3):
        assert station.rated[0] == pytest.approx(round(station.rated[0] * 2) / 2)
        assert station.main.static == round(station.main.static * 10) / 10
        assert station.motor.rated_speed % 5 == 0
        assert isinstance(station.well, Well | None)

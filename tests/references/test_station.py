"""The model of a station against published tables: motors, starting, part load, a tested pump, water.

Status as in published.py: R read, R2 read in a copy, M from memory.
"""

from math import pi, sqrt

import pytest
from iapws import IAPWS97

from solver.station.condition import at_temperature
from solver.station.main import Main
from solver.station.motor import Motor, efficiency_of, locked_amps, table_amps
from solver.station.pump import Pump, best_efficiency, quality_of, shape_of
from solver.station.suction import vapor_head
from solver.station.supply import Supply, unbalance_of
from solver.station.system import SI, US
from solver.topics.tables import motor_sizes
from tests.station.stations import stations

# 10 CFR 431.25 Table 1, enclosed (NEMA MG 1 Table 12-12), R: hp, then 2, 4 and 6 poles.
PREMIUM = (
    (7.5, 89.5, 91.7, 91.0),
    (10, 90.2, 91.7, 91.0),
    (15, 91.0, 92.4, 91.7),
    (20, 91.0, 93.0, 91.7),
    (25, 91.7, 93.6, 93.0),
    (40, 92.4, 94.1, 94.1),
    (50, 93.0, 94.5, 94.1),
    (100, 94.1, 95.4, 95.0),
    (125, 95.0, 95.4, 95.0),
    (150, 95.0, 95.8, 95.8),
    (200, 95.4, 96.2, 95.8),
)
# 10 CFR 431.25 as of 2006, enclosed (NEMA MG 1 Table 12-11), R.
STANDARD = (
    (5, 87.5, 87.5, 87.5),
    (20, 90.2, 91.0, 90.2),
    (25, 91.0, 92.4, 91.7),
    (50, 92.4, 93.0, 93.0),
    (75, 93.0, 94.1, 93.6),
    (150, 94.5, 95.0, 95.0),
)
# Washington Administrative Code 51-11C-40508 (NEMA MG 1 Table 12-12), enclosed, 8 poles, R: hp, percent.
EIGHT = {
    1: 75.5, 1.5: 78.5, 2: 84.0, 3: 85.5, 5: 86.5, 7.5: 86.5, 10: 89.5, 15: 89.5, 20: 90.2, 25: 90.2,
}  # fmt: skip
# NEC (NFPA 70) Table 430.251(B), designs B, C and D at 460 V, R.
HELD = {5: 46, 10: 81, 15: 116, 25: 183, 30: 218, 50: 363, 60: 435, 100: 725, 125: 908, 150: 1085}
# Lobanoff & Ross, Centrifugal Pumps, Table 2-4, one pump at 4,000 rpm, R: gpm, ft, hp.
TESTED = (
    (0, 445, 37),
    (113, 443, 45),
    (226, 438, 52),
    (337, 427, 60),
    (452, 412, 67.2),
    (565, 381, 73),
    (678, 330, 77),
    (732, 298, 76),
)
BEST = (600, 365, 74)  # gpm, ft, percent
# Fox & McDonald, Introduction to Fluid Mechanics, Ex 10.3, a pump test (R2; 1,750 rpm from memory): gpm, suction
# and discharge psi, motor amps at 460 V, power factor 0.875, 90 %; gauges 1 and 3 ft up.
GAUGED = (
    (500, 0.25, 48.3, 26.2),
    (800, -0.35, 42.3, 31),
    (1000, -0.92, 36.9, 33.9),
    (1100, -1.24, 33, 35.2),
    (1200, -1.62, 27.8, 36.3),
)
EVEN = Supply(480, 460, (0.0, 0.0, 0.0), 7)


@pytest.mark.parametrize(("grade", "rows"), [("premium", PREMIUM), ("standard", STANDARD)])
def test_nominal_efficiencies_are_those_of_the_federal_tables(grade, rows):
    for size, *percents in rows:
        assert percents == [efficiency_of(size, poles, grade, "us") for poles in (2, 4, 6)]


def test_nominal_efficiencies_of_eight_poles():
    assert EIGHT == {size: efficiency_of(size, 8, "premium", "us") for size in EIGHT}


def test_locked_rotor_amps_are_those_of_the_code():
    assert {size: locked_amps(size, 460) for size in HELD} == HELD
    for size in motor_sizes("us"):
        for volts in (200, 230, 460, 575):
            kva = sqrt(3) * volts * locked_amps(size, volts) / 1000
            if size >= 15:  # R: about 5.8 kVA per hp from 15 hp up
                assert 5.8 == pytest.approx(kva / size, rel=0.07)


def test_full_load_amps_of_the_code_by_volts():
    assert (124, 248) == (table_amps(100, 460, "us"), table_amps(100, 230, "us"))  # R
    assert (27, 54, 22) == tuple(table_amps(20, volts, "us") for volts in (460, 230, 575))  # R


def a_motor(size: float, amps: float, speed: float) -> Motor:
    percent = efficiency_of(size, 4, "premium", "us")
    none = (0.0, 0.0, 0.0)
    return Motor(US, size, 4, "premium", 460, percent, amps, speed, 1.15, 6 * amps, 80, none)


@pytest.mark.parametrize(("size", "amps"), [(10, 12.9), (50, 60), (100, 115)])
def test_part_load_efficiency_peaks_near_three_quarters(size, amps):
    """US DOE, Determining Electric Motor Load and Efficiency (R2): half load is almost like full load."""
    motor = a_motor(size, amps, 1770)

    def percent(share: float) -> float:
        load = motor.at(share * size, EVEN)
        return 100 * share * size * US.kilowatts / load.kilowatts

    assert motor.efficiency == pytest.approx(percent(1))
    assert 1 >= abs(percent(0.5) - percent(1))
    best = max(range(20, 121), key=lambda share: percent(share / 100))
    assert best in range(55, 86)
    assert percent(0.25) < percent(0.5) - 2


@pytest.mark.parametrize(
    ("size", "amps", "factors"),
    [(10, 12.9, (0.79, 0.73, 0.61, 0.40)), (100, 115, (0.85, 0.82, 0.74, 0.53))],
)
def test_part_load_power_factor(size, amps, factors):
    """US DOE, Determining Electric Motor Load and Efficiency, Figure 2 (M, a graph: 0.05)."""
    motor = a_motor(size, amps, 1770)
    for share, factor in zip((1, 0.75, 0.5, 0.25), factors, strict=True):
        load = motor.at(share * size, EVEN)
        got = load.kilowatts / sqrt(load.kilowatts**2 + load.kvar**2)
        assert factor == pytest.approx(got, abs=0.05)


def test_a_motor_takes_what_its_nameplate_says_at_full_load():
    """Hubert, Electric Machines, Ex 4.6 (R2): 100 hp, 91 %, 230 V, 248 A: 81,978 W, PF 0.83."""
    none = (0.0, 0.0, 0.0)
    motor = Motor(US, 100, 4, "standard", 230, 91.0, 248, 1770, 1.0, 1450, 80, none)
    load = motor.at(100, Supply(240, 230, none, 7))
    assert 81.978 == pytest.approx(load.kilowatts, abs=0.05)
    assert 248 == pytest.approx(load.amps)
    assert 0.83 == pytest.approx(motor.power_factor, abs=0.001)
    assert 30 == pytest.approx(1800 * load.slip)


def the_tested_pump() -> Pump:
    flow, head, percent = BEST
    specific = US.specific_speed(4000, flow, head)
    assert 1173 == pytest.approx(specific, abs=3)
    return Pump(US, 4000, 1, flow, head, percent, *shape_of(specific), 0, 20, 130)


def test_a_tabulated_test_lies_near_the_shapes_of_the_curves():
    pump = the_tested_pump()
    for gpm, feet, hp in TESTED:
        assert feet == pytest.approx(pump.head_at(gpm, 4000), rel=0.025)
        assert hp == pytest.approx(pump.power_at(gpm, 4000), rel=0.06)


def test_the_best_point_of_a_tabulated_test_has_the_efficiency_of_the_surface():
    gpm, _, percent = BEST
    best, worst = (best_efficiency(gpm, 1173, quality) for quality in quality_of(4000, 1))
    assert worst <= percent <= best


def test_a_gauged_test_of_another_pump_lies_near_the_curves_too():
    def feet(suction: float, discharge: float) -> float:
        return (discharge - suction) * US.head + 2

    def horsepower(amps: float) -> float:
        return sqrt(3) * 460 * amps * 0.875 * 0.9 / 1000 / US.kilowatts

    _, suction, discharge, amps = GAUGED[2]
    flow, head = 1000, feet(suction, discharge)
    percent = 100 * flow * head / US.water_power / horsepower(amps)
    specific = US.specific_speed(1750, flow, head)
    good, poor = (best_efficiency(flow, specific, quality) for quality in quality_of(1750, 1))
    assert poor <= percent <= good
    pump = Pump(US, 1750, 1, flow, head, percent, *shape_of(specific), 0, 15, 130)
    for gpm, suction, discharge, amps in GAUGED:
        assert feet(suction, discharge) == pytest.approx(pump.head_at(gpm, 1750), rel=0.06)
        # The book takes one power factor at every load, so its power at low flow is rough.
        assert horsepower(amps) == pytest.approx(pump.power_at(gpm, 1750), rel=0.08)


def test_efficiency_falls_where_flows_are_small_or_impellers_narrow():
    """ANSI/HI and handbooks, charts of efficiency by flow and specific speed (M, a graph: 6 points)."""
    for gpm, specific, percent in (
        (100, 2000, 66),
        (100, 1000, 56),
        (500, 2000, 78),
        (500, 1000, 70),
        (1000, 2000, 81),
        (3000, 2500, 84),
    ):
        assert percent == pytest.approx(best_efficiency(gpm, specific, 130.5), abs=6)


def test_the_rule_for_an_impellers_diameter():
    """Abulencia & Theodore, Fluid Flow, Ex 22.4 (R2): 200 ft at 1,800 rpm, rim speed sqrt(2 g H): 1.20 ft."""
    assert 1.20 == pytest.approx(1840 * sqrt(200) / 1800 / 12, abs=0.005)
    for station in stations("us", each=1):
        pump = station.pump
        if station.kind.name == "low_lift":
            continue  # a propeller
        stage = pump.head_at(0, pump.speed) / pump.stages
        rim = pi * pump.diameter / 12 * pump.speed / 60
        assert 0.92 <= rim / sqrt(2 * US.gravity * stage) <= 1.25


def test_friction_in_a_main():
    """Vennard, Elementary Fluid Mechanics, Ex 9.10 (R2): 90 gpm, 3 in, 3,000 ft, C 140: 65.7 ft."""
    main = Main(US, 3, 3000, 140, 0, 0, 0, 0, 0, 0)
    assert 65.7 == pytest.approx(main.friction(90), rel=0.015)
    assert 176 == pytest.approx(2 / Main(US, 6, 1, 1, 0, 0, 0, 0, 0, 0).velocity(1), rel=0.002)


@pytest.mark.parametrize("celsius", [5, 10, 20, 30, 40])
def test_vapor_pressure_is_that_of_the_steam_tables(celsius):
    kilopascals = 1000 * IAPWS97(T=celsius + 273.15, x=0).P
    assert kilopascals == pytest.approx(vapor_head(celsius, SI) / SI.head, rel=0.005)


def test_unbalance_by_nema_and_its_heat():
    """Hubert Ex 5.14 (R2): 460, 455, 440 V: 2.58 %; 110 °C becomes 124.64 °C by twice the square."""
    assert 2.58 == pytest.approx(unbalance_of((460, 455, 440)), abs=0.005)
    assert 124.64 == pytest.approx(110 * (1 + 0.02 * 2.58**2), abs=0.01)


def test_megohms_by_temperature():
    """IEEE 43, factors to 40 °C (R2): 20 °C 0.25, 60 °C 4."""
    assert (400, 25) == (at_temperature(100, 20), at_temperature(100, 60))

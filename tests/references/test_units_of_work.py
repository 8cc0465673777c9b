"""Conversions of pump work as the solver's formulas make them, against published tables and sums."""

import pytest
from iapws import IAPWS97

from solver.topics.conversions.factors import WATER_MASS

from .published import CONSTANT, Row, every, worked

UTAH = "Utah Division of Drinking Water, Conversions, Formulas and Equations (2000)"
OKLAHOMA = "Oklahoma Water Resources Board, conversion table"
HOW_TO = "a how-to article on gallons per second and per minute"
OPERATORS = "an operators' magazine, math problems (2018)"
GAUGE_MAKER = "an instrument maker's note on pump gauges"
TRAINING = "a pump training text, pressure and head"
ENGINEERS = "an engineering firm's notes, the mathematics of pumping water"
NIST = "NIST SP 811 App. B"
EPANET = "US EPA, EPANET 2.2 source, types.h"

ROWS = [
    # Flow
    Row("448.8", "flow", "us", {"flow_per_second": 1}, UTAH, "R"),
    Row("450", "flow", "us", {"flow_per_second": 1}, OKLAHOMA, "R", CONSTANT),
    Row("18850.86", "flow", "us", {"flow_per_second": 42}, HOW_TO, "R", CONSTANT),
    Row("217", "flow_per_second", "us", {"daily_flow": 140}, OKLAHOMA, "R"),
    Row("1.55", "flow_per_second", "us", {"daily_flow": 1}, UTAH, "R"),
    Row("0.646", "daily_flow", "us", {"flow_per_second": 1}, OKLAHOMA, "R"),
    Row("0.0288", "daily_flow", "us", {"flow": 20}, f"{OPERATORS}, no. 1", "R"),
    Row("28800", "flow_per_day", "us", {"flow": 20}, f"{OPERATORS}, no. 1", "R"),
    Row("646272", "flow_per_day", "us", {"flow_per_second": 1}, UTAH, "R"),
    Row("1440", "flow_per_day", "us", {"flow": 1}, UTAH, "R"),
    Row("28.317", "flow", "si", {"flow_per_second": 0.028316847}, EPANET, "R"),
    Row("101.94", "flow_per_hour", "si", {"flow": 28.316847}, EPANET, "R"),
    Row("2446.6", "daily_flow", "si", {"flow": 28.316847}, EPANET, "R"),
    Row("2.4466", "flow_per_day", "si", {"flow": 28.316847}, EPANET, "R"),
    # Pressure and height of water
    Row("51.96", "gauge_pressure", "us", {"water_height": 120}, f"{OPERATORS}, no. 4", "R", CONSTANT),
    Row("2.31", "water_height", "us", {"gauge_pressure": 1}, UTAH, "R"),
    Row("34.6", "gauge_pressure", "us", {"water_height": 80}, GAUGE_MAKER, "R"),
    Row("46.154", "water_height", "us", {"gauge_pressure": 20}, "Solberg, Ex 9.2", "R2", CONSTANT),
    Row("0.102", "water_height", "si", {"gauge_pressure": 1}, ENGINEERS, "R"),
    Row("10.2", "water_height", "si", {"second_scale": 1}, TRAINING, "R"),
    Row("6.895", "second_scale", "us", {"gauge_pressure": 1}, EPANET, "R"),
    # Volume, weight and percent
    Row("7.480519", "water_volume", "us", {"volume_converted": 1}, NIST, "R2", CONSTANT),
    Row("62.4", "water_weight", "us", {"volume_converted": 1}, UTAH, "R", CONSTANT),
    Row("8.34", "water_weight", "us", {"water_volume": 1}, UTAH, "R"),
    Row("1", "water_weight", "si", {"volume_converted": 1}, UTAH, "R", 0, 1e-9),
    # Power
    Row("0.7457", "kilowatt_rating", "us", {"horsepower_rating": 1}, EPANET, "R", CONSTANT),
    Row("1.34", "horsepower_rating", "si", {"kilowatt_rating": 1}, "any handbook", "C"),
    Row("1", "horsepower_rating", "us", {"shaft_work": 33_000}, "the definition", "C", 0, 1e-9),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_conversion(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


@pytest.mark.parametrize("celsius", [5, 10, 15, 20, 25])
def test_the_weight_of_water_is_that_of_iapws_to_half_a_percent(celsius):
    """Water of wells and mains, by the International Association for the Properties of Water."""
    density = IAPWS97(T=celsius + 273.15, P=0.101325).rho
    assert density == pytest.approx(WATER_MASS.si.value, rel=0.005)
    for value in (WATER_MASS.us.value, *WATER_MASS.us.also):
        # 119.8264 kg/m3 is a pound a gallon: NIST SP 811 App. B, from memory.
        assert density == pytest.approx(value * 119.8264, rel=0.005)

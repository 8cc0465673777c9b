"""Kilowatt-hours, costs, bills and savings, against published worked examples."""

import pytest

from .published import CONSTANT, Row, every, worked

SHEET = "US DOE Motor Systems Tip Sheet"
SHEET_2, SHEET_7, SHEET_8 = f"{SHEET} 2 (-3734)", f"{SHEET} 7 (-3733)", f"{SHEET} 8 (-3732)"
FRANKLIN = "Franklin Electric, Franklin in the Field, 26 April 2011"
TOOLBOX = "Engineering ToolBox, Pumping Water - Energy Cost"
TURNER = "Turner (ed.), Energy Management Handbook, 18.5.1"
MEHTA = "Mehta, Ex 5.1, p. 91"
IRRIGATION = "Irrigation Australia Journal, Spring 2015, banana farm audit"

FACTORY = {"brake_power": 100, "motor_efficiency": 93, "new_motor_efficiency": 94.4}
YEAR = {"yearly_hours": 8000}


def at_three_quarters(size: float, old: float, new: float) -> dict[str, float]:
    """Tip Sheet 2: a motor at 75 % load for 8000 h, and a better one in its place."""
    return {
        "brake_power": 0.75 * size,
        "motor_efficiency": old,
        "new_motor_efficiency": new,
        **YEAR,
    }


PRICED = {"energy_price": 0.08}
FAN = {"peak_demand": 3.45, "demand_price": 8 * 12, "energy": 30_240, "fixed_charge": 0.0}
PEAK = {"energy": 200 * 0.40 * 8760, "peak_demand": 200, "demand_price": 100, "fixed_charge": 0.0}

ROWS = [
    # Savings by a better motor
    Row("9517", "saved_energy", "us", FACTORY | YEAR, SHEET_7, "R"),
    Row("760", "yearly_saving", "us", FACTORY | YEAR | PRICED, SHEET_7, "R", 0, 10),
    Row("520", "saved_energy", "us", at_three_quarters(10, 92.2, 93.2), SHEET_2, "R", 0, 5),
    Row("40", "yearly_saving", "us", at_three_quarters(10, 92.2, 93.2) | PRICED, SHEET_2, "R", 0, 5),
    Row("1260", "saved_energy", "us", at_three_quarters(25, 93.8, 94.8), SHEET_2, "R", 0, 5),
    Row(
        "100", "yearly_saving", "us", at_three_quarters(25, 93.8, 94.8) | PRICED, SHEET_2, "R", 0, 5
    ),
    Row("2455", "saved_energy", "us", at_three_quarters(50, 95, 96), SHEET_2, "R", 0, 5),
    Row("195", "yearly_saving", "us", at_three_quarters(50, 95, 96) | PRICED, SHEET_2, "R", 0, 5),
    # Bills: the price by the kilowatt and the price by the kilowatt-hour
    Row("331", "demand_charge", "us", FAN, SHEET_8, "R"),
    Row("2420", "energy_cost", "us", FAN | PRICED, SHEET_8, "R", 0, 10),
    Row("2750", "bill", "us", FAN | PRICED, SHEET_8, "R", 0, 10),
    Row("0.1285", "average_price", "us", PEAK | {"energy_price": 0.10}, MEHTA, "R2"),
    Row(
        "1661.01", "energy_cost", "us", {"energy": 17_588, "energy_price": 0.09444}, TURNER, "R2"
    ),
    Row(
        "1624.72", "bill", "us",
        {"energy": 17_588, "energy_price": 0.09444 - 0.017192, "peak_demand": 30,
         "demand_price": 262.34 / 30, "fixed_charge": 3.74},
        TURNER, "R2",
    ),
    # Energy and cost of pumping
    Row(
        "0.096", "energy_cost", "us", {"input_power": 0.96, "run_time": 1, "energy_price": 0.10},
        FRANKLIN, "R",
    ),
    Row(
        "160.3", "cost_per_volume", "us", {"flow": 10, "input_power": 0.96, "energy_price": 0.10},
        f"{FRANKLIN}: 6,240 gallons for a dollar", "R", CONSTANT,
    ),
    Row(
        "0.002", "energy_cost", "us",
        {"flow": 10, "head": 10, "pump_efficiency": 90, "motor_efficiency": 90, "run_time": 1,
         "energy_price": 0.1},
        TOOLBOX, "R",
    ),
    Row(
        "3.1416", "energy_per_volume", "us",
        {"flow": 1000, "head": 1, "pump_efficiency": 100, "motor_efficiency": 100},
        "arithmetic: kWh to lift a million gallons one foot, at 62.4 lb/ft3", "C", CONSTANT,
    ),
    Row(
        "3.15", "cost_per_volume", "us",
        {"flow": 1000, "head": 1, "pump_efficiency": 100, "motor_efficiency": 100,
         "energy_price": 1},
        "Pumps & Systems, Evans: 0.189 / 60 dollars a thousand gallons and foot", "R", CONSTANT,
    ),
    Row(
        "2.725", "energy_per_volume", "si",
        {"flow": 10, "head": 1, "pump_efficiency": 100, "motor_efficiency": 100},
        "arithmetic: 9.81 / 3.6 kWh to lift 1000 m3 one metre", "C", CONSTANT,
    ),
    Row(
        "6.34", "energy_per_volume", "si", {"flow": 17.5, "input_power": 34.6 / 86.6},
        f"{IRRIGATION}: kWh a megalitre and metre of 86.6", "R", CONSTANT,
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_energy_or_cost(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)

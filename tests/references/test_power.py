"""The three horsepowers and the efficiencies, against published worked examples."""

import pytest

from .published import CONSTANT, Row, every, worked

MERKLEY = "Merkley & Allen, Sprinkle & Trickle Irrigation, Utah State Univ., p. 123"
ALABAMA = "Alabama Extension ANR-0548"
DE_NEVERS = "de Nevers, Fluid Mechanics for Chemical Engineers, Ex 10.1"
CENGEL = "Cengel & Cimbala, Fluid Mechanics"
SOLBERG = "Solberg, Elementary Heat Power"
DORN = "Univ. of Nebraska CropWatch, Dorn 2008, Table 1"
STREAMLINE = "Virginia Rural Water Assoc., Streamline, Spring 2013, p. 41"
TOOLBOX = "Engineering ToolBox, Pumping Water - Required Horsepower"
EVANS = "Pumps & Systems, Evans, The Cost of Pumping: Power Cost and Efficiency"

FLOW_OF_8000_LB_MIN = 8000 / 62.4 * 7.480519  # gpm, at the 62.4 lb/ft3 of the source

ROWS = [
    # Definitions: what one unit of power is.
    Row("1", "water_power", "us", {"flow": 3956, "head": 1}, MERKLEY, "R2", CONSTANT, 1e-9),
    Row("1", "water_power", "si", {"flow": 102, "head": 1}, MERKLEY, "R2", 0, 1e-9),
    Row("0.746", "input_power", "us", {"motor_power": 1}, MERKLEY, "R2"),
    Row(
        "1", "brake_power", "us", {"flow": 1980, "head": 1, "pump_efficiency": 50},
        ALABAMA, "R", 0, 1e-9,
    ),
    Row(
        "1", "water_power", "us", {"flow": 1714, "pressure": 1},
        "Cameron Hydraulic Data, horsepower from gpm and psi", "M", CONSTANT, 1e-9,
    ),
    Row(
        "1", "water_power", "si", {"flow": 367 / 3.6, "head": 1},
        "Hydraulic Institute, kW from m3/h and metres over 367", "M", CONSTANT, 1e-9,
    ),
    # Water power
    Row(
        "22.876", "water_power", "us", {"flow": FLOW_OF_8000_LB_MIN, "head": 94.363},
        f"{SOLBERG}, Ex 9.8", "R2", CONSTANT,
    ),
    Row("0.10", "water_power", "us", {"flow": 20, "head": 20}, TOOLBOX, "R"),
    Row("1.26", "water_power", "us", {"flow": 50, "head": 100}, f"{TOOLBOX}, table", "R"),
    Row("0.909", "water_power", "us", {"flow": 40, "head": 90}, f"{TOOLBOX}, table", "R"),
    Row("0.0947", "water_power", "us", {"flow": 25, "head": 15}, f"{TOOLBOX}, table", "R"),
    Row("2.0", "water_power", "us", {"flow": 260, "head": 30}, f"{STREAMLINE}, no. 7", "R"),
    Row(
        "11.7", "water_power", "us",
        {"motor_power": 15.0, "motor_efficiency": 92, "pump_efficiency": 85},
        f"{STREAMLINE}, no. 8", "R",
    ),
    Row(
        "46.154", "head", "us", {"pressure": 20}, f"{SOLBERG}, Ex 9.2, at 62.4 lb/ft3", "R2",
        CONSTANT,
    ),
    Row("694.44", "flow", "us", {"daily_flow": 1}, "1 MGD in gpm, any handbook", "C", CONSTANT),
    # Brake power
    Row(
        "32.68", "brake_power", "us",
        {"flow": FLOW_OF_8000_LB_MIN, "head": 94.363, "pump_efficiency": 70},
        f"{SOLBERG}, Ex 9.8", "R2", CONSTANT,
    ),
    Row(
        "3.608", "brake_power", "us", {"flow": 100, "head": 100, "pump_efficiency": 70},
        "calculatorlib.com, Pump Horsepower, worked example", "R",
    ),
    Row(
        "15.2", "brake_power", "us", {"flow": 100, "head": 421, "pump_efficiency": 70},
        "Crane TP-410, power required for pumping", "M", CONSTANT,
    ),
    Row(
        "1.18", "brake_power", "us", {"input_power": 1, "motor_efficiency": 88}, DORN, "R"
    ),
    Row(
        "0.885", "water_power", "us",
        {"input_power": 1, "motor_efficiency": 88, "pump_efficiency": 75}, DORN, "R",
    ),
    # Efficiencies
    Row(
        "66", "overall_efficiency", "us", {"pump_efficiency": 75, "motor_efficiency": 88},
        DORN, "R",
    ),
    Row(
        "70", "overall_efficiency", "us", {"pump_efficiency": 78, "motor_efficiency": 90},
        EVANS, "R",
    ),
    Row(
        "72.9167", "pump_efficiency", "us", {"flow": 50, "pressure": 70, "brake_power": 2.8},
        DE_NEVERS, "R2", CONSTANT,
    ),
    Row(
        "74.1", "pump_efficiency", "si",
        {"flow": 50, "pressure": 200, "motor_power": 15, "motor_efficiency": 90},
        f"{CENGEL}, Ex 5-12", "R2",
    ),
    Row(
        "66.7", "overall_efficiency", "si", {"flow": 50, "pressure": 200, "motor_power": 15},
        f"{CENGEL}, Ex 5-12", "R2",
    ),
    # Rearranged: the flow a shaft power lifts
    Row(
        "12.7", "flow", "si", {"brake_power": 5, "pump_efficiency": 72, "head": 29},
        f"{CENGEL}, Ex 5-15", "R2",
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_power_or_efficiency(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)

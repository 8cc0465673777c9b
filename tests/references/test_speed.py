"""Speed and impeller, against published worked examples; curves against scipy's root finder."""

import pytest

from solver.topics.speed.curves import Curve, crossing

from .published import CONSTANT, Row, every, worked

SOLBERG = "Solberg, Elementary Heat Power, Ex 9.10"
TIP_SHEET_11 = "US DOE Motor Systems Tip Sheet 11 (DOE/GO-102012-3730)"
DOE_HANDBOOK = "DOE-HDBK-1012/3-92, Fluid Flow, p. 50"
PUMP_MAKER = "a pump maker's technical bulletin, a nomogram"
DESIGN_PAPER = "a paper on specific speed in new pump design"
TRIMMED = "US DOE Pumping Systems Tip Sheet 7 (2006): 14 in, 3,000 gpm, 165 to 125 ft"
TWICE = {"pump_speed": 1000, "new_speed": 2000}
TO_3600 = {"pump_speed": 1800, "new_speed": 3600}
TO_2000 = {"pump_speed": 1700, "new_speed": 2000}
CENGEL = "Cengel & Cimbala, Fluid Mechanics, pump between two reservoirs"

ROWS = [
    Row("2", "new_flow", "us", {"flow": 1, **TWICE}, SOLBERG, "R2"),
    Row("4", "new_head", "us", {"head": 1, **TWICE}, SOLBERG, "R2"),
    Row("8", "new_shaft_power", "us", {"brake_power": 1, **TWICE}, SOLBERG, "R2"),
    Row("48.8", "power_cut", "us", {"speed_cut": 20}, TIP_SHEET_11, "R"),
    Row("48.8", "power_cut", "si", {"pump_speed": 1450, "new_speed": 1160}, TIP_SHEET_11, "R"),
    Row("800", "new_flow", "us", {"flow": 400, **TO_3600}, DOE_HANDBOOK, "R"),
    Row("192", "new_head", "us", {"head": 48, **TO_3600}, DOE_HANDBOOK, "M"),
    Row("360", "new_shaft_power", "si", {"brake_power": 45, **TO_3600}, DOE_HANDBOOK, "M"),
    Row("235", "new_flow", "us", {"flow": 200, **TO_2000}, PUMP_MAKER, "R"),
    Row("83", "new_head", "us", {"head": 60, **TO_2000}, PUMP_MAKER, "R"),
    Row("8.1", "new_shaft_power", "us", {"brake_power": 5, **TO_2000}, PUMP_MAKER, "R"),
    Row(
        "2000", "new_speed", "us", {"pump_speed": 1700, "head": 60, "new_head": 83}, PUMP_MAKER, "R",
        CONSTANT,
    ),
    Row(
        "12.76", "new_diameter", "us",
        {"impeller_diameter": 14, "brake_power": 3000 * 165, "new_shaft_power": 3000 * 125},
        TRIMMED, "M",
    ),
    Row("2276", "specific_speed", "us", {"pump_speed": 1780, "flow": 95_000, "head": 1500}, DESIGN_PAPER, "R"),
    # A pump of head 7.46 - 0.0453 V^2 lifts 3.52 m through 0.0261 V^2: 7.43 L/min at 4.96 m. The
    # curve is given here by its head at 10 L/min.
    Row(
        "7.43", "flow", "si",
        {"shutoff_head": 7.46, "rated_head": 7.46 - 4.53, "rated_flow": 10, "static_head": 3.52,
         "rated_friction": 2.61},
        CENGEL, "M",
    ),
    Row(
        "4.96", "head", "si",
        {"shutoff_head": 7.46, "rated_head": 7.46 - 4.53, "rated_flow": 10, "static_head": 3.52,
         "rated_friction": 2.61},
        CENGEL, "M",
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_result(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


def test_the_curves_cross_where_the_book_has_it():
    # Cengel & Cimbala (M), in litres a minute and metres.
    at = crossing(Curve(7.46, -0.0453), Curve(3.52, 0.0261))
    assert (7.43, 4.96) == pytest.approx(at, abs=0.005)


@pytest.mark.parametrize(("flow", "head", "speed"), [(50, 30, 1450), (9, 12, 2900), (700, 8, 730)])
def test_us_specific_speed_is_51_6_times_the_metric_one(flow, head, speed):
    # Karassik, Pump Handbook (M): 51.64, in other books 51.65; from gpm and feet to m3/s and m.
    metric = worked(
        Row("0", "specific_speed", "si", {"pump_speed": speed, "flow": flow, "head": head}, "", "M")
    )
    gpm, feet = flow * 60 / 3.785411784, head / 0.3048
    us = worked(
        Row("0", "specific_speed", "us", {"pump_speed": speed, "flow": gpm, "head": feet}, "", "M")
    )
    assert 51.64 == pytest.approx(us / metric, abs=0.01)


def test_a_pump_that_lifts_saves_less_than_the_cube_law_promises():
    # US DOE Tip Sheet 11 (R): the cube law holds only with no static head. Half the flow, half of
    # the head static: power is 0.5 x (0.5 + 0.5 x 0.25) = 0.3125, by arithmetic; the cube is 0.125.
    given = {"input_power": 100, "flow": 1000, "new_flow": 500, "head": 80, "static_head": 40}
    lifting = worked(Row("31.25", "slowed_power", "us", given, TIP_SHEET_11, "R"))
    turning = {"input_power": 100, "pump_speed": 1760, "new_speed": 880}
    friction = worked(Row("12.5", "slowed_power", "us", turning, TIP_SHEET_11, "R"))
    assert 31.25 == pytest.approx(lifting)
    assert 12.5 == pytest.approx(friction)

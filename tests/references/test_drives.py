"""Belts, torque and wear rings, against published worked examples."""

import pytest

from .published import Row, every, worked

SARKAR = "B.K. Sarkar, Theory of Machines, ch 2 illustration 2 p.57"
WENTZELL = "T.H. Wentzell, Machine Design, Ex 14.2 p.310"
HUBERT = "C.I. Hubert, Electric Machines"
SULLIVAN = "J. Sullivan, Fluid Power, Ex 7.1 p.135, at 5250"
SHIMS = "a machine maker's alignment instructions: 30 in of 5 in, times 0.012 in, is 0.072 in"
HANDBOOK = "bearing handbooks: 0.005 D B, for a 6310 (110 by 27 mm)"

ROWS = [
    Row(
        "665.1", "pump_speed", "si",
        {"running_speed": 1200, "motor_sheave": 400, "pump_sheave": 700, "belt_slip": 3}, SARKAR, "R2",
    ),
    Row(
        "446.7", "pump_speed", "si",
        {"running_speed": 665.14, "motor_sheave": 450, "pump_sheave": 650, "belt_slip": 3},
        f"{SARKAR}: the second pair", "R2",
    ),
    Row(
        "1884.96", "belt_speed", "us", {"motor_sheave": 4, "running_speed": 1800}, WENTZELL, "R2",
        0.0006,
    ),
    Row(
        "119.98", "rated_torque", "us", {"motor_size": 40, "rated_speed": 1751},
        f"{HUBERT}, Ex 5.3 p.184", "R2",
    ),
    Row(
        "57.026", "shaft_torque", "us", {"brake_power": 19.1917, "pump_speed": 1767.53},
        f"{HUBERT}, Ex 4.5 p.152", "R2",
    ),
    Row(
        "15.217", "shaft_torque", "us", {"brake_power": 5, "pump_speed": 1725}, SULLIVAN, "R2", 0.0004,
    ),
    Row(
        "72", "shim_thickness", "us",
        {"wide_gap": 132, "narrow_gap": 120, "coupling_diameter": 5, "foot_spacing": 30}, SHIMS, "R",
    ),
    Row("14.85", "grease_amount", "si", {"bearing_diameter": 110, "bearing_width": 27}, HANDBOOK, "M"),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_result(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)

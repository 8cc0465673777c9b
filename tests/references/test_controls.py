"""Signals, reduced starting and batteries, against published rules and table values."""

import pytest

from .published import Row, every, worked

ISA = "ISA 50.00.01: 4 mA is 0 %, 12 mA is 50 %, 20 mA is 100 % of the range"
SOCIETY = (
    "International Society of Automation, linear transmitters: 50 to 250 psi, at 150 psi 12 mA"
)
WORKSHEET = "a worksheet for instrument technicians: 150 to 400 psi, at 10.6 mA"
EASA = "EASA Electrical Engineering Handbook, starting of squirrel-cage motors, autotransformer"
AT_TAPS = {80: "64", 65: "42", 50: "25"}  # percent of full-voltage amps and torque
DOE = "DOE-HDBK-1011, vol. 1 (from memory): watts over volts are amps"

ROWS = [
    *(
        Row(percent, "signal_percent", "us", {"loop_current": current}, ISA, "M")
        for current, percent in ((4, "0"), (8, "25"), (12, "50"), (16, "75"), (20, "100"))
    ),
    *(
        Row(percent, "tap_amps", "us", {"locked_rotor_amps": 100, "tap": tap}, EASA, "R2")
        for tap, percent in AT_TAPS.items()
    ),
    *(
        Row(percent, "start_torque", "us", {"start_volts": tap}, EASA, "R2")
        for tap, percent in AT_TAPS.items()
    ),
    Row(
        "150", "signal_level", "us", {"loop_current": 12, "signal_span": 200, "signal_zero": 50},
        SOCIETY, "R",
    ),
    Row(
        "253.125", "signal_level", "us",
        {"loop_current": 10.6, "signal_span": 250, "signal_zero": 150}, WORKSHEET, "R",
    ),
    Row("41.25", "signal_percent", "us", {"loop_current": 10.6}, WORKSHEET, "R"),
    Row("0.5", "standby_amps", "us", {"standby_watts": 12, "battery_volts": 24}, DOE, "M"),
    Row(
        "23.1", "signal_level", "us", {"loop_current": 20, "pressure_span": 10},
        "common practice: 2.31 ft of water for each psi", "C",
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_figure(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)

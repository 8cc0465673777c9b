"""Signals, reduced starting and batteries, against published rules and table values."""

import pytest

from .published import Row, every, worked

ISA = "ISA 50.00.01: 4 mA is 0 %, 12 mA is 50 %, 20 mA is 100 % of the range"
HUBERT = "Hubert, Electric Machines, ch 5 (from memory): an autotransformer's line amps and torque"
AT_TAPS = {80: "64", 65: "42", 50: "25"}  # percent of full-voltage amps and torque
DOE = "DOE-HDBK-1011, vol. 1 (from memory): watts over volts are amps"

ROWS = [
    *(
        Row(percent, "signal_percent", "us", {"loop_current": current}, ISA, "M")
        for current, percent in ((4, "0"), (8, "25"), (12, "50"), (16, "75"), (20, "100"))
    ),
    *(
        Row(percent, "tap_amps", "us", {"locked_rotor_amps": 100, "tap": tap}, HUBERT, "M")
        for tap, percent in AT_TAPS.items()
    ),
    *(
        Row(percent, "start_torque", "us", {"start_volts": tap}, HUBERT, "M")
        for tap, percent in AT_TAPS.items()
    ),
    Row("0.5", "standby_amps", "us", {"standby_watts": 12, "battery_volts": 24}, DOE, "M"),
    Row(
        "23.1", "signal_level", "us", {"loop_current": 20, "pressure_span": 10},
        "common practice: 2.31 ft of water for each psi", "C",
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_figure(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)

"""Standby power, against published worked examples."""

import pytest

from .published import Row, every, worked

# One 150 hp motor at 5.5 kVA/hp, one of 200 hp at 6, 75 kVA besides; staggered, the larger starts last.
MAGAZINE = "an engineers' magazine, generator sizing examples"
RUNNING = 150 * 0.746 / 0.95 / 0.86 + 75
NEC = "NEC Table 430.251(B): 435 A for 60 hp at 460 V, as 1.732 V A"
HUBERT = "C.I. Hubert, Electric Machines, Ex 4.1 p.140: 6 poles at 51 Hz, 1020 rpm"

ROWS = [
    Row("1412", "starting_peak", "us", {"running_kva": RUNNING, "starting_kva": 1200}, MAGAZINE, "R"),
    Row("34", "generator_load", "us", {"running_load": 342, "generator_rating": 1000}, MAGAZINE, "R"),
    Row("43", "generator_load", "us", {"running_load": 342, "generator_rating": 800}, MAGAZINE, "R"),
    Row("51", "generator_frequency", "us", {"engine_speed": 1020, "generator_poles": 6}, HUBERT, "R2"),
    Row(
        "347", "starting_peak", "us",
        {"running_kva": 0, "rated_volts": 460, "locked_rotor_amps": 435}, NEC, "R",
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_result(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)

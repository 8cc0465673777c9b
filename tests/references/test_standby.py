"""Standby power, against published worked examples."""

import pytest

from solver.topics.standby.stations import BURNS

from .published import Row, every, worked

# One 150 hp motor at 5.5 kVA/hp, one of 200 hp at 6, 75 kVA besides; staggered, the larger starts last.
MAGAZINE = "an engineers' magazine, generator sizing examples"
RUNNING = 150 * 0.746 / 0.95 / 0.86 + 75
NEC = "NEC Table 430.251(B): 435 A for 60 hp at 460 V, as 1.732 V A"
HUBERT = "C.I. Hubert, Electric Machines, Ex 4.1 p.140: 6 poles at 51 Hz, 1020 rpm"

INPUT = "C.I. Hubert, Electric Machines, Ex 4.6 p.159: 81,978 W at a power factor of 0.830, 230 V, 248 A"
SIZES = "a page of generator examples: 75 % of 50 kW, at 0.08 gal/kWh"
# A chart of approximate diesel use: kW, then L/h at 50, 75 and 100 % of it (R). One for gallons says as much.
CHART = {
    60: (11, 14.4, 18.2),
    200: (29.2, 41.7, 54.6),
    500: (70.1, 100, 135.2),
    1000: (137.8, 197.3, 269.2),
}

ROWS = [
    Row("1412", "starting_peak", "us", {"running_kva": RUNNING, "starting_kva": 1200}, MAGAZINE, "R"),
    Row("34", "generator_load", "us", {"running_load": 342, "generator_rating": 1000}, MAGAZINE, "R"),
    Row("43", "generator_load", "us", {"running_load": 342, "generator_rating": 800}, MAGAZINE, "R"),
    Row("248", "generator_amps", "us", {"generator_rating": 81.978, "generator_power_factor": 0.83, "generator_volts": 230}, INPUT, "R2"),
    Row("37.5", "running_load", "us", {"generator_rating": 50, "generator_load": 75}, SIZES, "R"),
    Row("3", "fuel_rate", "us", {"running_load": 37.5, "fuel_per_energy": 0.08}, SIZES, "R"),
    Row("57", "fuel_hours", "si", {"usable_fuel": 850, "fuel_rate": 15}, "a guide to a generator's run time, 150 kW", "R"),
    Row("51", "generator_frequency", "us", {"engine_speed": 1020, "generator_poles": 6}, HUBERT, "R2"),
    Row(
        "347", "starting_peak", "us",
        {"running_kva": 0, "rated_volts": 460, "locked_rotor_amps": 435}, NEC, "R",
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_result(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


def test_a_diesel_burns_per_kilowatt_hour_what_the_chart_says():
    low, high, _ = BURNS["si"]
    for size, burned in CHART.items():
        for load, liters in zip((0.5, 0.75, 1), burned, strict=True):
            assert low <= liters / (size * load) < high * 1.15
    assert [low, high] == pytest.approx([one * 3.785 for one in BURNS["us"][:2]], rel=0.02)

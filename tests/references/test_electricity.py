"""Circuits, wire, transformers and demand, against published worked examples and tables."""

import pytest

from solver.topics.tables import named_rows

from .published import Row, every, worked

BEISER = "Beiser, Basic Mathematics for Electricity"
KOSOW = "Kosow, Electric Machinery and Transformers, Ex 14.11, p. 504"
DOE = "DOE Fundamentals Handbook, Electrical Science, transformers, voltage ratio"
MEHTA = "Mehta, Principles of Power System"
NEETS = "Navy Electricity and Electronics Training Series, module 1, ch. 3 (from memory)"
COURSE = "an electrician's course on NEC Chapter 9 Table 8: No. 16, 4.99 ohms per 1,000 ft"
FULL_LOAD = "a transformer maker's table of full-load amperes, three-phase"
OD_1633 = "US Army Ordnance OD 1633, Ohm's law, figure 6"
PEAK = {"peak_demand": 240, "power_factor": 0.8}

ROWS = [
    # Ohm's law, watts and energy
    Row("10", "circuit_amps", "us", {"load_volts": 120, "load_ohms": 12}, f"{BEISER}, 1.1", "R2"),
    Row("4.8", "load_ohms", "us", {"load_volts": 120, "circuit_amps": 25}, f"{BEISER}, 1.11", "R2"),
    Row("22.5", "load_volts", "us", {"circuit_amps": 0.5, "load_ohms": 45}, OD_1633, "R"),
    Row("250", "load_volts", "us", {"load_watts": 10, "circuit_amps": 0.04}, f"{BEISER}, 3.3", "R2"),
    Row("200", "load_watts", "us", {"circuit_amps": 2, "load_ohms": 50}, f"{BEISER}, 3.5", "R2"),
    Row(
        "2.7", "energy", "us", {"load_volts": 240, "circuit_amps": 15, "run_time": 0.75},
        f"{BEISER}, 3.15", "R2",
    ),
    # Series and parallel
    Row(
        "55", "loop_ohms", "us", {"series_ohms_1": 10, "series_ohms_2": 15, "series_ohms_3": 30},
        NEETS, "M",
    ),
    Row("12", "parallel_ohms", "us", {"parallel_ohms_1": 20, "parallel_ohms_2": 30}, NEETS, "M"),
    Row(
        "9.23", "parallel_ohms", "us",
        {"parallel_ohms_1": 20, "parallel_ohms_2": 30, "parallel_ohms_3": 40}, NEETS, "M",
    ),
    # Voltage drop
    Row(
        "4.0", "voltage_drop", "us", {"run_length": 100, "wire_ohms": 4.99, "single_amps": 4},
        COURSE, "R",
    ),
    # Transformers
    *(
        Row(
            amps, "transformer_amps", "us", {"transformer_kva": kva, "line_volts": volts},
            f"{FULL_LOAD}: {kva:g} kVA, {volts} V", "R", rounded_to=2,
        )
        for kva, volts, amps in ((75, 480, "90"), (112.5, 208, "312"), (150, 480, "180"), (500, 480, "601"))
    ),
    Row(
        "600", "secondary_volts", "us", {"primary_volts": 120, "turns_ratio": 100 / 500},
        f"{BEISER}, 13.9", "R2",
    ),
    Row(
        "0.6", "secondary_amps", "us", {"primary_amps": 3, "turns_ratio": 100 / 500},
        f"{BEISER}, 13.9", "R2",
    ),
    Row("15", "primary_volts", "us", {"secondary_volts": 60, "turns_ratio": 1 / 4}, DOE, "R"),
    Row(
        "2174", "control_amps", "us", {"transformer_va": 500_000, "secondary_volts": 230}, KOSOW, "R2",
    ),
    Row(
        "217.4", "primary_amps", "us",
        {"secondary_amps": 2174, "primary_volts": 2300, "secondary_volts": 230}, KOSOW, "R2",
    ),
    # Demand by the kVA, and load factor
    Row("300", "billed_kva", "us", PEAK, f"{MEHTA}, Ex 5.9, p. 95", "R2"),
    Row(
        "15000", "kva_charge", "us", PEAK | {"kva_price": 50}, f"{MEHTA}, Ex 5.9: a year", "R2",
    ),
    Row(
        "23", "load_factor", "us", {"energy": 1531, "peak_demand": 9.245, "days": 30},
        "Iowa Lakes Electric Cooperative, load factor", "R",
    ),
    Row(
        "700800", "energy", "us", {"peak_demand": 200, "load_factor": 40, "period_hours": 8760},
        f"{MEHTA}, Ex 5.1, p. 91: a year", "R2",
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_figure(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


# NEC (NFPA 70) Chapter 9 Table 8, ohms per 1,000 ft at 75 °C, uncoated copper (R).
TABLE_8 = {
    "6": (26_240, 0.491),
    "4": (41_740, 0.308),
    "2": (66_360, 0.194),
    "4/0": (211_600, 0.0608),
}


def test_wire_is_that_of_the_nec():
    found = {size: named_rows("wire_us")[size][:2] for size in TABLE_8}
    assert found == TABLE_8


@pytest.mark.parametrize("table", ["wire_us", "wire_si"])
def test_the_rule_for_copper_gives_the_ohms_of_the_tables(table):
    units = table[-2:]
    for area, ohms, _ in named_rows(table).values():
        given = {"run_length": 100, "single_amps": 20}
        ways = [
            Row("1", "voltage_drop", units, given | {name: value}, "", "R")
            for name, value in (("wire_area", area), ("wire_ohms", ohms))
        ]
        by_area, by_table = map(worked, ways)
        assert by_area == pytest.approx(by_table, rel=0.045), area  # a 50 mm2 strand has less

"""Insulation and windings, against standards, manuals and circuits worked by numpy."""

from math import inf

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver import draw, family_named
from solver.engine.draw import Draw
from solver.station.condition import between_leads
from solver.topics.insulation.judgments_test import CLASS_VOLTS, NETA
from solver.topics.limits import (
    FORM_INSULATION,
    FORM_OHMS,
    POLARIZATION,
    RANDOM_INSULATION,
    RANDOM_OHMS,
)
from solver.topics.tables import table_rows

from .published import Row, every, worked

TESTER = "an insulation tester's manual"
IEEE = "IEEE 43, factors to 40 °C"
OLDER = "an equipment maker's manual: megohms = kV + 1"
INDEX = "a worked polarization index"


def brought(reading: float, temperature: float) -> dict[str, float]:
    return {"insulation": reading, "winding_temperature": temperature}


ROWS = [
    # Temperature
    Row("0.25", "insulation_at_40", "us", brought(1, 20), IEEE, "R2"),
    Row("0.3536", "insulation_at_40", "us", brought(1, 25), IEEE, "R2"),
    Row("0.5", "insulation_at_40", "si", brought(1, 30), IEEE, "R2"),
    Row("2", "insulation_at_40", "si", brought(1, 50), IEEE, "R2", 0, 1e-9),
    Row("4", "insulation_at_40", "us", brought(1, 60), IEEE, "R2", 0, 1e-9),
    Row("8", "insulation_at_40", "us", brought(1, 70), IEEE, "R2", 0, 1e-9),
    Row(
        "75", "insulation", "us", {"insulation_at_40": 150 / 4, "winding_temperature": 30},
        f"{TESTER}: 150 megohms at 20 °C are 75 at 30 °C", "R",
    ),
    # Least resistance, index and ratio
    Row("5.16", "least_insulation", "us", {"rated_volts": 4160}, OLDER, "R"),
    Row("1.46", "least_insulation", "us", {"rated_volts": 460}, OLDER, "R"),
    Row(
        "4", "polarization_index", "us", {"insulation_1min": 500, "insulation_10min": 2000},
        INDEX, "R", 0, 1e-9,
    ),
    Row("40", "ground_time", "us", {"test_time": 10}, "IEEE 43: four times the test", "M", 0, 1e-9),
    Row(
        "500", "insulation", "us", {"test_volts": 500, "leakage_current": 1},
        "Ohm's law: a microamp at 500 V", "C", 0, 1e-9,
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_megohms(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


@pytest.mark.parametrize(("temperature", "factor"), [(10, 0.5), (20, 1.0), (30, 2.0), (40, 4.0)])
def test_readings_brought_to_20_degrees_have_the_factors_of_the_meters_manual(temperature, factor):
    # R: an insulation tester's manual, Fig 3. Between the tens and above 40 °C it goes straight.
    row = Row("1", "insulation_at_40", "us", brought(1, temperature), TESTER, "R")
    at_20 = Row("1", "insulation_at_40", "us", brought(1, 20), TESTER, "R")
    assert factor == pytest.approx(worked(row) / worked(at_20))


# IEEE 43-2000 (R: a note on testers), in the order of its rows.
TEST_VOLTS = [(500, 500), (500, 1000), (1000, 2500), (2500, 5000), (5000, 10_000)]


def test_test_volts_are_those_of_ieee_43():
    assert TEST_VOLTS == [(r["least"], r["most"]) for r in table_rows("insulation_tests")]
    assert [0, 1000, 2501, 5001, 12_001] == [r["rated"] for r in table_rows("insulation_tests")]


def test_test_volts_of_cable_and_starter_are_those_of_neta():
    # R: a copy of ANSI/NETA MTS-2019, Table 100.1; its note 5 sends rotating machines to Table 100.11.
    published = {250: 500, 600: 1000, 1000: 1000, 2500: 1000, 5000: 2500}
    read = {
        tuple(float(part.split()[-3 if "class" in part else 0].replace(",", "")) for part in row)
        for row in NETA
    }
    assert 4 == len(read)
    assert read <= set(published.items())
    assert CLASS_VOLTS == published[600]


def test_the_least_resistances_are_those_of_ieee_43():
    # R: NETA World tech quiz 68, Summer 2004, on IEEE 43.
    assert (5, 100) == (RANDOM_INSULATION.low, FORM_INSULATION.low)


def test_the_least_indexes_are_those_of_ieee_43():
    # R: another tester's manual on IEEE 43-2000: class A 1.5, class B, F and H 2.0.
    assert (1.5, 2.0) == (POLARIZATION.low, POLARIZATION.high)


def test_the_limits_of_winding_resistance_are_those_of_easa():
    # R2: ANSI/EASA AR100-2020: within 2 % random-wound, 1 % form-wound, of the average.
    assert (2, 1) == (RANDOM_OHMS.high, FORM_OHMS.high)


def judged(family: str, values: dict[str, float], level: int = 1) -> str:
    """What a family's judge says of these values: the id of the right choice."""
    found = family_named(family)
    judge = found.level(level).judge or found.judge
    return judge(values, "us", Draw("a manual")).right.id


@pytest.mark.parametrize(
    ("ratio", "index", "condition"),
    # R: an insulation tester's manual: bad below 1; unreliable to 1.25 and 2; then OK, excellent.
    [(0.9, 0.9, "bad"), (1.1, 1.4, "unreliable"), (1.5, 3.0, "ok"), (1.7, 4.5, "excellent")],
)
def test_a_ratio_and_an_index_are_judged_as_the_meters_manual_judges_them(ratio, index, condition):
    as_here = {"bad": "falling", "ok": "good", "excellent": "good"}
    expected = as_here.get(condition, "questionable")
    assert expected == judged("ratio_limit", {"absorption_ratio": ratio})
    expected = as_here.get(condition, "under")
    assert expected == judged("index_limit", {"polarization_index": index})


def test_an_index_does_not_count_where_a_minute_gives_more_than_5_000_megohms():
    # R: NETA World tech quiz 68 on IEEE 43: above 5 gigohms the index is not valid.
    values = {"insulation_1min": 7000, "insulation_10min": 9000, "polarization_index": 9 / 7}
    assert "not_used" == judged("index_limit", values, level=3)


def in_numpy(kind: str, phases: tuple[float, ...]) -> list[float]:
    """Ohms between leads 1-2, 2-3 and 3-1 by the conductances of the circuit (Kirchhoff)."""
    ends = {"wye": [(0, 3), (1, 3), (2, 3)], "delta": [(0, 1), (1, 2), (2, 0)]}[kind]
    nodes = np.zeros((4, 4))
    for (one, other), ohms in zip(ends, phases, strict=True):
        siemens = 0 if ohms == inf else 1 / max(ohms, 1e-9)
        nodes[[one, other], [one, other]] += siemens
        nodes[[one, other], [other, one]] -= siemens
    potentials = np.linalg.pinv(nodes)
    pairs = ((0, 1), (1, 2), (2, 0))
    return [potentials[a, a] + potentials[b, b] - 2 * potentials[a, b] for a, b in pairs]


ohms = st.floats(0.05, 20)


@given(st.sampled_from(["wye", "delta"]), ohms, ohms, ohms)
def test_ohms_between_leads_are_those_of_the_circuit(kind, a, b, c):
    assert in_numpy(kind, (a, b, c)) == pytest.approx(between_leads(kind, (a, b, c)), rel=1e-6)


@given(ohms, ohms)
def test_a_delta_with_an_open_phase_reads_through_the_other_two(a, b):
    assert in_numpy("delta", (a, b, inf)) == pytest.approx(between_leads("delta", (a, b, inf)))


@pytest.mark.parametrize(
    ("kind", "phases", "shares"),
    [
        # Arithmetic, over the healthy reading.
        ("delta", (1, 1, inf), (1.5, 1.5, 3)),
        ("delta", (1, 1, 0), (0.75, 0.75, 0)),
        ("wye", (1, 1, 0), (1, 0.5, 0.5)),
        ("wye", (1, 1, inf), (1, inf, inf)),
    ],
)
def test_one_open_or_shorted_phase_reads_these_shares_of_a_healthy_one(kind, phases, shares):
    healthy = between_leads(kind, (1, 1, 1))[0]
    assert shares == pytest.approx([each / healthy for each in between_leads(kind, phases)])


def test_a_wye_reads_twice_its_coils():
    # R: worked by hand: two coils in series.
    assert (2, 2, 2) == between_leads("wye", (1, 1, 1))


@pytest.mark.parametrize("units", ["us", "si"])
def test_low_and_high_readings_are_told_as_the_pump_makers_manual_tells_them(units):
    # R: a motor maker's manual, winding resistance: one less than normal, shorted; one greater
    # than normal, an open winding or cable or a poor joint; all normal, neither.
    told = {"lower": "shorted", "higher": "bad connection", "normal": "good"}
    for seed in range(60):
        case = draw("fault_named", seed, units, level=1)
        normal = case.given["ohms_healthy"]
        shares = [case.given[name] / normal for name in ("ohms_12", "ohms_23", "ohms_31")]
        seen = "lower" if min(shares) < 0.98 else "higher" if max(shares) > 1.02 else "normal"
        assert told[seen] in case.choices[int(case.answer) - 1], case.code

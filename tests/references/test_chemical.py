"""Chemical feed, against published worked examples."""

import pytest

from .published import Row, every, worked

VCCS = "Mountain Empire CC (VCCS) course, chemical dosages"
NESC = "NESC (Satterfield) formulas, how-to copy"
SWRCB = "California SWRCB, Example Calculations of Chlorine Dosage, Feb 2018"

WORKSHEET = "a wastewater operators' math worksheet of 2018, question 4"

ROWS = [
    Row("2252", "chemical_feed", "us", {"daily_flow": 15, "dose": 18}, VCCS, "R"),
    Row("50", "chemical_feed", "us", {"daily_flow": 1.5, "dose": 4}, NESC, "R"),
    Row("63", "chemical_feed", "us", {"flow": 250, "dose": 21}, WORKSHEET, "R"),
    Row("18", "dose", "us", {"daily_flow": 15, "chemical_feed": 2252}, f"{VCCS}, solved for the dose", "R"),
    # 11 gal of 0.5 % hypochlorite into 40,000 gal.
    Row(
        "1.31", "dose", "us",
        {
            "solution_flow": 11, "solution_strength": 0.5 * 0.9525, "specific_gravity": 1,
            "daily_flow": 0.04,
        },
        f"{SWRCB}, example 1", "R",
    ),
    # 40 mL/min of 0.25 % hypochlorite into 35 gpm; as chlorine it is 0.9525 of that, and it weighs as water.
    Row(
        "0.72", "dose", "us",
        {
            "solution_minute": 40, "solution_strength": 0.25 * 0.9525, "specific_gravity": 1,
            "daily_flow": 35 / 694.4,
        },
        f"{SWRCB}, example 2", "R",
    ),
    Row(
        "4", "strong_volume", "us",
        {"strong_strength": 12.5, "mixed_strength": 5, "mixed_volume": 10}, "C1 V1 = C2 V2", "C",
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_result(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)

"""Pump curves and kinds of pumps, against published worked examples; a sheet against a tabulated test."""

from dataclasses import replace

import pytest

from solver.scenario import Place
from solver.station.sheet import sheet_of
from solver.station.town import town_station

from .published import CONSTANT, Row, every, worked

SULLIVAN = "J. Sullivan, Fluid Power"
ABULENCIA = "Abulencia & Theodore, Fluid Flow, Ex 22.4 (1.20 ft)"
INCHES = 231  # cubic inches in a gallon

ROWS = [
    Row("97.067", "volumetric_efficiency", "us", {"turn_volume": 3.75 / INCHES, "rotor_speed": 3300, "pd_output": 52}, f"{SULLIVAN}, Ex 7.2", "R2"),
    Row("2.933", "pump_slip", "us", {"turn_volume": 3.75 / INCHES, "rotor_speed": 3300, "pd_output": 52}, f"{SULLIVAN}, Ex 7.2, the rest to 100", "R2"),
    Row("866.25", "rotor_speed", "us", {"theoretical_output": 7.5, "turn_volume": 2 / INCHES}, f"{SULLIVAN}, Ex 9.2", "R2"),
    Row("8.095", "theoretical_output", "us", {"turn_volume": 0.55 / INCHES, "rotor_speed": 3400}, f"{SULLIVAN}, Ex 9.3", "R2"),
    Row("14.688", "stroke_volume", "us", {"plunger_diameter": 6, "plunger_stroke": 120}, f"{SULLIVAN}, Ex 7.5", "R2", CONSTANT),
    Row("14.4", "impeller_estimate", "us", {"tested_shutoff": 200, "pump_speed": 1800}, ABULENCIA, "R2", rounded_to=0.12),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_result(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


# Lobanoff & Ross, Centrifugal Pumps, Table 2-4 (read): gpm, ft, percent and hp of one pump at 4,000 rpm, but for
# two rows in which they do not agree.
TABULATED = (
    (113, 443, 28, 45),
    (226, 438, 48, 52),
    (565, 381, 74, 73),
    (678, 330, 73, 77),
    (732, 298, 72, 76),
)
BEST = (600, 365, 74)


@pytest.mark.parametrize(("flow", "head", "efficiency", "power"), TABULATED)
def test_a_sheet_of_such_a_pump_reads_like_the_tabulated_test(flow, head, efficiency, power):
    station = town_station(Place("Pump 4", "the plant's influent building"))
    best_flow, best_head, best = BEST
    pump = replace(
        station.pump, speed=4000.0, flow=best_flow, head=best_head, efficiency=best,
        shutoff=445 / 365, bend=2.4, power_at_none=0.49,
    )  # fmt: skip
    sheet = replace(sheet_of(station), pump=pump, speed=4000.0)
    assert (head, efficiency, power) == pytest.approx(sheet.at(flow)[:3], rel=0.08)

"""`python -m solver station`, for people and for programs."""

import json

import pytest

from solver.__main__ import main
from solver.render.station import station_text
from solver.station.curves import curve_points
from solver.station.drawn import seeded
from solver.station.faults import FAULTS, applies

from .stations import BOTH


def test_a_person_sees_nameplates_readings_and_curves(capsys):
    assert 0 == main(["station", "--seed", "4"])
    shown = capsys.readouterr().out
    for heading in ("Motor nameplate", "Pump nameplate", "Water", "Power", "Bill", "Curves"):
        assert heading in shown
    assert "wire-to-water efficiency" in shown
    assert max(map(len, shown.splitlines())) <= 90


@pytest.mark.parametrize("units", BOTH)
def test_a_program_gets_every_reading_unrounded_with_its_unit(units, capsys):
    assert 0 == main(["station", "--seed", "4", "--units", units, "--json"])
    data = json.loads(capsys.readouterr().out)
    assert units == data["units"]
    readings = data["readings"]
    assert {"value", "noted", "unit"} == set(readings["flow"])
    assert readings["flow"]["unit"] == ("gpm" if units == "us" else "L/s")
    assert len(readings) > 150
    assert data["fault"] is None is data["before"]
    assert 25 == len(data["curves"])


def test_a_fault_is_shown_beside_what_was_before(capsys):
    assert 0 == main(["station", "--seed", "4", "--fault", "worn_rings"])
    shown = capsys.readouterr().out
    assert "Fault: worn wear rings." in shown
    assert "before" in shown
    assert 0 == main(["station", "--seed", "4", "--fault", "worn_rings", "--json"])
    data = json.loads(capsys.readouterr().out)
    assert data["readings"]["flow"]["value"] < data["before"]["flow"]["value"]


def test_a_fault_that_the_station_cannot_have_names_a_seed_that_can(capsys):
    seed = next(n for n in range(99) if not applies(FAULTS["stuck_float"], seeded(n, "us")))
    assert 2 == main(["station", "--seed", f"{seed}", "--fault", "stuck_float"])
    said = capsys.readouterr().err
    assert f"The station of seed {seed} has no part that could have “off float stuck”." in said
    other = said.split("Seed ")[1].split()[0]
    assert 0 == main(["station", "--seed", other, "--fault", "stuck_float"])


def test_an_unknown_fault_names_those_there_are(capsys):
    assert 2 == main(["station", "--seed", "1", "--fault", "rust"])
    assert "No fault is called “rust”. Use one of: worn_rings" in capsys.readouterr().err


@pytest.mark.parametrize("units", BOTH)
@pytest.mark.parametrize("fault", ["", *FAULTS])
def test_every_fault_can_be_shown(fault, units):
    for seed in range(12):
        station = seeded(seed, units)
        if not fault or applies(FAULTS[fault], station):
            assert station_text(seeded(seed, units, fault))


@pytest.mark.parametrize("units", BOTH)
def test_the_curves_cross_where_the_pump_works(units):
    for seed in range(20):
        station = seeded(seed, units)
        points = curve_points(station, 200)
        above = [point for point in points if point.head >= point.system_head]
        step = points[1].flow
        assert above[-1].flow == pytest.approx(station.running.flow, abs=step)

"""Over 200 problems are what they were: an unnoticed change to any problem fails here.

Where a change is meant, see the first lines of make.py beside this file.
"""

import json

import pytest

from solver import case_from_code
from solver.fault.case import LEVELS, case_of
from tests.in_one import in_one
from tests.solver.drawn import PROBLEMS

from . import catalogue, faults, make

KEPT = make.kept()


@in_one("row", KEPT, lambda row: row["code"])
def test_a_problem_is_what_it_was(row):
    """Texts to the letter; values to 12 figures, as mathematics libraries differ in the last."""
    now = make.as_kept(case_from_code(row["code"]))
    assert row["question"] == now["question"]
    assert row["choices"] == now["choices"]
    assert row["unit"] == now["unit"]
    for name in ("given", "mistakes"):
        assert row[name] == pytest.approx(now[name], rel=1e-12, abs=1e-12), name
        assert list(row[name]) == list(now[name]), f"the order of {name}"
    expected = [row["answer"], *row["accepted"]]
    assert expected == pytest.approx([now["answer"], *now["accepted"]], rel=1e-12)


@in_one("row", faults.kept(), lambda row: row["code"])
def test_a_case_of_find_the_fault_is_what_it_was(row):
    now = json.loads(json.dumps(faults.as_kept(case_of(row["code"]))))
    for name in ("report", "suspects", "sure_way"):
        assert row[name] == now[name], name
    for name in ("fault", "off"):
        assert row[name][0] == now[name][0]
        assert row[name][1] == pytest.approx(now[name][1], rel=1e-12)
    for act, found in {**row["finds"], "": row["last_year"]}.items():
        again = now["finds"][act] if act else now["last_year"]
        assert list(found) == list(again), act
        for name, value in found.items():
            exact = isinstance(value, str)
            assert value == (again[name] if exact else pytest.approx(again[name], rel=1e-9)), name


def test_cases_of_every_level_and_system_are_kept():
    held = {(case.level, case.units) for case in (case_of(row["code"]) for row in faults.kept())}
    assert {(level, units) for level in LEVELS for units in ("us", "si")} == held


def test_every_family_level_and_system_that_was_given_out_is_kept():
    """One that is new may still change: a release makes the file again with it."""
    given_out = max(map(int, catalogue.kept()))
    cases = [case_from_code(row["code"]) for row in KEPT]
    held = {(case.family.name, case.level, case.units) for case in cases}
    wanted = {
        (family.name, level, units)
        for family, level, units in PROBLEMS
        if (family.level(level).since or family.since) <= given_out
    }
    assert set() == wanted - held
    assert len(KEPT) >= make.COUNT


def test_the_file_is_not_written_over_a_change_that_no_revision_tells(
    tmp_path, monkeypatch, capsys
):
    copy = tmp_path / "cases.json"
    monkeypatch.setattr(make, "FILE", copy)
    monkeypatch.setattr(make, "PROBLEMS", PROBLEMS[:40])  # of a few, which is soon done
    monkeypatch.setattr(make.faults, "FILE", tmp_path / "faults.json")
    assert 0 == make.main([])
    whole = copy.read_text("utf-8")
    first = KEPT[0]["code"]
    copy.write_text(whole.replace('"answer": ', '"answer": 1', 1), "utf-8")
    assert 1 == make.main([])
    assert f"1 problems changed, and their codes did not: {first}" in capsys.readouterr().out
    assert whole != copy.read_text("utf-8")
    assert 0 == make.main(["--unreleased"])
    assert whole == copy.read_text("utf-8")

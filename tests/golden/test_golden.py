"""Over 200 problems are what they were: an unnoticed change to any problem fails here.

Where a change is meant, see the first lines of make.py beside this file.
"""

import pytest

from solver import case_from_code
from tests.solver.drawn import PROBLEMS

from . import catalogue, make

KEPT = make.kept()


@pytest.mark.parametrize("row", KEPT, ids=lambda row: row["code"])
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
    assert 0 == make.main([])
    whole = copy.read_text("utf-8")
    first = KEPT[0]["code"]
    copy.write_text(whole.replace('"answer": ', '"answer": 1', 1), "utf-8")
    assert 1 == make.main([])
    assert f"1 problems changed, and their codes did not: {first}" in capsys.readouterr().out
    assert whole != copy.read_text("utf-8")
    assert 0 == make.main(["--unreleased"])
    assert whole == copy.read_text("utf-8")

"""No family changes without a new edition of exams; see edition.py beside this file."""

from dataclasses import replace

from solver import FAMILIES

from . import edition


def test_the_families_are_those_of_this_edition_of_exams():
    assert "" == edition.fault(edition.kept(), edition.now())


def test_a_family_that_changes_moves_or_goes_asks_for_a_new_edition():
    first, *rest = FAMILIES
    raised = replace(first, revision=first.revision + 1)
    fewer = replace(first, levels=first.levels[:-1])
    for changed in ([raised, *rest], [fewer, *rest], rest, [*rest, first]):
        assert edition.RAISE == edition.fault(edition.now(), edition.now(changed))
        raised_too = edition.now(changed, edition.EDITION + 1)
        assert "EDITION was raised" in edition.fault(edition.now(), raised_too)


def test_the_file_is_not_written_over_a_change_that_no_edition_tells(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(edition, "FILE", tmp_path / "edition.json")
    assert 0 == edition.main([])
    monkeypatch.setattr(edition, "now", lambda: {"edition": edition.EDITION, "families": "other"})
    assert 1 == edition.main([])
    assert edition.RAISE in capsys.readouterr().out
    assert 0 == edition.main(["--unreleased"])
    assert "other" == edition.kept()["families"]

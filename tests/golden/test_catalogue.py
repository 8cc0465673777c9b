"""No catalogue that was given out is disturbed; see catalogue.py beside this file."""

from dataclasses import replace

import pytest

from solver import FAMILIES
from solver.engine.family import Small
from solver.topics import catalogue as solvers
from solver.topics.catalogue import Gone

from . import catalogue

FIRST, *REST = FAMILIES
FIRST = replace(FIRST, revised=())
NEXT = max(map(int, catalogue.kept())) + 1
LEVEL = replace(
    FIRST.levels[-1], since=NEXT, scene=Small(lambda *drawn: FIRST.scene(*drawn).values)
)
NEW = replace(FIRST, tag="QQ", name="another", since=NEXT)
LEFT = Gone(
    FIRST.tag, FIRST.name, FIRST.chapter, FIRST.title, 1, NEXT - 1, (1,) * len(FIRST.levels)
)


def test_what_is_new_says_the_number_of_the_next_catalogue():
    assert solvers.CATALOGUE <= NEXT, f"write since={NEXT}, one above the last given out"


@pytest.fixture
def now(monkeypatch):
    """Other families than there are."""

    def having(families, gone=()):
        monkeypatch.setattr(solvers, "FAMILIES", tuple(families))
        monkeypatch.setattr(solvers, "GONE", tuple(gone))
        solvers.kinds_at.cache_clear()

    yield having
    monkeypatch.undo()
    solvers.kinds_at.cache_clear()


def test_no_catalogue_that_was_given_out_is_disturbed():
    assert "" == catalogue.fault()


@pytest.mark.parametrize(
    ("families", "gone"),
    [
        ([*FAMILIES, NEW], ()),
        ([NEW, *FAMILIES], ()),
        ([replace(FIRST, levels=(*FIRST.levels, LEVEL)), *REST], ()),
        ([replace(FIRST, revised=(*FIRST.revised, NEXT)), *REST], ()),
        (REST, (LEFT,)),
        (FAMILIES[::-1], ()),
    ],
    ids=["new", "new before all", "level", "revised", "gone", "moved"],
)
def test_what_says_since_when_it_is_there_disturbs_none(now, families, gone):
    now(families, gone)
    assert "" == catalogue.fault()


@pytest.mark.parametrize(
    ("families", "what"),
    [
        ([*FAMILIES, replace(NEW, since=1)], "another"),
        ([replace(FIRST, levels=(*FIRST.levels, replace(LEVEL, since=0))), *REST], FIRST.name),
        ([replace(FIRST, since=NEXT), *REST], FIRST.name),
        ([replace(FIRST, levels=FIRST.levels[:-1]), *REST], FIRST.name),
        ([replace(FIRST, chapter="cost"), *REST], FIRST.name),
        (REST, FIRST.name),
    ],
    ids=["new", "level", "since", "level gone", "moved", "gone"],
)
def test_a_change_that_does_not_say_since_when_is_told(now, families, what):
    now(families)
    assert rf"{what} revision" in catalogue.fault()
    assert f"since={NEXT}" in catalogue.fault()


def test_the_file_is_not_written_over_a_disturbed_catalogue(now, tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(catalogue, "FILE", tmp_path / "catalogue.json")
    assert 0 == catalogue.main()
    held = catalogue.kept()
    now(REST)
    assert 1 == catalogue.main()
    assert "The families of a catalogue that was given out changed" in capsys.readouterr().out
    assert held == catalogue.kept()

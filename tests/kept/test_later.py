"""A later version, with more and with other kinds of problems, opens what this one gave out.

It is this version copied and changed in its source, and runs in a process of its own.
"""

import json
import os
import shutil
import subprocess
import sys

import pytest

from solver.topics.catalogue import CATALOGUE

from .facts import still
from .make import keep
from .test_kept import VERSIONS

NEXT = CATALOGUE + 1
MORE = """
from dataclasses import replace
from solver.engine.family import Small

def _more(family, **changes):
    last = family.levels[-1]
    scene = last.scene or family.scene
    level = replace(last, since=NEXT, scene=Small(lambda *drawn: scene(*drawn).values))
    return replace(family, levels=(*family.levels, level))

def _new(family, tag, **changes):
    levels = tuple(replace(level, since=0) for level in family.levels)
    return replace(
        family, tag=tag, name=f"new_{tag.lower()}", since=NEXT, revised=(), levels=levels, **changes
    )

FAMILIES = (
    _new(SPEED[0], "ZZQ"),
    *(_more(family) for family in HORSEPOWER),
    *FAMILIES[len(HORSEPOWER):],
    _new(HORSEPOWER[0], "ZZR"),
    _new(HEAD[0], "ZZS", chapter="valves"),
)
"""
CHANGED = """
from dataclasses import replace

FAMILIES = tuple(
    replace(family, revised=(*family.revised, NEXT)) if WHICH else family for family in FAMILIES
)
"""
OPENED = """
import json, sys
from pathlib import Path
from solver.topics.catalogue import CATALOGUE
from solver.sets.paper import CHAPTERS, Paper
from solver.sets.paper_questions import cases_of
from tests.kept.facts import of_kept

chapters = tuple(name for name in ("horsepower", "speed", "valves") if name in CHAPTERS)
fresh = cases_of(Paper(chapters, 0, "us", 200, 60, True, 5))
json.dump(
    {
        "catalogue": CATALOGUE,
        "fresh": sorted({case.family.tag for case in fresh}),
        "kept": [of_kept(Path(folder)) for folder in sys.argv[1:]],
    },
    sys.stdout,
)
"""


@pytest.fixture(scope="module")
def now(tmp_path_factory):
    """What this version gives out."""
    where = tmp_path_factory.mktemp("now") / "kept"
    keep(where)
    return where


@pytest.fixture(scope="module")
def later(root, tmp_path_factory):
    """Run a script in this version as its families are after some lines of source."""
    copy = tmp_path_factory.mktemp("later")
    for part in ("solver", "workbook", "tests"):
        shutil.copytree(root / part, copy / part, ignore=shutil.ignore_patterns("*.png"))
    catalogue = copy / "solver" / "topics" / "catalogue.py"
    text = catalogue.read_text("utf-8")
    assert 1 == text.count('"order",\n)')
    catalogue.write_text(text.replace('"order",\n)', '"order", "valves",\n)'), "utf-8")
    families = copy / "solver" / "topics" / "problems.py"
    as_it_is = families.read_text("utf-8")

    def run(script, source, *words):
        families.write_text(as_it_is + source.replace("NEXT", str(NEXT)), "utf-8")
        told = subprocess.run(
            [sys.executable, "-c", script, *map(str, words)],
            cwd=copy, env=os.environ | {"PYTHONPATH": str(copy)}, capture_output=True, text=True, check=False,
        )  # fmt: skip
        assert "" == told.stderr
        return json.loads(told.stdout)

    return run


def copies(tmp_path, *folders):
    """Copies of kept folders, as opening may add to them, and what they came to."""
    copied = [shutil.copytree(one, tmp_path / "kept" / str(n)) for n, one in enumerate(folders)]
    return copied, [json.loads((one / "expected.json").read_text("utf-8")) for one in copied]


def test_new_kinds_levels_and_chapters_change_nothing_that_was_given_out(later, now, tmp_path):
    folders, expected = copies(tmp_path, now, *VERSIONS)
    found = later(OPENED, MORE, *folders)
    assert NEXT == found["catalogue"]
    assert {"ZZQ", "ZZR", "ZZS"} <= set(found["fresh"])
    assert [still(each) for each in expected] == [still(each) for each in found["kept"]]


def test_of_a_kind_that_changed_only_its_own_questions_are_refused(later, now, tmp_path):
    folders, expected = copies(tmp_path, now)
    tags = ("WP", "HK", "SR", "IM")
    source = CHANGED.replace("WHICH", f"family.tag in {tags}")
    (found,) = later(OPENED, source, *folders)["kept"]

    def changed(problem):
        return problem.split()[0] in tags

    (before,) = expected
    assert still(before, changed) == still(found, changed)
    for person, marks in before["set"]["people"].items():
        rows = found["set"]["people"][person]["questions"]
        kept = [row for row in marks["questions"] if not changed(row[0])]
        assert kept == [row for row in rows if row[1:] != ["refused"]]
        assert 0 < len(kept) < len(rows)


def test_where_every_kind_changed_all_still_opens_and_the_log_keeps_its_progress(
    later, now, tmp_path
):
    folders, expected = copies(tmp_path, now, *VERSIONS)
    found = later(OPENED, CHANGED.replace("WHICH", "True"), *folders)["kept"]
    assert [still(each, lambda problem: True) for each in expected] == [
        still(each, lambda problem: True) for each in found
    ]
    for before, after in zip(expected, found, strict=True):
        assert before["log"] == after["log"]
        for paper in after["exams"].values():
            problems = [row for row in paper["questions"] if f"{row[0]}"[:3] != "FF "]
            assert {"refused"} == {row[1] for row in problems}  # a case isn't of any family
    (name,) = (name for name, paper in expected[0]["exams"].items() if paper["ended"])
    right, of = expected[0]["exams"][name]["points"]
    empty = sum(not row[1] for row in expected[0]["exams"][name]["questions"])
    # With an exam that is turned in, this version keeps what each answer was graded.
    assert [right, of - empty] == found[0]["exams"][name]["points"]
    assert right > 0

"""A trainer's set as a link to the static site: the same problems, and what comes back."""

import re
from urllib.parse import parse_qs, urlsplit

import pytest

from solver import SolverError
from solver.sets.fault_part import fault_part
from solver.sets.work_set import cases_for, set_of
from tests.workbook.group.members import RIGHT, member, saved
from workbook.group.results import facts, read_result
from workbook.group.set_text import questions_of, read_set
from workbook.trainer.sets.on_site import sentences
from workbook.trainer.sets.set_file import Assigned

SITE = "https://example.org/pumps"


def assigned(**options):
    work = set_of(chapters=["head"], count=3, seed=7, each=False, **options)
    return Assigned("week-3", "Week 3: head", work)


def linked(told):
    """The set that the link in these sentences opens."""
    link = re.search(r"https://\S+", "\n".join(told))[0]
    return read_set(parse_qs(urlsplit(link).query)["set"][0])


def test_a_link_opens_the_problems_of_the_set_and_answers_come_back_as_a_file(tmp_path):
    week = assigned()
    problems = linked(list(sentences(week, f" {SITE} ")))
    assert "Week 3: head" == problems.title
    assert [case.code for case in cases_for(week.work, "anybody")] == list(problems.codes)
    _, data = saved(member(tmp_path, "op01", [[RIGHT], [], [RIGHT]], problems))
    told = facts(questions_of(problems), [read_result(data, problems)])
    assert ["first try", "not tried", "first try"] == [row[0].state for row in told.cells]


def test_what_a_file_does_and_does_not_prove_is_said():
    told = " ".join(sentences(assigned(), SITE))
    assert "It doesn't prove who typed it" in told
    assert "For a grade, give out the folder." in told
    assert "find the fault" not in told
    told = " ".join(sentences(assigned(faults=fault_part(1, 1)), SITE))
    assert "cases of find the fault aren't in the link" in told


def test_a_set_with_numbers_of_ones_own_gets_no_link():
    own = Assigned("week-3", "Week 3", set_of(chapters=["head"], count=3, seed=7))
    with pytest.raises(SolverError, match=r'Write numbers = "the same for all" in its file'):
        list(sentences(own, SITE))


def test_what_is_no_address_is_told():
    with pytest.raises(SolverError, match="isn't a web address"):
        list(sentences(assigned(), "pumps"))

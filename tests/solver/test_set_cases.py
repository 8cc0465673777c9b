"""What a person is asked: the same kinds for everybody, with numbers of their own."""

import os
import subprocess
import sys
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from solver import FAMILIES, SolverError, case_from_code
from solver.sets.work_set import MOST, case_for, cases_for, plan_of, set_of
from solver.topics.catalogue import Refused

from .sets import SETS, WORK

ROOT = Path(__file__).resolve().parents[2]


@settings(max_examples=50)
@given(SETS)
def test_a_plan_has_the_count_the_families_and_the_level_that_were_set(work):
    plan = plan_of(work)
    assert work.count == len(plan)
    assert {asked.kind.name for asked in plan} <= set(work.families)
    for family, level in plan:
        top = family.levels
        assert level == min(work.level, top) if work.level else 1 <= level <= top


@settings(max_examples=50)
@given(SETS)
def test_no_family_comes_again_before_all_have_been_asked(work):
    times = Counter(asked.kind.name for asked in plan_of(work))
    assert max(times.values()) - min(times.get(name, 0) for name in work.families) <= 1


@settings(max_examples=50)
@given(SETS)
def test_chapters_come_in_turn_while_they_have_families_left(work):
    left = Counter(f.chapter for f in FAMILIES if f.name in work.families)
    chapters = [asked.kind.chapter for asked in plan_of(work)][: min(left.values()) * len(left)]
    for start in range(0, len(chapters), len(left)):
        turn = chapters[start : start + len(left)]
        assert len(turn) == len(set(turn))
        assert turn == chapters[: len(turn)]


def test_another_seed_is_another_plan():
    assert 1 < len({plan_of(replace(WORK, seed=seed)) for seed in range(5)})


@settings(max_examples=25)
@given(SETS, st.sampled_from(["ana.r", "p017", "zoë@plant"]))
def test_problems_are_of_the_kinds_of_the_plan_in_its_order(work, person):
    cases = cases_for(work, person)
    assert [(f.name, level) for f, level in plan_of(work)] == [
        (case.family.name, case.level) for case in cases
    ]
    assert {work.units} == {case.units for case in cases}


@settings(max_examples=25)
@given(SETS, st.data())
def test_one_question_drawn_alone_is_the_one_drawn_with_the_others(work, data):
    number = data.draw(st.integers(1, work.count))
    assert cases_for(work, "ana.r")[number - 1] == case_for(work, "ana.r", number)


@pytest.mark.parametrize("number", [0, -1, 21])
def test_a_question_that_is_not_there_is_refused(number):
    with pytest.raises(SolverError, match=f"has questions 1 to 20; there is no {number}."):
        case_for(WORK, "ana.r", number)


def codes(work, person):
    return [case.code for case in cases_for(work, person)]


def test_each_person_has_their_own_numbers_of_the_same_kinds():
    everybody = [codes(WORK, f"p{number}") for number in range(30)]
    for same_question in zip(*everybody, strict=True):
        assert 1 == len({code.partition("-")[0] for code in same_question})
        assert 28 < len(set(same_question))


def test_where_not_each_has_their_own_everybody_has_the_same_whoever_they_are():
    same = set_of(chapters=["horsepower", "head"], count=20, each=False)
    assert cases_for(same, "ana.r") == cases_for(same, "p017") == cases_for(same, "")


def test_an_id_typed_another_way_is_the_same_person():
    assert cases_for(WORK, "ana.r") == cases_for(WORK, " Ana.R ")


def test_a_text_that_is_nobodys_id_has_no_problems_of_its_own():
    with pytest.raises(SolverError, match="An id has up to 40"):
        cases_for(WORK, "ana r")


@settings(max_examples=20)
@given(SETS)
def test_each_problem_has_the_code_that_gives_it_again(work):
    for case in cases_for(work, "ana.r"):
        if not isinstance(
            case, Refused
        ):  # a set of the first catalogue asks what has changed since
            assert case == case_from_code(case.code)


def test_a_family_asked_again_and_again_gives_each_person_other_problems():
    work = set_of(families=["brake_power", "water_power"], level=1, count=MOST)
    for person in ("ana.r", "p017"):
        given_values = [tuple(case.given.values()) for case in cases_for(work, person)]
        assert MOST == len(set(given_values))


def test_a_question_in_words_does_not_come_twice_under_other_names():
    family = next(f for f in FAMILIES if f.chapter == "machine")
    work = set_of(families=[family.name], level=1, count=4)
    for person in range(40):
        asked = [
            (case.wording.asks, frozenset(case.choices)) for case in cases_for(work, f"p{person}")
        ]
        assert 4 == len(set(asked))


DIGEST = """
import hashlib
from solver.sets.own_plant import plant_of
from solver.sets.work_set import cases_for, set_of
plant = plant_of({"name": "A", "people": ["Ruth"], "pumps": [
    {"name": "Pump 2", "station": "the lift station", "ranges": {"flow": [300, 900]}}]})
total = hashlib.sha256()
for work in (set_of(chapters=["head", "machine"], count=20, seed=5),
             set_of(chapters=["horsepower"], count=9, seed=5, plant=plant)):
    for person in ("ana.r", "p017"):
        for case in cases_for(work, person):
            total.update(f"{work.code} {case.code} {case.question}".encode())
print(total.hexdigest())
"""


def test_a_persons_problems_hang_on_no_order_of_hashes():
    def digest(seed):
        environment = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)}
        command = [sys.executable, "-c", DIGEST]
        return subprocess.run(
            command, capture_output=True, text=True, env=environment, check=True, timeout=60
        ).stdout

    assert 1 == len({digest(seed) for seed in ("0", "1", "4294967295")})


PINNED = {
    1: ["HW-2U1-92983-SNY", "FL-2U1-65903-QTS", "HI-2U1-14590-NSK", "WH-2U1-69151-WSX"],
    2: ["HF-2U2-79922-FMK", "BP-2U2-9160-QBY", "HN-2U2-24222-EBP", "WP-2U2-27591-EBD"],
}


@pytest.mark.parametrize("catalogue", PINNED)
def test_a_persons_problems_are_the_ones_they_have_always_been(catalogue):
    """They stand in answer sheets that people handed in."""
    work = replace(WORK, count=4, catalogue=catalogue)
    assert PINNED[catalogue] == codes(work, "ana.r")

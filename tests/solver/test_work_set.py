"""Sets of work: what can be set, its code, and no code that is nearly right."""

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from solver import FAMILIES, BadCode, SolverError
from solver.engine.code import sealed
from solver.sets.own_plant import plant_of
from solver.sets.paper import CHAPTERS
from solver.sets.work_set import TOP, read_set, set_of
from solver.topics.catalogue import CATALOGUE

from .sets import PLANT, PUMP, SETS

OF_A_PLANT = st.builds(
    lambda seed: set_of(chapters=["horsepower"], seed=seed, plant=PLANT), st.integers(0, 999)
)
SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-"
ALIKE = ({"0", "O"}, {"1", "I", "L"})  # taken for each other where a digit stands
REFUSED = r"isn't the code|wrong character"


@given(SETS)
def test_a_set_comes_back_from_its_code(work):
    assert work == read_set(work.code)


@settings(max_examples=10)
@given(OF_A_PLANT)
def test_a_set_of_a_plant_comes_back_from_its_code_and_its_plant(work):
    assert work == read_set(work.code, PLANT)


@given(SETS)
def test_a_code_may_be_in_small_letters_with_spaces_or_dashes_for_hyphens(work):
    assert work == read_set(f"  {work.code.lower().replace('-', ' ')} ")
    assert work == read_set(work.code.replace("-", "\u2013"))


def test_a_letter_is_taken_for_the_digit_it_looks_like_but_no_digit_for_a_letter():
    work = set_of(families=["storage_time"], seed=100, level=1)
    head, tag, rest = work.code.partition("-WO-")
    assert tag
    assert work == read_set(
        f"{head.replace('0', 'O')}-WO-{rest.replace('0', 'o').replace('1', 'l')}"
    )
    with pytest.raises(BadCode, match="isn't the code of a set of work"):
        read_set(f"{head}-W0-{rest}")


@settings(max_examples=20)
@given(SETS)
def test_every_single_mistyped_character_is_refused(work):
    code = work.code
    for at, right in enumerate(code):
        for wrong in SIGNS:
            if wrong != right and not any({wrong, right} <= pair for pair in ALIKE):
                with pytest.raises(BadCode, match=REFUSED):
                    read_set(code[:at] + wrong + code[at + 1 :])


@settings(max_examples=40)
@given(SETS)
def test_every_swap_of_two_neighbours_is_refused(work):
    code = work.code
    for at in range(len(code) - 1):
        if len(set(code[at : at + 2])) == 2:
            with pytest.raises(BadCode, match=REFUSED):
                read_set(code[:at] + code[at + 1] + code[at] + code[at + 2 :])


def test_no_mistyped_or_swapped_character_of_a_set_of_a_plant_opens_it():
    code = set_of(families=["water_power"], count=3, seed=7, plant=PLANT).code
    for at, right in enumerate(code):
        swapped = code[:at] + code[at + 1 : at + 2] + right + code[at + 2 :]
        mistyped = {code[:at] + wrong + code[at + 1 :] for wrong in SIGNS}
        alike = {
            code[:at] + each + code[at + 1 :] for pair in ALIKE if right in pair for each in pair
        }
        for text in (mistyped | {swapped}) - alike - {code}:
            with pytest.raises(BadCode, match=REFUSED):
                read_set(text, PLANT)


@pytest.mark.parametrize("first", [f.tag for f in FAMILIES if f.tag.endswith("Z")])
@pytest.mark.parametrize("second", [f.tag for f in FAMILIES if f.tag.startswith(("Z", "C"))][:4])
def test_a_hyphen_beside_a_tag_with_z_cannot_stand_a_place_aside(first, second):
    """In version 0.1.0 a hyphen weighed as much as Z."""
    by_tag = {family.tag: family.name for family in FAMILIES}
    code = set_of(families=[by_tag[first], by_tag[second]]).code
    for at in (code.index(first) + 1, code.index(first) - 1):
        with pytest.raises(BadCode, match=REFUSED):
            read_set(code[:at] + code[at + 1] + code[at] + code[at + 2 :])


def test_whole_chapters_are_a_number_and_other_families_their_tags():
    chapter = [family for family in FAMILIES if family.chapter == "horsepower"]
    as_families = set_of(families=[family.name for family in chapter[::-1]])
    assert set_of(chapters=["horsepower"]) == as_families
    assert as_families.code.startswith("SET-1-0U-10-E-")
    but_one = set_of(chapters=["head"], families=[family.name for family in chapter[1:]])
    tags = "-".join(sorted(family.tag for family in chapter[1:]))
    assert but_one.code.startswith(f"SET-32-{tags}-0U-10-E-")


def test_a_code_is_short_enough_to_type_where_chapters_are_chosen():
    assert len(set_of(chapters=CHAPTERS, count=60, seed=99_999).code) <= 30


def test_the_longest_code_can_be_read():
    """Each chapter lacks its first family, so that none is whole and all others are named."""
    lacking = {family.chapter: family.name for family in reversed(FAMILIES)}.values()
    work = set_of(families=[f.name for f in FAMILIES if f.name not in lacking], count=60)
    assert work == read_set(work.code)


@pytest.mark.parametrize(
    "text", ["", "SET", "BP-2U1-7-KMZ", "EXAM-33-2U-20-60-C-1-48213-92", "x" * 5000, "SET-1" * 999]
)
def test_a_text_that_is_no_code_is_refused_with_what_to_do(text):
    with pytest.raises(
        BadCode, match=r"isn't the code of a set of work\. That begins with SET; copy"
    ):
        read_set(text)


def test_a_code_of_a_newer_version_is_refused_and_says_so():
    *before, _, seed, _ = set_of(chapters=["head"], seed=4711).code.split("-")
    with pytest.raises(BadCode, match=r"was made by a newer version of the workbook\. Update"):
        read_set(sealed(*before, CATALOGUE + 1, seed))


def test_a_code_that_would_be_written_otherwise_is_not_one_that_was_given_out():
    tags = [family.tag for family in FAMILIES if family.chapter == "horsepower"]
    for parts in (("033",), ("0", *tags), ("1", tags[0])):
        with pytest.raises(BadCode, match="wrong character"):
            read_set(sealed("SET", *parts, "2U", 10, "E", CATALOGUE, 7))


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        (("0", "2U", "10"), "Choose at least one chapter or one family."),
        (("0", "QQ", "2U", "10"), "has a kind of problem, QQ, that isn't in this workbook."),
        (("33", "2U", "0"), "Write count as a whole number from 1 to 60; you wrote “0”."),
        (("33", "2U", "61"), "Write count as a whole number from 1 to 60; you wrote “61”."),
        (("33", "9U", "10"), f"Write level as a whole number from 0 to {TOP}; you wrote “9”."),
    ],
)
def test_a_code_of_a_set_that_cannot_be_says_why(parts, says):
    with pytest.raises(BadCode, match=re.escape(says)):
        read_set(sealed("SET", *parts, "E", CATALOGUE, 7))


def test_a_code_of_a_plant_needs_that_plant_and_another_code_needs_none():
    own = set_of(families=["water_power"], plant=PLANT)
    changed = plant_of({"name": "Marlow Bend", "pumps": [PUMP]})
    with pytest.raises(
        BadCode, match=r"is for a trainer's own plant\. Use it together with the set's file"
    ):
        read_set(own.code)
    with pytest.raises(
        BadCode, match="is for another plant, or for this one before it was changed"
    ):
        read_set(own.code, changed)
    with pytest.raises(BadCode, match=r"was made without a plant\. Leave the plant out"):
        read_set(replace(own, plant=None).code, PLANT)


@pytest.mark.parametrize(
    ("keys", "says"),
    [
        ({}, "Choose at least one chapter or one family."),
        ({"chapters": ["valves"]}, "There is no chapter “valves”."),
        ({"chapters": ["haed"]}, "There is no chapter “haed”. Did you mean “head”?"),
        (
            {"families": ["brake_pwr"]},
            "There is no family “brake_pwr”. Did you mean “brake_power”?",
        ),
        ({"families": ["x" * 99]}, f"There is no family “{'x' * 40}”. One is “brake_power”."),
        ({"families": [7]}, "There is no family “7”."),
        ({"level": -1}, f"Write level as a whole number from 0 to {TOP}; you wrote “-1”."),
        ({"level": True}, f"Write level as a whole number from 0 to {TOP}; you wrote “True”."),
        ({"count": 0}, "Write count as a whole number from 1 to 60; you wrote “0”."),
        ({"count": 2.5}, "Write count as a whole number from 1 to 60; you wrote “2.5”."),
        ({"seed": 10**9}, "Write seed as a whole number from 0 to 999,999,999; you wrote"),
        ({"units": "metric"}, "Units are “us” or “si”; you wrote “metric”."),
        ({"each": "yes"}, "Write each as true or false; you wrote “yes”."),
    ],
)
def test_what_cannot_be_set_is_refused_with_what_to_choose(keys, says):
    if keys and not {"chapters", "families"} & set(keys):
        keys = keys | {"chapters": ["head"]}
    with pytest.raises(SolverError, match=re.escape(says)):
        set_of(**keys)


def test_the_order_in_which_things_were_chosen_changes_nothing():
    assert set_of(chapters=["head", "cost"], families=["brake_power", "water_power"]) == set_of(
        chapters=["cost", "head", "cost"], families=["water_power", "brake_power"]
    )

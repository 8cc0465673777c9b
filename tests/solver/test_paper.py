"""Papers: the same questions for anyone with the code, and no code that is nearly right."""

import re
from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from solver import BadCode, Case, SolverError
from solver.engine.code import sealed
from solver.sets import paper as papers
from solver.sets.paper import CHAPTERS, MOST, Paper, checked, mask_of, read_paper
from solver.sets.paper_questions import cases_of
from solver.topics.catalogue import BITS, CATALOGUE, Refused, chapters_at, kinds_at


def papers_at(catalogue: int):
    """Any paper that could be made from a catalogue, of the chapters it has."""
    there_are = chapters_at(catalogue)
    return st.builds(
        Paper,
        # A code keeps which chapters, not in which order they were ticked.
        chapters=st.sets(st.sampled_from(there_are), min_size=1).map(
            lambda chosen: tuple(name for name in there_are if name in chosen)
        ),
        level=st.integers(0, 3),
        units=st.sampled_from(["us", "si"]),
        count=st.integers(1, MOST),
        minutes=st.integers(1, papers.LONGEST),
        choices=st.booleans(),
        seed=st.integers(0, papers.SEEDS - 1),
        catalogue=st.just(catalogue),
    )


PAPERS = st.integers(1, CATALOGUE).flatmap(papers_at)
PAPER = Paper(("horsepower", "head"), 2, "us", 20, 60, True, 48213)
SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-"
ALIKE = ({"0", "O"}, {"1", "I", "L"})  # taken for each other, as in the code of a problem


@given(PAPERS)
def test_a_paper_comes_back_from_its_code(paper):
    assert paper == read_paper(paper.code)


def test_a_code_has_room_for_every_chapter_there_is_a_bit_for():
    assert len(f"{mask_of(BITS)}") <= 6
    assert CHAPTERS == read_paper(replace(PAPER, chapters=CHAPTERS).code).chapters


@given(PAPERS)
def test_a_code_may_be_in_small_letters_with_spaces_for_hyphens_and_letters_for_digits(paper):
    typed = paper.code.lower().replace("-", " ").replace("0", "o").replace("1", "l")
    assert paper == read_paper(f"  {typed} ")


@settings(max_examples=30)
@given(PAPERS)
def test_every_single_mistyped_character_is_refused(paper):
    code = paper.code
    for at, right in enumerate(code):
        for wrong in SIGNS:
            if wrong != right and not any({wrong, right} <= pair for pair in ALIKE):
                with pytest.raises(BadCode, match=r"isn't the code|wrong character"):
                    read_paper(code[:at] + wrong + code[at + 1 :])


@settings(max_examples=30)
@given(PAPERS)
def test_every_swap_of_two_neighbours_is_refused(paper):
    code = paper.code
    for at in range(len(code) - 1):
        if len(set(code[at : at + 2])) == 2:
            with pytest.raises(BadCode, match=r"isn't the code|wrong character"):
                read_paper(code[:at] + code[at + 1] + code[at] + code[at + 2 :])


@pytest.mark.parametrize("text", ["", "EXAM", "BP-2U1-7-KMZ", "EXAM-33", "x" * 500, "EXAM" * 99])
def test_a_text_that_is_no_code_is_refused_with_what_to_do(text):
    with pytest.raises(BadCode, match="isn't the code of an exam"):
        read_paper(text)


def test_a_code_of_a_newer_version_is_refused_and_says_so():
    later = replace(PAPER, catalogue=CATALOGUE + 1).code
    with pytest.raises(BadCode, match=r"was made by a newer version of the workbook\. Update"):
        read_paper(later)


@pytest.mark.parametrize("mask", ["033", f"{(1 << len(BITS)) + 33}"])
def test_a_code_that_would_be_written_otherwise_is_not_one_that_was_given_out(mask):
    with pytest.raises(BadCode, match="wrong character"):
        read_paper(sealed("EXAM", mask, "2U", 20, 60, "C", CATALOGUE, 7))


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        (("0", "2U", "20", "60"), "Choose at least one chapter."),
        (("33", "2U", "0", "60"), "A paper has 1 to 200 questions; you asked for 0."),
        (("33", "2U", "201", "60"), "A paper has 1 to 200 questions; you asked for 201."),
        (("33", "2U", "20", "601"), "A paper takes 1 to 600 minutes; you asked for 601."),
    ],
)
def test_a_code_of_a_paper_that_cannot_be_says_why(parts, says):
    with pytest.raises(BadCode, match=re.escape(says)):
        read_paper(sealed("EXAM", *parts, "C", CATALOGUE, 7))


def test_a_paper_with_a_chapter_that_is_not_there_is_refused():
    with pytest.raises(SolverError, match="There is no chapter “valves”"):
        checked(replace(PAPER, chapters=("head", "valves")))


def test_the_same_code_gives_the_same_questions():
    assert [case.code for case in cases_of(PAPER)] == [
        case.code for case in cases_of(read_paper(PAPER.code))
    ]


def test_the_order_in_which_chapters_were_chosen_changes_nothing():
    turned = replace(PAPER, chapters=PAPER.chapters[::-1])
    assert PAPER.code == turned.code
    assert cases_of(PAPER) == cases_of(turned)


def test_another_seed_way_or_time_is_another_paper():
    codes = {
        tuple(case.code for case in cases_of(paper))
        for paper in (PAPER, replace(PAPER, seed=1), replace(PAPER, choices=False))
    }
    assert 3 == len(codes)


@settings(max_examples=25)
@given(PAPERS.filter(lambda paper: paper.count <= 60))
def test_questions_are_as_many_as_asked_of_the_chapters_level_and_units_asked(paper):
    cases = cases_of(paper)
    assert paper.count == len(cases)
    assert {case.family.chapter for case in cases} <= set(paper.chapters)
    assert {paper.units} == {case.units for case in cases}
    if paper.level:
        assert all(case.level == min(paper.level, levels_of(case)) for case in cases)


def levels_of(case: Case | Refused) -> int:
    """How many levels the kind of a question has."""
    levels = case.family.levels
    return levels if isinstance(levels, int) else len(levels)


@settings(max_examples=25)
@given(PAPERS.filter(lambda paper: paper.count <= 60))
def test_chapters_have_equal_shares_and_no_family_comes_again_before_its_chapter_is_through(paper):
    families = [case.family for case in cases_of(paper)]
    shares = Counter(family.chapter for family in families)
    assert max(shares.values()) - min(shares.get(name, 0) for name in paper.chapters) <= 1
    for chapter, share in shares.items():
        of = [family.name for family in families if family.chapter == chapter]
        there_are = sum(kind.chapter == chapter for kind in kinds_at(paper.catalogue))
        assert min(share, there_are) == len(set(of[:there_are]))


def test_no_question_stands_twice_on_a_paper_that_is_not_too_long():
    cases = cases_of(replace(PAPER, chapters=CHAPTERS, level=0, count=MOST))
    asked = {(case.question, *case.choices) for case in cases}
    assert MOST == len(asked)

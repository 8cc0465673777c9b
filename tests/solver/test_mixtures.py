"""Mixtures by a name: read from lines, written as lines, and told what to write where they can't be."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver.__main__ import main
from solver.errors import SolverError
from solver.sets.mixtures import mixture_of, mixtures_text, read_mixtures
from solver.sets.paper import CHAPTERS

KEPT = {"Grade 2": {"head": 30, "wet_well": 20}, "Collections": {"mains": 3}}
NAMES = st.from_regex(r"[A-Z][a-z]{2,8} class [1-9]", fullmatch=True)


@given(
    st.dictionaries(
        NAMES,
        st.dictionaries(st.sampled_from(CHAPTERS), st.integers(1, 99), min_size=1),
        min_size=1,
    )
)
def test_what_is_written_is_read_again(mixtures):
    assert mixtures == read_mixtures(mixtures_text(mixtures))


@pytest.mark.parametrize(
    ("text", "shares"),
    [
        ("Grade 2", {"head": 30, "wet_well": 20}),
        (" grade  2 ", {"head": 30, "wet_well": 20}),
        ("Grade 5, spring: head 3", {"head": 3}),
        ("# from Ruth\nGrade 5: head: 3; mains = 2%", {"head": 3, "mains": 2}),
        ("Head: 30%, wet well 20", {"head": 30, "wet_well": 20}),
        ("head 3\nmains 2", {"head": 3, "mains": 2}),
    ],
)
def test_a_name_a_line_with_a_name_or_shares_alone_give_a_mixture(text, shares):
    assert shares == mixture_of(text, KEPT)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Grade 3", "There is no mixture “Grade 3”. The kept ones are “Grade 2”, “Collections”."),
        ("spring", "There is no mixture “spring”."),
        ("", "There are no shares here."),
        ("Grade 5: haed 3", "There is no chapter “haed”. Did you mean “head”?"),
        ("head 30, wet wel: 20", "There is no chapter “wet wel”."),
        ("A: head 3\nB: head 4", "These are 2 mixtures: A, B. Leave only one of them."),
        ("A: head 3\nmains 4", "Line 2: It has no name."),
        ("A: head 3\na: mains 4", "Line 2: “a” is there twice."),
        (f"{'A' * 41}: head 3", "longer than 40 characters"),
    ],
)
def test_what_is_no_mixture_is_told_with_what_to_write(text, says):
    with pytest.raises(SolverError) as refused:
        mixture_of(text, KEPT)
    assert says in str(refused.value)


def test_a_mixture_of_a_file_is_chosen_by_its_name_at_the_command_line(tmp_path, capsys):
    file = tmp_path / "mixtures.txt"
    file.write_text(mixtures_text(KEPT), encoding="utf-8")
    asked = ["exam", "--count", "5", "--seed", "7", "--shares", "Grade 2", "--mixtures"]
    assert 0 == main([*asked, str(file)])
    assert "Shares: head 30, wet well 20" in capsys.readouterr().out
    assert 2 == main([*asked, str(tmp_path / "none.txt")])
    assert "can't be read" in capsys.readouterr().err

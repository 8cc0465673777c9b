"""Codes: the same problem back, and a slip in typing never gives another problem.

The check digits of version 0.1.0 are ISO 7064, MOD 97-10. Two outside examples are held to: the standard's own
794 -> 79444 (from memory), and the account number in the examples of ISO 13616, which uses the
same check (GB82 WEST 1234 5698 7654 32, from memory).
"""

import re
import string
from dataclasses import replace

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from solver import FAMILIES, BadCode, SolverError, case_from_code, draw
from solver.engine.code import (
    MOST_SEED,
    Code,
    as_written_now,
    check_digits,
    check_letters,
    read_code,
)
from solver.topics import library

from .drawn import PROBLEMS

LETTERS = string.digits + string.ascii_uppercase + "- "
ALIKE = {"O": "0", "I": "1", "L": "1"}
seeds = st.integers(0, 99) | st.integers(0, MOST_SEED)


@st.composite
def codes(draw_from):
    family, level, units = draw_from(st.sampled_from(PROBLEMS))
    return Code(family.tag, level, units, family.revision, draw_from(seeds))


def alike(one: str, other: str) -> bool:
    return ALIKE.get(one, one) == ALIKE.get(other, other)


def slips(text: str):
    """Every text that differs from a code by one character, or by two neighbours swapped."""
    for at, letter in enumerate(text):
        for other in LETTERS:
            if not alike(letter, other):
                yield text[:at] + other + text[at + 1 :]
        if at and not alike(text[at - 1], letter):
            yield text[: at - 1] + letter + text[at - 1] + text[at + 1 :]


def test_the_check_digits_are_those_of_the_standards_examples():
    assert "44" == check_digits("794")
    assert "82" == check_digits("WEST12345698765432GB")


@given(codes())
def test_any_code_reads_back_as_itself(code):
    assert code == read_code(str(code))


@given(codes())
def test_a_code_as_version_0_1_0_wrote_it_is_the_same_problem(code):
    assert code == read_code(code.as_first)
    assert str(code) == as_written_now(code.as_first) == as_written_now(str(code))


@pytest.mark.parametrize("text", ["", "a record", "EXAM-33-2U-20-60-C-1-48213-92", "WP-1U1-8-60"])
def test_what_is_no_problems_code_stays_as_it_is(text):
    assert text == as_written_now(text)


@given(st.sampled_from(PROBLEMS), seeds)
@settings(max_examples=200)
def test_the_code_of_any_problem_gives_that_problem(problem, seed):
    family, level, units = problem
    expected = draw(family, seed, units, level)
    assert expected == case_from_code(expected.code)


def is_another(text: str, code: Code) -> bool:
    """Whether a text reads as another problem than this one."""
    try:
        return read_code(text) != code
    except BadCode:
        return False


@given(codes(), st.sampled_from(["-", ""]))
@settings(max_examples=150)
def test_one_wrong_character_or_two_swapped_are_always_refused(code, between):
    """Every such slip is tried, some 500 a code: none reads as another problem, by any chance."""
    typed = str(code).replace("-", between)
    assert [] == [slip for slip in slips(typed) if is_another(slip, code)]


@given(codes())
@settings(max_examples=30)
def test_one_wrong_character_in_a_code_of_version_0_1_0_is_never_another_problem(code):
    first = code.as_first
    assert [] == [slip for slip in slips(first) if "-" not in slip and is_another(slip, code)]
    assert [] == [slip for slip in slips(first.replace("-", "")) if is_another(slip, code)]


def test_one_wrong_character_is_said_to_be_one():
    with pytest.raises(BadCode, match=r"“WP-1U1-8-60” has a wrong character somewhere. Compare"):
        read_code("WP-1U1-8-60")


@pytest.mark.parametrize(
    "text",
    [
        "WP-1U1-7-60",
        "wp-1u1-7-60",
        "WP1U1760",
        " WP 1U1 7 60 \n",
        "wp–1u1–7–60",
        "WP−1U1−7−6O",
        "wp-lui-7-6o",
        "WP - 1U1 - 7 - 60",
        str(Code("WP", 1, "us", 1, 7)).lower(),
        "WP\N{NO-BREAK SPACE}1U1\N{NON-BREAKING HYPHEN}7-60",
    ],
)
def test_case_spaces_hyphens_and_look_alikes_do_not_matter(text):
    assert Code("WP", 1, "us", 1, 7) == read_code(text)


@given(codes(), st.randoms(use_true_random=False))
def test_any_mix_of_case_spacing_and_look_alike_digits_reads_the_same(code, chance):
    tag, middle, seed, check = str(code).split("-")
    alikes = {"0": "0Oo", "1": "1Il"}
    typed = "".join(chance.choice(alikes.get(digit, digit)) for digit in seed)
    parts = [chance.choice((part, part.lower())) for part in (tag, middle, typed, check)]
    assert code == read_code(chance.choice(("-", " ", "", " - ")).join(parts))


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("", "“”"),
        ("hello", "“hello”"),
        ("WP", "“WP”"),
        ("WP-1U1-7", "“WP-1U1-7”"),
        ("WP-1X1-7-60", "“WP-1X1-7-60”"),
        ("WP-0U1-7-60", "“WP-0U1-7-60”"),
        ("W-1U1-7-60", "“W-1U1-7-60”"),
        ("WP-1U1-1234567890-60", "“WP-1U1-1234567890-60”"),
        ("WP-1U1-7-60 WP-1U1-8-60", "“WP-1U1-7-60 WP-1U1-8-60”"),
        ("12.5 hp", "“12.5 hp”"),
        ("x" * 10_000, "“xxx"),
    ],
)
def test_what_is_not_a_code_is_shown_back_with_what_one_looks_like(text, shown):
    message = (
        rf"{re.escape(shown)}.* isn't a problem code\. A code looks like WP-1U2-7-\w{{3}}; copy"
    )
    with pytest.raises(BadCode, match=message):
        case_from_code(text)


def test_a_seed_with_a_nought_in_front_is_not_a_code_that_was_given_out():
    for check in (check_digits("WP1U107"), check_letters("WP-1U1-07")):
        with pytest.raises(BadCode, match="wrong character"):
            read_code(f"WP-1U1-07-{check}")


def test_tags_that_differ_by_letters_that_look_alike_are_never_taken_for_each_other():
    folded = {}
    for family in FAMILIES:
        folded.setdefault(family.tag.translate(str.maketrans("OIL", "011")), []).append(family.tag)
    pairs = [tags for tags in folded.values() if len(tags) > 1]
    assert ["HI", "HL"] in [sorted(tags) for tags in pairs]
    for tags in pairs:
        for tag in tags:
            code = Code(tag, 1, "us", 1, 4821)
            others = [str(code).replace(tag, other, 1) for other in tags if other != tag]
            assert [] == [other for other in others if is_another(other, code)]


def test_a_family_that_this_version_does_not_have_is_said_so():
    unknown = next(tag for tag in ("QQ", "ZZ") if tag not in {f.tag for f in FAMILIES})
    with pytest.raises(BadCode, match=f"has no problem {unknown} at level 1. A newer vers"):
        case_from_code(str(Code(unknown, 1, "us", 1, 7)))


def test_a_level_that_the_family_does_not_have_is_said_so():
    with pytest.raises(BadCode, match="has no problem WP at level 9"):
        case_from_code(str(Code("WP", 9, "us", 1, 7)))


@pytest.mark.parametrize(
    ("made_by", "now", "message"),
    [
        (1, 2, "“.*” has changed since this code was made, .* ask for a new code"),
        (3, 9, "“.*” has changed since this code was made"),
        (
            2,
            1,
            "A newer version of the workbook made this code of “.*”. Update this one, or ask for",
        ),
    ],
)
def test_a_code_of_another_form_is_refused_and_never_shown_as_another_problem(
    monkeypatch, made_by, now, message
):
    revised = tuple(range(2, now + 1))
    family = replace(library.family_named("water_power"), revised=revised)
    monkeypatch.setitem(library._BY_TAG, "WP", family)
    with pytest.raises(BadCode, match=message):
        case_from_code(str(Code("WP", 1, "us", made_by, 7)))


def test_a_family_that_changed_gives_new_problems():
    family = library.family_named("water_power")
    changed = replace(family, revised=(*family.revised, 99))
    differ = [draw(family, s).given != draw(changed, s).given for s in range(20)]
    assert sum(differ) > 15


@given(st.text(max_size=200))
@example("ẞ-1U1-7-60")
@example("WP-1U1-٧-60")
@example("WP-1U1-７-60")
@example("\ud800")
@example("{question}")
@settings(max_examples=500)
def test_any_text_is_a_problem_or_a_bad_code(text):
    """Nothing else may come out of a box that anybody can type in."""
    try:
        case = case_from_code(text)
    except BadCode as refusal:
        case, says = None, str(refusal)
    if case is None:
        assert says.endswith(".")
        assert says.splitlines() == [says]
    else:
        assert case == draw(case.family, case.seed, case.units, case.level)


def test_a_bad_code_is_both_the_solvers_own_error_and_a_value_error():
    assert issubclass(BadCode, SolverError)
    assert issubclass(BadCode, ValueError)


def test_no_two_families_share_a_name_or_a_tag():
    assert len(FAMILIES) == len({f.name for f in FAMILIES}) == len({f.tag for f in FAMILIES})


@pytest.mark.parametrize("seed", [-1, MOST_SEED + 1])
def test_a_seed_that_no_code_can_hold_is_refused(seed):
    with pytest.raises(SolverError, match=f"whole number from 0 to 999,999,999; you typed {seed}"):
        draw("water_power", seed)


@pytest.mark.parametrize("level", [0, 4, -1])
def test_a_level_that_is_not_there_is_refused_with_those_that_are(level):
    with pytest.raises(SolverError, match=f"water_power has levels 1 to 3; you asked for {level}"):
        draw("water_power", 7, "us", level)


def test_units_are_us_or_si():
    with pytest.raises(SolverError, match="Units are “us” or “si”; got “metric”"):
        draw("water_power", 7, "metric")


def test_a_family_that_is_not_there_is_refused_with_those_that_are():
    with pytest.raises(
        SolverError,
        match=r"No family is called “watts”\..*To list them all, type: python -m solver families",
    ):
        draw("watts", 7)

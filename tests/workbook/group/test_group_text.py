"""A set of problems as a text: what survives its way through chats and links, and what is refused."""

import re
from functools import cache
from unicodedata import category
from urllib.parse import quote

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver import FAMILIES, draw
from solver.engine.code import Code
from workbook.group.set_link import PAGE, link_at
from workbook.group.set_text import (
    LONGEST,
    MOST,
    MOST_TITLE,
    BadSet,
    ProblemSet,
    codes_in,
    plain,
    read_set,
    set_of,
)
from workbook.ui import static_site

CODES = (
    draw("brake_power", 7, level=2).code,
    draw("water_power", 7).code,
    draw("energy_cost", 5).code,
)
MISTYPED = CODES[0][:-1] + ("Y" if CODES[0][-1] != "Y" else "Z")
WEDNESDAY = set_of("Wednesday pumps", CODES)
WORDS = 19  # in a sentence at most


@cache
def some_code(at):
    family = FAMILIES[at % len(FAMILIES)]
    return draw(family, at * 7919 % 100_000, "us" if at % 3 else "si", 1).code


codes = st.lists(st.integers(0, 120), min_size=1, max_size=MOST, unique=True).map(
    lambda places: tuple(map(some_code, places))
)
titles = st.text(max_size=80)
hyphens = st.sampled_from("-‐‑‒–—―−﹣－")
gaps = st.sampled_from([" ", "\n", "  ", "\r\n", "\n> ", ", ", "\u00a0", " \u200b", ";\t", " * "])
around = st.text(st.characters(codec="utf-8", exclude_characters="[]"), max_size=60).filter(
    lambda text: "w2w" not in text.casefold()
)


def through_a_chat(text, before, after, hyphen, gap, change):
    """A text as it may come out of a chat: letters, hyphens and spaces changed, words around it."""
    title, end, rest = re.fullmatch(r"(W2W\[(?:[^\]]|\]\])*)(\])(.*)", text, re.S).groups()
    changed = change(rest).replace("-", hyphen).replace(" ", gap)
    return f"{before}{title}{end}{changed}{after}"


@given(titles, codes)
def test_a_set_read_from_its_own_text_is_the_same_set(title, codes):
    problems = set_of(title, codes)
    assert problems == read_set(problems.text)
    assert codes == problems.codes


@given(titles, codes, around, around, hyphens, gaps, st.sampled_from([str, str.lower, str.upper]))
def test_what_chats_do_to_a_text_changes_nothing(title, codes, before, after, hyphen, gap, change):
    problems = set_of(title, codes)
    sent = through_a_chat(problems.text, before, after, hyphen, gap, change)
    assert problems == read_set(sent)


@given(titles, codes)
def test_a_link_leads_to_the_same_set(title, codes):
    problems = set_of(title, codes)
    told = static_site._told.copy()
    try:
        site, _, query = link_at("https://example.org/pumps", problems).partition("?")
        static_site.tell(quote(site, safe=""), quote(query, safe=""))
        words = static_site.words_of_address()
    finally:
        static_site._told.clear()
        static_site._told.update(told)
    assert {"path": PAGE, "set": problems.text} == words
    assert problems == read_set(words["set"])


@given(codes, st.text(max_size=200))
def test_a_title_is_one_line_that_can_be_seen_and_stays_as_it_is(codes, title):
    kept = set_of(title, codes).title
    assert kept == plain(kept, MOST_TITLE)
    assert len(kept) <= MOST_TITLE
    assert not {category(sign) for sign in kept} & {"Cc", "Cs", "Co", "Zl", "Zp"}


@given(st.text(max_size=300))
def test_any_other_text_is_refused_with_short_sentences(text):
    with pytest.raises(BadSet, match=r"\w") as refusal:
        read_set(text)
    for sentence in re.split(r"(?<=[.:])\s", str(refusal.value)):
        assert len(sentence.split()) <= WORDS + 1, sentence


@given(codes, st.data())
def test_no_change_of_a_single_sign_of_a_code_goes_unnoticed(codes, data):
    problems = set_of("", codes)
    start, end = problems.text.index("]") + 2, problems.text.rindex("[") - 1
    at = data.draw(st.integers(start, end - 1))
    other = data.draw(st.sampled_from("0123456789ABCDEFGHJKMNPQRSTUVWXYZ"))
    text = f"{problems.text[:at]}{other}{problems.text[at + 1 :]}"
    if codes_in(text[start:end]) == list(codes):
        return
    try:
        found = read_set(text)
    except BadSet:
        return
    assert problems == found  # I for 1 and O for 0 are the same code


def test_the_longest_set_fits_into_a_message_and_into_a_link():
    longest = ProblemSet(
        "🚰" * MOST_TITLE, tuple(str(Code("WXYZ", 2, "us", 1, 999999000 + n)) for n in range(MOST))
    )
    assert len(longest.text) < 1100 < LONGEST
    assert len(link_at("https://study.example.org/marlow-bend/pumps", longest)) < 2000


def test_the_mark_tells_order_and_number_but_not_the_title():
    assert WEDNESDAY.mark == set_of("Thursday", CODES).mark
    assert WEDNESDAY.mark != set_of("Wednesday pumps", CODES[::-1]).mark
    assert WEDNESDAY.mark.startswith("3-")
    assert f"GROUP-{WEDNESDAY.mark}" == WEDNESDAY.key


FAULTS = {
    "": "Paste the text of a set first.",
    "Shall we meet on Wednesday? Bring BP-2U1-7-KMZ.": "There is no set in this text",
    WEDNESDAY.text[:-9]: "The end of the set is missing.",
    WEDNESDAY.text[:20]: "The end of the set is missing.",
    WEDNESDAY.text.replace("[3-", "[3 of "): "The end of the set is missing.",
    WEDNESDAY.text.replace(CODES[0], MISTYPED): (
        f"Problem 1: “{MISTYPED}” has a wrong character somewhere."
    ),
    WEDNESDAY.text.replace(CODES[1], "and some"): ("Problem 2: “AND” isn't a problem code."),
    WEDNESDAY.text.replace(f" {CODES[1]}", ""): "This set was sent with 3, and 2 problems came.",
    WEDNESDAY.text.replace(
        CODES[1], draw("water_power", 8).code
    ): "The codes or their order changed since the set was sent",
    WEDNESDAY.text.replace(CODES[1], CODES[0]): "Problem 2 is the same as problem 1",
    "W2W[Nothing] [0-000000]": "This set has no codes.",
    f"W2W[Many] {' '.join(map(some_code, range(41)))} [41-ABCDEF]": "A set has at most 40 problems",
    f"W2W[{'a' * 2000}] BP-2U1-7-KMZ [1-56C829]": "This text is too long for a set.",
    f"{WEDNESDAY.text}{' ' * 5000}": "This text is too long for a set.",
}


@pytest.mark.parametrize("text", FAULTS, ids=range(len(FAULTS)))
def test_each_fault_has_its_own_sentence(text):
    with pytest.raises(BadSet, match=re.escape(FAULTS[text])):
        read_set(text)


def test_of_many_faults_five_are_told_and_the_others_counted():
    with pytest.raises(BadSet, match=r"And 2 more faults\.") as refusal:
        set_of("", ["x"] * 7)
    assert 6 == len(refusal.value.sentences)


def test_codes_may_be_broken_at_a_hyphen_and_stand_in_a_list():
    written = "- bp-2u1-\n7-kmz\n- WP–1U1–7\n–WTN\n"
    assert ["BP-2U1-7-KMZ", "WP-1U1-7-WTN"] == codes_in(written)


def test_codes_as_version_0_1_0_wrote_them_are_the_same_set_with_the_same_mark():
    first = read_set("W2W[Wednesday pumps] BP-2U1-7-KMZ WP-1U1-7-WTN EC-1U1-5-SVH [3-90B5B4]")
    assert ("BP-2U1-7-KMZ", "WP-1U1-7-WTN", "EC-1U1-5-SVH") == first.codes
    assert "3-90B5B4" == first.mark


def test_what_is_shown_of_a_hostile_text_is_short():
    with pytest.raises(BadSet, match="And 35 more faults") as refusal:
        set_of("", ["<script>alert(1)</script>" * 100] * 40)
    assert len(str(refusal.value)) < 1000


@pytest.mark.parametrize(
    "text", ["W2W[" * 1250, "W2W[a]]" * 700 + "[", f"W2W[a] {'A-' * 2400}", "W2W" + " " * 4900]
)
def test_a_text_made_to_be_tried_again_and_again_is_refused(text):
    with pytest.raises(BadSet, match=r"There is no set in this text|The end of the set is missing"):
        read_set(text)


@pytest.mark.parametrize(
    "typed",
    ["example.org", "javascript:alert(1)", "https://", "http://a b", "https://[", "ftp://a/"],
)
def test_what_is_no_address_of_a_site_makes_no_link(typed):
    with pytest.raises(BadSet, match=r"isn't a web address\. A web address begins with https://"):
        link_at(typed, WEDNESDAY)

"""Steps to put in order: every order that keeps the pairs is right, a broken pair is named; and the texts."""

import re
from itertools import permutations
from math import factorial

import pytest

from solver import case_from_code, draw, grade
from solver.engine.draw import Draw
from solver.engine.order import Ordering, Pair, Stage, broken, posed, right_orders
from solver.engine.telling import hints_of
from solver.errors import BadDefinition, Unreadable
from solver.render.text import case_json, case_text
from solver.topics.order.problems import ORDER
from solver.topics.orders import graded_of, orders
from solver.units.order import kept_as, letters_of, read_order
from tests.solver.drawn import ORDERS, each

BANK = [one for family in ORDER for level in (1, 2) for one in orders(family.name, level)]
STAGES = [(one, stage) for one in BANK for stage in one.stages]
# A rule by paragraph, a standard, an agency, a handbook or a manual; or said to be none.
CITED = re.compile(
    r"29 CFR 1910\.\d+|OSHA|NFPA 70E|NEC \d+|IEEE 43|ASME B30|DOE Mech|NAVFAC|Karassik, Pump Handbook"
    r"|FSA packing manual|manual|common practice, no source|common practice; follow your plant's rules"
)
each_order = pytest.mark.parametrize("one", BANK, ids=lambda one: one.id)
each_problem = each(ORDERS)
DIAMOND = Ordering(
    "diamond",
    "Put them in order.",
    "It is so.",
    (
        Stage("one", "First", "X", why="It begins."),
        Stage("left", "Left", "X", {"one": "Left needs one."}),
        Stage("right", "Right", "X", {"one": "Right needs one."}),
        Stage("last", "Last", "X", {"left": "Last needs left.", "right": "Last needs right."}),
    ),
)


def drawn(problem, seed=5):
    family, level, units = problem
    return draw(family, seed, units, level)


@pytest.mark.parametrize(
    "text",
    ["C A B D", "cabd", " c, a, b, d ", "C > A > B > D", "c then a then b and d", "(C) A. B. D."],
)
def test_an_order_is_read_however_its_letters_are_parted(text):
    assert 3124 == read_order(text, 4)
    assert "C A B D" == letters_of(3124.0)
    assert 3124 == kept_as([2, 0, 1, 3])


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "haven't been put in order yet. Move them. Or type all 4 letters"),
        ("A B C", "You left out D. Type all 4 letters, first step first, such as D C B A"),
        ("A", "You left out B, C and D."),
        ("A B B C", "You typed B more than once."),
        ("A B C E", "There is no step E here. The steps are A to D."),
        ("3 1 2 4", '"3 1 2 4" isn\'t an order of steps.'),
        ("the last one goes first", "isn't an order of steps."),
    ],
)
def test_what_is_no_order_is_refused_with_what_to_type(text, says):
    with pytest.raises(Unreadable, match=re.escape(says)):
        read_order(text, 4)


def test_every_order_that_keeps_the_pairs_is_right_and_no_other():
    case = draw("enter_wet_well", 1)
    count = len(case.choices)
    at = {step: place for place, step in enumerate(case.choices)}
    stages = next(one.stages for one in BANK if {s.text for s in one.stages} == set(case.choices))
    texts = {stage.id: stage.text for stage in stages}
    must = [(at[texts[first]], at[stage.text]) for stage in stages for first in stage.after]
    right = 0
    for order in permutations(range(count)):
        keeps = all(order.index(first) < order.index(then) for first, then in must)
        right += keeps
        assert keeps == (grade(case, letters_of(kept_as(order))).status == "right")
    assert right_orders(count, case.pairs) == right


def test_two_steps_that_may_trade_places_give_two_right_orders():
    assert 2 == right_orders(4, DIAMOND.pairs)
    found = posed(DIAMOND, Draw("any"))
    assert "2 orders are right, because some steps can trade places." == found.steps[-1].why
    assert [] == broken(DIAMOND.pairs, [0, 2, 1, 3])
    # The step that comes too early first is told first: the last one, before either of the middle.
    assert (2, 3) == tuple(broken(DIAMOND.pairs, [0, 3, 1, 2]))[:2]
    assert [Pair(0, 1), Pair(0, 2), Pair(1, 3), Pair(2, 3)] == list(DIAMOND.pairs)


@each_problem
def test_the_answer_is_right_and_each_pair_broken_is_named_with_its_reason_and_source(problem):
    for seed in range(4):
        case = drawn(problem, seed)
        assert "right" == grade(case, letters_of(case.answer)).status
        assert case.low == case.answer == case.high
        assert len(case.pairs) == len(case.mistakes)
        for mistake, (first, then) in zip(case.mistakes, case.pairs, strict=True):
            verdict = grade(case, letters_of(mistake.value))
            assert ("mistake", mistake.id) == (verdict.status, verdict.mistake)
            assert f"“{case.choices[then]}” before “{case.choices[first]}”" in verdict.says
            assert "Source: " in verdict.says


@each_problem
def test_the_steps_never_come_in_an_order_that_is_right(problem):
    for seed in range(40):
        case = drawn(problem, seed)
        assert "mistake" == grade(case, letters_of(kept_as(range(len(case.choices))))).status


@each_problem
def test_a_code_gives_the_same_steps_in_the_same_order_and_no_hint_the_whole_of_it(problem):
    case = drawn(problem, 77)
    assert case.choices == case_from_code(case.code).choices
    *_, pair = hints_of(case)
    assert pair.says.startswith(f"“{case.choices[case.pairs[0].first]}” comes before ")
    assert all(letters_of(case.answer) not in hint.says for hint in hints_of(case))


def test_the_solution_has_each_step_with_its_letter_reason_and_source():
    case = draw("lock_and_try", 3, "us", 2)
    *steps, last = case.steps
    letters = "".join(step.rule[0] for step in steps)
    assert letters == letters_of(case.answer).replace(" ", "")
    assert all("Source: " in step.why for step in steps)
    assert last.why.endswith("your local codes come first.")
    shown = case_text(case)
    assert all(
        f"  {mark}) {text}\n" in shown for mark, text in zip("ABCDEFG", case.choices, strict=True)
    )
    assert f"A right order is {letters_of(case.answer)}" in shown
    told = case_json(case)
    assert letters_of(case.answer) == told["order"]
    assert all(
        told["order"].index(first) < told["order"].index(then) for first, then in told["pairs"]
    )


def test_there_are_three_orders_or_more_of_each_topic_and_ids_are_apart():
    assert all(sum(len(orders(f.name, level)) for level in (1, 2)) >= 3 for f in ORDER)
    ids = [one.id for one in BANK]
    assert sorted(set(ids)) == sorted(ids)


@each_order
def test_guessing_an_order_rarely_succeeds(one):
    count = len(one.stages)
    assert 5 <= count <= 7
    assert right_orders(count, one.pairs) * 20 <= factorial(count)


@pytest.mark.parametrize(("one", "stage"), STAGES, ids=lambda each: each.id)
def test_a_step_has_a_source_a_short_text_and_sentences_under_twenty_words(one, stage):
    assert CITED.search(stage.source), stage.source
    assert len(stage.text) <= 72
    assert not stage.text.endswith(".")
    # A word for its place would give the place away.
    assert not re.search(r"\b(first|then|next|finally|last|before|after)\b", stage.text, re.I) or (
        "as before" in stage.text
    )
    for text in (*stage.after.values(), stage.why, one.rule, one.asks):
        for sentence in re.split(r"(?<=[.?:])\s+", text):
            assert len(sentence.split()) < 24, sentence


GOOD = {
    "id": "an_order", "level": 1, "asks": "{person} does it.", "rule": "It is so.",
    "steps": [
        {"id": "a", "text": "A", "source": "X", "why": "It begins."},
        {"id": "b", "text": "B", "source": "X", "after": {"a": "B needs A."}},
        {"id": "c", "text": "C", "source": "X", "why": "Any time."},
        {"id": "d", "text": "D", "source": "X", "after": {"b": "D needs B.", "c": "D needs C."}},
    ],
}  # fmt: skip


def step(at, **changes):
    steps = [dict(one) for one in GOOD["steps"]]
    steps[at] |= changes
    return GOOD | {"steps": steps}


BAD = {
    "a key too many": (GOOD | {"hint": "x"}, "it has id, level, asks, rule, steps, hint; give it"),
    "level 3": (GOOD | {"level": 3}, "its level is 3; give it 1 or 2"),
    "a question": (GOOD | {"asks": "Which?"}, "end what it asks with a full stop"),
    "unknown slot": (GOOD | {"asks": "{flow} it."}, "it uses ['flow']; there are"),
    "why and after": (
        step(1, why="x"),
        "give it an id, a text and a source, and either after or why",
    ),
    "one text twice": (step(1, text="A"), "two of its steps share one text"),
    "three steps": (GOOD | {"steps": GOOD["steps"][:3]}, "give it 4 to 9 steps"),
    "a loop": (
        step(1, after={"d": "B needs D."}),
        "step 'b': give it an id of its own, only steps above",
    ),
    "an unknown step": (
        step(3, after={"e": "x"}),
        "step 'd': give it an id of its own, only steps above",
    ),
}


def test_the_good_order_is_read_as_it_stands():
    found = graded_of("made_up", GOOD)
    assert (1, "an_order", ((0, 1), (1, 3), (2, 3))) == (
        found.level, found.ordering.id, tuple(map(tuple, found.ordering.pairs)),
    )  # fmt: skip


@pytest.mark.parametrize(("row", "says"), BAD.values(), ids=BAD)
def test_a_bad_order_is_refused_with_what_to_write(row, says):
    with pytest.raises(BadDefinition, match=re.escape(says)):
        graded_of("made_up", row)

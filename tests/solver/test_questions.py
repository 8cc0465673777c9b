"""The questions to think about: whole, cited, in short sentences, and none easier by its look."""

import re
import subprocess
import sys
from collections import Counter
from copy import deepcopy
from itertools import product

import pytest

from solver import FAMILIES, draw, grade
from solver.errors import BadDefinition
from solver.topics.questions import question_of, questions, questions_of
from solver.topics.tables import data_files
from tests.in_one import in_one

# Those of steps to put in order have files of another kind (orders.py).
TOPICS = [f.name for f in FAMILIES if f.chapter != "order" and f.name in data_files(".toml")]
PLACES = list(product(TOPICS, (1, 2)))
BANK = [q for topic, level in PLACES for q in questions(topic, level)]
# What an answer may rest on: a rule by paragraph, a standard, a manual or notes that are named.
CITED = re.compile(
    r"29 CFR 1910\.\d+|OSHA|NFPA 70E|NEC \d+|NEMA MG 1|IEEE 43|DOE|NAVFAC MO-209|maker's manual"
    r"|the drive's own manual|ANSI/ASA S2\.75|API RP 686|EPA \d+-|ANSI/HI|Hydraulic Institute|UFC 3-"
    r"|EPA, Process Design Manual|NFPA 110|Ten States Standards|40 CFR \d+|ISA 50|US EPA|AWWA Manual"
    r"|US Bureau of Reclamation|FHWA, MUTCD"
)
each_question = in_one("question", BANK, lambda q: f"{q.topic}-{q.id}")


def options(question):
    return (question.right, *question.wrong)


def texts(question):
    """Every text of a question, told apart by what it is."""
    yield from (question.asks, question.rule)
    for option in options(question):
        yield from (option.text, option.says)


def test_there_are_at_least_sixty_and_at_least_three_of_each_topic_and_level():
    assert len(BANK) >= 60
    counts = Counter((q.topic, q.level) for q in BANK)
    assert set(PLACES) == set(counts)
    assert min(counts.values()) >= 3


def test_no_two_questions_share_an_id_or_ask_the_same():
    assert [] == [name for name, n in Counter(q.id for q in BANK).items() if n > 1]
    assert [] == [asks for asks, n in Counter(q.asks for q in BANK).items() if n > 1]


def test_no_reason_is_given_twice():
    """Each choice is wrong for a reason of its own."""
    reasons = Counter(option.says for q in BANK for option in options(q))
    assert [] == [says for says, count in reasons.items() if count > 1]


@each_question
def test_a_question_has_four_different_choices_each_with_its_reason(question):
    assert 3 == len(question.wrong)
    assert 4 == len({option.text.casefold() for option in options(question)})
    assert all(option.says.endswith(".") for option in options(question))
    assert not any(option.text.endswith(".") for option in options(question))


@each_question
def test_a_question_names_its_source_or_says_there_is_none(question):
    if question.source != "common practice, no source":
        assert CITED.search(question.source), question.source


@each_question
def test_sentences_are_under_twenty_words_and_calm(question):
    for text in texts(question):
        assert "!" not in text
        assert not re.search(r"\b(all|none) of the above\b|\bobviously\b|\bsimply\b", text, re.I)
        for sentence in re.split(r"(?<=[.?:])\s+", text):
            assert len(sentence.split()) < 20, sentence


@each_question
def test_a_hint_does_not_give_the_answer_away(question):
    assert question.right.text.casefold() not in question.rule.casefold()


@each_question
def test_a_number_with_an_imperial_unit_has_the_metric_one_beside_it(question):
    """One text serves both systems, so it carries both units."""
    for text in texts(question):
        for found in re.finditer(r"\d (ft|psi|in|gpm|hp|°F)\b", text):
            near = text[max(0, found.start() - 12) : found.end() + 14]
            assert re.search(r"\d (m|kPa|mm|L/s|kW|°C)\b", near), text


def share(pick):
    """How often the right choice is the one that `pick` (max or min) finds by its length."""
    total = 0.0
    for q in BANK:
        lengths = [len(option.text) for option in options(q)]
        if len(q.right.text) == pick(lengths):
            total += 1 / lengths.count(pick(lengths))
    return total / len(BANK)


def test_the_right_choice_is_the_longest_no_more_often_than_chance_would_have_it():
    """A quarter by chance; with 89 questions chance itself strays by about 0.09 (two deviations)."""
    assert 0.25 == pytest.approx(share(max), abs=0.09)


def test_nor_does_the_shortest_choice_give_it_away():
    assert share(min) < 0.34


@pytest.mark.parametrize(("topic", "level"), PLACES)
def test_every_question_is_reached_by_some_seed(topic, level):
    wanted = {q.right.text for q in questions(topic, level)}
    drawn = [draw(topic, seed, "us", level) for seed in range(100)]
    assert wanted == {case.choices[int(case.answer) - 1] for case in drawn}


@pytest.mark.parametrize("topic", TOPICS)
def test_a_question_is_the_same_in_both_systems(topic):
    """Words do not depend on units, so both draw from one set."""
    us, si = (
        {frozenset(draw(topic, seed, units).choices) for seed in range(100)}
        for units in ("us", "si")
    )
    assert us == si


def test_the_solution_gives_the_reason_and_the_source():
    case = draw("lockout", 3, "us", 2)
    question = next(q for q in BANK if q.right.text == case.choices[int(case.answer) - 1])
    why = case.steps[-1].why
    assert why == f"{question.right.says} Source: {question.source}."
    assert grade(case, f"{case.answer:.0f}").says.endswith(why)


def test_common_practice_is_called_that_in_the_solution():
    whys = [draw("check_valve", seed).steps[-1].why for seed in range(30)]
    assert any(why.endswith("Source: common practice, no source.") for why in whys)


def test_a_wrong_choice_tells_which_question_it_was():
    case = draw("permit_space", 5)
    ids = {q.id for q in questions("permit_space", 1)}
    assert 1 == len({mistake.id.partition(".")[0] for mistake in case.mistakes} & ids)


GOOD = {
    "id": "a_question", "level": 1, "asks": "{person} asks what?", "rule": "It is so.",
    "right": {"text": "This", "why": "It is so."},
    "wrong": [{"id": f"wrong_{n}", "text": f"That {n}", "why": f"No, {n}."} for n in range(3)],
    "source": "common practice, no source",
}  # fmt: skip


def changed(**changes):
    return deepcopy(GOOD) | changes


def wrong(**changes):
    """The good question, its last wrong choice changed."""
    return changed(wrong=[*GOOD["wrong"][:2], GOOD["wrong"][2] | changes])


BAD = {
    "a key too many": (changed(hint="x"), "it has id, level, .*, hint; give it"),
    "no source": ({k: v for k, v in GOOD.items() if k != "source"}, "give it id, asks"),
    "an empty source": (changed(source=" "), "one of its texts is empty"),
    "level 3": (changed(level=3), "its level is 3; give it 1 or 2"),
    "level as text": (changed(level="1"), "give it id, asks"),
    "no question mark": (changed(asks="Say what"), r"end what it asks with \?"),
    "unknown slot": (changed(asks="{flow} is what?"), r"it uses \['flow'\]; there are"),
    "half a slot": (changed(asks="{person is what?"), "it uses .*expected"),
    "two wrong": (changed(wrong=GOOD["wrong"][:2]), "2 choices are wrong, not three"),
    "one text twice": (wrong(text="This"), "two of its choices share one text"),
    "one id twice": (wrong(id="wrong_0"), "two of its choices share one id"),
    "a choice without why": (wrong(why=""), "give it an id, a text and a why"),
    "a choice of text": (changed(wrong=["a", "b", "c"]), "a choice is a; give it an id"),
    "id in capitals": (wrong(id="Wrong"), "an id is lower case words joined by _"),
}


def test_the_good_question_is_read_as_it_stands():
    found = question_of("made_up", GOOD)
    assert ("a_question", "made_up", 1, "This") == (
        found.id,
        found.topic,
        found.level,
        found.right.text,
    )
    assert ["a_question.wrong_0", "a_question.wrong_1", "a_question.wrong_2"] == [
        option.id for option in found.wrong
    ]


@pytest.mark.parametrize(("row", "says"), BAD.values(), ids=BAD)
def test_a_bad_question_is_refused_by_its_file_and_id(row, says):
    with pytest.raises(BadDefinition, match=rf"made_up\.toml, question 'a_question': .*{says}"):
        question_of("made_up", row)


def test_a_question_without_an_id_is_refused_by_its_file():
    row = {key: value for key, value in GOOD.items() if key != "id"}
    with pytest.raises(BadDefinition, match=r"made_up\.toml, question 'without an id': it has"):
        question_of("made_up", row)


def test_two_questions_of_one_id_are_refused():
    with pytest.raises(BadDefinition, match="'a_question': another question has this id"):
        questions_of("made_up", [GOOD, GOOD])


def test_a_topic_without_a_file_is_said_so():
    with pytest.raises(BadDefinition, match=r"no topic's folder has nowhere\.toml: add it"):
        questions("nowhere", 1)


def test_importing_the_solver_reads_no_questions(root):
    ask = (
        "import solver, sys; from solver.topics.questions import _read;"
        "print('tomllib' in sys.modules, _read.cache_info().currsize)"
    )
    command = [sys.executable, "-c", ask]
    done = subprocess.run(command, capture_output=True, text=True, cwd=root, check=True, timeout=60)
    assert "False 0\n" == done.stdout

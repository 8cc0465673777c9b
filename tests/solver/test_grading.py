"""From what was typed to a verdict: right, a named mistake, close, wrong or unreadable."""

import re

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from solver import Verdict, case_from_code, draw, grade
from solver.units.unit import convert

from .drawn import IN_TURN, named, typed

STATUSES = {"right", "mistake", "close", "wrong", "unreadable"}
WATER = draw("water_power", 7)  # 1,750 gpm against 71.5 ft: 31.597 hp
PUMP = draw("pump_efficiency", 7)
CHOICE = draw("which_power", 7)
LAST = len(CHOICE.choices)
CASES = {named((f, level, units)): draw(f, 5, units, level) for f, level, units in IN_TURN}


def status(case, text: str) -> str:
    return grade(case, text).status


def test_a_right_answer_is_told_with_the_answer_and_its_unit():
    expected = Verdict("right", "Right: 31.6 hp.", None, 31.6, "hp", "31.6 hp")
    assert expected == grade(WATER, "31.6 hp")


@pytest.mark.parametrize(
    "text",
    ["31.597", "31.60", "31.6 hp", "31.6HP", "23.56 kW", "23560 W", "31 3/5 hp",
     "1,043,000 ft-lb/min", " 31.6 ", "31.6 horsepower", "0.316e2"],
)  # fmt: skip
def test_an_answer_is_right_however_it_is_written_and_in_any_unit_that_fits(text):
    assert "right" == status(WATER, text)


def test_kilowatts_typed_where_horsepower_is_asked_are_converted_and_said():
    verdict = grade(WATER, "23.56 kW")
    assert ("hp", "23.56 kW, which is 31.59 hp") == (verdict.unit, verdict.echo)
    assert convert(23.56, "kW", "hp") == pytest.approx(verdict.value)
    assert "right" != status(WATER, "31.6 kW")


@pytest.mark.parametrize("text", ["{:.1f}", "{:.1f}%", "{:.1f} percent", "0.{:.0f}", ".{:.0f}"])
def test_an_efficiency_may_be_typed_as_percent_or_as_a_decimal(text):
    share = PUMP.answer * 10 if "." in text[:2] and "{:.0f}" in text else PUMP.answer
    assert "right" == status(PUMP, text.format(share))


def test_a_mistake_is_named_with_what_it_says():
    for mistake in WATER.mistakes:
        verdict = grade(WATER, typed(mistake.value, "hp", 4))
        assert ("mistake", mistake.id) == (verdict.status, verdict.mistake)
        assert verdict.says.endswith(mistake.why)


def test_a_mistake_is_told_with_the_learner_s_own_numbers():
    case = draw("brake_power", 7, "us", 2)  # 115 gpm against 214 ft: 6.215 hp of water, at 59 %
    assert grade(case, "3.667").says.startswith(
        "Your 3.667 hp is 6.215 hp × 0.59. You multiplied by the pump efficiency. To get "
    )
    assert grade(case, "0.1053 hp").says.startswith("Your 0.1053 hp is 6.215 hp / 59. You put")
    assert grade(case, "31.1 MW").says.startswith("Your 31.1 MW uses 115 gpm × 214 ft for the")
    assert grade(WATER, "125,125").says.startswith(
        "So far so good: 1,750 gpm × 71.5 ft = 125,125. You left out the 3,960. Divide by 3,960."
    )


def test_an_answer_just_outside_the_band_is_close_and_is_not_right():
    low, high = WATER.low, WATER.high
    for near in (low * 0.999, low * 0.98, high * 1.001, high * 1.02):
        verdict = grade(WATER, repr(near))
        assert "close" == verdict.status
        assert "Keep more figures" in verdict.says
    assert {"right"} == {status(WATER, repr(edge)) for edge in (low, high)}
    assert {"wrong"} == {status(WATER, repr(far)) for far in (low * 0.95, high * 1.05)}


def test_a_wrong_answer_is_told_what_to_check_first_in_such_a_chain():
    assert (
        "whether to multiply or divide by each efficiency"
        in grade(draw("brake_power", 7), "1,234").says
    )
    assert "First check the unit of each reading" in grade(WATER, "1,234").says


@pytest.mark.parametrize("power", [-6, -3, -2, -1, 1, 2, 3, 6])
def test_a_decimal_point_in_the_wrong_place_is_said_to_be_that(power):
    verdict = grade(WATER, repr(WATER.answer * 10.0**power))
    assert ("wrong", None) == (verdict.status, verdict.mistake)
    assert "decimal point" in verdict.says


@pytest.mark.parametrize(
    ("text", "says"),
    [("65 hp", "too high"), ("16 hp", "too low"),
     ("-31.6 hp", "below zero"), ("0", "too low")],
)  # fmt: skip
def test_a_wrong_answer_is_told_what_to_look_at(text, says):
    verdict = grade(WATER, text)
    assert "wrong" == verdict.status
    assert says in verdict.says


@pytest.mark.parametrize(
    "text",
    ["", "   ", "twelve", "2,4", "2.4 psi", "2.4 3.1", "2 hp hp", "nan", "inf", "-inf", "1e999",
     "9" * 10_000, "9**9**9**9", "2.4 hp; import os", "<b>2.4</b>", "2.4 hp\x00", "$2.40", "0x2"],
)  # fmt: skip
def test_what_cannot_be_read_is_not_counted_and_says_what_to_type(text):
    verdict = grade(WATER, text)
    assert ("unreadable", None, None, None) == (
        verdict.status, verdict.mistake, verdict.value, verdict.unit,
    )  # fmt: skip
    assert not verdict.counts
    assert re.search(r"[Tt]ype |asks for", verdict.says), verdict.says


def test_every_other_verdict_counts_as_a_try():
    for text in ("31.6", "31", "65", typed(WATER.mistakes[0].value, "hp")):
        assert grade(WATER, text).counts


@pytest.mark.parametrize("text", ["{n}", "({n})", "{n}.", "{n})", "choice {n}", "Answer {n}"])
def test_a_choice_is_taken_by_its_number(text):
    right = int(CHOICE.answer)
    assert "right" == status(CHOICE, text.format(n=right))
    assert "mistake" == status(CHOICE, text.format(n=right % LAST + 1))


def test_a_choice_is_taken_by_its_words_whatever_their_case_and_spacing():
    words = CHOICE.choices[int(CHOICE.answer) - 1]
    assert {"right"} == {status(CHOICE, t) for t in (words, f"  {words.upper()}. ")}


@pytest.mark.parametrize("text", ["0", str(LAST + 1), "17"])
def test_a_choice_that_is_not_there_is_not_counted_and_says_which_there_are(text):
    verdict = grade(CHOICE, text)
    assert ("unreadable", f"You typed {text}. Type the number of one choice, 1 to {LAST}.") == (
        verdict.status, verdict.says,
    )  # fmt: skip


@pytest.mark.parametrize("text", ["", "neither", "1 or 2", "-1", "1.5", "12 12", "9" * 10_000])
def test_words_that_are_no_choice_are_not_counted(text):
    assert "unreadable" == status(CHOICE, text)


def sentences(says: str) -> list[str]:
    return re.split(r"(?<=[.?;])\s+(?=[A-Z])", says)


TEXTS = st.one_of(
    st.text(max_size=60),
    st.floats(allow_nan=True, allow_infinity=True).map(repr),
    st.floats(-1e6, 1e6).map("{:.4g}".format),
    st.builds(
        "{:.4g} {}".format, st.floats(0, 1e5), st.sampled_from(["hp", "kW", "%", "$", "gpm"])
    ),
    st.text(alphabet="0123456789.,-+/ eE$%hpkW", max_size=20),
    st.integers(-5, 9).map(str),
)


@pytest.mark.parametrize("problem", CASES)
@given(text=TEXTS)
@example("\ud800")
@example("٣")
@example("½")
@example("1e308")
@settings(max_examples=15)
def test_any_text_has_one_of_the_five_verdicts_in_short_whole_sentences(problem, text):
    verdict = grade(CASES[problem], text)
    ours = re.sub('".*"', "This", verdict.says)  # without what was typed
    assert verdict.status in STATUSES
    assert (verdict.mistake is not None) == (verdict.status == "mistake")
    assert (verdict.value is None) == (verdict.status == "unreadable")
    assert ours.endswith(".")
    assert "!" not in ours
    # Figures and signs of what was worked are no words.
    assert max(len(re.findall(r"[^\W\d_]{2,}", one)) for one in sentences(ours)) < 20


def test_grading_is_the_same_for_a_case_drawn_again_from_its_code():
    again = case_from_code(WATER.code)
    for text in ("31.6", "65", "2,4", typed(WATER.mistakes[0].value, "hp")):
        assert grade(WATER, text) == grade(again, text)


def test_a_right_answer_cut_to_two_figures_is_told_to_give_three():
    told = set()
    for seed in range(30):
        case = draw("brake_power", seed)
        verdict = grade(case, f"{case.answer:.2g}")
        if verdict.status == "close":
            told.add(verdict.says)
    assert {"Close. Give three figures."} == told

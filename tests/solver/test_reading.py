"""Reading answers: what people type is read as they meant it, or refused with one sentence."""

import math
import re

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from solver.errors import Unreadable
from solver.units.reading import read
from solver.units.unit import convert, units

SPELLED = [(one, spelling) for one in units().values() for spelling in one.spellings]
EFFICIENCY = {"bare_fraction": True}


@pytest.mark.parametrize(
    ("text", "asked", "value", "typed_unit", "echo"),
    [
        ("12.5", "hp", 12.5, None, "12.5 hp"),
        ("12.5hp", "hp", 12.5, "hp", "12.5 hp"),
        ("  12.5   HP  ", "hp", 12.5, "hp", "12.5 hp"),
        ("12.5.", "hp", 12.5, None, "12.5 hp"),
        ("12.", "hp", 12.0, None, "12 hp"),
        ("12.5 hp.", "hp", 12.5, "hp", "12.5 hp"),
        ("12-hp", "hp", 12.0, "hp", "12 hp"),
        ("12,500 W", "kW", 12.5, "W", "12,500 W, which is 12.5 kW"),
        ("1,234,567.5", "kWh", 1_234_567.5, None, "1,234,567.5 kWh"),
        ("$1,234.50", "$", 1234.5, "$", "$1,234.50"),
        ("1234.50 dollars", "$", 1234.5, "$", "$1,234.50"),
        ("$20/1000 m3", "$/1000 m3", 20.0, "$/1000 m3", "$20/1000 m³"),
        ("$3/1000 gal", "$/1000 gal", 3.0, "$/1000 gal", "$3/1000 gal"),
        ("3/1000 in", "in", 0.003, "in", "0.003 in"),
        ("82%", "%", 82.0, "%", "82%"),
        ("82 percent", "%", 82.0, "%", "82%"),
        (".82", "%", 0.82, None, "0.82%"),
        ("1/2 hp", "hp", 0.5, "hp", "0.5 hp"),
        ("1⁄2 hp", "hp", 0.5, "hp", "0.5 hp"),
        ("3 1/2 hp", "hp", 3.5, "hp", "3.5 hp"),
        ("3-1/2 hp", "hp", 3.5, "hp", "3.5 hp"),
        ("-3 1/2", "hp", -3.5, None, "-3.5 hp"),
        ("½", "hp", 0.5, None, "0.5 hp"),
        ("3½ hp", "hp", 3.5, "hp", "3.5 hp"),
        ("7 ½", "hp", 7.5, None, "7.5 hp"),
        ("1.2e3", "gpm", 1200.0, None, "1,200 gpm"),
        ("1.2E+3 gpm", "gpm", 1200.0, "gpm", "1,200 gpm"),
        ("+5", "hp", 5.0, None, "5 hp"),
        ("−5", "°C", -5.0, None, "-5 °C"),
        ("–5", "°C", -5.0, None, "-5 °C"),
        ("-0", "hp", 0.0, None, "0 hp"),
        ("12.5\N{NO-BREAK SPACE}hp", "hp", 12.5, "hp", "12.5 hp"),
        ("12.5\N{THIN SPACE}hp", "hp", 12.5, "hp", "12.5 hp"),
        ("12.5\N{NARROW NO-BREAK SPACE}hp", "hp", 12.5, "hp", "12.5 hp"),
        ("\N{ZERO WIDTH NO-BREAK SPACE}12.5", "hp", 12.5, None, "12.5 hp"),
        ("62'", "ft", 62.0, "ft", "62 ft"),
        ("62 ft of head", "ft", 62.0, "ft", "62 ft"),
        ("0.648 mgd", "gpm", 450.0, "MGD", "0.648 MGD, which is 450 gpm"),
        ("68 F", "°C", 20.0, "°F", "68 °F, which is 20 °C"),
        ("0.85 pu", "%", 85.0, "pu", "0.85 pu, which is 85%"),
        ("85%", "", 0.85, "%", "85%, which is 0.85"),
        ("4 poles", "", 4.0, "", "4"),
        ("2 MΩ", "megohm", 2.0, "megohm", "2 megohms"),
        ("300 kWh per 1000 m³", "kWh/1000 m3", 300.0, "kWh/1000 m3", "300 kWh/1000 m³"),
    ],
)
def test_a_number_is_read_as_it_was_meant_and_said_back(text, asked, value, typed_unit, echo):
    reading = read(text, asked)
    assert value == pytest.approx(reading.value, rel=1e-12)
    assert (asked, typed_unit, echo) == (reading.unit, reading.typed_unit, reading.echo)


@pytest.mark.parametrize(
    ("text", "asked", "value", "echo"),
    [
        ("$0.12", "$/kWh", 0.12, "$0.12, which is $0.12/kWh"),
        ("$0.12/kWh", "$/kWh", 0.12, "$0.12/kWh"),
        ("$ .12 per kWh", "$/kWh", 0.12, "$0.12/kWh"),
        ("12 cents", "$/kWh", 0.12, "12 cents, which is $0.12/kWh"),
        ("12¢/kWh", "$/kWh", 0.12, "12 cents/kWh, which is $0.12/kWh"),
        ("$0.12", "cents/kWh", 12.0, "$0.12, which is 12 cents/kWh"),
        ("$1,200", "$/year", 1200.0, "$1,200, which is $1,200/year"),
        ("90 min", "h/day", 1.5, "90 min, which is 1.5 hours per day"),
        ("12,000 kWh", "kWh/year", 12_000.0, "12,000 kWh, which is 12,000 kWh/year"),
    ],
)
def test_the_first_half_of_a_unit_is_enough_where_the_question_says_per_what(
    text, asked, value, echo
):
    reading = read(text, asked)
    assert value == pytest.approx(reading.value, rel=1e-12)
    assert echo == reading.echo


@pytest.mark.parametrize("text", ["450 L", "450 gal", "450 ft"])
def test_half_a_unit_is_not_enough_for_a_flow(text):
    with pytest.raises(Unreadable, match=r"this asks for a flow in L/s\.$"):
        read(text, "L/s")


@pytest.mark.parametrize(
    ("text", "value", "echo"),
    [
        (".82", 82.0, "0.82, which is 82%"),
        ("0.825", 82.5, "0.825, which is 82.5%"),
        ("1", 100.0, "1, which is 100%"),
        ("½", 50.0, "0.5, which is 50%"),
        ("41/50", 82.0, "0.82, which is 82%"),
        ("1.01", 1.01, "1.01%"),
        ("82", 82.0, "82%"),
        ("0.82 %", 0.82, "0.82%"),
        ("0", 0.0, "0%"),
        ("-.5", -0.5, "-0.5%"),
    ],
)
def test_a_bare_decimal_is_a_fraction_where_only_an_efficiency_makes_sense(text, value, echo):
    reading = read(text, "%", **EFFICIENCY)
    assert value == pytest.approx(reading.value, rel=1e-12)
    assert echo == reading.echo


@pytest.mark.parametrize(
    ("text", "value"), [("6.4", 6.4), ("6.4 C", 6.4), ("9 °F", 5.0), ("6 K", 6.0)]
)
def test_a_rise_in_temperature_is_a_difference_though_typed_in_degrees(text, value):
    assert value == pytest.approx(read(text, "°C rise").value, rel=1e-12)


@pytest.mark.parametrize("text", ["2", "2)", "2.", "(2)", "choice 2", "Answer 2", "no. 2", " 2 "])
def test_a_choice_is_read_by_its_number(text):
    expected = (2.0, "choice", "choice 2")
    reading = read(text, "choice")
    assert expected == (reading.value, reading.unit, reading.echo)


@pytest.mark.parametrize("text", ["2.5", "B", "two", "2 3", "-2", "choice", "2 hp", "1/2", "9999"])
def test_what_is_not_a_whole_number_is_no_choice(text):
    with pytest.raises(Unreadable, match=r"isn't the number of a choice. Type one, such as 2\.$"):
        read(text, "choice")


NOT_THOUSANDS = "has a comma that doesn't mark thousands. Type"
NOT_FIRST = "doesn't start with its number. Type one number, such as 12.5 hp."
TWO = "has more than one number. Type just one, such as 12.5 hp."
NOT_WORKED = (
    "can't be worked out here. Type it in plain numbers, such as 150*66/3960, or type its result."
)
RANGE = "could be a range or a subtraction. Type one number, such as 12.5 hp."
NOT_GRADED = "can't be graded. Type one number, such as 12.5 hp."
NOT_PLAIN = "isn't a plain number. Type one number, such as 12.5 hp."
NO_UNIT = "isn't a unit that can be read here. Type one number, such as 12.5 hp."


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "Nothing is typed yet. Type one number, such as 12.5 hp."),
        (" \t\N{NO-BREAK SPACE}\n", "Nothing is typed yet. Type one number, such as 12.5 hp."),
        ("12,5", f'"12,5" {NOT_THOUSANDS} 12.5 if you mean that.'),
        ("12,5 hp", f'"12,5 hp" {NOT_THOUSANDS} 12.5 if you mean that.'),
        ("1.234,5", f'"1.234,5" {NOT_THOUSANDS} 1234.5 if you mean that.'),
        ("0,125", f'"0,125" {NOT_THOUSANDS} 0.125 if you mean that.'),
        (",5", f'",5" {NOT_THOUSANDS} 0.5 if you mean that.'),
        ("-12,5", f'"-12,5" {NOT_THOUSANDS} -12.5 if you mean that.'),
        ("0 ,5", f'"0 ,5" {NOT_THOUSANDS} one number, such as 12.5 hp.'),
        ("1,234,5", f'"1,234,5" {NOT_THOUSANDS} one number, such as 12.5 hp.'),
        ("1,2345", f'"1,2345" {NOT_THOUSANDS} 1.2345 if you mean that.'),
        ("1,23,456", f'"1,23,456" {NOT_THOUSANDS} one number, such as 12.5 hp.'),
        ("1234,567", f'"1234,567" {NOT_THOUSANDS} 1234.567 if you mean that.'),
        ("1 234", '"1 234" has a space inside its number. Type 1234 if you mean that.'),
        ("1 234.5 W", '"1 234.5 W" has a space inside its number. Type 1234.5 if you mean that.'),
        ("12 13", f'"12 13" {TWO}'),
        ("12-13", f'"12-13" {RANGE}'),
        ("5;6", f'"5;6" {TWO}'),
        ("10 to 12", f'"10 to 12" {TWO}'),
        ("12 hp 3", f'"12 hp 3" {TWO}'),
        ("3 5/2", f'"3 5/2" {TWO}'),
        ("1.2.3", f'"1.2.3" {TWO}'),
        ("4 1000 gal", f'"4 1000 gal" {TWO}'),
        ("about twelve", '"about twelve" has no number in it. Type one number, such as 12.5 hp.'),
        ("hp", '"hp" has no number in it. Type one number, such as 12.5 hp.'),
        ("%12", f'"%12" {NOT_FIRST}'),
        ("nan", f'"nan" {NOT_GRADED}'),
        ("-inf", f'"-inf" {NOT_GRADED}'),
        ("Infinity hp", f'"Infinity hp" {NOT_GRADED}'),
        ("1e999", '"1e999" is too large. Type one number, such as 12.5 hp.'),
        ("2e15", '"2e15" is too large. Type one number, such as 12.5 hp.'),
        ("1e12 MW", '"1e+12 MW" is too large. Type one number, such as 12.5 hp.'),
        ("1/0", '"1/0" divides by zero. Type one number, such as 12.5 hp.'),
        ("9**9**9", f'"9**9**9" {NOT_WORKED}'),
        ("9^9^9^9", f'"9^9^9^9" {NOT_WORKED}'),
        ("0x1F", f'"0x1F" {NOT_PLAIN}'),
        ("1_000", f'"1_000" {NOT_PLAIN}'),
        ("١٢", '"١٢" has digits other than 0 to 9. Type 0 to 9.'),
        ("１２", '"１２" has digits other than 0 to 9. Type 0 to 9.'),
        ("12 hp hp", '"12 hp hp" has more than one unit. Type one number, such as 12.5 hp.'),
        ("12 kW hp", '"12 kW hp" has more than one unit. Type one number, such as 12.5 hp.'),
        ("$12 hp", '"$12 hp" has more than one unit. Type one number, such as 12.5 hp.'),
        ("12 zork", f'"zork" {NO_UNIT}'),
        (
            "12 mw",
            '"12 mw" could be milliwatts or megawatts. Type 12 megawatts or 12 milliwatts.',
        ),
        ("12 \x00\x07", f'"??" {NO_UNIT}'),
        ("12 psi", "psi is a pressure; this asks for a power in hp."),
        ("12 kVA", "kVA is an apparent power; this asks for a power in hp."),
        ("82%", "% is a percentage; this asks for a power in hp."),
        ("$12", "$ is an amount of money; this asks for a power in hp."),
        ("12 cents", "cents is an amount of money; this asks for a power in hp."),
    ],
)
def test_what_cannot_be_read_is_refused_with_the_sentence_that_fits(text, sentence):
    with pytest.raises(Unreadable, match=f"^{re.escape(sentence)}$"):
        read(text, "hp")


@pytest.mark.parametrize("text", ["1" * 10_000, "9**" * 4000 + "9", " " * 10_000, "½" * 10_000])
def test_ten_thousand_characters_are_refused_before_they_are_looked_at(text):
    with pytest.raises(Unreadable, match=r"^That is 1[0-9],00[01] characters long. Type one"):
        read(text, "hp")


@pytest.mark.parametrize(("size", "read_at_all"), [(120, True), (121, False)])
def test_a_hundred_and_twenty_characters_are_looked_at_and_no_more(size, read_at_all):
    text = "5" + " " * (size - 3) + "hp"
    if read_at_all:
        assert read(text, "hp").value == 5.0
    else:
        with pytest.raises(Unreadable, match=r"^That is 121 characters long"):
            read(text, "hp")


def test_markup_in_a_unit_is_repeated_as_typed_and_left_for_the_page_to_escape():
    with pytest.raises(Unreadable, match=rf'^"<img src=x>" {NO_UNIT}$'):
        read("12 <img src=x>", "hp")


@pytest.mark.parametrize(("one", "spelling"), SPELLED, ids=[f"{s}" for _, s in SPELLED])
def test_a_number_with_any_spelling_of_a_unit_is_read_in_that_unit(one, spelling):
    if spelling[0].isdigit():
        with pytest.raises(Unreadable, match=r"(has more than one number|space inside)"):
            read(f"12.5 {spelling}", one.name)  # "12.5 1000 gal" could be two numbers
    elif one.name == "choice":
        with pytest.raises(Unreadable, match="isn't the number of a choice"):
            read(f"12.5 {spelling}", one.name)
    else:
        expected = (12.5, 12.5, one.name)
        reading = read(f"12.5 {spelling}", one.name)
        assert expected == (reading.value, reading.typed_value, reading.typed_unit)


FITTING = [
    (typed, asked)
    for typed in units().values()
    for asked in units().values()
    if typed.kind == asked.kind != "choice"
]


@given(
    value=st.floats(min_value=-900, max_value=900, allow_subnormal=False),
    pair=st.sampled_from(FITTING),
    data=st.data(),
)
def test_a_number_written_out_with_a_fitting_unit_comes_back_converted(value, pair, data):
    typed, asked = pair
    spellings = [text for text in typed.spellings if text not in ("mohm", "mΩ", "mW")]
    spellings = [text for text in spellings if not text[0].isdigit()]
    text = f"{value!r} {data.draw(st.sampled_from(spellings))}"
    expected = convert(value, typed, asked)
    assert expected == read(text, asked.name).value


@given(whole=st.integers(min_value=0, max_value=10**15))
def test_thousands_marks_change_nothing(whole):
    assert float(whole) == read(f"{whole:,}", "gpm").value == read(str(whole), "gpm").value


def _one_plain_sentence(said: str) -> bool:
    return said.isprintable() and said.endswith(".") and len(said) < 200 and len(said.split()) <= 26


PIECES = ["12", "1,234", ".5", "1/2", "½", "e9", "$", "%", "hp", "kWh", *"/- ,.^_"]
ANYTHING = st.one_of(
    st.text(max_size=130),
    st.lists(st.sampled_from(PIECES), max_size=12).map("".join),
    st.builds("{} {}".format, st.floats(), st.text(max_size=20)),
)


@settings(max_examples=400)
@given(
    text=ANYTHING,
    asked=st.sampled_from(["hp", "%", "$", "$/kWh", "", "choice", "°C rise", "ft"]),
    bare_fraction=st.booleans(),
)
@example("1" * 117 + ",5", "hp", False)
@example("0 ,0", "hp", False)
@example("\ud800", "hp", False)
@example("1/" + "9" * 118, "hp", False)
@example("9" * 118 + "/1", "hp", False)
@example("1E-200", "%", True)
def test_any_text_gives_a_finite_reading_or_one_plain_sentence(text, asked, bare_fraction):
    try:
        reading = read(text, asked, bare_fraction=bare_fraction and asked == "%")
    except Unreadable as refusal:
        said = str(refusal)
    else:
        said = f"{reading.echo}."
        assert math.isfinite(reading.value)
    assert _one_plain_sentence(said), said

"""A record made a lesson: with its own numbers, with fresh ones like them, or politely refused."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from solver import FAMILIES, case_from_code, draw, family_named, grade
from solver.engine.posing import posed
from solver.errors import Unfit
from solver.own.record import FIELDS, STATES, Record, examine, lesson, like, read_entries
from solver.own.record.fields import SAME
from solver.own.record.lesson import ONLY
from solver.units.show import exact, with_unit
from solver.vocabulary import quantity_named

from .drawn import typed

LEGS = {"amps_a": "25.5", "amps_b": "23", "amps_c": "26.5"}
NUMBERS = [field.name for field in FIELDS if not field.is_text]


def made(units="us", **texts):
    return lesson(examine(read_entries(texts, units)[0]))


def titles(exercises):
    return [one.title for one in exercises]


def exercise(of, name, level):
    return next(one for one in of.exercises if (one.family.name, one.level) == (name, level))


# With its own numbers


def test_the_numbers_of_a_problem_are_those_of_the_record():
    case = exercise(made(**LEGS), "current_unbalance", 2).case
    assert {"amps_a": 25.5, "amps_b": 23.0, "amps_c": 26.5} == case.given
    # A pump maker's manual (read): 25.5, 23 and 26.5 A give 8 %.
    assert pytest.approx(8) == case.answer
    assert "25.5 A, 23 A and 26.5 A" in case.question


def test_the_same_record_gives_the_same_problems_and_they_have_no_code():
    assert made(**LEGS) == made(**LEGS)
    assert {""} == {one.case.code for one in made(**LEGS).own}


def test_a_problem_plays_where_the_record_was_made():
    case = exercise(made(pump="2", station="Mill Lane", **LEGS), "current_unbalance", 2).case
    assert "on the three legs of Pump 2 at Mill Lane." in case.question


def test_a_record_without_names_still_makes_whole_sentences():
    of = made(flow="450", head="62", **LEGS)
    assert exercise(of, "water_power", 1).case.question.startswith("This pump moves 450 gpm")
    assert "on the three legs of this pump." in exercise(of, "current_unbalance", 2).case.question


@pytest.mark.parametrize("name", ["{flow}", "{0}", "{", "%s", "\\1", "<b>", "a\nb"])
def test_a_name_of_the_record_stands_in_the_question_as_it_is(name):
    question = exercise(made(pump=f"No {name}", **LEGS), "current_unbalance", 2).case.question
    assert " ".join(f"No {name}".split()) in question


def test_what_came_from_another_unit_is_given_as_it_is_shown():
    case = exercise(made(flow="0.7 MGD", head="62"), "water_power", 1).case
    assert 486.1 == case.given["flow"]  # 0.7 MGD is 486.111 gpm


def test_a_head_worked_from_gauges_and_a_flow_by_drawdown_are_known():
    of = made(
        discharge_gauge="30", suction_gauge="4", well_diameter="8", drawdown_level="1.5",
        drawdown_time="1.5", inflow="100",
    )  # fmt: skip
    found = examine(read_entries({"discharge_gauge": "30", "suction_gauge": "4"})[0])
    head = found.finding("gauges").value
    assert float(f"{head:.4g}") == exercise(of, "water_power", 1).given["head"]


def test_a_reading_at_the_top_of_the_meters_range_is_not_given_as_a_number():
    of = made(insulation_1min=">2000", winding_temperature="25", insulation_30s="900")
    assert "A reading corrected to 40 °C, level 1" not in titles(of.exercises)


def test_problems_on_the_most_pressing_findings_come_first():
    texts = {"volts_ab": "480", "volts_bc": "440", "volts_ca": "460", "flow": "450", "head": "62"}
    examined = examine(read_entries({**LEGS, **texts})[0])
    order = [
        min(STATES.index(f.state) for f in examined.findings if set(one.given) & f.given.keys())
        for one in lesson(examined).exercises
    ]
    assert order == sorted(order)
    assert len(set(order)) > 1


def test_a_judgement_on_the_records_numbers_has_the_choice_that_they_make_right():
    case = exercise(made(**LEGS), "current_limits", 2).case
    assert "Acceptable: over 5%, up to 10%" == case.choices[int(case.answer) - 1]


# Refused


def test_numbers_outside_what_problems_use_are_refused_with_the_reason():
    one = exercise(made(flow="450000", head="62"), "water_power", 1)
    assert one.case is None
    assert one.refusal.startswith("The flow is 450,000 gpm. Problems have ")


def test_numbers_with_which_a_mistake_would_pass_for_right_are_refused():
    # The middle reading is the average, so leaving it out changes nothing.
    one = exercise(made(amps_a="23", amps_b="25", amps_c="27"), "amps_average", 1)
    assert (None, "A common mistake would give nearly the right answer.") == one[3:]


def test_numbers_right_at_a_limit_are_refused_by_a_judgement():
    one = exercise(made(amps_a="21", amps_b="20", amps_c="19"), "current_limits", 2)
    assert (None, "It is too close to a limit to be judged fairly.") == one[3:]


def test_even_legs_have_no_unbalance_to_practise_and_it_is_said():
    one = exercise(made(amps_a="25", amps_b="25", amps_c="25"), "current_unbalance", 2)
    assert one.case is None
    assert one.refusal.startswith("The largest deviation from average amps is 0 A.")


def test_values_whose_formula_fails_are_refused_too():
    with pytest.raises(Unfit, match="can't be calculated with these values"):
        posed(family_named("pole_count"), 1, "us", {"frequency": 60, "rated_speed": 1760}, {})


def test_readings_beyond_a_published_table_are_refused_with_what_the_table_says():
    one = exercise(
        made(motor_size="20", volts_ab="480", volts_bc="440", volts_ca="420"), "derated_power", 3
    )
    assert one.refusal.startswith(
        "Its formula can't be calculated: a voltage unbalance of 7.46 % is"
    )


@pytest.mark.parametrize(
    ("texts", "title"),
    [
        ({**LEGS, "phase": "1"}, "Current unbalance: largest deviation from the average, level 2"),
        (
            {"discharge_gauge": "30", "suction_gauge": "4", "discharge_gauge_height": "2"},
            "Total dynamic head from two gauges, level 1",
        ),
        ({"input_power": "16", "run_time": "2000"}, "Kilowatt-hours from kilowatts and hours, level 1"),
        (
            {"insulation_1min": "300", "winding_temperature": "25", "rated_volts": "460",
             "winding_kind": "form-wound"},
            "A reading against the minimum, level 2",
        ),
    ],
)  # fmt: skip
def test_a_question_that_the_record_does_not_bear_out_is_not_asked(texts, title):
    family = next(f for f in FAMILIES if title.startswith(f"{f.title}, level"))
    assert set(family.level(int(title[-1])).given) <= {*texts, "insulation"}
    assert title not in titles(made(**texts).exercises)


def test_every_exception_is_of_a_family_that_there_is():
    for name, level in ONLY:
        assert level <= len(family_named(name).levels)


# Fresh numbers


def test_fresh_numbers_are_an_ordinary_problem_with_its_code():
    one = exercise(made(**LEGS), "current_unbalance", 2)
    case = like(one, "us", range(20))
    assert case_from_code(case.code) == case
    assert ("current_unbalance", 2, "us") == (case.family.name, case.level, case.units)


def test_fresh_numbers_are_the_nearest_in_size_of_those_drawn():
    one = exercise(made(flow="450", head="62"), "water_power", 1)

    def times(case):
        ratios = (case.given["flow"] / 450, case.given["head"] / 62)
        return max(ratios[0], 1 / ratios[0]) * max(ratios[1], 1 / ratios[1])

    drawn = [draw("water_power", seed, "us", 1) for seed in range(30)]
    assert min(map(times, drawn)) == times(like(one, "us", range(30)))


# Every kind of problem that a record can know, from readings drawn for it

ASKED = [
    (family, level, units)
    for family in FAMILIES
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
    if family.level(level).given
    and {SAME.get(name, name) for name in family.level(level).given} <= set(NUMBERS)
]


@pytest.mark.parametrize("asked", ASKED, ids=lambda asked: f"{asked[0].name}-{asked[1]}-{asked[2]}")
def test_each_kind_is_made_of_a_record_graded_right_and_its_mistakes_named(asked):
    family, level, units = asked
    found = []
    for seed in range(12):
        values = {SAME.get(n, n): v for n, v in draw(family, seed, units, level).given.items()}
        texts = {"winding_kind": "random-wound", "insulation_class": "F"}
        of = lesson(examine(Record(units, values, texts)))
        found += [one.case for one in of.own if (one.family, one.level) == (family, level)]
    for case in found:
        check_answers(case)
    kept_out = {(family.name, 0), (family.name, level)} & set(ONLY)
    asked_before = family.level(level).question in [
        at.question for at in family.levels[: level - 1]
    ]
    assert found or kept_out or asked_before


def check_answers(case):
    """The answer is right at full, four and three figures; every mistake is named, none is right."""
    if case.choices:
        assert "right" == grade(case, f"{case.answer:g}").status
    else:
        for figures in (None, 4, 3):
            assert "right" == grade(case, typed(case.answer, case.unit, figures)).status
    for mistake in case.mistakes:
        text = f"{mistake.value:g}" if case.choices else typed(mistake.value, case.unit)
        verdict = grade(case, text)
        assert ("mistake", mistake.id) == (verdict.status, verdict.mistake), (case.given, text)
        if not case.choices:
            assert "right" != grade(case, typed(mistake.value, case.unit, 3)).status


# For any record: readings as people write them, in their usual range


def readings(units):
    """Any few fields with values of three figures in or near their usual range."""

    def value(name):
        low, high = quantity_named(name).usual(units)
        return st.floats(max(low, 1e-3), high).map(lambda number: float(f"{number:.3g}"))

    return st.dictionaries(st.sampled_from(NUMBERS), st.none(), min_size=4, max_size=25).flatmap(
        lambda names: st.fixed_dictionaries({name: value(name) for name in names})
    )


def legs(draw_from, size):
    """Three readings near each other, as a motor shows them."""
    return [float(f"{size * draw_from(st.floats(0.9, 1.1)):.3g}") for _ in "abc"]


@st.composite
def records(draw_from):
    units = draw_from(st.sampled_from(("us", "si")))
    values = draw_from(readings(units))
    for names in (
        ("amps_a", "amps_b", "amps_c"),
        ("volts_ab", "volts_bc", "volts_ca"),
        ("ohms_12", "ohms_23", "ohms_31"),
    ):
        if names[0] in values:
            values |= dict(zip(names, legs(draw_from, values[names[0]]), strict=True))
    texts = draw_from(
        st.fixed_dictionaries({}, optional={
            "winding_kind": st.sampled_from(("random-wound", "form-wound", "before 1970")),
            "insulation_class": st.sampled_from("ABFH"),
        })
    )  # fmt: skip
    return Record(units, values, texts)


every_record = [
    settings(max_examples=150, suppress_health_check=list(HealthCheck)),
    given(records()),
]


def for_any_record(test):
    for wrap in reversed(every_record):
        test = wrap(test)
    return test


@for_any_record
def test_every_problem_of_any_record_is_graded_right_and_its_mistakes_named(record):
    for one in lesson(examine(record)).own:
        check_answers(one.case)


@for_any_record
def test_every_given_is_a_reading_of_the_record_and_stands_in_the_question(record):
    same = {**record.values, **{n: record.values[s] for n, s in SAME.items() if s in record.values}}
    for one in lesson(examine(record)).own:
        for name, value in one.case.given.items():
            unit = quantity_named(name).unit(record.units)
            assert with_unit(exact(value, unit), unit) in one.case.question
            assert same.get(name, value) == value


@for_any_record
def test_every_exercise_has_a_problem_or_a_reason_and_never_both(record):
    for one in lesson(examine(record)).exercises:
        assert (one.case is None) is bool(one.refusal)
        assert one.refusal == "" or one.refusal.endswith(".")


ROLLED = {f"{leg}_2": amps for leg, amps in LEGS.items()}


@pytest.mark.parametrize(
    ("once", "asked"),
    [({}, True), ({"amps_a_2": "25.3", "amps_b_2": "25.3", "amps_c_2": "25.4"}, False)],
    ids=["the high leg stays", "no leg stands out"],
)
def test_rolled_leads_are_asked_of_where_they_show_a_cause(once, asked):
    found = lesson(examine(read_entries(LEGS | ROLLED | once)[0]))
    assert asked == ("rolled_leads" in {one.family.name for one in found.exercises})

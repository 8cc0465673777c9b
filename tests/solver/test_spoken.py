"""Names of quantities in a sentence: said as each system says them, and refused where unknown."""

from dataclasses import replace

import pytest

from solver import FAMILIES, draw
from solver.algebra.formula import Formula, Slip
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.errors import BadDefinition
from solver.topics.formulas import FORMULAS
from solver.vocabulary import quantity_named, spoken

BRAKE = next(f for f in FORMULAS if f.result == "brake_power" and f.slips)
POWER = next(family for family in FAMILIES if family.name == "brake_power")
CHOICE = next(family for family in FAMILIES if family.name == "which_power")
LABEL = quantity_named("motor_size").label("us")


def test_a_name_is_said_in_its_sentence_and_begins_one_with_a_capital():
    expected = f"{LABEL[0].upper()}{LABEL[1:]}: the {LABEL}."
    assert expected == spoken("{motor_size:Name}: the {motor_size:name}.", "us")


def test_a_name_without_an_abbreviation_stands_for_it():
    assert f"{LABEL}, {LABEL}" == spoken("{motor_size:short}, {motor_size:full}", "us")


@pytest.mark.parametrize("text", ["no braces", "{}", "{flow}", "a {set} of {1, 2}", "{ : }", "}{"])
def test_other_braces_stay_as_they_are(text):
    assert text == spoken(text, "us")


BAD = ("{watr_power:name}", "{water_power:nam}")


@pytest.mark.parametrize("bad", BAD)
def test_an_unknown_name_or_form_is_refused_where_it_is_defined(bad):
    refused = pytest.raises(BadDefinition, match=rf"slot \{bad[:-1]}\}}: write a quantity's name")
    right = Option("right", "It is.", "It is so.")
    for define in (
        lambda: Option("a", f"The {bad}.", "No."),
        lambda: Option("a", "It is not.", f"The {bad}."),
        lambda: Judgement(f"the {bad}", "", right, ()),
        lambda: Slip("a", BRAKE.expr, f"You left out the {bad}."),
        lambda: Formula("brake_power", BRAKE.expr, "a handbook", f"The {bad}."),
        lambda: replace(POWER, levels=(Level((), f"The {bad}?"),) * 2),
    ):
        with refused:
            define()


def test_the_question_the_reason_and_the_slip_are_said_in_the_system_of_the_problem():
    slip = replace(BRAKE.slips[0], says="You used the {pump_efficiency:name} twice.")
    formula = replace(BRAKE, why="The {water_power:name} is less.", slips=(slip,))
    asks = "{water_power} at {pump_efficiency}: what is the {brake_power:name}?"
    level = Level(("water_power", "pump_efficiency"), asks)
    for units in ("us", "si"):
        family = replace(POWER, levels=(level, POWER.levels[-1]), formulas=(formula,))
        case = draw(family, 3, units)
        assert case.question.endswith(f"what is the {spoken('{brake_power:name}', units)}?")
        assert f"The {spoken('{water_power:name}', units)} is less." == case.steps[0].why
        named = {mistake.id: mistake.says for mistake in case.mistakes}
        twice = spoken("You used the {pump_efficiency:name} twice.", units)
        assert named[f"brake_power.{slip.id}"].startswith(twice)


def test_a_formula_turned_round_has_the_reason_of_that_direction():
    formula = replace(BRAKE, back="The {water_power:name} is what is left.", slips=())
    for units in ("us", "si"):
        level = Level(("brake_power", "pump_efficiency"), "{brake_power}, {pump_efficiency}?")
        changes = {
            "levels": (level, POWER.levels[-1]),
            "formulas": (formula,),
            "asked": "water_power",
        }
        case = draw(replace(POWER, **changes), 5, units)
        assert f"The {spoken('{water_power:name}', units)} is what is left." == case.steps[0].why
        (wrong,) = (m for m in case.mistakes if "divided_by.pump_efficiency" in m.id)
        assert wrong.says.endswith(case.steps[0].why)


def test_what_a_judgement_says_is_said_in_the_system_of_the_problem():
    said = "{motor_power:Name} and {water_power:short}"

    def judge(values, units, chance):
        right, wrong = (Option(id, f"{id}: {said}", f"Why {id}: {said}.") for id in ("a", "b"))
        return Judgement(f"The rule: {said}", f"The numbers: {said}", right, (wrong,))

    for units in ("us", "si"):
        case = draw(replace(CHOICE, judge=judge), 1, units)
        expected = spoken(said, units)
        assert {f"a: {expected}", f"b: {expected}"} == set(case.choices)
        last = case.steps[-1]
        assert (f"The rule: {expected}", f"The numbers: {expected}") == (last.rule, last.numbers)
        assert f"Why a: {expected}." == last.why
        assert f"Why b: {expected}." == case.mistakes[0].says

"""A family that is not well defined fails when it is defined, by its name and what is wrong."""

import re
from dataclasses import FrozenInstanceError, replace

import pytest

from solver import FAMILIES, draw
from solver.algebra.expression import Fraction, Known
from solver.algebra.formula import Formula
from solver.engine.family import Family, Level, Small
from solver.engine.judgement import Judgement, Option
from solver.errors import BadDefinition
from solver.topics.formulas import FORMULAS
from solver.vocabulary import quantity_named

water, pump = Known("water_power"), Fraction(Known("pump_efficiency"))
BRAKE = Formula("brake_power", water / pump, "a handbook", "It is so.")
GOOD = Level(("water_power", "pump_efficiency"), "{water_power} at {pump_efficiency}: how much?")


def scene(chance, units):
    return {"water_power": 12.0, "pump_efficiency": chance.step(60, 80, 1)}


def with_scene(level: Level, of) -> Level:
    """The level with a scene of its own, and so another than the first."""
    return replace(level, scene=Small(lambda chance, units: of(chance, units)))


OTHER = with_scene(GOOD, scene)


def family(**changes) -> Family:
    fields = {
        "name": "shaft", "tag": "SH", "chapter": "horsepower", "title": "The shaft",
        "asked": "brake_power", "levels": (GOOD, OTHER), "scene": Small(scene), "formulas": (BRAKE,),
    }  # fmt: skip
    return Family(**fields | changes)


def one_of(*texts: str):
    """A judgement whose first option is right."""

    def judge(values, units, chance):
        options = [Option(f"option_{text}", text, "It is so.") for text in texts]
        return Judgement("the rule", "", options[0], tuple(options[1:]))

    return judge


def test_a_family_well_defined_can_be_drawn_at_once():
    case = draw(family(), 7)
    assert 12 / case.given["pump_efficiency"] * 100 == pytest.approx(case.answer)


def test_a_definition_is_frozen():
    with pytest.raises(FrozenInstanceError, match="cannot assign to field 'tag'"):
        family().tag = "XX"


BAD = {
    "name with a space": ({"name": "the shaft"}, "'the shaft': the name is lower case words"),
    "name in capitals": ({"name": "Shaft"}, "'Shaft': the name is lower case words"),
    "tag in small letters": ({"tag": "sh"}, "tag 'sh' is not two to four capital letters"),
    "tag with a figure": ({"tag": "S1"}, "tag 'S1' is not two to four capital letters"),
    "tag of one letter": ({"tag": "S"}, "tag 'S' is not two to four capital letters"),
    "tag of five letters": ({"tag": "SHAFT"}, "tag 'SHAFT' is not two to four capital letters"),
    "revision of two figures": ({"revised": tuple(range(2, 11))}, "one figure for the revision"),
    "revised before it came": ({"since": 3, "revised": (2,)}, "`revised` goes up from `since` 3"),
    "revised twice at once": ({"revised": (2, 2)}, "write the number of the next catalogue"),
    "a level before it came": (
        {"since": 3, "levels": (GOOD, replace(OTHER, since=2))},
        "levels come one after another",
    ),
    "ten levels": ({"levels": (GOOD,) * 10}, "one figure for the revision and one for the level"),
    "one level": ({"levels": (GOOD,)}, "'shaft': give it two levels or more"),
    "unknown asked": ({"asked": "braek_power"}, "no quantity is called 'braek_power'"),
    "choice without a judge": ({"asked": "choice"}, "'choice' is asked just when it judges"),
    "judge without a choice": ({"judge": one_of("a", "b")}, "'choice' is asked just when it judg"),
}


@pytest.mark.parametrize(("changes", "says"), BAD.values(), ids=BAD)
def test_a_bad_family_is_refused_by_name(changes, says):
    with pytest.raises(BadDefinition, match=says):
        family(**changes)


BAD_LEVELS = {
    "slot not given": (
        Level(GOOD.given, GOOD.question.replace("how", "{head} how")),
        r"'shaft', level 2: question has \['head'\] that is not given",
    ),
    "table of what is not given": (
        replace(GOOD, table=("head",)),
        r"'shaft', level 2: question has \['head'\] that is not given",
    ),
    "slot in a row not given": (
        replace(GOOD, table=(("Head", "{head}"),)),
        r"'shaft', level 2: question has \['head'\] that is not given",
    ),
    "slot without a name": (
        Level(GOOD.given, GOOD.question.replace("how", "{} how")),
        r"'shaft', level 2: question has \[''\] that is not given",
    ),
    "no end": (
        Level(GOOD.given, GOOD.question.strip("?")),
        "level 2: end its question with a full stop or question",
    ),
    "given and not said": (
        Level((*GOOD.given, "head"), GOOD.question),
        r"'shaft', level 2: \['head'\] is given, and .* Write {head} into it",
    ),
    "a comma left out": (
        replace(GOOD, given="water_power"),
        r"'shaft', level 2: write a comma after what it gives: \('water_power',\)",
    ),
    "what it asks is given": (
        Level((*GOOD.given, "brake_power"), "{brake_power}? " + GOOD.question),
        "'shaft', level 2: it asks for 'brake_power' and gives it.* write asked= with what",
    ),
    "asked that is not known": (
        replace(GOOD, asked="braek_power"),
        "no quantity is called 'braek_power'",
    ),
    "given that is not known": (
        Level((*GOOD.given, "haed"), GOOD.question.replace("how", "{haed} how")),
        "no quantity is called 'haed'",
    ),
    "to find what is not known": (
        replace(GOOD, find=("watr_power",)),
        "no quantity is called 'watr_power'",
    ),
}


@pytest.mark.parametrize(("level", "says"), BAD_LEVELS.values(), ids=BAD_LEVELS)
def test_a_bad_level_is_refused_by_family_and_number(level, says):
    with pytest.raises(BadDefinition, match=says):
        family(levels=(GOOD, level))


@pytest.mark.parametrize(
    "level", [GOOD, replace(GOOD, question="Shaft: {pump_efficiency}, {water_power}?"),
              replace(GOOD, given=GOOD.given[::-1])],
)  # fmt: skip
def test_a_level_that_repeats_another_of_its_family_is_refused(level):
    with pytest.raises(BadDefinition, match=r"'shaft', level 3: it repeats level 1\. Give other"):
        family(levels=(GOOD, OTHER, level))


def test_of_one_formula_each_level_may_ask_another_quantity():
    """Given two, find the third."""
    back = Level(
        ("water_power", "brake_power"), "{water_power}, {brake_power}?", asked="pump_efficiency"
    )
    three = Small(lambda *drawn: scene(*drawn) | {"brake_power": 16.0})
    both = family(levels=(GOOD, back), scene=three)
    assert ["brake_power", "pump_efficiency"] == [draw(both, 7, level=n).asked for n in (1, 2)]
    assert (75, "%") == (draw(both, 7, level=2).answer, draw(both, 7, level=2).unit)


def test_a_level_of_a_judgement_asks_for_a_choice():
    judge = {"asked": "choice", "judge": one_of("a", "b")}
    level = replace(OTHER, asked="brake_power")
    with pytest.raises(BadDefinition, match="'shaft', level 2: take out its asked="):
        family(**judge, levels=(GOOD, level))


def test_a_scene_that_leaves_out_what_a_level_gives_is_told_which():
    left_out = family(scene=Small(lambda chance, units: {"water_power": 12.0}))
    with pytest.raises(BadDefinition, match="'shaft', level 1, us: its scene draws no pump_eff"):
        draw(left_out, 1)


def test_a_scene_whose_machines_cannot_exist_is_said_so_and_not_drawn():
    dull = family(scene=Small(lambda *_: {"water_power": 1e-9, "pump_efficiency": 80.0}))
    with pytest.raises(
        BadDefinition, match=r"no draw in 400 .*\. The last one: The water .* 0\.05"
    ):
        draw(dull, 1)


def test_a_draw_whose_mistake_is_as_good_as_the_answer_is_not_taken():
    """A service factor of 1.005 may as well be left out: nobody could tell from the answer."""
    amps, factor = Known("full_load_amps"), Known("service_factor")
    margin = Formula("service_factor_amps", amps * factor, "a handbook", "It is so.")
    level = Level(("full_load_amps", "service_factor"), "{full_load_amps}, {service_factor}: what?")

    def with_factor(value):
        def of(chance, units):
            return {"full_load_amps": 40.0, "service_factor": value}

        return family(
            asked="service_factor_amps", levels=(level, with_scene(level, of)), formulas=(margin,),
            scene=Small(of),
        )  # fmt: skip

    assert 46 == pytest.approx(draw(with_factor(1.15), 1).answer)
    with pytest.raises(BadDefinition, match="A common mistake would give nearly the right answer"):
        draw(with_factor(1.005), 1)


def test_a_chain_that_is_not_there_is_said_when_it_is_drawn():
    with pytest.raises(
        LookupError, match="motor horsepower can't be calculated from water_power, pump"
    ):
        draw(family(asked="motor_power"), 1)


@pytest.mark.parametrize("each", FAMILIES, ids=lambda each: each.name)
def test_a_family_works_with_formulas_of_the_library_and_nothing_of_its_own(each):
    assert all(any(formula is one for one in FORMULAS) for formula in each.formulas)


@pytest.mark.parametrize("each", FAMILIES, ids=lambda each: each.name)
def test_a_question_is_put_in_short_sentences_and_asks_or_tells_to_choose(each):
    for level in each.levels:
        sentences = re.split(r"[.?:]\s", level.question)
        assert max(len(sentence.split()) for sentence in sentences) < 20, level.question
        assert "!" not in level.question


@pytest.mark.parametrize("each", FAMILIES, ids=lambda each: each.name)
def test_a_title_is_short_and_has_no_full_stop(each):
    assert 0 < len(each.title) <= 60
    assert not each.title.endswith(".")
    assert each.title[0].isupper()


def test_an_asked_quantity_is_in_the_vocabulary():
    numeric = [each for each in FAMILIES if each.judge is None]
    assert [each.asked for each in numeric] == [quantity_named(each.asked).name for each in numeric]


def test_every_chapter_stands_together_in_the_list():
    chapters = [each.chapter for each in FAMILIES]
    assert list(dict.fromkeys(chapters)) == [
        chapter for at, chapter in enumerate(chapters) if at == 0 or chapters[at - 1] != chapter
    ]

"""A class's report: facts against plain counting and scipy, words, pictures, files, no names."""

import csv
import random
import re
from collections import Counter
from html import unescape
from io import StringIO
from itertools import pairwise

import numpy as np
import pytest
from scipy import stats

from solver.engine.grading import as_typed
from solver.sets.work_set import cases_for, set_of
from tests.workbook.trainer.a_class import answered, handed_in, people
from workbook.figures import charts_svg
from workbook.trainer.marking.marked import Marked, mark
from workbook.trainer.report.facts import ClassFacts, Telling, facts, telling
from workbook.trainer.report.files import mistakes_csv, people_csv, questions_csv
from workbook.trainer.report.sections import hardest_picture, report, report_text, spread_picture
from workbook.trainer.report.words import hands, names_for, percent, telling_lines, tells
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.spreadsheet import csv_of, harmless

WEEK = Assigned(
    "week-3", "Week 3: power", set_of(chapters=["horsepower", "efficiency"], count=12, seed=48213)
)
POWER = Assigned("power", "Power", set_of(families=["water_power", "brake_power"], count=4, seed=5))


@pytest.fixture(scope="module")
def marks() -> list[Marked]:
    """A class of 60, and one who handed in an empty sheet."""
    sheets = [*handed_in(WEEK, people(60)), ("zoe.q", b"")]
    return [mark(WEEK, person, sheet) for person, sheet in sheets]


@pytest.fixture(scope="module")
def told(marks) -> ClassFacts:
    return facts(marks)


def rows(data: bytes) -> list[list[str]]:
    return list(csv.reader(StringIO(data.decode("utf-8-sig"))))


# Facts


def test_every_number_of_a_question_is_what_plain_counting_gives(marks, told):
    there = [m for m in marks if any(q.status != "blank" for q in m.questions)]
    assert len(marks) > len(there) == len(told.there)
    for question in told.questions:
        mine = [m.questions[question.number - 1] for m in there]
        assert Counter(q.status for q in mine) == question.counts
        assert pytest.approx(sum(q.points for q in mine) / len(mine)) == question.share
        assert {(mine[0].case.family, mine[0].case.level)} == {(question.family, question.level)}


def test_a_person_has_the_points_and_the_blanks_of_their_marks(marks, told):
    by_id = {person.person: person for person in told.people}
    assert sorted(by_id) == [person.person for person in told.people]
    for each in marks:
        person = by_id[each.person]
        assert (each.points, each.out_of) == (person.points, person.out_of)
        assert sum(q.status == "blank" for q in each.questions) == person.blank
    assert not by_id["zoe.q"].handed_in


def test_the_spread_counts_everybody_who_answered_once_and_all_points_are_in_the_last_tenth(told):
    assert len(told.there) == sum(told.spread)
    expected, _ = np.histogram([person.share for person in told.there], bins=10, range=(0, 1))
    assert expected.tolist() == told.spread
    full = facts([mark(POWER, "ana", answered_right(POWER, "ana"))])
    assert [0] * 9 + [1] == full.spread


def answered_right(assigned: Assigned, person: str) -> bytes:
    cases = enumerate(cases_for(assigned.work, person), 1)
    return answered(
        assigned, person, {n: as_typed(case, case.answer) for n, case in cases}, "right"
    )


def test_three_of_ten_points_count_to_the_fourth_tenth_however_they_were_added_up(told):
    person = told.people[0]._replace(points=0.1 + 0.2, out_of=1.0, blank=0)
    assert 1 == told._replace(people=(person,)).spread[3]


def test_the_hardest_question_stands_first(told):
    shares = [question.share for question in told.hardest]
    assert sorted(shares) == shares
    assert {q.number for q in told.questions} == {q.number for q in told.hardest}


def test_marks_are_gone_through_once_and_in_any_order_come_to_the_same(marks, told):
    mixed = random.Random(4).sample(marks, len(marks))
    again = facts(iter(mixed))
    assert told.people == again.people
    assert [q.counts for q in told.questions] == [q.counts for q in again.questions]
    for one, other in zip(told.questions, again.questions, strict=True):
        assert pytest.approx(one.telling) == other.telling
    assert [(f.id, f.people, f.questions) for f in told.flaws] == [
        (f.id, f.people, f.questions) for f in again.flaws
    ]


def test_of_nobody_there_is_nothing_to_say():
    assert ("", (), (), (), (), {}) == facts([])
    assert ["Nobody has turned in anything yet."] == report(facts([]), "A")[0].lines
    alone = facts([mark(WEEK, "zoe.q", b"")])
    assert () == alone.questions
    assert ["1 person answered nothing."] == report(alone, "A")[0].lines


# How well a question tells people apart


@pytest.mark.parametrize("seed", range(5))
def test_right_or_wrong_gives_the_point_biserial_correlation_of_scipy(seed):
    chance = np.random.default_rng(seed)
    others = chance.uniform(0, 1, 40)
    here = (others + chance.normal(0, 0.4, 40) > 0.5).astype(float)
    expected = stats.pointbiserialr(here, others).statistic
    assert pytest.approx(expected, abs=1e-8) == telling(here.tolist(), others.tolist()).value


def test_the_marks_of_a_class_give_the_correlations_of_numpy_without_the_question_itself(
    marks, told
):
    there = [m for m in marks if any(q.status != "blank" for q in m.questions)]
    points = np.array([[q.points for q in m.questions] for m in there])
    for question in told.questions:
        here = points[:, question.number - 1]
        expected = np.corrcoef(here, points.sum(axis=1) - here)[0, 1]
        assert pytest.approx(expected, abs=1e-8) == question.telling.value


def test_the_thirds_are_those_of_numpy_where_nobody_is_alike():
    chance = np.random.default_rng(8)
    here, others = chance.uniform(0, 1, 31), chance.permutation(31) / 31
    ranked = here[np.argsort(others)]
    found = telling(here.tolist(), others.tolist())
    assert pytest.approx((ranked[-10:].mean(), ranked[:10].mean())) == (found.best, found.lowest)


def test_people_who_are_alike_elsewhere_share_their_place_whatever_their_order():
    here = [1.0, 0.0, 1.0, 0.0, 1.0, 0.0, 1.0, 0.0, 1.0, 0.0, 1.0, 0.0]
    others = [0.1] * 2 + [0.5] * 8 + [0.9] * 2
    assert (0.5, 0.5) == telling(here, others)[1:]
    assert telling(here, others)[1:] == telling(here[::-1], others[::-1])[1:]


@pytest.mark.parametrize(
    ("here", "others"),
    [
        ([0, 1] * 4 + [1], list(range(9))),  # nine people
        ([1] * 12, list(range(12))),  # all alike here
        ([0, 1] * 6, [0.1 + 0.2, 0.3] * 6),  # alike elsewhere, but for the way of adding up
    ],
)
def test_with_few_people_or_all_alike_nothing_is_said(here, others):
    assert Telling() == telling(here, others)
    assert "–" == tells(telling(here, others))


def test_what_tells_apart_is_said_in_words_before_the_number():
    said = {value: tells(Telling(value)) for value in (0.3, 0.29, 0.2, 0.1, 0.0, -0.01)}
    expected = ["well", "a little", "a little", "hardly", "hardly", "the wrong way"]
    assert expected == [text.split(" (")[0] for text in said.values()]
    assert "the wrong way (−0.01)" == said[-0.01]


def test_how_rough_the_number_is_depends_on_how_many_there_are():
    assert "With under 10 people, this report doesn't say" in telling_lines(9)[0]
    assert "it may be off by 0.4" in telling_lines(10)[-1]
    assert not any("rough" in line for line in telling_lines(50))


# Mistakes


def test_one_mistake_in_two_kinds_of_problem_is_one_mistake_and_counts_people_once():
    # The same slip in water power, asked for itself and on the way to brake power.
    numbers = {case.family.name: n for n, case in enumerate(cases_for(POWER.work, "x"), 1)}
    two = [numbers["water_power"], numbers["brake_power"]]
    found = []
    for person in ("ana", "bo", "cy"):
        cases = cases_for(POWER.work, person)
        both = [{m.id: m for m in cases[number - 1].mistakes} for number in two]
        shared = [name for name in both[0] if name in both[1] and name.startswith("water_power.")]
        same = next(name for name in shared if name == "water_power.added")
        typed = {
            n: f"{by[same].value:.6g}" for n, by in zip(two, both, strict=True) if person != "cy"
        }
        typed |= {two[0]: f"{both[0][same].value:.6g}"}
        found.append(mark(POWER, person, answered(POWER, person, typed, "mistake")))
    (flaw,) = facts(found).flaws
    assert ("ana", "bo", "cy") == flaw.people
    assert tuple(sorted(two)) == flaw.questions
    assert "water horsepower" == flaw.what
    assert "You added the flow and the head. For power, multiply them." == flaw.says
    assert flaw.why.startswith("Pumping more water, or pumping it higher, takes more power.")
    assert ("horsepower", "water_power.added") == (flaw.chapter, flaw.id)


def test_a_mistake_on_the_way_leads_to_the_chapter_that_teaches_its_step():
    cost = Assigned("cost", "Cost", set_of(families=["input_power"], level=2, count=1, seed=5))
    (case,) = cases_for(cost.work, "ana")
    slip = next(one for one in case.mistakes if one.id.startswith("brake_power."))
    sheet = answered(cost, "ana", {1: f"{slip.value:.6g}"}, "mistake")
    (flaw,) = facts([mark(cost, "ana", sheet)]).flaws
    assert (slip.id, "cost", "horsepower") == (flaw.id, case.family.chapter, flaw.chapter)


def test_a_mistake_is_told_without_the_reason_twice_and_with_its_chapter(told):
    assert told.flaws
    for flaw in told.flaws:
        assert flaw.chapter in ("horsepower", "efficiency")
        assert flaw.varies or flaw.why not in flaw.says
    many = [len(flaw.people) for flaw in told.flaws]
    assert sorted(many, reverse=True) == many


def test_what_was_chosen_is_told_as_an_example_for_its_numbers_are_of_one_person(told):
    varying = next(flaw for flaw in told.flaws if flaw.varies)
    text = report_text(report(told._replace(flaws=(varying,)), "A"))
    assert f"For example: {varying.says}" in text
    assert f"Go over again: {varying.why[0].upper()}" in text


# Who needs help


def test_who_must_be_looked_at_comes_first_with_the_reason_then_the_lowest(told):
    good = told.there[0]._replace(points=12.0, out_of=12.0, blank=0)
    class_ = [
        good._replace(person="fine"),
        good._replace(person="low", points=6.0),
        good._replace(person="lower", points=3.0),
        good._replace(
            person="odd", needs=True, reasons=("Question 2: An earlier try is missing.",)
        ),
        good._replace(person="gone", points=0.0, blank=12),
        good._replace(person="part", points=9.0, blank=3),
    ]
    found = hands(class_, low=0.7)
    assert ["odd", "gone", "lower", "low", "part"] == [one.person.person for one in found]
    assert [
        ("Question 2: An earlier try is missing.",),
        ("Nothing was answered.",),
        ("Under 70% of the points.",),
        ("Under 70% of the points.",),
        ("3 of 12 are blank.",),
    ] == [one.why for one in found]
    assert ["odd", "gone", "part"] == [one.person.person for one in hands(class_, low=0.1)]


def test_a_sheet_of_somebody_else_stands_among_those_to_look_at_with_the_reason():
    other = answered_right(POWER, "bo")
    odd = facts([mark(POWER, "ana", other)])
    (one,) = hands(odd.people)
    assert one.person.needs
    assert "bo" in " ".join(one.why)


# No names


def test_without_names_no_id_is_anywhere_in_the_report_or_in_a_file(marks):
    swapped = mark(WEEK, "ana.r", next(sheet for _, sheet in handed_in(WEEK, ["bo.k"])))
    told = facts([*marks, swapped])
    ids = [*(person.person for person in told.people), "bo.k"]
    shown = [report_text(report(told, "Week 3", hidden=True))]
    shown += [
        made(told, hidden=True).decode() for made in (people_csv, questions_csv, mistakes_csv)
    ]
    assert [] == [(one, at) for at, text in enumerate(shown) for one in ids if one in text]
    assert "Look at the sheet; the reason is in the report with names." in " ".join(
        shown[0].split()
    )
    named = report_text(report(told, "Week 3"))
    assert "ana.r" in named
    assert "bo.k" in named


def test_numbers_in_place_of_names_stay_the_same_and_say_nothing_of_order(told):
    names = names_for(told, hidden=True)
    assert names == names_for(told, hidden=True)
    assert {f"Person {n}" for n in range(1, len(told.people) + 1)} == set(names.values())
    numbers = [int(names[person.person].split()[1]) for person in told.people]
    rises = sum(b > a for a, b in pairwise(numbers)) / (len(numbers) - 1)
    assert 0.3 < rises < 0.7
    assert names != names_for(told._replace(code="SET-1"), hidden=True)


# Words and pictures


@pytest.mark.parametrize("share", [0.0, 0.0001, 0.333, 0.9999, 1.0])
def test_only_all_is_said_as_all_and_only_nothing_as_nothing(share):
    assert (share == 1) == (percent(share) == "100%")
    assert (share == 0) == (percent(share) == "0%")


def words_of(svg):
    return [unescape(found.strip()) for found in re.findall(r"<text[^>]*>([^<]*)<", svg)]


def test_the_pictures_say_what_their_tables_say(told):
    name, view, draw = spread_picture(told)
    assert [str(many) for many in told.spread] == [row[1] for row in view.rows]
    drawn = words_of(charts_svg(draw(view), view.alt, name))
    assert {str(many) for many in told.spread if many} <= set(drawn)
    name, view, draw = hardest_picture(told.hardest[:8])
    drawn = words_of(charts_svg(draw(view), view.alt, name))
    assert {cell for row in view.rows for cell in row[:2]} <= set(drawn)
    assert all(row[1] in view.alt for row in view.rows)


def test_sentences_of_the_report_are_short_and_calm(told):
    for section in report(told, "Week 3"):
        for line in (*section.lines, *(line for point in section.points for line in point.lines)):
            assert "!" not in line
            for sentence in re.split(r"(?<=[.?])\s+", line):
                assert len(sentence.split()) < 20 or "Go over again" in line, sentence


# Files


def test_the_file_of_people_adds_up_and_opens_in_a_spreadsheet(told):
    head, *found = rows(people_csv(told))
    assert ["question 1", "question 12"] == [head[7], head[-1]]
    assert [person.person for person in told.people] == [row[0] for row in found]
    for row in found:
        assert pytest.approx(float(row[1])) == sum(map(float, row[7:]))
    assert people_csv(told).startswith(b"\xef\xbb\xbf")


def test_the_file_of_questions_holds_every_count(told):
    head, *found = rows(questions_csv(told))
    at = head.index("right")
    for row, question in zip(found, told.questions, strict=True):
        assert len(told.there) == sum(map(int, row[at : at + 6]))
        assert pytest.approx(question.telling.value, abs=1e-4) == float(row[at + 6])


@pytest.mark.parametrize("text", ["=1+1", "+1-1", "-1 ft", "@a", "\t1", "\r1", " =1", "＝1", "－1"])
def test_what_a_spreadsheet_would_work_as_a_formula_is_made_text(text, told):
    assert f"'{text}" == harmless(text)
    person = told.people[0]._replace(person=text, reasons=(text,), needs=True)
    row = rows(people_csv(told._replace(people=(person,))))[1]
    assert (f"'{text}", f"'{text}") == (row[0], row[6])


def test_numbers_stay_numbers_and_plain_texts_as_they_are():
    data = csv_of([["a = b", -1.5, "-3.2", "x-1", "", 3]])
    assert "a = b,-1.5,-3.2,x-1,,3\r\n" == data.decode("utf-8-sig")

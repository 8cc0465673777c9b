"""The families of insulation and windings: what is right is judged here by hand."""

import re

import pytest

from solver import draw, grade
from solver.topics.insulation.by_hand import at_40, index, kept, over, ratio, reading, uneven
from solver.topics.insulation.problems import INSULATION

from .drawn import each, named, seeds, typed

SEEDS = seeds(60)
PROBLEMS = [
    (family, level, units)
    for family in INSULATION
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]


def problems(*names: str, levels: tuple[int, ...] = (1, 2, 3)):
    """These levels of some families, in both systems."""
    chosen = [p for p in PROBLEMS if p[0].name in names and p[1] in levels]
    assert {family.name for family, _, _ in chosen} == set(names)
    return pytest.mark.parametrize("problem", chosen, ids=named)


def cases(problem):
    family, level, units = problem
    return [draw(family, seed, units, level) for seed in SEEDS]


def zone(size, low, high):
    return (size > low) + (size > high)


def least_zone(g):
    return ("below", "between", "good")[zone(at_40(g), 5, 100)]


def minute_zone(g):
    return ("falls", "steady", "rises")[zone(ratio(g), 0.95, 1.05)]


def ratio_zone(g):
    return ("falling", "questionable", "good")[zone(ratio(g), 1, 1.25)]


def index_zone(g):
    return ("falling", "under", "good")[zone(index(g), 1, 2)]


def ground_zone(g):
    test = g.get("test_time", 10)
    return ("no", "soon", "yes")[zone(g["time_grounded"], test, 4 * test)]


def year_zone(g):
    return ("fell", "steady", "rose")[zone(kept(g), 80, 125)]


JUDGED_BY_HAND = {
    "insulation_limit": least_zone,
    "minute_reading": minute_zone,
    "ratio_limit": ratio_zone,
    "index_limit": index_zone,
    "time_on_ground": ground_zone,
    "insulation_trend": year_zone,
}
# The third level of the index and the first of the trend are judged further down.
JUDGED = [
    problem
    for problem in PROBLEMS
    if problem[0].name in JUDGED_BY_HAND
    and (problem[0].name, problem[1]) not in (("index_limit", 3), ("insulation_trend", 1))
]


@each(JUDGED)
def test_the_right_choice_is_the_one_judged_by_hand(problem):
    drawn = [(case, {mistake.id for mistake in case.mistakes}) for case in cases(problem)]
    every_id = set().union(*(wrong for _, wrong in drawn))
    assert 3 == len(every_id)
    for case, wrong in drawn:
        assert {JUDGED_BY_HAND[problem[0].name](case.given)} == every_id - wrong, case.code


def chosen(case):
    return case.choices[int(case.answer) - 1]


@problems("index_limit", levels=(3,))
def test_an_index_goes_by_the_class_and_not_at_all_above_5_000_megohms(problem):
    for case in cases(problem):
        kind = re.search(r"is class ([ABF])\.", case.question)[1]
        if case.given["insulation_1min"] > 5000:
            expected = "isn't used"
        else:
            keeps = index(case.given) >= {"A": 1.5, "B": 2.0, "F": 2.0}[kind]
            expected = "meets the minimum" if keeps else "under the minimum"
        assert expected in chosen(case), case.code


@problems("insulation_trend", levels=(1,))
def test_years_that_scatter_fall_slowly_or_fall_at_once_are_told_apart(problem):
    for case in cases(problem):
        years = [float(n.replace(",", "")) for n in re.findall(r"([\d,.]+) megohm", case.question)]
        assert 4 == len(years)
        if years[-1] < 0.5 * years[-2]:
            expected = "since the last test"
        elif years == sorted(years, reverse=True) and years[-1] < 0.6 * years[0]:
            expected = "a little less every year"
        else:
            expected = "Nothing new"
        assert expected in chosen(case), case.code


@problems("which_is_below")
def test_only_the_winding_chosen_is_under_the_least_for_its_kind(problem):
    for case in cases(problem):
        factor = 2 ** ((case.given.get("winding_temperature", 40) - 40) / 10)
        below = []
        for number, choice in enumerate(case.choices, 1):
            volts, megohms = (
                float(n.replace(",", "")) for n in re.findall(r"([\d,.]+) (?:V|meg)", choice)
            )
            limit = 5 if "random" in choice else 100 if "form" in choice else volts / 1000 + 1
            if megohms * factor < limit:
                below.append(number)
        assert [case.answer] == below, case.code


@problems("resistance_limit")
def test_a_form_wound_motor_may_differ_by_one_percent_and_a_random_wound_one_by_two(problem):
    for case in cases(problem):
        limit = 1 if "form-wound" in case.question else 2
        over_it = uneven(case.given) > limit
        assert ("over" in chosen(case)) is over_it, case.code
        assert f"{limit}%" in chosen(case), case.code


@problems("test_volts")
def test_test_volts_suit_the_rating(problem):
    _, level, _ = problem
    rows = ((999, 500, 500), (2500, 500, 1000), (5000, 1000, 2500), (12_000, 2500, 5000))
    for case in cases(problem):
        if level == 3:
            assert "by the motor's rating" in chosen(case), case.code
            continue
        volts = float(chosen(case).split()[0].replace(",", ""))
        if level == 2:
            of_the_motor = "goes on the motor" in case.question
            assert (500 if of_the_motor else 1000) == volts, case.code
            assert case.given["rated_volts"] in (400, 460, 575), case.code
        else:
            low, high = next(row[1:] for row in rows if case.given["rated_volts"] <= row[0])
            assert low <= volts <= high, case.code


@problems("fault_readings")
def test_an_open_wye_reads_open_twice_and_an_open_delta_reads_all_three(problem):
    _, level, _ = problem
    for case in cases(problem):
        healthy = case.given["ohms_healthy"]
        shares = sorted(
            9.0 if part.endswith("open") else float(part.split()[1]) / healthy
            for part in chosen(case).split(", ")
        )
        opened = "open phase" in case.question
        wye = [1, 9, 9] if opened else [0.5, 0.5, 1]
        delta = [1.5, 1.5, 3] if opened else [0, 0.75, 0.75]
        assert (wye if level == 1 else delta) == pytest.approx(shares, rel=0.01), case.code


@problems("insulation_at_40")
def test_a_correction_the_wrong_way_is_named(problem):
    for case in cases(problem):
        wrong = reading(case.given) ** 2 / case.answer
        mistake = grade(case, typed(wrong, "megohm")).mistake
        assert "insulation_at_40.wrong_way" == mistake, case.code


@problems("polarization_index", "absorption_ratio")
def test_the_two_ratios_are_told_from_each_other(problem):
    family, _, _ = problem
    other = {"polarization_index": ("30s", "1min"), "absorption_ratio": ("1min", "10min")}
    for case in cases(problem):
        if "insulation_30s" in case.given and "insulation_10min" in case.given:
            wrong = over(case.given, *other[family.name])
            mistake = grade(case, typed(wrong, "")).mistake
            assert mistake.endswith(("absorption_for_index", "index_for_absorption")), case.code


@problems("insulation_at_40", "polarization_index", "insulation_limit", "minute_reading")
def test_whoever_tests_reads_of_isolation_of_drives_and_of_a_winding_tested_dead(problem):
    for case in cases(problem):
        for words in (
            "qualified person",
            "isolated",
            "verified that it is dead",
            "drive and surge protection",
        ):
            assert words in case.question, case.code


@problems("insulation_limit", "ratio_limit", "index_limit", "minute_reading", "test_volts")
def test_whoever_has_tested_reads_of_the_ground_after_it(problem):
    for case in cases(problem):
        assert "four times as long as the test" in case.steps[-1].why, case.code

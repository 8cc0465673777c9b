"""Sets of a trainer's own plant: its words, and problems within its ranges."""

import re
from collections import Counter
from dataclasses import replace

import pytest

from solver import SolverError, case_from_code
from solver.scenario import PEOPLE, kind_of
from solver.sets.own_plant import KINDS, plant_of
from solver.sets.work_set import MOST, cases_for, set_of
from solver.station.scene import station_of

from .sets import PLANT, PUMP

OWN = set_of(chapters=["horsepower", "head"], count=MOST, seed=3, plant=PLANT)


def test_problems_play_at_the_plant_with_its_people():
    places, people = Counter(), Counter()
    for case in (*cases_for(OWN, "ana.r"), *cases_for(OWN, "p017"), *cases_for(OWN, "p018")):
        question = case.question
        assert not any(re.search(rf"\b{name}\b", question) for name in PEOPLE), question
        for words in ("the Quarry Road lift station", "the effluent building"):
            places[words] += words in question
        for name in PLANT.people:
            people[name] += name in question.casefold()
    assert all(places.values()), places
    assert all(people.values()), people


def test_a_sentence_begins_with_a_capital_letter_whatever_the_pump_is_called():
    questions = [case.question for case in cases_for(OWN, "ana.r")]
    assert any(question.startswith("The small pump at") for question in questions)
    assert not any(re.search(r"(?:^|[.?] )the small", question) for question in questions)


def test_a_plant_changes_the_words_and_never_the_numbers_of_a_problem():
    for case in cases_for(OWN, "ana.r"):
        plain = case_from_code(case.code)
        assert case._replace(wording=plain.wording) == plain


def test_a_plant_without_people_has_the_invented_ones():
    plant = PLANT._replace(people=())
    told = [c.wording.told["person"] for c in cases_for(replace(OWN, plant=plant), "ana.r")]
    assert set(PEOPLE) == set(told)


def test_every_given_and_worked_value_keeps_to_the_ranges_of_its_pump():
    pump = PLANT.places[0]
    seen = Counter()
    for person in range(10):
        for case in cases_for(OWN, f"p{person}"):
            if case.wording.told["station"] == pump.station:
                for name, low, high in pump.ranges:
                    if name in case.known:
                        seen[name] += 1
                        assert low <= case.known[name] <= high, case.code
    assert min(seen[name] for name, _, _ in pump.ranges) > 50


@pytest.mark.parametrize("kind", KINDS)
def test_a_problem_read_off_a_station_is_one_of_the_kind_of_its_pump(kind):
    """A lift station gets no booster's readings; a tank or a nameplate may be anywhere."""
    plant = plant_of({"name": "A", "pumps": [{"name": "P", "station": "S", "kind": kind}]})
    work = set_of(chapters=["horsepower", "cost"], count=MOST, seed=5, plant=plant)
    stations = [case for case in cases_for(work, "ana.r") if station_of(case)]
    assert len(stations) > 40
    assert {kind} == {kind_of(station_of(case).place) for case in stations}


def test_people_have_their_own_numbers_within_a_range_too():
    work = set_of(families=["water_power"], level=1, count=1, plant=ranged(flow=[300, 900]))
    assert 25 < len({tuple(cases_for(work, f"p{n}")[0].given.values()) for n in range(40)})


def ranged(units="us", **ranges):
    return plant_of({"name": "A", "units": units, "pumps": [PUMP | {"ranges": ranges}]})


def test_a_range_that_no_problem_has_is_refused_when_the_set_is_made():
    says = (
        "Pump 2 at the Quarry Road lift station asks for pump efficiency of 45 to 45.2%. "
        "No problem of “Brake horsepower at the pump shaft”, level 2, has that; most have 51 to 78%. "
    )
    with pytest.raises(SolverError, match=re.escape(says)):
        set_of(families=["brake_power"], level=2, count=1, plant=ranged(pump_efficiency=[45, 45.2]))


def test_ranges_that_no_problem_keeps_together_are_refused_when_the_set_is_made():
    plant = ranged(flow=[400, 400.1], head=[61.01, 61.02])
    with pytest.raises(SolverError, match=r"asks for flow and .*head in a narrow range\. No probl"):
        set_of(families=["water_power"], level=1, count=1, plant=plant)


def test_a_range_of_a_quantity_that_no_question_has_refuses_nothing():
    plant = ranged(energy_price=[0.08, 0.09])
    assert cases_for(set_of(families=["water_power"], plant=plant), "ana.r")


def test_a_set_in_other_units_than_the_ranges_of_its_plant_is_refused():
    with pytest.raises(SolverError, match=r"ranges are in us units, and the set is in si\. Write"):
        set_of(chapters=["horsepower"], units="si", plant=PLANT)
    metric = set_of(chapters=["horsepower"], units="si", plant=ranged("si", flow=[20, 60]))
    for case in cases_for(metric, "ana.r"):
        assert 20 <= case.known.get("flow", 30) <= 60


def test_a_family_that_fits_no_pump_of_the_plant_is_refused_with_the_kind_to_add():
    booster = {"name": "Pump 1", "station": "the Fairground booster station"}
    plant = plant_of({"name": "Marlow Bend", "pumps": [booster]})
    says = r"No pump of this plant fits “.*”\. Leave that out, or add a pump of the kind “lift”\."
    with pytest.raises(SolverError, match=says):
        set_of(chapters=["wet_well"], count=30, plant=plant)

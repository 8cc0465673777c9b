"""A trainer's own plant: what may be written, and what its problems keep to."""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver import FAMILIES, SolverError, draw, family_named
from solver.scenario import kinds_of
from solver.sets.own_plant import KINDS, Plant, Pump, Range, plant_of, set_at, table_of
from solver.vocabulary import QUANTITIES

TABLE = {
    "name": "Marlow Bend",
    "people": ["Inez", "Tobias"],
    "pumps": [
        {
            "name": "Pump 2",
            "station": "the Quarry Road lift station",
            "ranges": {"head": [30, 90], "flow": [300, 900]},
        },
        {"name": "Pump 1", "station": "the Fairground booster station"},
        {"name": "Pump 4", "station": "the effluent building", "kind": "plant"},
    ],
}
PLANT = plant_of(TABLE)


def changed(**keys):
    return TABLE | keys


def with_pump(**keys):
    return changed(pumps=[TABLE["pumps"][1], TABLE["pumps"][0] | keys])


def test_a_plant_is_what_its_table_says():
    expected = Plant(
        "Marlow Bend",
        (
            Pump(
                "Pump 2",
                "the Quarry Road lift station",
                "lift",
                (Range("flow", 300.0, 900.0), Range("head", 30.0, 90.0)),
            ),
            Pump("Pump 1", "the Fairground booster station", "booster"),
            Pump("Pump 4", "the effluent building", "plant"),
        ),
        ("Inez", "Tobias"),
    )
    assert expected == PLANT


@pytest.mark.parametrize(
    ("kind", "station"),
    [
        ("lift", "the Quarry Road Lift Station"),
        ("booster", "the Fairground BOOSTER station"),
        ("plant", "the effluent building"),
    ],
)
def test_the_words_of_a_station_say_its_kind_where_nothing_else_does(kind, station):
    plant = plant_of(changed(pumps=[{"name": "Pump 1", "station": station}]))
    assert kind == plant.places[0].kind


def test_a_kind_that_is_written_goes_before_the_words():
    assert "plant" == plant_of(with_pump(kind="plant")).places[1].kind


def test_blanks_around_and_within_a_name_and_the_form_of_its_letters_change_nothing():
    assert PLANT == plant_of(changed(name="  Marlow   Bend\n"))
    composed, apart = (plant_of(changed(people=[name])) for name in ("Zo\u00eb", "Zoe\u0308"))
    assert composed == apart
    assert composed.fingerprint == apart.fingerprint


NAMES = st.text(min_size=1, max_size=20).filter(lambda t: t.isprintable() and t.strip() != "")
ENDS = st.tuples(st.floats(100, 200), st.floats(200, 300))


@given(
    st.fixed_dictionaries(
        {
            "name": NAMES,
            "units": st.sampled_from(["us", "si"]),
            "people": st.lists(NAMES, max_size=3),
            "pumps": st.lists(
                st.fixed_dictionaries(
                    {"name": NAMES, "station": NAMES},
                    optional={
                        "kind": st.sampled_from(KINDS),
                        "ranges": st.dictionaries(st.sampled_from(["flow", "amps_a"]), ENDS),
                    },
                ),
                min_size=1,
                max_size=3,
            ),
        }
    )
)
def test_a_plant_comes_back_from_its_table_with_its_fingerprint(table):
    plant = plant_of(table)
    assert plant == plant_of(table_of(plant))
    assert plant.fingerprint == plant_of(table_of(plant)).fingerprint
    assert re.fullmatch(r"P\d{6}", plant.fingerprint)


def test_any_change_of_a_plant_is_seen_in_its_fingerprint():
    plants = [
        PLANT,
        plant_of(changed(name="Marlow")),
        plant_of(changed(people=["Inez"])),
        plant_of(changed(people=["Tobias", "Inez"])),
        plant_of(with_pump(name="Pump 3")),
        plant_of(with_pump(station="the Tannery Lane lift station")),
        plant_of(with_pump(kind="plant")),
        plant_of(with_pump(ranges={"flow": [300, 900]})),
        plant_of(with_pump(ranges={"flow": [300, 901]})),
    ]
    assert len(plants) == len({plant.fingerprint for plant in plants})


def test_the_fingerprint_of_a_plant_is_the_one_it_has_always_been():
    """It stands in codes that people have, so another one would refuse them."""
    assert "P159091" == PLANT.fingerprint


@pytest.mark.parametrize(
    ("table", "says"),
    [
        ([], "Write plant as a table with name; you wrote “[]”."),
        (changed(town="A"), "plant has “town”. It may have: name, units, pumps, people."),
        (changed(units="metric"), "In plant, write units as “us” or “si”; you wrote “metric”."),
        (changed(pumps=[]), "In plant, write at least one pump, with its name and its station."),
        (changed(pumps=None), "Write plant.pumps as a list of up to 50; you wrote nothing."),
        (changed(people="Inez"), "Write plant.people as a list of up to 50; you wrote “Inez”."),
        (
            changed(people=["Inez"] * 51),
            "Write plant.people as a list of up to 50; you wrote something else.",
        ),
        (
            changed(people=["Inez", 3]),
            "Write each of plant.people as a text of 1 to 60 letters; you wrote “3”.",
        ),
        (
            changed(name=" "),
            "Write the name of the plant as a text of 1 to 60 letters; you wrote “ ”.",
        ),
        (
            changed(name="a" * 61),
            "Write the name of the plant as a text of 1 to 60 letters; you wrote something else.",
        ),
        (
            changed(name="a\u202eb"),
            "Write the name of the plant as a text of 1 to 60 letters; you wrote something else.",
        ),
        (changed(pumps=["Pump 1"]), "Write pump 1 as a table with name; you wrote “Pump 1”."),
        (
            with_pump(size=3),
            "pump 2 has “size”. It may have: name, station, kind, ranges.",
        ),
        (
            with_pump(name=None),
            "Write the name of pump 2 as a text of 1 to 60 letters; you wrote nothing.",
        ),
        (
            with_pump(station=[]),
            "Write the station of pump 2 as a text of 1 to 60 letters; you wrote “[]”.",
        ),
        (
            with_pump(kind="well"),
            "Write the kind of pump 2 as “lift”, “booster” or “plant”; you wrote “well”.",
        ),
        (
            with_pump(ranges=[300, 900]),
            "Write the ranges of pump 2 like flow = [300, 900]; you wrote “[300, 900]”.",
        ),
        (
            with_pump(ranges={"flw": [300, 900]}),
            "The ranges of pump 2 have “flw”, which isn't a quantity. Write one such as flow.",
        ),
        (
            with_pump(ranges={"flow": [900, 300]}),
            "Write the range flow of pump 2 with the lowest first; you wrote “[900, 300]”.",
        ),
        (
            with_pump(ranges={"head": [90000, 90001]}),
            "You wrote the range head of pump 2 as “[90000, 90001]”. "
            "Write one within what problems have, ",
        ),
        *(
            (
                with_pump(ranges={"flow": ends}),
                f"Write the range flow of pump 2 as lowest and highest, like [300, 900]; "
                f"you wrote “{ends}”.",
            )
            for ends in (300, [300], [300, 500, 900], ["300", "900"], [True, 900],
                         [math.nan, 900], [300, math.inf], {"low": 300})
        ),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_with_the_key_what_was_got_and_what_to_write(table, says):
    with pytest.raises(SolverError, match=re.escape(says)):
        plant_of(table)


def test_a_range_may_be_one_value_and_any_quantity_that_problems_have():
    for name, quantity in QUANTITIES.items():
        for units in ("us", "si"):
            middle = quantity.typical(units)
            plant = plant_of(with_pump(ranges={name: [middle, middle]}) | {"units": units})
            assert ((name, middle, middle),) == plant.places[1].ranges


def test_a_booster_station_is_not_asked_about_its_wet_well_nor_a_lift_station_about_no_lift():
    wells = [family for family in FAMILIES if family.chapter == "wet_well"]
    assert all({"lift", "plant"} >= {pump.kind for pump in set_at(one, 1, PLANT)} for one in wells)
    assert "lift" not in {pump.kind for pump in set_at(family_named("power_cut"), 1, PLANT)}
    assert PLANT.places == set_at(family_named("water_power"), 1, PLANT)


@pytest.mark.parametrize("family", FAMILIES, ids=lambda family: family.name)
def test_every_family_is_about_some_kind_of_pump_and_its_invented_ones_are_of_those(family):
    assert set(kinds_of(family.places)) <= set(KINDS)
    assert kinds_of(family.places)
    assert draw(family, 7).wording.place in family.places

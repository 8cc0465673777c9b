"""Names of quantities: the trade's own in each system, with abbreviations and aliases."""

import re
from collections import defaultdict

import pytest

from solver.errors import BadDefinition
from solver.units.quantity import percent
from solver.vocabulary import QUANTITIES, quantity_called, quantity_named

SYSTEMS = ("us", "si")
EVERY = tuple(QUANTITIES.values())


@pytest.mark.parametrize(
    ("name", "us", "si"),
    [
        ("water_power", "water horsepower (WHP)", "water power"),
        ("brake_power", "brake horsepower (BHP)", "shaft power"),
        ("motor_power", "motor horsepower (MHP)", "motor input power"),
        ("input_power", "input power (kW)", "input power"),
        ("head", "total dynamic head (TDH)", "total dynamic head (TDH)"),
        ("friction_rate", "friction loss per 100 ft", "friction loss per 100 m"),
        ("flow", "flow", "flow"),
    ],
)
def test_a_quantity_is_named_as_its_system_names_it(name, us, si):
    assert (us, si) == tuple(map(quantity_named(name).spoken, SYSTEMS))


def test_symbols_are_those_of_an_american_sheet_or_of_a_metric_one():
    assert r"\mathrm{WHP}" == quantity_named("water_power").symbol("us")
    assert r"P_\mathrm{w}" == quantity_named("water_power").symbol("si")


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("whp", "water_power"),
        ("Water HP", "water_power"),
        ("water power", "water_power"),
        ("BHP", "brake_power"),
        ("mhp", "motor_power"),
        ("tdh", "head"),
        ("Total  Dynamic Head", "head"),
        ("fla", "full_load_amps"),
        ("sf", "service_factor"),
        ("sfa", "service_factor_amps"),
        ("lra", "locked_rotor_amps"),
        ("pf", "power_factor"),
        ("kva", "apparent_power"),
        ("kvar", "reactive_power"),
        ("pi", "polarization_index"),
        ("dar", "absorption_ratio"),
        ("npsha", "npsh_available"),
        ("npshr", "npsh_required"),
        ("friction head", "friction_head"),
        ("fall of the pump curve", "curve_drop"),
        ("kwh per million gallons", "energy_per_volume"),
    ],
)
def test_what_people_type_finds_the_quantity(typed, name):
    assert name == quantity_called(typed).name


def test_what_nobody_calls_anything_finds_none():
    assert quantity_called("the color of the pump") is None


def test_an_alias_is_of_one_quantity_alone():
    owners = defaultdict(list)
    for quantity in EVERY:
        for alias in quantity.aliases:
            owners[alias].append(quantity.name)
    shared = {alias: names for alias, names in owners.items() if len(names) > 1}
    assert {} == shared, "leave each alias with one quantity alone, in quantities.py of its topic"


def test_a_range_goes_up():
    with pytest.raises(BadDefinition, match="'belt_slip': its range is 10 to"):
        percent("belt_slip", "belt slip", "s", (10, 0.5))


def test_aliases_are_lower_case_and_have_labels_and_abbreviations_of_both_systems():
    for quantity in EVERY:
        said = {
            text(units).lower() for units in SYSTEMS for text in (quantity.label, quantity.short)
        }
        assert said - {""} <= set(quantity.aliases)
        assert all(alias == alias.lower().strip() and alias for alias in quantity.aliases)


OLD_TURNS = (
    r"\b(?:a second|a day|an hour|less the|over the|in all|spare|dear|fall of|now of|least)\b"
)


@pytest.mark.parametrize("units", SYSTEMS)
def test_labels_have_no_turn_that_nobody_at_a_plant_uses(units):
    assert [] == [q.label(units) for q in EVERY if re.search(OLD_TURNS, q.label(units))]


@pytest.mark.parametrize("units", SYSTEMS)
def test_no_two_labels_of_a_system_are_alike(units):
    assert len(EVERY) == len({q.label(units) for q in EVERY})


@pytest.mark.parametrize(
    ("name", "verb"),
    [
        ("amps_average", "are"),
        ("minor_loss", "are"),
        ("yearly_saving", "are"),
        ("starts_per_hour", "are"),
        ("friction_head", "is"),
        ("energy_per_volume", "is"),
        ("stages", "is"),
    ],
)
def test_the_verb_agrees_with_the_label(name, verb):
    assert verb == quantity_named(name).be("us")


@pytest.mark.parametrize("name", ["slip_speed", "starting_kva", "capacitor_kvar", "percent_full"])
def test_a_label_that_says_its_unit_is_known(name):
    assert quantity_named(name).says_unit("us")

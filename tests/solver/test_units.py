"""Units: every spelling finds its unit, and every conversion is the one pint makes."""

import subprocess
import sys
from itertools import groupby, permutations
from math import isclose
from pathlib import Path

import pytest

from solver.errors import BadDefinition, SolverError
from solver.units import unit as module
from solver.units.in_pint import compiled, quantity, registry
from solver.units.unit import Unit, convert, factors, find_unit, measure, unit, units
from tests.in_one import in_one

ALL = tuple(units().values())
SPELLED = [(one.name, spelling) for one in ALL for spelling in one.spellings]
BY_KIND = {
    kind: tuple(same)
    for kind, same in groupby(sorted(ALL, key=lambda one: one.kind), key=lambda one: one.kind)
}


@in_one("name, spelling", SPELLED)
def test_every_spelling_finds_its_own_unit(name, spelling):
    assert unit(name) is find_unit(spelling)


def test_a_spelling_given_to_two_units_is_refused_by_name(monkeypatch):
    rivals = {name: Unit(name, "length", "", "meter", ("pace",)) for name in ("short", "long")}
    monkeypatch.setattr(module, "units", lambda: rivals)
    module._spellings.cache_clear()
    try:
        with pytest.raises(BadDefinition, match='"pace" spells both short and long'):
            find_unit("pace")
    finally:
        module._spellings.cache_clear()


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("hp", "HP"),
        ("hp", "Hp"),
        ("hp", "h.p."),
        ("kW", "kw"),
        ("kW", "KW"),
        ("kWh", "KWH"),
        ("kWh", "kW·h"),
        ("kWh", "kilowatt-hours"),
        ("MGD", "mgd"),
        ("MGD", "million gallons per day"),
        ("gpm", "Gallons per Minute"),
        ("gpm", "gal. / min."),
        ("L/s", "litres per second"),
        ("m3/h", "m³/h"),
        ("m3/h", "m^3/hr"),
        ("m3/h", "cubic metres per hour"),
        ("ft3", "cu. ft."),
        ("ft", "’"),
        ("in", "″"),
        ("psi", "PSIG"),
        ("psi", "pounds per square inch"),
        ("ft-lb/min", "foot-pounds per minute"),
        ("ohm", "\N{OHM SIGN}"),
        ("megohm", "MΩ"),
        ("milliohm", "mΩ"),
        ("°F", "F"),
        ("°C", "℃"),
        ("cents/kWh", "¢/kWh"),
        ("cents/kWh", "cents per kilowatt-hour"),
        ("$/kW-month", "$ per kW per month"),
        ("$/1000 gal", "dollars per thousand gallons"),
        ("kWh/1000 m3", "kWh per 1,000 m³"),
        ("kWh/MG", "kwh/mg"),
        ("rpm", "RPM"),
        ("Hz", "hz"),
        ("%", "per cent"),
        ("h/day", "hours per day"),
    ],
)
def test_a_unit_is_known_however_the_trade_types_it(name, text):
    assert unit(name) is find_unit(text)


@pytest.mark.parametrize(
    "text",
    [
        "mg",  # milligrams or million gallons
        "mw",  # milliwatts or megawatts
        "MA",  # milliamperes or mega-amperes
        "MM",  # millimetres or millions
        "M",  # metres or millions
        "c",  # cents or degrees Celsius
        "k",  # kelvins or thousands
        "mohms",  # milliohms or megohms
        "ton",  # short, metric, or of cooling
        "psia",  # absolute: another reading of the same gauge
        "ft of water",  # a pressure, and a length to others
        "hp/hp",
        "gal/zork",
        "/",
        "//",
        "",
        "hp hp",
        "h" * 10_000,
    ],
)
def test_a_unit_that_could_be_two_things_or_none_is_not_known(text):
    assert find_unit(text) is None


@pytest.mark.parametrize(("kind", "members"), BY_KIND.items())
def test_units_of_one_kind_have_one_dimension(kind, members):
    assert {members[0].dimension} == {one.dimension for one in members}


def test_the_compiled_scales_are_what_pint_says_today():
    assert compiled() == (module._TABLES / "unit_scales.txt").read_text(encoding="utf-8")


@in_one("start, end", [pair for many in BY_KIND.values() for pair in permutations(many, 2)])
def test_every_fitting_unit_converts_as_pint_converts_it(start, end):
    expected = quantity(12.5, start).to(registry().Unit(end.pint)).magnitude
    assert isclose(expected, convert(12.5, start, end), rel_tol=1e-13)


@pytest.mark.parametrize(
    ("expected", "value", "start", "end"),
    [
        (0.35, 35, "%", ""),
        (82.0, 0.82, "", "%"),
        (12.5, 12_500, "W", "kW"),
        (0.07, 7, "cents", "$"),
        (1.5, 90, "min", "h"),
        (8760.0, 1, "year", "h"),
        (450.0, 450, "gpm", "gpm"),
    ],
)
def test_a_whole_ratio_converts_without_a_stray_last_digit(expected, value, start, end):
    assert expected == convert(value, start, end)


@pytest.mark.parametrize(
    ("expected", "value", "start", "end"),
    [
        (0.0, 32, "°F", "°C"),
        (212.0, 100, "°C", "°F"),
        (-40.0, -40, "°C", "°F"),
        (293.15, 20, "°C", "K"),
        (18.0, 10, "°C rise", "°F rise"),
    ],
)
def test_a_temperature_has_an_offset_and_a_rise_has_none(expected, value, start, end):
    # The fixed points of water, and that -40 is the same on both scales.
    assert expected == pytest.approx(convert(value, start, end), abs=1e-9)


def test_revolutions_a_minute_are_counted_and_not_an_angle():
    # pint's own rpm is angular; 3600 of ours a minute are 60 a second.
    assert 60 * unit("Hz").scale == 3600 * unit("rpm").scale


@pytest.mark.parametrize(
    ("start", "end", "sentence"),
    [
        ("psi", "ft", r"^psi is a pressure; this asks for a length in ft\.$"),
        ("kVA", "kW", r"^kVA is an apparent power; this asks for a power in kW\.$"),
        ("Hz", "rpm", r"^Hz is a frequency; this asks for a rotating speed in rpm\.$"),
        ("%", "hp", r"^% is a percentage; this asks for a power in hp\.$"),
        ("$", "%", r"^\$ is an amount of money; this asks for a percentage\.$"),
        ("A", "", r"^A is a current; this asks for a plain number\.$"),
        ("h", "choice", r"^h is a time; this asks for the number of a choice\.$"),
        ("°C", "°C rise", r"^°C is a temperature; this asks for a temperature rise in °C rise\.$"),
    ],
)
def test_another_kind_of_unit_is_refused_with_both_kinds_said(start, end, sentence):
    with pytest.raises(SolverError, match=sentence):
        convert(1.0, start, end)


@pytest.mark.parametrize(
    ("name", "hint"),
    [
        ("hour", r'No unit is named "hour"; write "h"\.'),
        ("zork", r'No unit is named "zork"; see solver/units/units\.txt for the names\.'),
        ("gpm*ft", r'No unit is named "gpm\*ft"; see'),
    ],
)
def test_a_name_that_no_unit_has_is_refused_with_what_to_write(name, hint):
    with pytest.raises(BadDefinition, match=hint):
        unit(name)


@pytest.mark.parametrize(
    ("same", "expression"),
    [
        ("", "1"),
        ("", "ft / ft"),
        ("ft2", "ft ft"),
        ("L/s", "L / s"),
        ("ft/s2", "ft / s s"),
        ("kWh", "kW h"),
        ("kVA", "V A kW / W"),
        ("$", "kWh $/kWh"),
        ("hp", "lbf/gal gpm ft ft-lb/min hp / ft-lb/min ft-lb/min"),
        ("kWh/1000 m3", "kWh/1000 m3"),
        ("Hz", "1 / s"),
    ],
)
def test_spaces_part_factors_and_all_after_a_stroke_divides(same, expression):
    dimension, scale = measure(factors(expression))
    assert unit(same).dimension == dimension
    assert isclose(unit(same).scale, scale, rel_tol=1e-14)


def test_a_constant_in_a_unit_nobody_knows_is_refused():
    with pytest.raises(BadDefinition, match=r'No unit is named "furlong"'):
        factors("gpm furlong / hp")


def test_units_and_reading_do_not_wait_for_pint():
    asked = "import sys, solver.units.unit, solver.units.reading; print('pint' in sys.modules)"
    root = Path(module.__file__).parents[1]
    run = subprocess.run(
        [sys.executable, "-c", asked], cwd=root, capture_output=True, text=True, check=True
    )
    assert run.stdout.strip() == "False"


def test_there_is_one_registry_and_it_knows_the_trade():
    assert registry() is registry()
    assert quantity(2.0, "$/kWh").to("dollar_cent / kilowatt_hour").magnitude == pytest.approx(200)

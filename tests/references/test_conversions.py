"""Conversions against published tables, each within half of the last digit it prints.

Status as in every check here: R read in the source, R2 read in a copy of it, M from
memory, C common practice of the trade with no source.
"""

from decimal import Decimal

import pytest
import scipy.constants as si

from solver.units.unit import convert, factors, measure, unit

NIST = "NIST SP 811 (2008), App. B"
EPANET = "US EPA, EPANET 2.0 and 2.2 source, types.h"
# Each row: published, from, to, source, status.
ROWS = [
    ("745.6999", "hp", "W", f"{NIST}, horsepower (550 ft lbf/s)", "R2"),
    ("3.785412E-03", "gal", "m3", f"{NIST}, gallon (US) 231 in3", "R2"),
    ("6.309020E-05", "gpm", "m3/s", f"{NIST}, gallon (US) per minute", "R2"),
    ("2.831685E-02", "ft3", "m3", f"{NIST}, cubic foot", "R2"),
    ("4.719474E-04", "cfm", "m3/s", f"{NIST}, cubic foot per minute", "R2"),
    ("6894.757", "psi", "Pa", f"{NIST}, pound-force per square inch", "R2"),
    ("3600000", "kWh", "J", f"{NIST}, kilowatt hour", "R2"),
    ("7.480519", "ft3", "gal", f"{NIST}, from its two rows", "R2"),
    ("4.381264E-02", "MGD", "m3/s", f"{NIST}, from its rows for the gallon and the day", "R2"),
    ("0.3048", "ft", "m", f"{NIST}, foot (international)", "M"),
    ("2.54", "in", "cm", f"{NIST}, inch", "M"),
    ("4.448222", "lbf", "N", f"{NIST}, pound-force", "M"),
    ("0.45359237", "lb", "kg", f"{NIST}, pound (avoirdupois)", "M"),
    ("16.01846", "lb/ft3", "kg/m3", f"{NIST}, pound per cubic foot", "M"),
    ("119.8264", "lb/gal", "kg/m3", f"{NIST}, pound per gallon (US)", "M"),
    ("1.355818", "ft-lb", "J", f"{NIST}, foot pound-force", "M"),
    ("2.259697E-02", "ft-lb/min", "W", f"{NIST}, foot pound-force per minute", "M"),
    ("3386.389", "inHg", "Pa", f"{NIST}, inch of mercury, conventional", "M"),
    ("31536000", "year", "s", f"{NIST}, year (365 days)", "M"),
    ("448.831", "cfs", "gpm", EPANET, "R"),
    ("0.64632", "cfs", "MGD", EPANET, "R"),
    ("28.317", "cfs", "L/s", EPANET, "R"),
    ("1699.0", "cfs", "L/min", EPANET, "R"),
    ("101.94", "cfs", "m3/h", EPANET, "R"),
    ("2446.6", "cfs", "m3/day", EPANET, "R"),
    ("2.4466", "cfs", "ML/day", EPANET, "R"),
    ("6.895", "psi", "kPa", EPANET, "R"),
    ("0.7457", "hp", "kW", EPANET, "R"),
    ("694.44", "MGD", "gpm", "a million gallons over 1440 minutes", "C"),
    ("33000", "hp", "ft-lb/min", "the definition of the horsepower", "C"),
    ("8760", "year", "h", "common practice, no source", "C"),
    ("730", "month", "h", "common practice, no source", "C"),
]


@pytest.mark.parametrize(("published", "start", "end", "source", "status"), ROWS)
def test_a_conversion_rounds_to_the_published_figure(published, start, end, source, status):
    half_a_digit = 0.5 * 10.0 ** Decimal(published).as_tuple().exponent
    # A whisker of rounding for the rows that are exact.
    tolerance = half_a_digit + 1e-12 * float(published)
    assert float(published) == pytest.approx(convert(1.0, start, end), abs=tolerance, rel=0)


@pytest.mark.parametrize(
    ("expected", "name"),
    [
        (si.hp, "hp"),
        (si.psi, "psi"),
        (si.bar, "bar"),
        (si.foot, "ft"),
        (si.inch, "in"),
        (si.gallon_US, "gal"),
        (si.liter, "L"),
        (si.pound, "lb"),
        (si.pound_force, "lbf"),
        (si.minute, "min"),
        (si.hour, "h"),
        (si.day, "day"),
        (si.week, "week"),
        (si.year, "year"),
        (si.degree_Fahrenheit, "°F rise"),
        (si.zero_Celsius + si.degree_Fahrenheit * -32, "°F"),
    ],
)
def test_a_scale_is_that_of_scipy(expected, name):
    one = unit(name)
    assert expected == pytest.approx(one.offset or one.scale, rel=1e-14)


def test_a_foot_of_conventional_water_is_a_2_3067th_of_a_psi():
    # NIST SP 811: foot of water, conventional, 2989.067 Pa (R2); the trade rounds it to 2.31.
    published = 2.3067
    assert published == pytest.approx(convert(1.0, "psi", "Pa") / 2989.067, abs=0.00005)


def test_water_of_62_4_pounds_a_cubic_foot_gives_the_2_3077_feet_a_psi_of_handbooks():
    # Solberg, Elementary Heat Power, Ex 9.2 (R2): 20 psi is 46.154 ft.
    _, feet_per_psi = measure(factors("psi / lbf/ft3 ft"))
    published = 46.154
    assert published == pytest.approx(20 * feet_per_psi / 62.4, abs=0.0005)


def test_a_gallon_of_8_34_pounds_gives_the_3956_8_of_water_horsepower():
    # 33,000 / 8.34 (arithmetic; the trade rounds it to 3960).
    _, scale = measure(factors("hp / gpm ft lbf/gal"))
    published = 3956.8
    assert published == pytest.approx(scale / 8.34, abs=0.05)

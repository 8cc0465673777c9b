"""The constants of the trade against pint and scipy.constants: each within its own rounding.

Where water is in a constant, so is its temperature: the exact value is a range, from water of
1000 kg/m3 (conventional; 999.97 at 4 C) to 998.2 at 20 C (CRC Handbook, from memory), and from
standard gravity to the 9.81 of textbooks.
"""

import cmath
import math
from decimal import Decimal

import pint
import pytest
import scipy.constants as si

from solver.algebra.expression import Constant
from solver.algebra.tree import constants
from solver.topics.formulas import FORMULAS

UREG = pint.UnitRegistry()
DENSEST, WARM = (UREG.Quantity(rho, "kg/m**3") for rho in (1000.0, 998.2))
STANDARD, TEXTBOOK = (UREG.Quantity(g, "m/s**2") for g in (si.g, 9.81))
MILLION_GALLONS = UREG.Quantity(1e6, "gallon")


def lifted(flow: str, head: str, power: str) -> list[float]:
    """How much flow times head one unit of power lifts, over the range of water and gravity."""
    work = UREG.Quantity(1, flow) * UREG.Quantity(1, head)
    return [(UREG.Quantity(1, power) / (work * rho * g)).to("").magnitude for rho, g in EXTREMES]


def held_up(pressure: str, head: str) -> list[float]:
    """What height of water one unit of pressure holds up."""
    return [(UREG.Quantity(1, pressure) / (rho * g)).to(head).magnitude for rho, g in EXTREMES]


def weighed(unit: str) -> list[float]:
    return [(rho * g).to(unit).magnitude for rho, g in EXTREMES]


def both(name: str, exact: float) -> dict[tuple[str, str], list[float]]:
    """A constant that has one exact value in both systems."""
    return {(name, units): [exact] for units in ("us", "si")}


def in_units(one: str, of: str) -> float:
    """How many of one unit are in another."""
    return UREG.Quantity(1, one).to(of).magnitude


def in_a_pipe(flow: str, diameter: str, velocity: str) -> float:
    """The velocity of one unit of flow in a round pipe of one unit across."""
    area = math.pi / 4 * UREG.Quantity(1, diameter) ** 2
    return (UREG.Quantity(1, flow) / area).to(velocity).magnitude


def rim(diameter: str, head: str) -> list[float]:
    """Diameter times rpm, of a rim as fast as water that fell one unit of head."""
    falls = ((2 * g * UREG.Quantity(1, head)) ** 0.5 for g in (STANDARD, TEXTBOOK))
    return [(fall / math.pi).to(f"{diameter}/minute").magnitude for fall in falls]


EXTREMES = [(rho, g) for rho in (DENSEST, WARM) for g in (STANDARD, TEXTBOOK)]
EXACT = {
    ("water_power_constant", "us"): lifted("gallon/minute", "foot", "horsepower"),
    ("water_power_constant", "si"): lifted("liter/second", "meter", "kilowatt"),
    **both("kilowatts_per_horsepower", si.hp / si.kilo),
    ("head_per_pressure", "us"): held_up("psi", "foot"),
    ("head_per_pressure", "si"): held_up("kilopascal", "meter"),
    ("gpm_per_mgd", "us"): [(MILLION_GALLONS / UREG.day).to("gallon/minute").magnitude],
    ("m3_day_per_litre_second", "si"): [UREG.Quantity(1, "liter/second").to("m**3/day").magnitude],
    ("hourly_volume", "us"): [(MILLION_GALLONS / UREG.hour).to("gallon/minute").magnitude],
    ("hourly_volume", "si"): [UREG.Quantity(1, "megaliter/hour").to("liter/second").magnitude],
    **both("circle_in_square", math.pi / 4),
    ("square_millimetres", "si"): [in_units("meter**2", "millimeter**2")],
    ("stroke_constant", "us"): [in_units("gallon", "inch**3")],
    ("stroke_constant", "si"): [in_units("liter", "millimeter**3")],
    ("shutoff_constant", "us"): rim("inch", "foot"),
    ("shutoff_constant", "si"): rim("millimeter", "meter"),
    ("gallons_per_cubic_foot", "us"): [UREG.Quantity(1, "foot**3").to("gallon").magnitude],
    ("inches_per_foot", "us"): [si.foot / si.inch],
    ("centimetres_per_metre", "si"): [1 / si.centi],
    ("litres_per_cubic_metre", "si"): [1 / si.liter],
    **both("seconds_per_minute", si.minute),
    **both("minutes_per_hour", si.hour / si.minute),
    **both("root_three", abs(cmath.exp(2j * math.pi / 3) - 1)),  # two lines of one volt to neutral
    **both("va_per_kva", UREG.Quantity(1, "kilovolt_ampere").to("volt_ampere").magnitude),
    **both("speed_constant", 2 * si.minute),
    **both("volts_per_kilovolt", si.kilo),
    ("water_weight", "us"): weighed("force_pound/gallon"),
    ("water_weight", "si"): weighed("kilonewton/m**3"),
    ("gpm_per_cfs", "us"): [in_units("foot**3/second", "gallon/minute")],
    ("minutes_an_hour", "us"): [in_units("gallon/minute", "gallon/hour")],
    ("minutes_a_day", "us"): [in_units("gallon/minute", "gallon/day")],
    ("m3_hour_per_litre_second", "si"): [in_units("liter/second", "m**3/hour")],
    ("ml_day_per_litre_second", "si"): [in_units("liter/second", "megaliter/day")],
    ("water_mass", "us"): [rho.to("pound/gallon").magnitude for rho in (DENSEST, WARM)],
    ("water_mass", "si"): [rho.magnitude for rho in (DENSEST, WARM)],
    ("weight_of_flow", "us"): weighed("force_pound/gallon"),
    ("weight_of_flow", "si"): weighed("newton/liter"),
    ("kpa_per_psi", "us"): [si.psi / si.kilo],
    ("kpa_per_bar", "si"): [si.bar / si.kilo],
    ("foot_pounds", "us"): [in_units("horsepower", "foot * force_pound / minute")],
    ("watts", "si"): [si.kilo],
    ("head_per_vacuum", "us"): held_up("inch_Hg", "foot"),
    ("head_per_vacuum", "si"): held_up("kilopascal", "meter"),
    ("velocity_constant", "us"): [in_a_pipe("gallon/minute", "inch", "foot/second")],
    ("velocity_constant", "si"): [in_a_pipe("liter/second", "millimeter", "meter/second")],
    ("gravity", "us"): [STANDARD.to("foot/s**2").magnitude],
    ("gravity", "si"): [STANDARD.magnitude],
    **both("hundred", 1 / si.centi),
    **both("pi", math.pi),
    ("pounds_constant", "us"): [rho.to("pound/gallon").magnitude for rho in (DENSEST, WARM)],
    ("grams_per_kilogram", "si"): [si.kilo],
    **both("hours_per_day_constant", si.day / si.hour),
    ("milliliters", "us"): [in_units("gallon", "milliliter")],
    ("milliliters", "si"): [in_units("liter", "milliliter")],
    ("rim_speed", "us"): [1 / in_units("inch/minute", "foot/minute")],
    ("rim_speed", "si"): [1 / in_units("millimeter/minute", "meter/second")],
    ("torque_constant", "us"): [in_units("horsepower", "foot*force_pound/minute") / math.tau],
    ("torque_constant", "si"): [in_units("kilowatt", "newton*meter/minute") / math.tau],
    **both("milliamps_per_amp", 1 / si.milli),
    # ISA 50.00.01 (M): a signal goes from 4 to 20 mA.
    **both("signal_bottom", 4),
    **both("signal_top", 20),
    **both("signal_range", 20 - 4),
    **both("table_length", si.kilo),
    **both("hours_per_day_of_a_bill", si.day / si.hour),
    # Stranded copper at 75 °C: NEC Chapter 9 Table 8 (R), ohms times area; IEC 60228 times 1.216 (M).
    ("copper", "us"): [0.0608 * 211.6, 0.491 * 26.24],
    ("copper", "si"): [0.153 * 1.216 * 0.12, 7.41 * 1.216 * 0.0025],
}
# Rules of thumb, which nothing exact stands behind.
RULES = {"rise_per_square": 2, "base_temperature": 40, "halving": 10, "ground_times": 4}
RULES |= {"grease_rule": 0.114, "hazen_williams": 1050}  # fitted to measurements
RULES |= {"francis": 1495}


def all_constants() -> list[Constant]:
    found = [
        c
        for f in FORMULAS
        for expr in (f.expr, *(s.expr for s in f.slips))
        for c in constants(expr)
    ]
    return list(dict.fromkeys(found))


def figures():
    """Every value of every constant: as taught, and as others round it."""
    for constant in all_constants():
        for units in ("us", "si"):
            figure = constant.figure(units)
            if figure.value == 1 or constant.name in RULES:
                continue
            for value in (figure.value, *figure.also):
                yield pytest.param(
                    constant.name, units, value, id=f"{constant.name}-{units}-{value}"
                )


def rounding(value: float) -> float:
    """Half a unit of the last figure that is not zero: 5 for 3960, 0.005 for 8.34."""
    return float(Decimal(1).scaleb(Decimal(repr(value)).normalize().as_tuple().exponent)) / 2


@pytest.mark.parametrize(("name", "units", "value"), list(figures()))
def test_a_constant_is_within_its_rounding_of_the_exact_value(name, units, value):
    exact = EXACT[name, units]
    near = rounding(value)
    assert min(exact) - near <= value <= max(exact) + near


@pytest.mark.parametrize("constant", all_constants(), ids=lambda constant: constant.name)
def test_what_is_called_exact_lies_in_the_exact_range(constant):
    for units in ("us", "si"):
        named = constant.figure(units).exact
        if named is not None and (constant.name, units) in EXACT:
            exact = EXACT[constant.name, units]
            assert min(exact) * (1 - 1e-5) <= named <= max(exact) * (1 + 1e-5), units


def test_the_rules_of_thumb_are_as_published():
    # US DOE Motor Systems Tip Sheet 7 (R): about twice the square of the unbalance.
    # IEEE 43 (M): to 40 °C, half for each 10 °C; on ground for four times the test or more.
    taught = {c.name: c.us.value for c in all_constants() if c.name in RULES}
    assert RULES == taught


def test_one_horsepower_is_33_000_foot_pounds_a_minute():
    # The definition behind 3960: 33,000 over the pounds of a gallon (common practice).
    published = 33_000
    assert published == pytest.approx(si.hp / (si.foot * si.pound_force) * si.minute, rel=1e-9)

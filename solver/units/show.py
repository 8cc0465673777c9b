"""How a number is written for a reader: figures kept, thousands parted, unit in its place."""

import re
from functools import cache
from math import floor, log10

from .order import letters_of
from .unit import units

__all__ = [
    "capital",
    "constant_unit",
    "counted",
    "exact",
    "figures",
    "latex_with_unit",
    "unit_in_words",
    "unit_spoken",
    "with_unit",
]


def figures(value: float, name: str = "") -> str:
    """A worked number as it is noted: four figures, two for a percent below one, cents for money.

    >>> figures(7.045454), figures(51234.5), figures(1234.5, "$"), figures(0.08512, "$/kWh")
    ('7.045', '51,234', '1,234.50', '0.08512')
    >>> figures(0.000012345), figures(0.00025)
    ('0.00001234', '0.00025')
    >>> figures(0.23764, "%"), figures(2.3764, "%")
    ('0.24', '2.376')
    >>> figures(3124.0, "order")
    'C A B D'
    """
    if name == "order":
        return letters_of(value)
    size = abs(value)
    if size >= 1e12 or 0 < size < 1e-9:
        return f"{value:.3e}"
    if 0 < size < 0.001:
        return f"{value:.{3 - floor(log10(size))}f}".rstrip("0")
    if name == "$" or (name.startswith("$") and 1 <= size < 1000):
        return f"{value:,.2f}"
    if size >= 1000:
        return f"{value:,.0f}"
    return f"{value:.2g}" if name == "%" and size < 1 else f"{value:.4g}"


def exact(value: float, name: str = "") -> str:
    """A given number, all of it; money that is not whole has its cents.

    >>> exact(1250.0), exact(0.085), exact(40.0, "$"), exact(0.1, "$/kWh")
    ('1,250', '0.085', '40', '0.10')
    """
    text = f"{value:,.10g}"
    tenths_only = name.startswith("$") and len(text.partition(".")[2]) == 1
    return f"{text}0" if tenths_only else text


# Units written out: one of them, and several.
WORDS = {
    **{one: (one, f"{one}s") for one in ("day", "week", "month", "year", "megohm", "ohm", "mil")},
    "h": ("hour", "hours"),
    "starts/h": ("start per hour", "starts per hour"),
    "ohm/1000 ft": ("ohm per 1,000 ft", "ohms per 1,000 ft"),
    "ohm/km": ("ohm per km", "ohms per km"),
    **{
        f"h/{per}": (f"hour per {per}", f"hours per {per}")
        for per in ("day", "week", "month", "year")
    },
}


def _raised(name: str) -> str:
    """A unit with its squares and cubes as signs."""
    return re.sub(r"(m|ft|in|s)([23])\b", lambda part: part[1] + "²³"[int(part[2]) - 2], name)


@cache
def _frame(name: str) -> tuple[str, str]:
    """What stands before and after a number with this unit; a word is for several."""
    if name in WORDS:
        return "", f" {WORDS[name][1]}"
    shown = _raised(name)
    if name.startswith("$"):
        return "$", shown[1:]
    return "", {"%": "%", "": "", "choice": "", "order": ""}.get(name, f" {shown}")


def with_unit(number: str, name: str) -> str:
    """A written number with its unit, as a practitioner writes it.

    >>> with_unit("450", "gpm"), with_unit("82", "%"), with_unit("0.12", "$/kWh")
    ('450 gpm', '82%', '$0.12/kWh')
    >>> with_unit("30", "day"), with_unit("1", "year"), with_unit("365", "megohm")
    ('30 days', '1 year', '365 megohms')
    >>> with_unit("8", "h/day"), with_unit("1", "starts/h")
    ('8 hours per day', '1 start per hour')
    """
    before, after = _frame(name)
    if name in WORDS and number == "1":
        return f"1 {WORDS[name][0]}"
    if before and number.startswith("-"):
        return f"-{before}{number[1:]}{after}"
    return f"{before}{number}{after}"


def unit_in_words(name: str) -> str:
    """A unit as a label says it after "in".

    >>> unit_in_words("m3/m"), unit_in_words("%"), unit_in_words("in"), unit_in_words("gpm")
    ('m³/m', 'percent', 'inches', 'gpm')
    """
    words = {"$": "dollars", "%": "percent", "in": "inches", "A": "amps", "V": "volts"}
    return words.get(name, with_unit("", name).strip())


# Of numbers that belong to a rule, a table or an equation as it is learned.
NOT_CANCELED = ("ft/100 ft", "m/100 m", "/ %", "milliohm / ohm", "ft/s in2 / gpm", "m/s mm2 / L/s")


@cache
def constant_unit(unit: str) -> str:
    """The unit of a constant as it is written to be canceled; "" where that helps nobody.

    >>> constant_unit("gpm ft / hp"), constant_unit("m3/day / L/s"), constant_unit("ft/100 ft")
    ('gpm·ft/hp', 'm³/day per L/s', '')
    """
    if not unit or unit in NOT_CANCELED:
        return ""
    names = {"K": "°C"}  # a difference
    above, *below = (
        "·".join(_raised(names.get(name, name)) for name in side.split())
        for side in unit.split(" / ")
    )
    return (" per " if "/" in f"{above}{below}" else "/").join((above, *below))


SPOKEN = {
    "hp": "horsepower", "kW": "kilowatts", "W": "watts", "MW": "megawatts", "ft": "feet",
    "in": "inches", "m": "meters", "cm": "centimeters", "mm": "millimeters", "km": "kilometers",
    "s": "seconds", "min": "minutes", "h": "hours", "day": "days", "week": "weeks",
    "month": "months", "year": "years", "gal": "gallons", "kgal": "thousands of gallons",
    "MG": "million gallons", "L": "liters", "ML": "megaliters", "ft3": "cubic feet",
    "m3": "cubic meters", "lb": "pounds", "kg": "kilograms", "V": "volts", "kV": "kilovolts",
    "A": "amps", "mA": "milliamps", "ohm": "ohms", "milliohm": "milliohms", "kilohm": "kilohms",
    "megohm": "megohms", "gigohm": "gigohms", "kWh": "kilowatt-hours", "Wh": "watt-hours",
    "MWh": "megawatt-hours", "kPa": "kilopascals", "MPa": "megapascals", "Pa": "pascals",
    "inHg": "inches of mercury", "$": "dollars", "h/day": "hours a day",
    "h/week": "hours a week", "h/month": "hours a month", "h/year": "hours a year",
    "starts/h": "starts an hour", "$/day": "dollars a day", "$/month": "dollars a month",
    "$/year": "dollars a year", "$/h": "dollars an hour", "%": "percent", "$/kWh": "dollars per kWh",
    "cents/kWh": "cents per kWh", "kWh/day": "kWh a day", "kWh/month": "kWh a month",
    "kWh/year": "kWh a year",
}  # fmt: skip


def unit_spoken(name: str) -> str:
    """A unit as it is said in a sentence; one that is said by its letters stays as it is.

    >>> unit_spoken("kW"), unit_spoken("gpm"), unit_spoken("m3/day")
    ('kilowatts', 'gpm', 'm³/day')
    """
    return SPOKEN.get(name) or unit_in_words(name)


def latex_with_unit(number: str, name: str) -> str:
    """The same for LaTeX."""
    number = number.replace(",", "{,}")
    before, after = _frame(name)
    if before:
        rest = rf"\text{{{after}}}" if after else ""
        return rf"\${number}{rest}"
    if name == "%":
        return rf"{number}\%"
    if name in WORDS:
        return rf"{number}\ \text{{{WORDS[name][number != '1']}}}"
    if not after:
        return number
    known = units().get(name)
    written = known.latex if known else rf"\text{{{name}}}"
    return rf"{number}\ {written}"


def capital(text: str) -> str:
    """A text with a capital letter at its start; the rest stays, as in "NPSH" and "°C".

    >>> capital("kV + 1"), capital("insulation at 40 °C")
    ('KV + 1', 'Insulation at 40 °C')
    """
    return text[:1].upper() + text[1:]


def counted(number: int, noun: str) -> str:
    """A number of things.

    >>> counted(1, "part"), counted(12, "formula")
    ('1 part', '12 formulas')
    """
    return f"{number:,} {noun}{'' if number == 1 else 's'}"

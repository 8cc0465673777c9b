"""The data files in the topics' folders, and what is read in the published tables among them.

Tables are .csv files with their source in their first lines; questions in words are .toml files.
"""

from bisect import bisect_left
from collections.abc import Mapping
from csv import DictReader
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from itertools import pairwise
from types import MappingProxyType
from typing import Any

from solver.errors import BadDefinition, NotSolvable

__all__ = [
    "between_rows",
    "by_column",
    "by_size",
    "derating_factor",
    "full_load_amps",
    "largest_motor_below",
    "motor_sizes",
    "named_rows",
    "next_motor_size",
    "second_motor_above",
    "table_as_printed",
    "table_names",
    "table_rows",
    "table_source",
    "toml_rows",
]


@cache
def data_files(ending: str) -> Mapping[str, Traversable]:
    """Every file of the topics with this ending (".csv"), by its name without the ending.

    Raises:
        BadDefinition: two topics have a file of one name.
    """
    found: dict[str, Traversable] = {}
    for topic in sorted(files(__package__).iterdir(), key=lambda folder: folder.name):
        for path in topic.iterdir() if topic.is_dir() else ():
            name = path.name.removesuffix(ending)
            if name == path.name:
                continue
            if name in found:
                raise BadDefinition(f"two topics have a file {path.name}: give each its own name")
            found[name] = path
    return MappingProxyType(found)


def text_of(name: str, ending: str) -> str:
    """What the file of this name and ending says.

    Raises:
        KeyError: there is none of this name.
    """
    return data_files(ending)[name].read_text("utf-8")


def toml_rows(name: str, kind: str) -> list[dict[str, Any]]:
    """The [[kind]]s of the .toml file of this name.

    Raises:
        BadDefinition: there is no such file, or it is no list of them.
    """
    # Not at the top: a page that draws none of these spends no time on it.
    from tomllib import TOMLDecodeError, loads

    where = f"{name}.toml"
    try:
        text = text_of(name, ".toml")
    except KeyError:
        raise BadDefinition(
            f"no topic's folder has {where}: add it to the one it belongs to"
        ) from None
    try:
        rows: list[dict[str, Any]] = loads(text)[kind]
    except (TOMLDecodeError, KeyError) as fault:
        raise BadDefinition(f"{where} is not a list of [[{kind}]] in TOML: {fault}") from None
    return rows


@cache
def _lines(name: str) -> tuple[str, ...]:
    return tuple(text_of(name, ".csv").splitlines())


def table_source(name: str) -> str:
    """The lines that say where a table is from."""
    return " ".join(line.lstrip("# ") for line in _lines(name) if line.startswith("#"))


@cache
def table_names() -> tuple[str, ...]:
    """Every table, by its name."""
    return tuple(sorted(data_files(".csv")))


def table_as_printed(name: str) -> tuple[tuple[str, ...], ...]:
    """The rows of any table as they stand in its file, the heads of the columns first.

    >>> table_as_printed("overload")[:2]
    (('service_factor', 'percent', 'raised'), ('1.00', '115', '130'))
    """
    lines = (line for line in _lines(name) if line and not line.startswith("#"))
    return tuple(tuple(cell.strip() for cell in line.split(",")) for line in lines)


@cache
def table_rows(name: str) -> tuple[dict[str, float], ...]:
    """The rows of the table `name`, as numbers."""
    lines = [line for line in _lines(name) if not line.startswith("#")]
    return tuple({key: float(value) for key, value in row.items()} for row in DictReader(lines))


@cache
def named_rows(name: str) -> dict[str, tuple[float, ...]]:
    """The rows of a table whose first column is a name, by that name.

    >>> named_rows("c_factors")["plastic in good condition"]
    (140.0, 150.0)
    """
    lines = [line for line in _lines(name) if not line.startswith("#")]
    rows = ([cell.strip() for cell in line.split(",")] for line in lines[1:])
    return {row[0]: tuple(map(float, row[1:])) for row in rows}


@cache
def motor_sizes(units: str) -> tuple[float, ...]:
    """The standard sizes of the system "us" (hp) or "si" (kW), smallest first."""
    return tuple(by_size(f"premium_motors_{units}", "4_poles"))


@cache
def by_size(table: str, column: str) -> Mapping[float, float]:
    """A column of a table of motors, by size (hp | kW).

    Raises:
        KeyError: the table has no such column.

    >>> by_size("premium_motors_us", "4_poles")[100]
    95.4
    """
    return by_column(table, "size", column)


@cache
def by_column(table: str, known: str, wanted: str) -> Mapping[float, float]:
    """One column of a table by another.

    Raises:
        KeyError: the table has no such column.

    >>> by_column("v_notch", "angle", "us")[90]
    1122.0
    """
    return {row[known]: row[wanted] for row in table_rows(table)}


def full_load_amps(size: float, volts: float, units: str) -> float:
    """Full-load amps of the code's table for a standard motor (hp | kW) at its nameplate volts.

    Raises:
        NotSolvable: the table has no such motor.

    >>> full_load_amps(10, 230, "us"), full_load_amps(10, 460, "us")
    (28.0, 14.0)
    """
    table, column = f"full_load_amps_{units}", f"{volts:g}"
    if column not in table_rows(table)[0] or size not in by_size(table, column):
        raise NotSolvable(
            f"the table of full-load amps has no motor of {size:g} at {volts:g} V: "
            "use the nameplate, or ask the motor's manufacturer"
        )
    return by_size(table, column)[size]


def _place(sizes: tuple[float, ...], load: float) -> int:
    """Where a load stands among the sizes; 30 hp and a float's last digit is 30 hp."""
    return bisect_left(sizes, load * (1 - 1e-9))


def next_motor_size(load: float, units: str) -> float:
    """The smallest standard motor (hp | kW) that carries `load` (hp | kW).

    Raises:
        NotSolvable: the load is above the largest motor of the table.

    >>> next_motor_size(41.3, "us")
    50.0
    """
    sizes = motor_sizes(units)
    where = _place(sizes, load)
    if where == len(sizes):
        raise NotSolvable(
            f"a load of {load:.4g} is above {sizes[-1]:g}, the largest motor of the table: "
            "give a smaller load, or ask the motor's maker"
        )
    return sizes[where]


def largest_motor_below(load: float, units: str) -> float:
    """The largest standard motor under `load`: too small, and a usual mistake."""
    sizes = motor_sizes(units)
    return sizes[max(_place(sizes, load) - 1, 0)]


def second_motor_above(load: float, units: str) -> float:
    """One size more than `load` needs."""
    sizes = motor_sizes(units)
    return sizes[min(_place(sizes, load) + 1, len(sizes) - 1)]


def between_rows(name: str, known: str, wanted: str, value: float) -> float | None:
    """What a table gives in one column at a value of another, between rows by a line.

    Both are in the table's own units. None where the value is outside the table.

    >>> between_rows("derating", "unbalance", "derating", 2.5)
    91.5
    """
    rows = [(row[known], row[wanted]) for row in table_rows(name)]
    for (low, at_low), (high, at_high) in pairwise(rows):
        if low <= value <= high:
            return at_low + (at_high - at_low) * (value - low) / (high - low)
    return None


def derating_factor(unbalance: float, units: str) -> float:
    """Percent of nameplate power allowed at a voltage unbalance (percent), between rows by a line.

    Raises:
        NotSolvable: the unbalance is outside the graph.

    >>> round(derating_factor(2.5, "us"), 6)
    91.5
    """
    factor = between_rows("derating", "unbalance", "derating", unbalance)
    if factor is None:
        raise NotSolvable(
            f"a voltage unbalance of {unbalance:.3g} % is outside the graph, which ends at "
            f"{table_rows('derating')[-1]['unbalance']:g} %: do not run the motor above that; "
            "find the cause first"
        )
    return factor

"""Published tables as data files, each with its source in its first lines, and their readings."""

from bisect import bisect_left
from csv import DictReader
from functools import cache
from itertools import pairwise
from typing import NamedTuple

from solver.errors import NotSolvable
from solver.topics.data import data_files, text_of

__all__ = [
    "Motor",
    "derating_factor",
    "largest_motor_below",
    "motor_sizes",
    "motors",
    "named_rows",
    "next_motor_size",
    "second_motor_above",
    "table_as_printed",
    "table_names",
    "table_rows",
    "table_source",
]


class Motor(NamedTuple):
    """A row of the motor table: size (hp | kW), full-load amps, nominal efficiency (percent)."""

    size: float
    amps: float
    efficiency: float


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
def motors(units: str) -> tuple[Motor, ...]:
    """The standard motors of the system "us" (460 V, hp) or "si" (400 V, kW), smallest first."""
    return tuple(Motor(**row) for row in table_rows(f"motors_{units}"))


@cache
def motor_sizes(units: str) -> tuple[float, ...]:
    """The standard sizes alone, smallest first."""
    return tuple(motor.size for motor in motors(units))


def _place(sizes: tuple[float, ...], load: float) -> int:
    """Where a load stands among the sizes; 30 hp and a float's last digit is 30 hp."""
    return bisect_left(sizes, load * (1 - 1e-9))


def next_motor_size(load: float, units: str) -> float:
    """The smallest standard motor that carries `load` (hp | kW).

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


def derating_factor(unbalance: float, units: str) -> float:
    """Percent of nameplate power allowed at a voltage unbalance (percent), between rows by a line.

    >>> round(derating_factor(2.5, "us"), 6)
    91.5
    """
    rows = [(row["unbalance"], row["derating"]) for row in table_rows("derating")]
    for (low, above), (high, below) in pairwise(rows):
        if low <= unbalance <= high:
            return above + (below - above) * (unbalance - low) / (high - low)
    raise NotSolvable(
        f"a voltage unbalance of {unbalance:.3g} % is outside the graph, which ends at "
        f"{rows[-1][0]:g} %: do not run the motor above that; find the cause first"
    )

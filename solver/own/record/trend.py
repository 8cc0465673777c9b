"""One pump over the years: which way each figure goes, by one plain rule, and what it may mean."""

from collections.abc import Sequence
from statistics import fmean
from typing import NamedTuple

from solver.errors import SolverError, Unreadable
from solver.units.show import figures, with_unit
from solver.vocabulary import quantity_named

from .days import Day, day_of
from .entries import Record
from .examine import Examined, examine

__all__ = ["FOLLOWED", "Followed", "Point", "Trend", "by_pump", "trend", "trend_of"]

RISING, FALLING, STEADY, TOO_FEW = "rising", "falling", "steady", "too few readings"
FLOAT_NOISE = 1e-9
SUDDEN = 2  # times the steady change: so far off steady readings something has happened
RULE = (
    "The average of the later half of the readings is compared with the average of the earlier "
    "half. With an odd number, the middle one is skipped. A change of more than {share} is rising "
    "or falling. After steady readings, a last one twice that far off is sudden. "
    "This is our own rule (common practice, no source)."
)


class Followed(NamedTuple):
    """A figure that is followed over the years.

    `steady` is the change that still counts as steady: a percent of the earlier half, or with
    `points` that many percentage points.
    """

    name: str
    check: str
    steady: float
    rising: str
    falling: str
    points: bool = False

    @property
    def share(self) -> str:
        """The change that still counts as steady, in words."""
        return f"{self.steady:g} percentage points" if self.points else f"{self.steady:g}%"


FOLLOWED = (
    Followed(
        "insulation_at_40",
        "insulation_at_40",
        30,
        "Drier or cleaner than before, or a different test voltage. Write down what was done.",
        "Moisture, dirt or age may be getting into the winding. Check it before it reaches the minimum.",
    ),
    Followed(
        "amps_average",
        "current_unbalance",
        10,
        "More load: solids, a tight bearing, a valve or main that changed. Or lower volts.",
        "It moves less water: wear, a clog, a closed valve. Compare with the flow.",
    ),
    Followed(
        "current_unbalance",
        "current_unbalance",
        2,
        "A connection, a splice, a contact or a winding may be going bad, or the supply has changed.",
        "The legs are more even. Write down what was done.",
        points=True,
    ),
    Followed(
        "overall_efficiency",
        "overall_efficiency",
        3,
        "Better than before: a repair, or a reading to double-check. Write down what was done.",
        "Wear, a clog or water leaking back: you lose more of the power you pay for.",
        points=True,
    ),
    Followed(
        "energy_per_volume",
        "energy_per_volume",
        10,
        "It takes more energy to pump the same volume: wear, a clog, more head, or water leaking back.",
        "It takes less energy to pump the same volume: a repair, less head, or a reading to double-check.",
    ),
)


class Point(NamedTuple):
    """One reading: its day, that day in years for an axis, and the value."""

    day: Day
    years: float
    value: float


class Trend(NamedTuple):
    """Which way one figure goes. `change` is in percent, or in percentage points.

    `direction` is "rising", "falling", "steady" or "too few readings". `sudden` says it where the
    last reading is far from steady ones before. `undated` counts readings without a clear date.
    """

    name: str
    label: str
    unit: str
    points: tuple[Point, ...]
    direction: str
    change: float | None
    rule: str
    says: str
    may_mean: str
    sudden: str = ""
    undated: int = 0


def by_pump(records: Sequence[Record]) -> dict[tuple[str, str], list[Record]]:
    """Records of each pump, by station and pump, in the order they came."""
    pumps: dict[tuple[str, str], list[Record]] = {}
    for record in records:
        pumps.setdefault(_pump(record), []).append(record)
    return pumps


def trend(records: Sequence[Record]) -> tuple[Trend, ...]:
    """The trends of one pump, from its records in any order; one for each figure followed.

    Raises:
        SolverError: the records are of several pumps, or in several systems of units.
    """
    return trend_of([examine(record) for record in records])


def trend_of(examined: Sequence[Examined]) -> tuple[Trend, ...]:
    """The same for records that are examined already.

    Raises:
        SolverError: as `trend`.
    """
    if len({_pump(one.record) for one in examined}) > 1:
        raise SolverError("These records are from more than one pump. Take one pump at a time.")
    if len({one.record.units for one in examined}) > 1:
        raise SolverError(
            "Some records are in US units and some in metric. Enter them all in one system."
        )
    units = examined[0].record.units if examined else "us"
    return tuple(_trend(followed, examined, units) for followed in FOLLOWED)


def _pump(record: Record) -> tuple[str, str]:
    """Which pump: station and name, whatever the case and the spaces."""
    texts = (record.texts.get(part, "") for part in ("station", "pump"))
    station, pump = (" ".join(text.casefold().split()) for text in texts)
    return station, pump


def _trend(followed: Followed, examined: Sequence[Examined], units: str) -> Trend:
    points, undated = [], 0
    for one in examined:
        value = _value(followed, one)
        if value is None:
            continue
        try:
            day = day_of(one.record.texts.get("date", ""))
        except Unreadable:
            undated += 1
        else:
            points.append(Point(day, day.years, value))
    points.sort()
    quantity = quantity_named(followed.name)
    course = _course(followed, [point.value for point in points])
    direction, change = course
    return Trend(
        followed.name,
        quantity.label(units),
        quantity.unit(units),
        tuple(points),
        direction,
        change,
        RULE.format(share=followed.share),
        _says(followed, points, course, units),
        {RISING: followed.rising, FALLING: followed.falling}.get(direction, ""),
        _sudden(followed, [point.value for point in points]),
        undated,
    )


def _value(followed: Followed, examined: Examined) -> float | None:
    """The figure as a check has worked it."""
    found = examined.finding(followed.check)
    return found.known.get(followed.name) if found else None


def _sudden(followed: Followed, values: list[float]) -> str:
    """That the last reading is far off, where those before it were steady; or nothing."""
    *before, last = values or [0.0]
    if _course(followed, before)[0] != STEADY or not fmean(before):
        return ""
    change = last - fmean(before)
    change *= 1 if followed.points else 100 / fmean(before)
    if abs(change) <= SUDDEN * followed.steady * (1 + FLOAT_NOISE):
        return ""
    went = "rose" if change > 0 else "fell"
    return (
        f"The last reading {went} {_sized(followed, change)} from the average of earlier ones, "
        "which were steady. Find out what happened since."
    )


def _sized(followed: Followed, change: float) -> str:
    return f"{abs(change):.3g}{' percentage points' if followed.points else '%'}"


def _course(followed: Followed, values: list[float]) -> tuple[str, float | None]:
    """Later half against earlier half: the direction, and the change where it has a size."""
    half = len(values) // 2
    if not half:
        return TOO_FEW, None
    earlier, later = fmean(values[:half]), fmean(values[-half:])
    if not (earlier or followed.points):
        return (RISING if later > 0 else STEADY), None
    change = later - earlier if followed.points else 100 * (later - earlier) / earlier
    if abs(change) <= followed.steady * (1 + FLOAT_NOISE):
        return STEADY, change
    return (RISING if change > 0 else FALLING), change


def _says(
    followed: Followed, points: list[Point], course: tuple[str, float | None], units: str
) -> str:
    quantity, (direction, change) = quantity_named(followed.name), course
    if direction == TOO_FEW:
        return (
            f"It takes two or more dated readings of the {quantity.label(units)} to see a change."
        )
    unit = quantity.unit(units)
    first, last = (with_unit(figures(points[at].value, unit), unit) for at in (0, -1))
    if direction == STEADY:
        went = f"steady, within {followed.share}"
    elif change is None:
        went = f"{direction} from zero"
    else:
        went = f"{direction}, by {_sized(followed, change)}"
    says = f"The {quantity.label(units)} {quantity.be(units)} {went}: {first} in {points[0].day.year}, {last} in {points[-1].day.year}."
    return f"{says} Two readings show a change, but not a trend yet." if len(points) == 2 else says

"""A record made a lesson: the problems whose givens it knows, with its numbers or fresh ones.

Nothing is written twice: the families of the chapters pose the problems. This file says what a
record knows, and which questions would say something that it does not.

Problems with a record's own numbers have no code. They are shared by sharing the record: the same
record gives the same problems anywhere.
"""

from collections.abc import Callable, Iterable, Mapping
from math import log
from typing import NamedTuple

from solver.engine.case import Case
from solver.engine.family import Family
from solver.engine.posing import draw, posed
from solver.errors import Unfit
from solver.topics.problems import FAMILIES

from .examine import Examined
from .fields import SAME
from .legs import TURNS, course, high_leg
from .verdict import STATES, Seen

__all__ = ["Exercise", "Lesson", "lesson", "like"]

WORKED_TOO = ("flow", "head", "input_power")  # often worked from gauges, a drawdown, volts and amps
FIGURES_TYPED = 6  # a value with more has come from another unit, or from a sum
FIGURES_SHOWN = 4
LONGEST_NAME = 60


class Exercise(NamedTuple):
    """A family at a level whose givens the record knows. `case` has the record's own numbers.

    Where they make no fair problem, `case` is None and `refusal` says why.
    """

    family: Family
    level: int
    given: Mapping[str, float]
    case: Case | None
    refusal: str = ""

    @property
    def title(self) -> str:
        """What the exercise is called."""
        return f"{self.family.title}, level {self.level}"


class Lesson(NamedTuple):
    """What a record can be practiced with, that of the most pressing findings first."""

    name: str
    units: str
    exercises: tuple[Exercise, ...]

    @property
    def own(self) -> tuple[Exercise, ...]:
        """Those that have a problem with the record's own numbers."""
        return tuple(one for one in self.exercises if one.case)

    @property
    def refused(self) -> tuple[Exercise, ...]:
        """Those whose problem would not be a fair one with these numbers."""
        return tuple(one for one in self.exercises if not one.case)


def lesson(examined: Examined) -> Lesson:
    """The exercises of a record.

    >>> from solver.own.record import examine, read_entries
    >>> legs = {"amps_a": "25.5", "amps_b": "23", "amps_c": "26.5"}
    >>> found = lesson(examine(read_entries(legs)[0]))
    >>> [one.title for one in found.own][:1], round(found.own[0].case.answer, 6)
    (['Average amps of the three legs, level 1'], 25.0)
    """
    record = examined.record
    values, told = known_values(examined), setting(examined)
    found = [
        _exercise(family, level, record.units, values, told)
        for family in FAMILIES
        for level in range(1, len(family.levels) + 1)
        if family.level(level).given
        and all(name in values for name in family.level(level).given)
        and borne_out(family, level, examined)
    ]
    found.sort(key=lambda one: _pressing(one, examined))
    return Lesson(record.name, record.units, tuple(_asked_once(found)))


def like(exercise: Exercise, units: str, seeds: Iterable[int]) -> Case:
    """The problem of one of these seeds whose numbers are nearest in size to the record's."""
    drawn = (draw(exercise.family, seed, units, exercise.level) for seed in seeds)
    return min(drawn, key=lambda case: _distance(case.given, exercise.given))


def _distance(one: Mapping[str, float], other: Mapping[str, float]) -> float:
    """How far two sets of values are apart: the sum of how many times each is the other."""
    pairs = ((one[name], other[name]) for name in one)
    return sum(abs(log(a / b)) for a, b in pairs if a > 0 and b > 0)


def known_values(examined: Examined) -> dict[str, float]:
    """What a record knows: its readings, and a few of the worked values, as they are shown.

    A reading at the top of a meter's range is no number, so it is left out.
    """
    record = examined.record
    values = {n: _shown(v) for n, v in record.values.items() if n not in record.over}
    for found in examined.findings:
        name = found.check.find
        if name in WORKED_TOO and name not in record.values and found.value is not None:
            values.setdefault(name, float(f"{found.value:.{FIGURES_SHOWN}g}"))
    return values | {name: values[same] for name, same in SAME.items() if same in values}


def _shown(value: float) -> float:
    """A reading as typed; one that came from another unit as a worked number is shown."""
    typed = float(f"{value:.{FIGURES_TYPED}g}")
    return typed if abs(typed - value) <= 1e-9 * abs(value) else float(f"{value:.{FIGURES_SHOWN}g}")


def setting(examined: Examined) -> dict[str, str]:
    """Where the problems play, and with whom: as the record says, or in plain words."""
    texts = examined.record.texts
    pump, station = (_name(texts.get(part, "")) for part in ("pump", "station"))
    if pump and not any(map(str.isalpha, pump)):
        pump = f"Pump {pump}"
    place = f"{pump or 'the pump'} at {station}" if station else pump or "this pump"
    return {
        "place": place,
        "station": station or "this station",
        "person": _name(texts.get("person", "")) or "a colleague",
    }


def _name(text: str) -> str:
    return " ".join(text[:LONGEST_NAME].split())


def _exercise(
    family: Family, level: int, units: str, values: Mapping[str, float], told: Mapping[str, str]
) -> Exercise:
    given = {name: values[name] for name in family.level(level).given}
    try:
        case = posed(family, level, units, values, told)
    except Unfit as refusal:
        return Exercise(family, level, given, None, str(refusal))
    return Exercise(family, level, given, case)


def _asked_once(found: Iterable[Exercise]) -> Iterable[Exercise]:
    """Two levels may differ only in how they are drawn; then the first is enough."""
    seen = set()
    for one in found:
        key = (one.family.name, one.family.level(one.level).question)
        if key not in seen:
            seen.add(key)
            yield one


def _pressing(exercise: Exercise, examined: Examined) -> int:
    """The most pressing state of a finding that stands on one of the same readings."""
    given = set(exercise.given)
    states = (found.state for found in examined.findings if given & found.given.keys())
    return min(map(STATES.index, states), default=len(STATES))


Fits = Callable[[Examined], bool]


def _never(_: Examined) -> bool:
    return False


def _says(field: str, word: str) -> Fits:
    return lambda examined: examined.record.texts.get(field) == word


def _without(*names: str) -> Fits:
    return lambda examined: not set(names) & examined.record.values.keys()


def _up_to(name: str, most: float) -> Fits:
    return lambda examined: examined.record.values[name] <= most


def _clear_cause(turns: tuple[str, ...]) -> Fits:
    def fits(examined: Examined) -> bool:
        seen = Seen(examined.record, examined.record.values)
        return course([high_leg(seen, turn) for turn in turns]) is not None

    return fits


GAUGE_HEIGHTS = ("discharge_gauge_height", "suction_gauge_height")
PIPES = ("discharge_diameter", "suction_diameter")
# Level 0 stands for every level.
ONLY: Mapping[tuple[str, int], Fits] = {
    # They set out invented reports, a curve, a manual, a drive or a whole day besides the readings.
    **dict.fromkeys(
        [
            *(("which_power", 0), ("impossible_powers", 0), ("conversion_chain", 0)),
            *(("gauges_story", 0), ("names_of_powers", 0), ("which_is_below", 0)),
            *(("expected_gauge", 0), ("current_limits", 3), ("resistance_limit", 0)),
            *(("index_limit", 3), ("synchronous_speed", 2), ("suction_limit", 0)),
            *(("daily_flow", 0), ("flow_of_a_day", 0), ("pole_count", 0)),
        ],
        _never,
    ),
    ("gauges_to_head", 1): _without(*GAUGE_HEIGHTS, *PIPES),
    ("gauges_to_head", 2): _without(*PIPES),
    ("gauges_to_head", 3): _without(*GAUGE_HEIGHTS, *PIPES),
    ("drawdown_check", 1): _without("flow"),
    ("test_volts", 2): _up_to("rated_volts", 600),
    ("test_volts", 3): _up_to("rated_volts", 600),
    ("energy_used", 1): _up_to("run_time", 24),
    ("energy_cost", 1): _up_to("run_time", 24),
    ("least_insulation", 2): _says("winding_kind", "before 1970"),
    ("insulation_limit", 2): _says("winding_kind", "random-wound"),
    ("index_limit", 2): _says("insulation_class", "F"),
    ("rolled_leads", 1): _clear_cause(TURNS[:2]),
    ("rolled_leads", 2): _clear_cause(TURNS),
}
LEGS = {"amps_a", "volts_ab", "ohms_12"}


def borne_out(family: Family, level: int, examined: Examined) -> bool:
    """Whether a record bears out all that a question says."""
    if examined.record.texts.get("phase") == "1" and LEGS & set(family.level(level).given):
        return False
    only = ONLY.get((family.name, 0)) or ONLY.get((family.name, level))
    return only is None or only(examined)

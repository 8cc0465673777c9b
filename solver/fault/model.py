"""What each suspect would show, so which a finding rules out, and what an act would tell.

A suspect's severities are cut into cells; between the ends of a cell a reading goes one way, so it lies
between what the ends show. A suspect is left while one cell fits every finding.
"""

from collections.abc import Iterable, Sequence
from functools import cached_property, lru_cache
from math import log2

from solver.station.faults import with_fault
from solver.station.readings import NotRead
from solver.station.station import Station

from .acts import CHECK
from .case import FaultCase, case_of, severities
from .finding import Finding, Shown, may_be_off
from .signals import SIGNALS, Value, worked

__all__ = ["Model", "model_of"]

Cell = tuple[str, int]  # a suspect and the place of its cell


class Model:
    """The suspects of a case, each at its severities, with what they show."""

    def __init__(self, case: FaultCase):
        self.case = case
        self._shows: dict[tuple[str, str], tuple[Value | None, ...]] = {}
        self._between: dict[tuple[Cell, str], tuple[Value, ...]] = {}

    @cached_property
    def stations(self) -> dict[str, tuple[Station, ...]]:
        """Each suspect's station at each of its severities."""
        case = self.case
        return {
            name: tuple(with_fault(case.station, name, s) for s in severities(name, case.level))
            for name in case.suspects
        }

    @cached_property
    def cells(self) -> frozenset[Cell]:
        """Every cell of every suspect."""
        return frozenset(
            (name, place)
            for name, stations in self.stations.items()
            for place in range(max(len(stations) - 1, 1))
        )

    def shows(self, suspect: str, signal: str) -> tuple[Value | None, ...]:
        """What a suspect shows at each of its severities; None where there is no such reading."""
        key = suspect, signal
        if key not in self._shows:
            self._shows[key] = tuple(_read(s, signal) for s in self.stations[suspect])
        return self._shows[key]

    def between(self, cell: Cell, signal: str) -> tuple[Value, ...]:
        """What a cell shows of a signal, at its two ends."""
        if (cell, signal) not in self._between:
            suspect, place = cell
            shows = self.shows(suspect, signal)
            ends = tuple(value for value in shows[place : place + 2] if value is not None)
            self._between[cell, signal] = _bowed(shows, place, ends)
        return self._between[cell, signal]

    def fitting(self, found: Iterable[Finding], among: Iterable[Cell] = ()) -> frozenset[Cell]:
        """The cells that fit every finding."""
        left = frozenset(among) or self.cells
        for one in found:
            for shown in one.shown:
                name = shown.signal.name
                left = frozenset(cell for cell in left if shown.fits(self.between(cell, name)))
        return left

    def left(self, found: Iterable[Finding]) -> tuple[str, ...]:
        """The suspects that are left, in the order of the list."""
        return self.names(self.fitting(found))

    def names(self, cells: Iterable[Cell]) -> tuple[str, ...]:
        """The suspects of some cells, in the order of the list."""
        found = {name for name, _ in cells}
        return tuple(name for name in self.case.suspects if name in found)

    def told(self, act: str, cells: frozenset[Cell], checked: bool) -> float:
        """Bits that an act is expected to tell, with these cells left and each suspect as likely.

        For each suspect, at the middle one of its cells: how many suspects its reading would leave.
        """
        suspects = self.names(cells)
        if len(suspects) < 2 or act == CHECK:
            return 0.0
        lost = 0.0
        for name in suspects:
            places = sorted(place for suspect, place in cells if suspect == name)
            cell = name, places[len(places) // 2]
            shown = self._expected(act, cell, checked)
            lost += log2(max(len(self.names(self._fit(shown, cells))), 1))
        return log2(len(suspects)) - lost / len(suspects)

    def _fit(self, shown: Sequence[Shown], cells: frozenset[Cell]) -> set[Cell]:
        return {
            cell
            for cell in cells
            if all(one.fits(self.between(cell, one.signal.name)) for one in shown)
        }

    def _expected(self, act: str, cell: Cell, checked: bool) -> list[Shown]:
        """What an act would show at the middle of a cell, with nothing added by chance."""
        case = self.case
        shown: list[Shown] = []
        for name in case.acts[act].signals:
            signal, values = SIGNALS[name], self.between(cell, name)
            if not values:
                continue
            first = values[0]
            if isinstance(first, str):
                shown.append(Shown(signal, first))
                continue
            numbers = [value for value in values if isinstance(value, float)]
            middle = sum(numbers) / len(numbers)
            if signal.of:
                by_name = {s.signal.name: s.value for s in shown if isinstance(s.value, float)}
                middle, error = worked(signal, by_name, case.units)
            else:
                error = signal.error(middle, case.units) + may_be_off(case, signal, middle, checked)
            shown.append(Shown(signal, middle, middle - error, middle + error))
        return shown


def _bowed(shows: Sequence[Value | None], place: int, ends: tuple[Value, ...]) -> tuple[Value, ...]:
    """The ends of a cell, a little wider where the reading bows between them.

    A bow is at most an eighth of the second difference beside it; a quarter of it is given.
    """
    numbers = [value for value in ends if isinstance(value, float)]
    if len(numbers) < 2:
        return ends
    bow = 0.0
    for first in (place - 1, place):
        three = [v for v in shows[max(first, 0) : first + 3] if isinstance(v, float)]
        if len(three) == 3:
            bow = max(bow, abs(three[0] - 2 * three[1] + three[2]) / 4)
    return min(numbers) - bow, max(numbers) + bow


def _read(station: Station, signal: str) -> Value | None:
    try:
        value = SIGNALS[signal].read(station)
    except NotRead:
        return None
    return value if isinstance(value, str) else float(value)


@lru_cache(maxsize=8)
def model_of(code: str) -> Model:
    """The model of a case, by its code."""
    return Model(case_of(code))

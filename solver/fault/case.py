"""A case by its code: the station, what people report, the suspects, and the fault that chance gave.

The fault is drawn as likely as any other suspect, so whoever only guesses is right once in so many.
"""

from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import NamedTuple

from solver.engine.code import MOST_SEED, Code, read_code
from solver.engine.draw import Draw
from solver.errors import BadCode, NotSolvable
from solver.station.drawn import draw_station
from solver.station.faults import FAULTS, applies, with_fault
from solver.station.need import Need
from solver.station.station import Station

from .acts import CHECK, Act, acts_at
from .stories import COMPLAINTS, ODDITIES, SIMPLE, Complaint

__all__ = [
    "FAMILY",
    "LEVELS",
    "REVISION",
    "TAG",
    "FaultCase",
    "case_of",
    "fault_case",
    "severities",
]

TAG, REVISION = "FF", 1
LEVELS = {
    1: "four suspects, clear signs",
    2: "eight suspects, and an oddity that does no harm",
    3: "every suspect there is, slight signs, and an instrument that reads off",
}
SUSPECTS = {1: 4, 2: 8, 3: 0}  # 0: all that the report leaves
LEAST_SUSPECTS = {1: 4, 2: 8, 3: 8}
WORST_FROM = {1: 0.75, 2: 0.5, 3: 0.0}  # the least severity of a level
CELLS = 6
STATIONS = 60
KINDS = {1: ("lift",), 2: ("lift",), 3: ("lift", "lift", "flooded", "above")}
OFF = (("clamp meter", 0.06), ("voltmeter", 0.05), ("pressure gauge", 0.07))


class _Family(NamedTuple):
    """What a log and a report call cases, where a problem has its family."""

    name: str
    title: str
    chapter: str


FAMILY = _Family(
    "find_the_fault", "Find the fault", "find_the_fault"
)  # no family of problems has this name
ONE_SIZE = frozenset(("turned_supply", "swapped_leads", "open_leg"))


@dataclass(frozen=True)
class FaultCase:
    """A case: its code, the sound `station` of last year and the `faulty` one of today.

    `suspects`: faults by name, those that the report leaves at this level. `off`: the instrument that reads
    off, and its reading over the truth; "" and 1 with none.
    """

    code: Code
    station: Station
    faulty: Station
    complaint: Complaint
    oddity: str
    suspects: tuple[str, ...]
    fault: str
    severity: float
    off: tuple[str, float] = ("", 1.0)

    @property
    def level(self) -> int:
        """1 to 3."""
        return self.code.level

    @property
    def units(self) -> str:
        """The system "us" or "si"."""
        return self.code.units

    @property
    def family(self) -> _Family:
        """What stands where a problem has its family."""
        return FAMILY

    @property
    def title(self) -> str:
        """The report in a few words."""
        return self._filled(self.complaint.title)

    @property
    def report(self) -> str:
        """The report, with the oddity."""
        said = self._filled(self.complaint.says)
        return f"{said} {self.oddity}".strip()

    @cached_property
    def acts(self) -> dict[str, Act]:
        """What can be done here, by name."""
        return {act.name: act for act in acts_at(self.station, self.level)}

    @property
    def can_check(self) -> bool:
        """Whether an instrument may read off."""
        return CHECK in self.acts

    def _filled(self, text: str) -> str:
        return text.replace("{pump}", self.station.place.name)


def severities(fault: str, level: int) -> tuple[float, ...]:
    """The severities of a fault at a level, from the least to 1; one alone where it has no sizes."""
    if fault in ONE_SIZE:
        return (1.0,)
    least = max(FAULTS[fault].least, WORST_FROM[level])
    return tuple(min(least + (1 - least) * step / CELLS, 1.0) for step in range(CELLS + 1))


def case_of(text: str) -> FaultCase:
    """The case of a code as typed.

    Raises:
        BadCode: it is no code of a case; the sentence says what to type.
    """
    code = read_code(text)
    if code.tag != TAG:
        raise BadCode(
            f"“{text.strip()[:40]}” is the code of a problem. The code of a case begins with {TAG}, "
            f"such as {Code(TAG, 1, 'us', REVISION, 7)}."
        )
    if code.level not in LEVELS or code.revision != REVISION:
        raise BadCode(
            f"“{text.strip()[:40]}” isn't a case of this version: a case has level 1, 2 or 3 and "
            f"revision {REVISION}. Start a new case, or ask for its code again."
        )
    return fault_case(code.level, code.units, code.seed)


@lru_cache(maxsize=64)
def fault_case(level: int, units: str, seed: int) -> FaultCase:
    """The case of a level, system and seed.

    Raises:
        BadCode: no such level, system or seed.
    """
    if level not in LEVELS or units not in ("us", "si") or not 0 <= seed <= MOST_SEED:
        raise BadCode(
            f"No case has level {level}, units {units} and number {seed}. Levels are 1 to 3, units us "
            f"or si, and numbers 0 to {MOST_SEED:,}."
        )
    code = Code(TAG, level, units, REVISION, seed)
    draw = Draw(f"fault {code}")
    for _ in range(STATIONS):
        if found := _attempt(draw, code):
            return found
    raise NotSolvable(f"no case in {STATIONS} draws of {code}")


def _attempt(draw: Draw, code: Code) -> FaultCase | None:
    """One draw of a station and a report; None where the report leaves too few suspects."""
    level = code.level
    need = Need(kinds=(draw.pick(KINDS[level]),), drives=("direct",), static=True, well=True)
    station = draw_station(draw, code.units, need)
    oddity = draw.pick(ODDITIES) if level > 1 else None
    if oddity:
        station = oddity.change(station)
    complaint = COMPLAINTS[draw.pick(tuple(COMPLAINTS))]
    left = [
        name
        for name in FAULTS
        if applies(FAULTS[name], station)
        and (level > 1 or name in SIMPLE)
        and _reported(complaint, station, name, level)
    ]
    if len(left) < LEAST_SUSPECTS[level]:
        return None
    chosen = draw.shuffled(left)[: SUSPECTS[level] or len(left)]
    suspects = tuple(name for name in FAULTS if name in chosen)
    fault = draw.pick(suspects)
    severity = _severity(draw, complaint, station, fault, level)
    name, most = draw.pick(OFF)
    times = 1 + draw.pick((1, -1)) * draw.between(0.6, 1.0) * most
    return FaultCase(
        code,
        station,
        with_fault(station, fault, severity),
        complaint,
        oddity.says if oddity else "",
        suspects,
        fault,
        severity,
        (name, times) if level == 3 else ("", 1.0),
    )


def _reported(complaint: Complaint, station: Station, fault: str, level: int) -> bool:
    return any(
        complaint.heard(with_fault(station, fault, s)) for s in severities(fault, level)[::2]
    )


def _severity(draw: Draw, complaint: Complaint, station: Station, fault: str, level: int) -> float:
    """One at which the report comes about."""
    sizes = severities(fault, level)
    for _ in range(12):
        severity = round(draw.between(sizes[0], sizes[-1]), 4)
        if complaint.heard(with_fault(station, fault, severity)):
            return severity
    return next(s for s in sizes[::2] if complaint.heard(with_fault(station, fault, s)))

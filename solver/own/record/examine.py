"""One pump's day worked and judged: what each reading says, what to check next, what to mind.

Then the limits of a followed figure as numbers, to be drawn beside its readings.
"""

from typing import NamedTuple

from solver.engine.plan import Link
from solver.own.doubts import contradictions, unusual
from solver.topics.limits import CURRENT_UNBALANCE, NAMEPLATE_AMPS
from solver.topics.zones import Limits
from solver.vocabulary import quantity_named

from .check import Check, Finding, checked
from .entries import Record
from .fields import FIELDS, GROUPS, SAME, in_words
from .insulation import INSULATION, least
from .legs import LEGS
from .verdict import LOOK, NOT_MEASURED, STATES, Seen
from .wire_to_water import COST, MOTOR, WATER

__all__ = ["ALWAYS", "CHECKS", "Examined", "Line", "examine", "limit_lines"]

ALWAYS = (
    "This record supports your judgment. It never replaces a qualified person, your local codes or "
    "your plant's rules."
)
CHECKS = (*INSULATION, *LEGS, *MOTOR, *WATER, *COST)
ONE_PHASE = (
    "It is single-phase, so there are no three legs to compare. Unbalance, rolled leads, "
    "winding balance and three-phase power don't apply."
)
BOTH_RIGHT = "First take the readings that contradict each other again."
FEW = 2  # more readings than this missing for a check are not worth asking for by themselves
# Where the readings of one set are there, those of the others are not missing.
INSTEAD = (
    (("well_diameter",), ("well_length", "well_width")),
    (("inflow",), ("rise_level", "rise_time")),
    (
        ("flow",),
        (
            *("drawdown_level", "drawdown_time", "well_diameter", "well_length", "well_width"),
            *("inflow", "rise_level", "rise_time"),
        ),
    ),
    (("suction_gauge",), ("suction_vacuum",)),
    (
        ("head",),
        (
            *("discharge_gauge", "discharge_gauge_height", "discharge_diameter", "suction_gauge"),
            *("suction_vacuum", "suction_gauge_height", "suction_diameter"),
        ),
    ),
    (("discharge_gauge", "suction_gauge"), ("head",)),
    (("input_power",), ("power_factor",)),
    (("volts_ab", "amps_a", "power_factor"), ("input_power",)),
)
# A pump of one phase has one pair of lines and one current: volts A to B, amps on leg A.
OF_THREE_PHASES = frozenset(
    field.name
    for field in FIELDS
    if field.group in ("windings", "rolled once", "rolled twice")
    or field.name in ("volts_bc", "volts_ca", "amps_b", "amps_c")
)


class Examined(NamedTuple):
    """What came of one record.

    `findings` are in the order of CHECKS; each has its worked steps, its state and its limit.
    `next_checks` are sentences, the most pressing first. `cautions` are topics of danger.
    `not_measured` lists readings and whole groups of readings that are not there.
    """

    record: Record
    findings: tuple[Finding, ...]
    contradictions: tuple[str, ...]
    notices: tuple[str, ...]
    next_checks: tuple[str, ...]
    cautions: tuple[str, ...]
    not_measured: tuple[str, ...]
    always: str = ALWAYS

    @property
    def state(self) -> str:
        """The most pressing state of all findings; contradictions are to be looked into."""
        states = {finding.state for finding in self.findings}
        if self.contradictions:
            states.add(LOOK)
        return next((state for state in STATES if state in states), NOT_MEASURED)

    def finding(self, name: str) -> Finding | None:
        """What came of the check called `name`; None where it did not apply."""
        return next((one for one in self.findings if one.name == name), None)


class Line(NamedTuple):
    """One limit: its value in the unit of the figure, and what it is called."""

    value: float
    label: str


def examine(record: Record) -> Examined:
    """Work and judge all that a record allows.

    >>> from solver.own.record.entries import read_entries
    >>> legs = {"amps_a": "25.5", "amps_b": "23", "amps_c": "26.5"}
    >>> found = examine(read_entries(legs)[0]).finding("current_unbalance")
    >>> found.state, found.verdict.says
    ('look into it', 'The current unbalance is 8%, over 5%.')
    """
    known = dict(record.values)
    known |= {name: known[same] for name, same in SAME.items() if same in known}
    one_phase = record.texts.get("phase") == "1"
    findings: list[Finding] = []
    links: dict[str, Link] = {}
    for check in CHECKS:
        if not check.applies(record, known):
            continue
        found = checked(check, record, known)
        findings.append(found)
        # What was read outright is judged against what is worked, and not contradicted besides.
        if check.find not in record.values:
            known = {**found.known, **known}
            links |= {link.target: link for link in found.links}
    doubts = contradictions(record.values, known, links, record.units)
    return Examined(
        record,
        tuple(findings),
        tuple(doubts),
        (*(ONE_PHASE,) * one_phase, *unusual(record.values, record.units)),
        _next(record, findings, doubts),
        _cautions(findings),
        _missing(record),
    )


def _next(record: Record, findings: list[Finding], doubts: list[str]) -> tuple[str, ...]:
    """What to check next: contradictions, then what is beyond a limit, then the rest."""
    said = [BOTH_RIGHT] * bool(doubts)
    for state in STATES:
        said += [found.verdict.then for found in findings if found.state == state]
    said += _wanted(record, findings)
    return tuple(dict.fromkeys(filter(None, said)))


def _wanted(record: Record, findings: list[Finding]) -> list[str]:
    """The few readings that would tell more, each with what it would tell."""
    tells: dict[tuple[str, ...], list[str]] = {}
    for found in findings:
        for way in found.missing[:1]:
            if way == (found.check.find,):
                continue  # to measure it would tell itself
            if len(way) <= FEW and all(_is_field(n) for n in way) and _begun(found.check, record):
                tells.setdefault(way, []).append(found.check.label(record.units))
    return [
        f"Measure the {in_words(way, record.units)} too. That gives you the {', the '.join(labels)}."
        for way, labels in tells.items()
    ]


def _begun(check: Check, record: Record) -> bool:
    """Whether some reading of a check was taken."""
    return any(SAME.get(name, name) in record.values for way in check.ways for name in way)


def _is_field(name: str) -> bool:
    return any(one.name == SAME.get(name, name) for one in FIELDS)


def _cautions(findings: list[Finding]) -> tuple[str, ...]:
    """The dangers of what was measured, and of what is to be looked at."""
    real = [f for f in findings if f.state != NOT_MEASURED]
    return tuple(dict.fromkeys(topic for found in real for topic in found.check.cautions))


def _missing(record: Record) -> tuple[str, ...]:
    """Groups of which nothing was measured, and single readings of the others."""
    have = {*record.values, *record.texts, *record.unread}
    needless = {
        name
        for sets in INSTEAD
        for one in sets
        if have.issuperset(one)
        for other in sets
        for name in other
        if name not in have
    }
    if record.texts.get("phase") == "1":
        needless |= OF_THREE_PHASES
    missing = []
    for group in GROUPS[1:]:
        fields = [one for one in FIELDS if one.group == group and one.name not in needless]
        lacking = [one.label for one in fields if one.name not in have]
        begun = any(one.group == group and one.name in have | needless for one in FIELDS)
        missing += lacking if begun or not fields else [group]
    return tuple(missing)


def limit_lines(name: str, examined: Examined) -> tuple[Line, ...]:
    """The limits by which the followed figure `name` is judged in a record; none where there are none.

    The nameplate's amps are a limit of the highest leg, so they stand beside the average as well.

    >>> from solver.own.record import examine, read_entries
    >>> legs = {"amps_a": "25.5", "amps_b": "23", "amps_c": "26.5"}
    >>> limit_lines("current_unbalance", examine(read_entries(legs)[0]))
    (Line(value=5, label='good'), Line(value=10, label='acceptable'))
    """
    seen = Seen(examined.record, _known(examined))
    if name == "insulation_at_40":
        return _insulation(seen, least(seen))
    if name == "amps_average":
        named = (NAMEPLATE_AMPS.low, NAMEPLATE_AMPS.high)
        return tuple(
            Line(seen.known[at], quantity_named(at).label(seen.units).removeprefix("nameplate "))
            for at in named
            if isinstance(at, str) and at in seen.known
        )
    if name == CURRENT_UNBALANCE.quantity:
        good, acceptable = (
            seen.limit(at) for at in (CURRENT_UNBALANCE.low, CURRENT_UNBALANCE.high)
        )
        return Line(good, "good"), Line(acceptable, "acceptable")
    return ()


def _known(examined: Examined) -> dict[str, float]:
    known = dict(examined.record.values)
    for found in examined.findings:
        known |= found.known
    return known


def _insulation(seen: Seen, limits: Limits) -> tuple[Line, ...]:
    low, high = seen.limit(limits.low), seen.limit(limits.high)
    lowest = Line(low, "least")
    return (lowest,) if low == high else (lowest, Line(high, "recommended"))

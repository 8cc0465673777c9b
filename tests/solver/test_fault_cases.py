"""Find the fault: what a finding rules out is never the truth, each fault can be found, a guess is no better than chance."""

from collections import Counter
from itertools import pairwise
from math import sqrt

import pytest

from solver.errors import BadCode
from solver.fault.acts import CHECK
from solver.fault.case import LEVELS, FaultCase, case_of, fault_case, severities
from solver.fault.finding import Finding, finding
from solver.fault.model import Model
from solver.fault.remedies import RIGHT
from solver.fault.review import sure_way
from solver.station.faults import FAULTS, with_fault
from solver.station.readings import NotRead

from .drawn import SEEDS

BOTH = ("us", "si")
CASES = 6 * SEEDS  # of a level; python -m tests.benchmarks.fault_cases tries ten thousand


def some(level: int, count: int = CASES) -> list[FaultCase]:
    return [fault_case(level, BOTH[seed % 2], seed) for seed in range(count)]


def all_findings(case: FaultCase, checked: bool) -> list[Finding]:
    return [finding(case, act, checked) for act in case.acts if act != CHECK]


@pytest.mark.parametrize("level", LEVELS)
def test_a_code_gives_the_same_case_to_anyone(level):
    case = fault_case(level, "us", 7)
    again = case_of(str(case.code).lower().replace("-", " "))
    assert case == again
    fault_case.cache_clear()
    fresh = case_of(str(case.code))
    assert (case.fault, case.severity, case.suspects) == (
        fresh.fault,
        fresh.severity,
        fresh.suspects,
    )
    assert all_findings(case, False) == all_findings(fresh, False)


def test_the_number_of_suspects_is_that_of_the_level():
    assert {4} == {len(case.suspects) for case in some(1)}
    assert {8} == {len(case.suspects) for case in some(2)}
    assert 8 <= min(len(case.suspects) for case in some(3))


@pytest.mark.parametrize("level", LEVELS)
def test_no_finding_rules_out_the_truth(level):
    for case in some(level):
        model = Model(case)
        for checked in (False, True):
            found = all_findings(case, checked)
            for one in found:
                assert case.fault in model.left([one]), (case.code, one)
            assert case.fault in model.left(found), case.code


@pytest.mark.parametrize("level", LEVELS)
def test_what_is_ruled_out_can_not_show_that_reading_at_any_size(level):
    """Held against sizes between those that the model looks at."""
    tried = 0
    for case in some(level, 6):
        model = Model(case)
        for one in all_findings(case, True):
            for name in set(case.suspects) - set(model.left([one])):
                cells = [cell for cell in model.cells if cell[0] == name]
                shown = [s for s in one.shown if not model.fitting([Finding("", (s,))], cells)]
                for severity in _between(name, case.level):
                    station = with_fault(case.station, name, severity)
                    for each in shown:
                        tried += 1
                        assert not _could_show(station, each), (case.code, name, severity, each)
    assert tried > 300


def _between(name: str, level: int) -> list[float]:
    sizes = severities(name, level)
    return [low + 0.37 * (high - low) for low, high in pairwise(sizes)] or [1.0]


def _could_show(station, shown) -> bool:
    try:
        value = shown.signal.read(station)
    except NotRead:
        return False
    if isinstance(value, str):
        return value == shown.value
    return shown.low <= value <= shown.high


@pytest.mark.parametrize("level", LEVELS)
def test_the_reading_that_tells_most_finds_every_fault_safely(level, capsys):
    cases = some(level, CASES if level < 3 else CASES // 3)
    ways = [sure_way(str(case.code)) for case in cases]
    for case, way in zip(cases, ways, strict=True):
        assert (case.fault,) == way.names, case.code
        assert way.ended
        assert not way.unsafe
        assert way.action in RIGHT[case.fault][0]
    with capsys.disabled():
        mean = sum(way.minutes for way in ways) / len(ways)
        taken = sum(len(way.taken) for way in ways) / len(ways)
        print(f"\nlevel {level}: {mean:.0f} minutes and {taken:.1f} readings on average")


@pytest.mark.parametrize("level", LEVELS)
def test_every_reading_together_leaves_one_suspect(level):
    for case in some(level):
        assert (case.fault,) == Model(case).left(all_findings(case, True)), case.code


@pytest.mark.parametrize("level", LEVELS)
def test_a_guesser_is_right_no_more_often_than_chance(level):
    """Whoever always names the first suspect, or the one named most often so far."""
    cases = some(level, 80)
    chance = sum(1 / len(case.suspects) for case in cases)
    off = 3.5 * sqrt(chance)
    seen: Counter[str] = Counter()
    first = learned = 0
    for case in cases:
        first += case.fault == case.suspects[0]
        learned += case.fault == max(case.suspects, key=lambda name: seen[name])
        seen[case.fault] += 1
    assert abs(first - chance) < off
    assert learned < chance + off


def test_every_fault_comes_up_and_has_a_right_answer():
    assert set(RIGHT) == set(FAULTS)
    assert set(FAULTS) == {name for case in some(3, 160) for name in case.suspects}


def test_at_level_3_the_check_tells_which_instrument_reads_off():
    for case in some(3, 12):
        name, times = case.off
        assert 0.02 < abs(times - 1) < 0.08
        said = finding(case, CHECK).says
        assert said.startswith(f"The {name} reads")
        for act in ("amps", "volts", "gauges"):
            for before, after in zip(
                finding(case, act).shown, finding(case, act, True).shown, strict=True
            ):
                assert before.value == after.value
                assert before.high - before.low >= after.high - after.low


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("hello", "isn't a problem code"),
        ("BP-2U1-4821-NTS", "is the code of a problem. The code of a case begins with FF"),
        ("FF-1U1-7-XXX", "wrong character"),
    ],
)
def test_a_code_that_is_none_says_what_to_type(typed, said):
    with pytest.raises(BadCode, match=said):
        case_of(typed)


def test_a_level_that_is_none_is_refused():
    with pytest.raises(BadCode, match="Levels are 1 to 3"):
        fault_case(4, "us", 1)

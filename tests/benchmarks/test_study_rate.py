"""How fast a long log opens and its page is drawn, and what the schedule is worth.

    python -m pytest tests/benchmarks/test_study_rate.py --benchmark-enable

A log of 200,000 attempts is that of a class over years. What is aimed at, on a machine that does
nothing else, is to open it within 2 s and to redraw the page within 300 ms. Asserted are ratios to
reading the bytes of the file and to reading each line as JSON, with room for a busy machine.
"""

import json
import time
from datetime import UTC, datetime, timedelta
from random import Random
from statistics import median, quantiles

import pytest

from solver import FAMILIES, draw
from workbook.log import Attempt, Log, line_of
from workbook.study import Study
from workbook.study.progress_panel import ProgressPanel

from .learners import at_random, by_schedule, in_turn, needed, problems_to_mastery

MANY = 200_000
NOW = datetime(2026, 11, 25, 19, tzinfo=UTC)
APART = timedelta(minutes=3)


def attempts(number: int):
    """So many attempts at every kind of problem, one every few minutes until now."""
    chance = Random(4)
    kinds = [
        (family, level, draw(family, 7, "us", level))
        for family in FAMILIES
        for level in range(1, len(family.levels) + 1)
    ]
    for at in range(number):
        family, level, case = chance.choice(kinds)
        right = chance.random() < 0.6
        mistake = chance.choice(case.mistakes).id if case.mistakes and not right else ""
        status = "right" if right else "mistake" if mistake else "wrong"
        when = (NOW - APART * (number - at)).isoformat(timespec="microseconds")
        yield Attempt(
            f"{chance.getrandbits(128):032x}", when.replace("+00:00", "Z"), case.code, family.name,
            level, "12.5 hp", status, mistake, round(chance.uniform(10, 300), 1),
        )  # fmt: skip


@pytest.fixture(scope="module")
def path(tmp_path_factory):
    """A log of 200,000 attempts."""
    made = tmp_path_factory.mktemp("log") / "attempts.jsonl"
    made.write_text("".join(f"{line_of(attempt)}\n" for attempt in attempts(MANY)))
    return made


@pytest.fixture(scope="module")
def log(path):
    kept = Log(path)
    kept.read()
    return kept


def seconds(work, rounds: int = 5) -> float:
    """The median of some rounds."""
    took = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        took.append(time.perf_counter() - start)
    return median(took)


def shown(ours: float, file: float) -> str:
    return f"{ours * 1000:10,.0f} ms  {ours / file:6.1f} x reading the file"


@pytest.mark.benchmark(group="log")
def test_a_long_log_opens_within_three_times_the_time_of_reading_its_lines_as_json(
    benchmark, table, path
):
    def opened():
        kept = Log(path)
        kept.read()
        return kept.attempts

    assert MANY == len(benchmark.pedantic(opened, rounds=5, warmup_rounds=1))
    ours, file = benchmark.stats.stats.median, seconds(path.read_bytes)
    plain = seconds(lambda: [json.loads(line) for line in path.read_bytes().splitlines()], 3)
    table["200,000 attempts opened"] = shown(ours, file) + f"  {ours / plain:.1f} x its JSON"
    assert ours < 3 * plain


@pytest.mark.benchmark(group="log")
def test_a_study_of_a_long_log_takes_less_than_reading_its_lines_as_json(
    benchmark, table, path, log
):
    benchmark.pedantic(Study, (log.attempts,), rounds=5, warmup_rounds=1)
    ours, file = benchmark.stats.stats.median, seconds(path.read_bytes)
    plain = seconds(lambda: [json.loads(line) for line in path.read_bytes().splitlines()], 3)
    table["and the study of them"] = shown(ours, file)
    assert ours < plain


@pytest.mark.benchmark(group="log")
@pytest.mark.parametrize(("news", "most"), [(0, 10), (1, 40)])
def test_the_page_of_a_long_log_is_redrawn_in_a_few_times_the_reading_of_the_file(
    benchmark, table, path, log, news, most
):
    now = [NOW]
    panel = ProgressPanel(FAMILIES, log, path.with_name("goal.jsonl"), now=lambda: now[0])

    def answered():
        now[0] += APART
        for attempt in list(attempts(news)):
            when = now[0].isoformat(timespec="microseconds").replace("+00:00", "Z")
            log.keep(attempt._replace(id=when, when=when))

    benchmark.pedantic(panel.look, setup=answered, rounds=9, warmup_rounds=1)
    ours, file = benchmark.stats.stats.median, seconds(path.read_bytes)
    what = "after one more answer" if news else "with nothing new"
    table[f"the page redrawn {what}"] = shown(ours, file)
    assert ours < most * file


@pytest.mark.benchmark(group="log")
def test_what_comes_next_is_found_within_the_time_of_reading_the_file(benchmark, table, path, log):
    study = Study(log.attempts)
    benchmark.pedantic(study.next, (FAMILIES, NOW), rounds=15, warmup_rounds=2)
    ours, file = benchmark.stats.stats.median, seconds(path.read_bytes)
    table[f"what comes next, of {len(FAMILIES)} kinds"] = shown(ours, file)
    assert ours < file


# Learners, skills and mastery; and what the middle learner may need at most, against chance.
AIMS = [(1_000, 24, 0.8, 0.8), (100, 60, 0.8, 0.8), (100, 60, 0.9, 1.0)]


@pytest.mark.benchmark(group="learners")
@pytest.mark.parametrize(("learners", "skills", "mastery", "most"), AIMS)
def test_the_schedule_takes_learners_to_mastery_sooner_than_chance(
    benchmark, table, learners, skills, mastery, most
):
    """The benchmark's own seconds are of one learner; the rows are of all."""
    benchmark.pedantic(problems_to_mastery, (0, by_schedule, skills, mastery), rounds=1)
    aim = {"skills": skills, "mastery": mastery}
    ours, middles = needed(learners, by_schedule, **aim), {}
    for name, way in {"chance": at_random, "taking turns": in_turn}.items():
        theirs = needed(learners, way, **aim)
        low, middle, high = quantiles([a / b for a, b in zip(ours, theirs, strict=True)], n=4)
        table[f"{learners} learners, {skills} skills to {mastery:.0%}: schedule / {name}"] = (
            f"{middle:6.2f}  (half of them {low:.2f} to {high:.2f});"
            f" {median(ours):.0f} problems / {median(theirs):.0f}"
        )
        middles[name] = middle
    assert middles["chance"] < most

"""How fast the solver is, as ratios to something plain measured in the same run.

    python -m pytest tests/benchmarks --benchmark-enable -q

No machine's seconds are asserted, only ratios, each with room to spare. The rates that the table
at the end shows are of the machine it ran on; what is aimed at is 5,000 problems with solutions
and mistakes, and 20,000 answers graded, a second on one core. Rates by chapter over any number of
seeds: `python -m tests.benchmarks.seeds 10000`.
"""

import subprocess
import sys
import time
from itertools import cycle
from pathlib import Path
from statistics import median

import pytest

from solver import draw, grade
from solver.render.text import case_json, steps_text
from tests.solver.drawn import PROBLEMS, seeds, typed

from .bare import bare_case, bare_grade

ROOT = Path(__file__).resolve().parents[2]
SEEDS = seeds(500)
MEDIANS: dict[str, float] = {}  # seconds for one, by name; later tests compare


def measured(benchmark, work, name: str) -> float:
    """The median of many rounds of 500 each, as seconds for one."""
    benchmark.pedantic(work, rounds=15, iterations=1, warmup_rounds=2)
    MEDIANS[name] = benchmark.stats.stats.median / len(SEEDS)
    return MEDIANS[name]


def rate(seconds: float) -> str:
    return f"{1 / seconds:10,.0f} a second"


@pytest.mark.benchmark(group="draw")
def test_bare_floats_draw(benchmark, table):
    one = measured(benchmark, lambda: [bare_case(seed) for seed in SEEDS], "bare")
    table["one pump in bare floats"] = rate(one)


@pytest.mark.benchmark(group="draw")
def test_a_case_is_drawn_within_40_times_the_time_of_its_bare_floats(benchmark, table):
    one = measured(benchmark, lambda: [draw("motor_power", s, "us", 2) for s in SEEDS], "draw")
    table["the same as a case: steps, mistakes"] = rate(one) + ratio("draw", "bare")
    assert MEDIANS["draw"] < 40 * MEDIANS["bare"]


@pytest.mark.benchmark(group="draw")
def test_a_case_with_its_solution_in_words_is_drawn_within_60_times_its_bare_floats(
    benchmark, table
):
    def whole():
        for seed in SEEDS:
            case = draw("motor_power", seed, "us", 2)
            steps_text(case.steps, case.known, case.given, case.units)

    one = measured(benchmark, whole, "text")
    table["and its solution as text"] = rate(one) + ratio("text", "bare")
    assert MEDIANS["text"] < 60 * MEDIANS["bare"]


@pytest.mark.benchmark(group="draw")
def test_everything_as_data_with_all_common_slips_costs_less_than_nine_draws(benchmark, table):
    def whole():
        for seed in SEEDS:
            case_json(draw("motor_power", seed, "us", 2))

    one = measured(benchmark, whole, "json")
    table["and all of it for JSON"] = rate(one) + ratio("json", "bare")
    assert MEDIANS["json"] < 9 * MEDIANS["draw"]


@pytest.mark.benchmark(group="all")
def test_a_mix_of_all_problems_takes_no_more_than_three_times_one_family(benchmark, table):
    """10,000 problems, in turn from every family, level and system, with solutions in words."""
    jobs = list(zip(range(10_000), cycle(PROBLEMS), strict=False))

    def whole():
        for seed, (family, level, units) in jobs:
            case = draw(family, seed, units, level)
            steps_text(case.steps, case.known, case.given, case.units)

    benchmark.pedantic(whole, rounds=3, iterations=1, warmup_rounds=1)
    one = benchmark.stats.stats.median / len(jobs)
    table["10,000 of every kind, with solutions"] = rate(one) + f"  {one * len(jobs):.1f} s"
    assert one < 3 * MEDIANS["text"]


@pytest.mark.benchmark(group="grade")
def test_bare_floats_grade(benchmark, table):
    case = bare_case(7)
    answers = [f"{case[0] * (0.9 + seed % 20 / 100):.4g}" for seed in range(len(SEEDS))]
    one = measured(benchmark, lambda: [bare_grade(case, a) for a in answers], "bare grade")
    table["a number compared in bare floats"] = rate(one)


@pytest.mark.benchmark(group="grade")
def test_an_answer_is_graded_within_40_times_a_bare_comparison(benchmark, table):
    """Right ones, mistakes, near and wrong ones, with units and without, and what is unreadable."""
    case = draw("motor_power", 7, "us", 2)
    kinds = cycle(
        [typed(case.answer, "hp", 4), f"{case.answer:.4g}", f"{case.answer * 0.7457:.4g} kW",
         *(typed(m.value, "hp", 4) for m in case.mistakes[:4]), f"{case.answer * 1.02:.5g}",
         "17 hp", "about 12", "12,5"]
    )  # fmt: skip
    answers = [next(kinds) for _ in SEEDS]
    one = measured(benchmark, lambda: [grade(case, a) for a in answers], "grade")
    table["an answer as typed, graded"] = rate(one) + ratio("grade", "bare grade")
    assert MEDIANS["grade"] < 40 * MEDIANS["bare grade"]


def ratio(one: str, other: str) -> str:
    return f"  {MEDIANS[one] / MEDIANS[other]:5.1f} x"


def python(code: str) -> float:
    """Seconds that a fresh Python takes for some code."""
    start = time.perf_counter()
    subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=True, timeout=60)
    return time.perf_counter() - start


@pytest.mark.benchmark(group="import")
@pytest.mark.parametrize(
    ("name", "code"),
    [
        ("import solver", "import solver"),
        ("import solver, draw and grade one",
         "import solver; solver.grade(solver.draw('water_power', 7), '2.4 hp')"),
    ],
)  # fmt: skip
def test_the_solver_starts_in_less_than_1_3_times_the_time_of_pint(benchmark, table, name, code):
    """Whole processes, pint's and ours in turn, so that both meet the same moods of the machine."""
    theirs: list[float] = []
    benchmark.pedantic(
        python, (code,), setup=lambda: theirs.append(python("import pint")), rounds=12,
        warmup_rounds=1,
    )  # fmt: skip
    ours, pint = benchmark.stats.stats.median, median(theirs[1:])
    table[name] = f"{ours * 1000:10.0f} ms         {ours / pint:5.2f} x import pint"
    assert ours < 1.3 * pint

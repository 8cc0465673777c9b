"""How many answer sheets are marked in a second, and what that costs beside drawing the problems.

    python -m pytest tests/benchmarks/test_marking_rate.py --benchmark-enable

The rate stands in the table for this machine. What is asserted are ratios.
"""

from time import process_time

import pytest

from solver.work_set import cases_for
from tests.workbook.trainer.a_class import handed_in, people
from workbook.trainer import marking
from workbook.trainer.set_file import parse_set_file

PEOPLE = people(40)


def work(numbers: str):
    return parse_set_file(
        f'draw = 48213\nchapters = ["horsepower", "head", "machine"]\ncount = 12\nnumbers = "{numbers}"',
        "week-3",
    )


OWN, SAME = work("own for each person"), work("the same for all")


def least(action) -> float:
    """Seconds of the processor, of the best of some rounds: what else runs here counts less."""
    rounds = []
    for _ in range(7):
        started = process_time()
        action()
        rounds.append(process_time() - started)
    return min(rounds)


@pytest.mark.benchmark(group="marking")
def test_sheets_are_marked(benchmark):
    sheets = dict(handed_in(OWN, PEOPLE))

    def all_of_them():
        return [marking.mark(OWN, person, sheet) for person, sheet in sheets.items()]

    assert 40 == len(benchmark.pedantic(all_of_them, rounds=5, warmup_rounds=1))
    if benchmark.stats:
        benchmark.extra_info["sheets a second"] = round(40 / benchmark.stats.stats.median)


def test_reading_and_grading_a_sheet_costs_less_than_drawing_its_problems(table):
    sheets = dict(handed_in(SAME, PEOPLE))
    marking.mark(SAME, PEOPLE[0], None)  # draws what everybody has, once
    graded = least(lambda: [marking.mark(SAME, who, sheet) for who, sheet in sheets.items()])
    drawn = least(lambda: [cases_for(OWN.work, who) for who in sheets])
    table["a sheet read and graded, for its problems drawn"] = f"{graded / drawn:.2f}"
    table["a sheet of 12 answers read and graded, ms"] = f"{graded / 40 * 1e3:.2f}"
    assert graded < drawn


def test_ten_times_the_tries_take_about_ten_times_as_long():
    [(who, sheet)] = handed_in(SAME, PEOPLE[:1])
    lines = sheet.splitlines()

    def tried(times: int) -> bytes:
        each = (
            line.replace(who.encode() + b"-", b"%d-" % at) for at in range(times) for line in lines
        )
        return b"\n".join(each)

    few, many = tried(10), tried(100)
    assert least(lambda: marking.mark(SAME, who, many)) < 20 * least(
        lambda: marking.mark(SAME, who, few)
    )

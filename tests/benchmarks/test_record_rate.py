"""How many pumps of a CSV are read, worked and judged in a second.

    python -m pytest tests/benchmarks/test_record_rate.py --benchmark-enable

The rate stands in the table as "pumps a second", for this machine. What is asserted is a ratio:
ten times the pumps take about ten times as long, whatever the machine.
"""

import io
import time

import pytest

from solver.own.record import examine
from workbook.record import PumpFile
from workbook.record.results import flat_row

HEAD = "Station,Pump,Date,FLA,SF,Motor hp,Motor eff,Volts AB,Volts BC,Volts CA,Amps A,Amps B,Amps C,30 s,60 s,10 min,temp F,kW,flow,TDH,hours,price\n"
ROW = "Quarry Road,Pump {},2024-05-01,25,1.15,20,91,462,463,455,{},23,26.5,300,420,900,77,16.2,476,70,300,0.11\n"


def table(count: int) -> bytes:
    rows = (ROW.format(at, 20 + at % 9) for at in range(count))
    return (HEAD + "".join(rows)).encode()


def through(data: bytes) -> int:
    """Read, work and judge every pump, and make its row of the CSV."""
    return sum(len(flat_row(p, examine(p.record), [])) > 0 for p in PumpFile(io.BytesIO(data)))


@pytest.mark.benchmark(group="record")
def test_pumps_of_a_csv_are_worked(benchmark):
    data = table(500)
    assert 500 == benchmark.pedantic(through, (data,), rounds=5, warmup_rounds=1)
    if benchmark.stats:
        benchmark.extra_info["pumps a second"] = round(500 / benchmark.stats.stats.median)


def test_ten_times_the_pumps_take_about_ten_times_as_long():
    through(table(100))  # plans are found once
    seconds = []
    for count in (200, 2000):
        started = time.perf_counter()
        through(table(count))
        seconds.append(time.perf_counter() - started)
    assert seconds[1] < 20 * seconds[0]

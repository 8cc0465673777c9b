"""The demo record: what it shows is what it says it hides, and nothing else."""

import csv
import io
from math import sqrt

import pytest

from solver.own.record import BEYOND, LOOK, by_pump, examine, trend_of
from solver.scenario import PUMPS
from tests.workbook.make_demo import made
from workbook.record import PumpFile
from workbook.record.demo import FAULTS, FILE, demo_csv


@pytest.fixture(scope="module", params=["us", "si"])
def pumps(request):
    """What came of each pump's years, the oldest first, by the words of its station and name."""
    with FILE.open("rb") as stream:
        read = PumpFile(stream, request.param)
        assert [] == read.messages
        rows = list(read)
    assert [] == [str(message) for row in rows for message in row.messages]
    years = by_pump([row.record for row in rows])
    return {records[0].name: [examine(one) for one in records] for records in years.values()}


def test_the_file_is_what_its_maker_makes():
    assert made() == demo_csv()


def test_eight_pumps_of_the_town_were_read_once_a_year_for_five_years(pumps):
    assert len(PUMPS) == len(pumps)
    for years in pumps.values():
        dates = [one.record.texts["date"][:4] for one in years]
        assert ["2020", "2021", "2022", "2023", "2024"] == dates


def test_the_newest_records_show_the_three_faults_and_no_other(pumps):
    found = {
        name: {one.name for one in years[-1].findings if one.state in (LOOK, BEYOND)}
        for name, years in pumps.items()
    }
    hidden = {f"{fault.station}, {fault.pump}": set(fault.checks) for fault in FAULTS}
    assert 3 == len(hidden)
    assert hidden == {name: checks for name, checks in found.items() if checks}


def test_earlier_records_show_nothing_but_the_faults_as_they_grow(pumps):
    hidden = {f"{fault.station}, {fault.pump}": set(fault.checks) for fault in FAULTS}
    for name, years in pumps.items():
        for one in years[:-1]:
            pressing = {found.name for found in one.findings if found.state in (LOOK, BEYOND)}
            assert pressing <= hidden.get(name, set())
        first = years[0]
        assert [] == [found.name for found in first.findings if found.state in (LOOK, BEYOND)]


def test_only_what_a_fault_moves_goes_up_or_down_over_the_years(pumps):
    moving = {}
    for name, years in pumps.items():
        going = {one.name for one in trend_of(years) if one.direction != "steady" or one.sudden}
        if going:
            moving[name] = going
    assert {f"{fault.station}, {fault.pump}": set(fault.trends) for fault in FAULTS} == moving


def test_no_reading_contradicts_another_and_none_is_unusual(pumps):
    every = [one for years in pumps.values() for one in years]
    assert 40 == len(every)
    assert [] == [one.record.name for one in every if one.contradictions or one.notices]


def test_power_volts_and_amps_belong_together_by_the_definition_of_power_factor():
    for row in csv.DictReader(io.StringIO(demo_csv())):
        volts = mean(row, "volts A to B (V)", "volts B to C (V)", "volts C to A (V)")
        amps = mean(row, "amps on leg A (A)", "amps on leg B (A)", "amps on leg C (A)")
        factor = 1000 * float(row["input power (kW)"]) / (sqrt(3) * volts * amps)
        assert 0.65 < factor < 0.88
        assert amps < float(row["full-load amps (A)"])


def mean(row, *headings):
    return sum(float(row[heading]) for heading in headings) / len(headings)


def test_the_high_leg_moves_with_the_motor_and_not_with_the_line(pumps):
    for one in pumps["Quarry Road lift station, Pump 2"][3:]:
        says = one.finding("rolled_twice").verdict.says
        assert says.startswith("The high leg moves with its lead")


def test_what_the_answers_say_in_numbers_is_so(pumps):
    moist, uneven, worn = (pumps[f"{fault.station}, {fault.pump}"] for fault in FAULTS)

    def first_and_last(years, name):
        return tuple(years[at].finding(name).value for at in (0, -1))

    first, last = first_and_last(moist, "insulation_at_40")
    assert (True, True) == (first > 700, last < 20)
    first, last = first_and_last(uneven, "current_unbalance")
    assert (True, 13) == (first < 2, pytest.approx(last, abs=0.1))
    assert 2.1 == pytest.approx(uneven[-1].finding("resistance_unbalance").value, abs=0.05)
    first, last = first_and_last(worn, "overall_efficiency")
    assert 19 < first - last < 22
    first, last = first_and_last(worn, "energy_per_volume")
    assert 1.33 == pytest.approx(last / first, abs=0.03)
    assert 78 == pytest.approx(worn[-1].finding("flow_share").value, abs=0.5)

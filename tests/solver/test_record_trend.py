"""One pump over the years: directions by the plain rule, against averages worked here by hand."""

from statistics import mean

import pytest

from solver import SolverError
from solver.own.record import FOLLOWED, by_pump, read_entries, trend

LEGS = ("amps_a", "amps_b", "amps_c")


def record(date, units="us", **entries):
    texts = {"station": "Heron Slough", "pump": "Pump 3", "date": date}
    return read_entries(texts | {name: str(value) for name, value in entries.items()}, units)[0]


def over_years(name, values, **fixed):
    return [record(f"{2020 + at}-05-01", **{name: v}, **fixed) for at, v in enumerate(values)]


def one(name, records):
    return next(found for found in trend(records) if found.name == name)


def insulation(values):
    return one("insulation_at_40", over_years("insulation_1min", values, winding_temperature=40))


def test_the_later_half_is_set_against_the_earlier_half_and_the_middle_counts_in_neither():
    found = insulation([500, 480, 9999, 300, 90])
    earlier, later = mean([500, 480]), mean([300, 90])
    assert "falling" == found.direction
    assert 100 * (later - earlier) / earlier == pytest.approx(found.change)
    assert "falling, by 60.2%: 500 megohms in 2020, 90 megohms in 2024" in found.says
    assert "Moisture" in found.may_mean


@pytest.mark.parametrize(
    ("values", "direction"),
    [
        ([100, 130], "steady"),  # 30 % is the change that still counts as steady
        ([100, 130.1], "rising"),
        ([100, 70], "steady"),
        ([100, 69.9], "falling"),
        ([100, 100, 100], "steady"),
        ([100], "too few readings"),
        ([], "too few readings"),
    ],
)
def test_insulation_is_steady_up_to_30_percent(values, direction):
    found = insulation(values)
    assert direction == found.direction
    assert "30%" in found.rule
    assert "our own rule" in found.rule


def amps(spread):
    return {"amps_a": 100 - spread, "amps_b": 100, "amps_c": 100 + spread}


@pytest.mark.parametrize(("last", "direction"), [(5, "steady"), (5.1, "rising"), (0.9, "falling")])
def test_unbalance_is_steady_up_to_two_percentage_points(last, direction):
    found = one("current_unbalance", [record("2020", **amps(3)), record("2024", **amps(last))])
    assert direction == found.direction
    assert last - 3 == pytest.approx(found.change)


def test_average_amps_are_steady_up_to_ten_percent():
    def at(value):
        return dict.fromkeys(LEGS, value)

    records = [record("2020", **at(20)), record("2022", **at(22)), record("2024", **at(22.1))]
    assert "rising" == one("amps_average", records).direction
    assert "steady" == one("amps_average", records[:2]).direction


def test_efficiency_and_energy_per_volume_of_a_wearing_pump_go_opposite_ways():
    flows = [476, 470, 430, 410]
    records = over_years("flow", flows, head=70, input_power=16.2)
    efficiency, energy = one("overall_efficiency", records), one("energy_per_volume", records)
    assert ("falling", "rising") == (efficiency.direction, energy.direction)
    per_flow = 100 * 70 / 3960 * 0.746 / 16.2
    assert per_flow * (420 - 473) == pytest.approx(efficiency.change, rel=1e-3)
    per_volume = [16.2 * 1e6 / 60 / flow for flow in flows]
    assert [point.value for point in energy.points] == pytest.approx(per_volume, rel=1e-4)


def test_records_may_come_in_any_order_and_with_gaps():
    records = over_years("insulation_1min", [500, 480, 300, 90], winding_temperature=40)
    gap = record("2022-06-01", head=70)
    shuffled = [records[2], gap, records[0], records[3], records[1]]
    assert trend(records) == trend(shuffled)


def test_a_reading_without_a_clear_date_is_counted_and_left_out():
    records = over_years("insulation_1min", [500, 480], winding_temperature=40)
    found = one(
        "insulation_at_40",
        [*records, record("5/1/2022", insulation_1min=1, winding_temperature=40)],
    )
    assert (2, 1) == (len(found.points), found.undated)
    assert "steady" == found.direction


def test_two_readings_are_a_change_and_not_yet_a_trend():
    assert "Two readings show a change, but not a trend yet." in insulation([500, 100]).says


def test_readings_of_two_pumps_or_two_systems_are_not_mixed():
    other = read_entries({"station": "Heron Slough", "pump": "Pump 1"})[0]
    with pytest.raises(SolverError, match=r"from more than one pump\. Take one pump at a time"):
        trend([record("2020"), other])
    with pytest.raises(SolverError, match="Some records are in US units and some in metric"):
        trend([record("2020"), record("2021", "si")])


def test_records_are_sorted_to_their_pumps_whatever_the_case_and_the_spaces():
    same = read_entries({"station": " heron  slough", "pump": "PUMP 3"})[0]
    other = read_entries({"station": "Heron Slough", "pump": "Pump 1"})[0]
    pumps = by_pump([record("2020"), other, same])
    assert [2, 1] == [len(records) for records in pumps.values()]


def test_the_trends_are_the_figures_an_annual_check_follows():
    expected = [
        "insulation_at_40",
        "amps_average",
        "current_unbalance",
        "overall_efficiency",
        "energy_per_volume",
    ]
    assert expected == [followed.name for followed in FOLLOWED]
    assert expected == [found.name for found in trend([record("2020")])]


def test_a_reading_that_was_nothing_is_no_division_by_zero():
    found = insulation([0, 5])
    assert ("rising", None) == (found.direction, found.change)
    assert "rising from zero: 0 megohms in 2020, 5 megohms in 2021" in found.says


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ([500, 490, 510, 500, 90], "The last reading fell 82% from the average of earlier ones"),
        ([500, 490, 510, 500, 200], ""),  # 60 % is not more than twice 30 %
        ([500, 490, 510, 500, 199], "fell 60.2%"),
        ([500, 400, 300, 200, 20], ""),  # it was falling all along
        ([500, 90], ""),  # one reading before is no steady course
        ([500], ""),
        ([], ""),
    ],
)
def test_a_last_reading_far_off_steady_ones_is_sudden(values, said):
    found = insulation(values)
    assert said in found.sudden
    assert bool(said) == bool(found.sudden)

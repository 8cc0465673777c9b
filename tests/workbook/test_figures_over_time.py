"""The figures that run over time: ten minutes of an insulation test, an hour between two floats."""

from itertools import pairwise

import pytest

from solver.units.show import figures

from .test_figures import drawn, shown, solved, table

TIMES = {"Fill time": "fill_time", "Pump-down": "pump_down_time", "Cycle": "cycle_time"}
CYCLE = {"Between floats": "working_volume", **TIMES}
STARTS = "Starts per hour"
READ = ("Megohms, 30 s", "Megohms, 1 min", "Megohms, 10 min")


def line(chart, number):
    """The points of one line of a chart."""
    return list(chart.lines[number].points)


def model(leak, minutes):
    """The microamps that the figure's model says: a leak, and 3 µA that fade with time."""
    return leak + 3 * minutes**-0.7


@pytest.mark.parametrize(("column", "leak"), [(0, 0.4), (1, 2.5)])
def test_absorption_tells_what_the_solver_makes_of_the_microamps(column, leak):
    told = table(shown("absorption", leakage_current=2.5, winding_temperature=40))
    half, one, ten = (model(leak, minutes) for minutes in (0.5, 1, 10))
    for row, amps in zip(READ, (half, one, ten), strict=True):
        given = {"test_volts": 500, "leakage_current": amps}
        assert solved(given, "insulation") == f"{told[row][column]} megohms"
    index = solved({"leakage_1min": one, "leakage_10min": ten}, "polarization_index")
    ratio = solved({"leakage_30s": half, "leakage_1min": one}, "absorption_ratio")
    assert index == told["Polarization index"][column]
    assert ratio == told["Absorption ratio"][column]
    assert told["Megohms, 1 min"] == told["1 min, at 40 °C"]


def test_absorption_halves_every_reading_for_ten_degrees_but_neither_the_ratios_nor_40_degrees():
    # R: an insulation tester's manual: 150 megohms at 20 °C are 75 at 30 °C.
    cool, warm = (shown("absorption", winding_temperature=degrees) for degrees in (20, 30))
    for row, (before, after) in enumerate(zip(cool.view.rows, warm.view.rows, strict=True)):
        if row >= len(READ):
            assert before == after
    before, after = drawn(cool)[0], drawn(warm)[0]
    for one, other in zip(before.dots, after.dots, strict=True):
        assert one.y / 2 == pytest.approx(other.y)
    for one, other in zip(before.lines[-2:], after.lines[-2:], strict=True):
        assert [y / 2 for _, y in one.points] == pytest.approx([y for _, y in other.points])


@pytest.mark.parametrize(
    ("leak", "says"),
    # A tester's manual on IEEE 43-2000: class A 1.5, class B, F and H 2.0.
    [
        (1.5, "2.0 or more: enough for every class"),
        (2, "under 2.0: enough for class A"),
        (4, "under 2.0: enough for class A"),
        (4.5, "under 1.5, which is too low"),
    ],
)
def test_absorption_judges_the_index_of_the_damp_winding_by_class(leak, says):
    assert says in shown("absorption", leakage_current=leak).headline.value


def test_absorption_marks_the_readings_of_the_table_on_curves_that_rise():
    figure = shown("absorption", leakage_current=8, winding_temperature=15)
    chart = drawn(figure)[0]
    for column, name, shape in ((1, "dry", "dot"), (2, "damp", "square")):
        curve, marks = line(chart, column - 3), [d for d in chart.dots if d.shape == shape]
        assert all(low < high for (_, low), (_, high) in pairwise(curve)), name
        assert [0.5, 1, 10] == [mark.x for mark in marks]
        told = [row[column] for row in figure.view.rows[:3]]
        assert told == [figures(mark.y) for mark in marks]


def test_absorption_says_on_the_picture_that_it_is_a_model():
    assert "A model, not readings from a motor." in shown("absorption").beside.picture.value


def test_cycle_has_the_times_of_a_published_form():
    # R: MIL-HDBK-1005/9A: 500 gal, pump 400 gpm, inflow 150 gpm: 3.333 + 2.0 = 5.333 min.
    told = table(shown("cycle", inflow=150, flow=400, volume_per_depth=250, working_depth=2))
    assert ["500 gal", "3.333 min", "2 min", "5.333 min"] == [
        told[row][0] for row in ("Between floats", *TIMES)
    ]


def test_cycle_has_at_the_worst_the_least_cycle_of_a_published_volume():
    # R: USACE EI 11C201 (1997) chapter 7: 500 gpm and 10 min need 1,250 gal.
    told = table(shown("cycle", inflow=90, flow=500, volume_per_depth=250, working_depth=5))
    assert ["1,250 gal", "250 gpm", "5 min", "5 min", "10 min", "6"] == [
        at_the_worst for _, at_the_worst in list(told.values())[1:]
    ]


@pytest.mark.parametrize("units", ["us", "si"])
def test_cycle_tells_the_times_that_the_solver_works(units):
    figure = shown("cycle", units, inflow={"us": 65, "si": 4.5}[units])
    told = table(figure)
    worst = {**figure.values, "inflow": figure.values["flow"] / 2}
    for column, given in enumerate((figure.values, worst)):
        assert {row: solved(given, name, units) for row, name in CYCLE.items()} == {
            row: told[row][column] for row in CYCLE
        }
        assert solved(given, "starts_per_hour", units) == f"{told[STARTS][column]} starts per hour"


def test_cycle_shows_an_hour_with_a_peak_for_each_start():
    figure = shown("cycle", inflow=150, flow=400, volume_per_depth=250, working_depth=2)
    chart = drawn(figure)[0]
    peaks = {minute for minute, level in line(chart, 0) if level == 2 and minute < 60}
    assert 11 == len(peaks)  # 60 over 5.333 is 11.25, and the last of these begins to fill
    assert peaks == {minute for minute, level in line(chart, 1) if level == 2 and minute < 60}


def test_cycle_draws_its_most_starts_over_half_of_what_the_pump_moves():
    _, below = drawn(shown("cycle", inflow=150, flow=400, volume_per_depth=250, working_depth=2))
    inflow, starts = max(line(below, 0), key=lambda point: point[1])
    # 12 starts: T = 4 V / q, turned round from V = T q / 4 (EI 11C201), is 5 min.
    assert (200, 12) == pytest.approx((inflow, starts))
    assert [200, 200] == [x for x, _ in line(below, 1)]
    assert [(150, 11.25)] == [pytest.approx((dot.x, dot.y)) for dot in below.dots]


@pytest.mark.parametrize(
    ("inflow", "after_an_hour"),
    # By hand: 1,000 gal fill in 1.667 min, then 200 gpm more for 58.33 min, at 250 gal/ft.
    [(400, 4), (600, 4 + 46.67)],
)
def test_cycle_says_that_a_pump_which_cannot_keep_up_never_stops(inflow, after_an_hour):
    figure = shown("cycle", inflow=inflow, flow=400, volume_per_depth=250, working_depth=4)
    assert "never stops. Another pump must help" in figure.headline.value
    told = table(figure)
    assert ["endless", "endless", "0"] == [told[row][0] for row in ("Pump-down", "Cycle", STARTS)]
    assert (60, after_an_hour) == pytest.approx(line(drawn(figure)[0], 1)[-1], rel=1e-3)


def test_cycle_names_the_pumps_flow_in_the_unit_of_the_system():
    figure = shown("cycle")
    assert "Pump's flow, gpm" in [slider.description for slider in figure.controls.children]
    figure.system.value = "si"
    described = [slider.description for slider in figure.controls.children]
    assert ["Pump's flow, L/s", "Volume per meter of depth, m³/m"] == described[1:3]

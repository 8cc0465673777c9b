"""The figures of one height on three scales, of what a pump overcomes, and of the power triangle."""

import re
from itertools import combinations

import pytest

from solver.units.show import figures
from workbook.figures import show
from workbook.figures.chart import ORANGE
from workbook.figures.chart_svg import CHARACTER, LETTER, charts_svg
from workbook.figures.column import SCALES
from workbook.figures.explorer import FIGURES

from .test_figures import drawn, shown, solved, table

TEXT = r'<text x="([\d.]+)" y="([\d.]+)" text-anchor="start"[^>]*>([^<]+)<'


def box(found):
    """Left, right, top and foot of a text (px), by the width that a letter takes at most."""
    x, y, text = float(found[0]), float(found[1]), found[2]
    return x, x + CHARACTER * len(text), y - 0.75 * LETTER, y


def cross(one, other):
    """Whether two boxes meet."""
    (a, b, c, d), (e, f, g, h) = one, other
    return a < f and e < b and c < h and g < d


@pytest.mark.parametrize(("units", "unit"), [("us", "kPa"), ("si", "bar")])
def test_column_tells_the_height_and_both_pressures_that_the_solver_works(units, unit):
    figure = shown("column", units, tap_height=2)
    told = table(figure)
    names = {"Water above the gauge": "water_height", "Gauge reading": "gauge_pressure"}
    names |= {"Second scale": "second_scale"}
    assert {label: [solved(figure.values, name, units)] for label, name in names.items()} == {
        label: told[label] for label in names
    }
    assert told["Second scale"][0].endswith(unit)


def test_column_has_the_height_of_a_published_pressure():
    # NIST SP 811 App. B (read in a copy): a foot of water is 2989.067 Pa and a psi 6894.757 Pa.
    known = shown("column", tank_depth=100, tap_height=0).view.known
    assert known["second_scale"] == pytest.approx(100 * 2.989067, rel=2e-3)
    assert known["gauge_pressure"] == pytest.approx(100 * 2.989067 / 6.894757, rel=2e-3)


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("at", ["low", "high"])
def test_column_draws_each_scale_so_that_its_marks_fit_the_water(units, at):
    ends = {slide.name: getattr(slide.scale(units), at) for slide in FIGURES["column"].slides}
    figure = shown("column", units, **ends)
    texts = [(note.text, (note.x, note.y)) for note in drawn(figure)[0].notes]
    for name, across in SCALES.items():
        reading, tap = figure.view.known[name], figure.values["tap_height"]
        marks = [(float(text.replace(",", "")), y) for text, (x, y) in texts if x == across + 0.15]
        written, *rest = sorted(marks, key=lambda mark: abs(mark[0] - reading))
        assert float(figures(reading)) == written[0]
        each = (figure.values["tank_depth"] - tap) / reading
        assert [tap + mark * each for mark, _ in rest] == pytest.approx([y for _, y in rest])
        assert len(rest) >= 1


@pytest.mark.parametrize("units", ["us", "si"])
def test_column_never_writes_one_number_over_another(units):
    figure, values = FIGURES["column"], show("column").values
    depth = figure.slides[0].scale(units)
    for steps in range(0, int((depth.high - depth.low) / depth.step) + 1, 2):
        values |= {"tank_depth": depth.low + steps * depth.step, "tap_height": 1}
        view = figure.view(values, units)
        boxes = [*map(box, re.findall(TEXT, charts_svg(figure.draw(view), "", "column")))]
        assert len(boxes) > 8
        crossed = [(a, b) for a, b in combinations(boxes, 2) if cross(a, b)]
        assert [] == crossed, values


@pytest.mark.parametrize("units", ["us", "si"])
def test_lift_tells_the_parts_and_the_total_that_the_solver_works(units):
    figure = shown("lift", units, c_factor=100, loss_coefficient=30)
    told = table(figure)
    names = {"Friction loss": "friction_head", "Minor losses": "minor_loss", "Total": "head"}
    names |= {"Velocity": "velocity"}
    assert {label: solved(figure.values, name, units) for label, name in names.items()} == {
        label: told[label][0] for label in names
    }


def test_lift_has_the_friction_of_a_published_main():
    # Vennard, Elementary Fluid Mechanics, Ex 9.10 (read in a copy): 90 gpm, 3 in, 3,000 ft, C 140:
    # 65.7 ft. The sliders start at 4 in, so the view is asked itself.
    values = show("lift").values | {"flow": 90, "pipe_diameter": 3, "c_factor": 140}
    view = FIGURES["lift"].view(values | {"pipe_length": 3000}, "us")
    assert 65.7 == pytest.approx(view.known["friction_head"], rel=0.005)


def test_lift_stacks_its_parts_to_the_total_and_ends_at_the_upper_water():
    figure = shown("lift", flow=900, loss_coefficient=25)
    known = figure.view.known
    # Over the pump, so left of where the pipe begins; the wet well goes down from there.
    chart = drawn(figure)[0]
    stack = [bar for bar in chart.bars if bar.left < 0 and not bar.faint]
    heights = [known[part] for part in ("static_head", "friction_head", "minor_loss")]
    assert heights == pytest.approx([bar.tall for bar in stack])
    assert known["head"] == pytest.approx(stack[-1].foot + stack[-1].tall)
    assert known["head"] == pytest.approx(sum(heights))
    slope = next(line for line in chart.lines if line.color == ORANGE and not line.area)
    assert [known["head"] - heights[2], heights[0]] == pytest.approx([y for _, y in slope.points])


def test_lift_asks_for_the_lift_and_more_as_the_flow_grows():
    heads = [shown("lift", flow=flow).view.known["head"] for flow in (50, 400, 800, 1500)]
    assert 40 < heads[0]
    assert sorted(heads) == heads


def test_triangle_tells_what_the_solver_works():
    figure = shown("triangle", power_factor=0.72, corrected_power_factor=0.92)
    told, values = table(figure), figure.values
    now = {"input_power": values["input_power"], "power_factor": 0.72}
    then = {"input_power": values["input_power"], "corrected_power_factor": 0.92}
    volts = {"line_volts": values["line_volts"]}
    assert told["Apparent"] == [
        solved(now, "apparent_power"),
        solved(then, "corrected_apparent_power"),
    ]
    assert told["Capacitor"][1] == solved(now | then, "capacitor_kvar")
    # With the capacitor the line has another power factor, and the motor the same kilowatts.
    assert told["Line amps"] == [
        solved(now | volts, "line_amps"),
        solved(now | volts | {"power_factor": 0.92}, "line_amps"),
    ]


def test_triangle_has_the_amps_of_a_published_motor():
    # Hubert, Electric Machines, Ex 4.6 (read in a copy): 230 V, 81.978 kW, PF 0.8298: 248 A.
    values = show("triangle").values
    values |= {"input_power": 81.978, "power_factor": 0.8298, "line_volts": 230.0}
    now = {label: read for label, read, _ in FIGURES["triangle"].view(values, "us").rows}
    assert 248 == pytest.approx(float(now["Line amps"].removesuffix(" A")), rel=5e-4)


def test_triangle_is_drawn_to_scale_with_a_right_angle_and_true_angles():
    figure = shown("triangle", power_factor=0.8, corrected_power_factor=0.95)
    chart = drawn(figure)[0]
    base, now, then = (line.points for line in chart.lines)
    across, up = chart.evened(300)
    assert (across.high - across.low) / 300 == pytest.approx((up.high - up.low) / chart.tall)
    for line, factor in ((now, 0.8), (then, 0.95)):
        (x, y), start = line[1], line[0]
        assert [0, 0] == list(start)
        assert factor == pytest.approx(x / (x**2 + y**2) ** 0.5)
        assert x == base[1][0]
    stays, capacitor = chart.bars
    assert now[1][1] == pytest.approx(stays.tall + capacitor.tall)
    assert then[1][1] == pytest.approx(stays.tall)


def test_triangle_needs_no_capacitor_where_the_power_factor_is_there_already():
    for factor in (0.9, 0.93):
        figure = shown("triangle", power_factor=factor, corrected_power_factor=0.9)
        assert "no capacitor to reach 0.9" in figure.headline.value
        assert ["none", "0 kvar"] == table(figure)["Capacitor"]

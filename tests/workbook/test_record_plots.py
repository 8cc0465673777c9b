"""Trend plots: the same numbers in the picture, in words and in the table, with their limits."""

import re
import subprocess
import sys
from html import unescape

import pytest

from solver.own.record import by_pump, examine, limit_lines, read_entries
from workbook.figures.chart_svg import ticks_of
from workbook.record import PumpFile
from workbook.record.demo import FILE
from workbook.record.trends import (
    TOO_FEW,
    page_svg,
    plots_of,
    print_svg,
    table_of,
    trends_html,
)


def years(name, values, **fixed):
    """One pump read once a year from 2020 on."""
    entries = [{name: str(v), "date": f"{2020 + n}-05-01", **fixed} for n, v in enumerate(values)]
    return [examine(read_entries({"pump": "Pump 1", **one})[0]) for one in entries]


def insulation(*values):
    return years("insulation_1min", values, winding_temperature="40")


@pytest.fixture(scope="module")
def demo():
    with FILE.open("rb") as stream:
        pumps = by_pump([pump.record for pump in PumpFile(stream)])
    return {records[0].name: [examine(one) for one in records] for records in pumps.values()}


def written(plot):
    return [note.text for note in plot.chart.notes]


def test_each_figure_read_twice_has_a_plot_and_the_others_none(demo):
    every = plots_of(demo["Quarry Road lift station, Pump 2"])
    assert [
        "insulation_at_40",
        "amps_average",
        "current_unbalance",
        "overall_efficiency",
        "energy_per_volume",
    ] == [plot.trend.name for plot in every]
    assert ["insulation_at_40"] == [plot.trend.name for plot in plots_of(insulation(500, 400))]
    assert () == plots_of(insulation(500))
    assert () == plots_of([])


def test_the_picture_shows_each_reading_and_each_limit(demo):
    for plot in plots_of(demo["Quarry Road lift station, Pump 2"]):
        chart, readings = plot.chart, [point.value for point in plot.trend.points]
        *limits, course = chart.lines
        assert readings == [value for _, value in course.points] == [dot.y for dot in chart.dots]
        assert [line.value for line in plot.lines] == [line.points[0][1] for line in limits]
        assert all(line.label in " ".join(written(plot)) for line in plot.lines)
        seen = [line.value for line in plot.lines] + readings
        assert chart.up.low < min(seen)
        assert max(seen) < chart.up.high


def test_insulation_stands_on_an_axis_of_tenfolds_with_its_two_limits():
    (plot,) = plots_of(insulation(500, 4))
    up = plot.chart.up
    assert pytest.approx(up.share(50) - up.share(5)) == up.share(500) - up.share(50)
    assert ["10", "100", "1,000"] == [text for _, text in ticks_of(up)]
    # IEEE 43-2013: 5 megohms, random-wound; NETA MTS Table 100.1: 100 megohms, 600 V class.
    assert [5, 100] == [line.value for line in plot.lines]


def test_a_reading_of_nothing_is_drawn_without_fault():
    (plot,) = plots_of(insulation(0, 0))
    assert plot.chart.up.low > 0
    assert 0 == plot.chart.up.share(0)
    assert "nan" not in page_svg(plot)
    assert "0 megohms" in plot.view.alt


def test_amps_are_drawn_with_the_nameplate_and_its_service_factor():
    legs = {"amps_b": "20", "amps_c": "20", "full_load_amps": "25", "service_factor": "1.15"}
    amps, unbalance = plots_of(years("amps_a", (20, 21), **legs))
    assert [25, 28.75] == pytest.approx([line.value for line in amps.lines])
    assert ["full-load amps", "service-factor amps"] == [line.label for line in amps.lines]
    assert [5, 10] == [line.value for line in unbalance.lines]


def test_a_figure_without_a_limit_is_drawn_without_one_and_says_so(demo):
    newest = demo["Quarry Road lift station, Pump 2"][-1]
    assert (
        () == limit_lines("overall_efficiency", newest) == limit_lines("energy_per_volume", newest)
    )
    *_, limits = table_of(plots_of([newest, newest]))[1]
    assert ("none known", "none known") == limits[-2:]


def test_the_least_of_an_older_winding_is_kilovolts_and_one():
    entries = {"winding_kind": "before 1970", "rated_volts": "2300", "insulation_1min": "50"}
    examined = examine(read_entries(entries)[0])
    # IEEE 43: kV + 1 megohms, winding made before about 1970.
    assert [3.3, 100] == [line.value for line in limit_lines("insulation_at_40", examined)]


def test_the_words_and_the_table_tell_every_number_of_the_picture():
    plots = plots_of(insulation(500, 480, 300, 90))
    (plot,) = plots
    assert plot.title == "Insulation resistance at 40 °C, megohm: falling"
    for day, value in (("2020-05-01", "500"), ("2023-05-01", "90")):
        assert f"{day}: {value} megohm" in plot.view.alt
    assert "Limits: least 5, recommended 100." in plot.view.alt
    heads, rows = table_of(plots)
    assert ("Day", "insulation resistance at 40 °C (megohm)") == heads
    assert [
        ("2020-05-01", "500"),
        ("2021-05-01", "480"),
        ("2022-05-01", "300"),
        ("2023-05-01", "90"),
        ("Limits", "least 5, recommended 100"),
    ] == list(rows)


def test_a_sudden_change_is_marked_in_the_picture_and_told():
    (plot,) = plots_of(insulation(500, 490, 510, 500, 90))
    assert "sudden" in written(plot)
    assert "ring" in [dot.shape for dot in plot.chart.dots]
    assert "The last reading fell 82%" in plot.view.headline
    assert "The last reading fell 82%" in plot.view.alt
    (steady,) = plots_of(insulation(500, 490, 510))
    assert "sudden" not in written(steady)


def test_years_stand_as_whole_numbers_and_are_the_same_for_all_figures_of_a_pump(demo):
    plots = plots_of(demo["Heron Slough lift station, Pump 1"])
    (across,) = {
        (plot.chart.across.low, plot.chart.across.high, *plot.chart.across.ticks) for plot in plots
    }
    assert [str(year) for year in range(2020, 2025)] == [text for _, text in across[2:]]


def test_noise_does_not_look_like_a_trend():
    (plot,) = plots_of(years("flow", (450, 452), head="60", input_power="9"))[:1]
    assert plot.chart.up.high - plot.chart.up.low > 0.4 * plot.trend.points[0].value


def test_the_page_has_each_picture_with_words_for_who_cannot_see_it(demo):
    html = trends_html(demo["Heron Slough lift station, Pump 3"])
    labels = [unescape(label) for label in re.findall(r'<svg[^>]*aria-label="([^"]*)"', html)]
    plots = plots_of(demo["Heron Slough lift station, Pump 3"])
    assert [plot.view.alt for plot in plots] == labels
    for plot in plots:
        assert plot.view.headline in unescape(html)
    assert "The insulation resistance at 40 °C is falling" in unescape(html)
    assert 1 == html.count("<table>")
    assert TOO_FEW in trends_html([])


def test_a_picture_for_paper_is_the_same_each_time_and_needs_no_fonts(demo):
    plot = plots_of(demo["Heron Slough lift station, Pump 3"])[0]
    assert print_svg(plot) == print_svg(plot)
    assert "<text" not in print_svg(plot)
    assert "<text" in page_svg(plot)
    assert "<dc:date>" not in print_svg(plot)


def test_a_page_is_drawn_without_what_prints(demo):
    code = (
        "import sys; from workbook.record import plant_panel\n"
        "panel = plant_panel.PlantPanel(); panel.example.click()\n"
        "assert 'Over the years' in panel.outcome.trends.value\n"
        "print([name for name in ('matplotlib', 'numpy', 'typst') if name in sys.modules])"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert "[]" == told.stdout.strip()

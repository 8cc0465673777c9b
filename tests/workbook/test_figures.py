"""Each figure tells the solver's numbers three times: in the picture, in words and in a table."""

import re
import subprocess
import sys
from html import escape, unescape
from itertools import combinations, pairwise
from xml.etree import ElementTree

import pytest

from solver.engine.plan import find_plan
from solver.topics.formulas import FORMULAS
from solver.units.show import figures, with_unit
from solver.vocabulary import quantity_named
from workbook.figures import show
from workbook.figures.chart import BLUE, GREEN, GREY, ORANGE, PINK, steps
from workbook.figures.explorer import FIGURES

# Okabe & Ito, Color Universal Design (2008), jfly.uni-koeln.de/color: the set of eight.
OKABE_ITO = {
    *("#000000", "#e69f00", "#56b4e9", "#009e73", "#f0e442", "#0072b2", "#d55e00", "#cc79a7"),
}
NARROWEST = 330  # px: what the style sheet lets a picture shrink to
ALL = [(name, units) for name, figure in FIGURES.items() for units in figure.systems]


def shown(name, units="us", **values):
    """A figure with some of its sliders moved."""
    figure = show(name)
    figure.system.value = units
    for slider, value in values.items():
        figure.sliders[units][slider].value = value
    return figure


def cells(figure):
    """What stands in the cells of a figure's table, row by row."""
    html = figure.beside.table.value.replace("\N{NO-BREAK SPACE}", " ")
    rows = re.findall(r"<tr>(.*?)</tr>", html)
    return [[unescape(cell) for cell in re.findall(r"<t[hd][^>]*>(.*?)</t[hd]>", r)] for r in rows]


def table(figure):
    """The table as {first cell: the others}."""
    return {first: rest for first, *rest in cells(figure)}


def solved(given, asked, units="us"):
    """A quantity from the solver, written with its unit."""
    value = find_plan(tuple(given), asked, FORMULAS, units).run(given)[asked]
    unit = quantity_named(asked).unit(units)
    return with_unit(figures(value, unit), unit)


def drawn(figure):
    """The charts of a figure, from top to bottom."""
    return figure.figure.draw(figure.view)


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("drive", [100, 94])
def test_losses_tells_the_powers_that_the_solver_works(units, drive):
    figure = shown("losses", units, drive_efficiency=drive, pump_efficiency=71)
    given = {name: value for name, value in figure.values.items() if value != 100}
    told = table(figure)
    places = {"Wire": "motor_power", "Water": "water_power", "The meter shows": "input_power"}
    places |= {"Pump shaft" if drive < 100 else "Shaft": "brake_power"}
    places |= {"Wire to water": "overall_efficiency"}
    assert {place: [solved(given, name, units)] for place, name in places.items()} == {
        place: told[place] for place in places
    }


def test_losses_has_the_wire_to_water_efficiency_of_a_published_table():
    # Dorn, Univ. of Nebraska CropWatch 2008, Table 1: motor 88 %, pump 75 %, so 66 % in all.
    figure = shown("losses", motor_efficiency=88, pump_efficiency=75)
    assert ["66%"] == table(figure)["Wire to water"]


def test_losses_draws_each_bar_and_its_loss_as_long_as_the_bar_before():
    figure = shown("losses", drive_efficiency=90)
    bars = drawn(figure)[0].bars
    whole = [bar.wide for bar in bars if not bar.hatched]
    lost = [bar.wide for bar in bars if bar.hatched]
    powers = ("motor_power", "motor_output", "brake_power", "water_power")
    assert [figure.view.known[power] for power in powers] == whole
    for (before, after), loss in zip(pairwise(whole), lost, strict=True):
        assert before == pytest.approx(after + loss)


@pytest.mark.parametrize(
    ("legs", "deviation", "spread"),
    [
        ((25.5, 23, 26.5), "8%", "14%"),  # a pump maker's manual
        ((25, 24, 26), "4%", "8%"),  # the same
        ((51, 46, 53), "8%", "14%"),  # another pump maker's manual
    ],
)
def test_legs_has_both_unbalances_of_the_pump_manuals(legs, deviation, spread):
    figure = shown("legs", **dict(zip(("amps_a", "amps_b", "amps_c"), legs, strict=True)))
    told = table(figure)
    assert deviation == told["Largest deviation (NEMA MG 1 method)"][-1]
    assert spread == told["Highest minus lowest (field practice)"][-1]


@pytest.mark.parametrize(
    ("amps", "says"),
    [
        ((50, 50, 50), "This is within the 5%"),
        ((52.5, 50, 47.5), "This is within the 5%"),
        ((53, 50, 47), "This is over the 5%"),
        ((55, 50, 45), "This is over the 5%"),
        ((55.5, 50, 44.5), "This is over 10%"),
    ],
)
def test_legs_says_on_which_side_of_the_limits_the_deviation_is(amps, says):
    figure = shown("legs", **dict(zip(("amps_a", "amps_b", "amps_c"), amps, strict=True)))
    assert says in figure.headline.value


def test_cost_multiplies_kilowatts_hours_and_price():
    # By hand: 14 kW x 9 h x 30 days = 3,780 kWh; at $0.115 that is $434.70.
    figure = shown("cost", input_power=14, hours_per_day=9, days=30, energy_price=0.115)
    told = table(figure)
    assert ["", "Power", "Energy in 30 days", "Cost"] == cells(figure)[0]
    assert ["14 kW", "3,780 kWh", "$434.70"] == told["Now"]


def test_cost_saves_what_the_solver_says_over_a_year():
    figure = shown("cost", days=365, hours_per_day=24, pump_efficiency=60, new_pump_efficiency=75)
    given = {name: figure.values[name] for name in ("input_power", "energy_price")}
    given |= {"pump_efficiency": 60.0, "new_pump_efficiency": 75.0, "motor_efficiency": 88.0}
    given |= {"yearly_hours": 8760.0}
    saving = find_plan(tuple(given), "yearly_saving", FORMULAS, "us").run(given)["yearly_saving"]
    assert with_unit(figures(saving, "$"), "$") == table(figure)["Saved"][-1]


def test_cost_says_more_when_the_other_pump_is_worse_and_nothing_when_it_is_the_same():
    worse = shown("cost", pump_efficiency=70, new_pump_efficiency=50)
    same = shown("cost", pump_efficiency=70, new_pump_efficiency=70)
    assert ["Now", "Other pump", "More"] == [*table(worse)][1:]
    assert "$0.00" == table(same)["Saved"][-1]


@pytest.mark.parametrize(("name", "units"), ALL)
def test_every_number_of_the_table_is_in_the_alternative_text_of_the_picture(name, units):
    figure = shown(name, units)
    told = [cell for row in cells(figure)[1:] for cell in row[1:] if cell]
    assert [] == [cell for cell in told if cell not in figure.alt]
    assert f'role="img" aria-label="{escape(figure.alt)}"' in figure.beside.picture.value


@pytest.mark.parametrize("name", FIGURES)
def test_moving_any_slider_changes_the_words_the_picture_and_the_table_in_place(name):
    figure = show(name)
    parts = (figure.headline, figure.beside.picture, figure.beside.table)
    for slider in figure.sliders["us"].values():
        before = [part.value for part in parts[1:]]
        slider.value = slider.value - 3 * slider.step
        after = [part.value for part in (figure.beside.picture, figure.beside.table)]
        assert all(old != new for old, new in zip(before, after, strict=True)), slider.description
    assert parts == (figure.headline, figure.beside.picture, figure.beside.table)


def test_changing_to_metric_keeps_the_machine_to_the_nearest_step():
    figure = shown("losses", flow=500, head=100)
    figure.system.value = "si"
    # 500 gpm is 31.5 L/s (NIST SP 811: 6.30902e-5 m3/s a gpm), and 100 ft is 30.5 m.
    assert (31.5, 30.5) == (figure.values["flow"], figure.values["head"])
    assert ["Flow, L/s", "Total dynamic head, m"] == [
        s.description for s in figure.controls.children[:2]
    ]


def test_a_value_beside_a_step_counts_as_the_step():
    figure = show("cost")
    figure.sliders["us"]["hours_per_day"].value = 8.999999999
    assert 9 == figure.values["hours_per_day"]


@pytest.mark.parametrize(("name", "units"), ALL)
def test_type_is_nine_points_or_more_even_where_the_picture_is_narrowest(name, units):
    svg = shown(name, units).beside.picture.value
    width = float(re.search(r'viewBox="0 0 ([\d.]+)', svg)[1])
    sizes = [float(size) for size in re.findall(r'font-size="([\d.]+)"', svg)]
    assert 1 == len(sizes)  # on the whole picture, and no other
    assert 9 <= round(min(sizes) * NARROWEST / width * 72 / 96, 2)


@pytest.mark.parametrize(("name", "units"), ALL)
def test_pictures_use_the_palette_one_grey_and_the_ink_of_the_page(name, units):
    svg = shown(
        name, units, **({"drive_efficiency": 93} if name == "losses" else {})
    ).beside.picture.value
    colors = set(re.findall(r'(?:fill|stroke)="(#\w+)"', svg))
    assert colors
    assert set() == colors - OKABE_ITO - {GREY}
    assert "color: var(--jp-ui-font-color1" in svg


def luminance(color):
    """Relative luminance, WCAG 2.2."""
    shares = [int(color[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    parts = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in shares]
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]


@pytest.mark.parametrize("page", ["#ffffff", "#111111"])
def test_each_color_stands_out_three_to_one_on_light_and_dark_pages(page):
    # WCAG 2.2, success criterion 1.4.11; the pages are JupyterLab's light and dark themes.
    for color in (BLUE, ORANGE, GREEN, PINK, GREY):
        dark, light = sorted((luminance(color), luminance(page)))
        assert 3 <= (light + 0.05) / (dark + 0.05), color


def test_two_pictures_on_a_page_share_no_id_but_for_the_same_thing():
    parts = [shown(name).beside.picture.value for name in FIGURES]
    ids = [set(re.findall(r'id="([^"]+)"', svg)) for svg in parts]
    for one, other in combinations(ids, 2):
        assert one
        assert set() == one & other


def test_no_figure_to_explore_needs_matplotlib():
    code = (
        "import sys; from workbook.figures import show; "
        "[show(name) for name in sys.argv[1:]]; print(*sys.modules)"
    )
    command = [sys.executable, "-c", code, *FIGURES]
    told = subprocess.run(command, capture_output=True, text=True, check=True)
    assert "" == told.stderr
    assert {"matplotlib", "numpy"} & set(told.stdout.split()) == set()


@pytest.mark.parametrize(
    ("low", "high", "found"),
    [(0, 1, [0, 0.2, 0.4, 0.6, 0.8, 1]), (-3, 12, [0, 5, 10]), (12, -3, [0, 5, 10])],
)
def test_steps_of_an_axis_are_round_and_within_it(low, high, found):
    assert found == pytest.approx(steps(low, high))


SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize(("name", "units"), ALL)
def test_nothing_of_a_picture_is_without_a_place(name, units):
    for end in ("low", "high"):
        figure = shown(name, units)
        values = {slide.name: getattr(slide.scale(units), end) for slide in figure.figure.slides}
        for slider, value in values.items():
            figure.sliders[units][slider].value = value
        root = ElementTree.fromstring(figure.beside.picture.value)
        width, height = map(float, root.get("viewBox").split()[2:])
        assert "nan" not in figure.beside.picture.value
        for text in root.iter(f"{SVG}text"):
            assert 0 <= float(text.get("x")) <= width, text.text
            assert 0 <= float(text.get("y")) <= height, text.text


def test_an_unknown_figure_is_refused_by_name():
    with pytest.raises(ValueError, match=r"No figure is called 'pumps'; there are: losses, legs"):
        show("pumps")

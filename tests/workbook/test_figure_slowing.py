"""The figure of a slowed pump: its numbers are the solver's, its crossings are scipy's."""

import pytest
from scipy.optimize import brentq

from solver.scenario import PUMPS
from solver.station.town import town_station
from solver.topics.speed.curves import crossing, pump_curve, system_curve
from workbook.figures.explorer import FIGURES
from workbook.figures.slowing import WHERE

from .test_figures import drawn, shown, solved, table

# The figure's pump at full speed: shutoff head, rated head and rated flow.
MACHINE = town_station(WHERE)
PUMP = tuple(MACHINE.noted(name) for name in ("shutoff_head", "rated_head", "rated_flow"))


def two(figure):
    """Both charts: head against flow above, power against flow below."""
    return drawn(figure)


def marks(chart, shape):
    """The points of one shape in a chart."""
    return [(dot.x, dot.y) for dot in chart.dots if dot.shape == shape]


def named(chart, label):
    """The points of the curve that the legend calls so."""
    return next(line for line in chart.lines if line.label == label).points


@pytest.mark.parametrize(("cut", "static"), [(20, 30), (0, 30), (35, 12), (10, 50), (50, 0)])
def test_slowing_marks_the_flow_where_scipy_finds_both_heads_alike(cut, static):
    figure = shown("slowing", speed_cut=cut, static_head=static)
    shutoff, rated, flow = PUMP
    ratio = 1 - cut / 100

    def over(q):
        pump = ratio**2 * (shutoff + (rated - shutoff) * (q / ratio / flow) ** 2)
        return pump - (static + (rated - static) * (q / flow) ** 2)

    found = brentq(over, 0, 2 * flow, xtol=1e-10)
    head = static + (rated - static) * (found / flow) ** 2
    above, below = two(figure)
    assert [pytest.approx((found, head))] == marks(above, "diamond")
    # Power goes with flow times head, at the same efficiency; the cube law takes flow cubed.
    share = 100 * found / flow
    assert [pytest.approx((share, share * head / rated))] == marks(below, "diamond")
    assert [pytest.approx((share, share**3 / 1e4))] == marks(below, "square")


@pytest.mark.parametrize("units", ["us", "si"])
def test_slowing_tells_the_flow_head_and_power_that_the_solver_works(units):
    figure = shown("slowing", units, speed_cut=15)
    known, told = figure.view.known, table(figure)
    flow, head, static = (known[name] for name in ("rated_flow", "rated_head", "static_head"))
    pump = pump_curve(known["shutoff_head"], flow, head)
    at = crossing(pump.at_speed(0.85), system_curve(static, flow, head - static))
    efficiencies = ("pump_efficiency", "motor_efficiency")
    given = {"flow": flow, "head": head} | {name: MACHINE.noted(name) for name in efficiencies}
    full = {"flow": flow, "head": head, "input_power": known["input_power"]}
    slowed = full | {"static_head": static, "new_flow": at.flow}
    assert solved(given, "input_power", units) == told["Full speed"][2]
    assert at.head == pytest.approx(known["system_head"])
    assert told["85% speed"][1:] == [
        solved(slowed, name, units) for name in ("system_head", "slowed_power")
    ]
    by_law = {name: full[name] for name in ("input_power", "flow")} | {"new_flow": at.flow}
    law = float(solved(by_law, "slowed_power", units).split()[0])
    assert f"{100 * law / known['input_power']:.0f}%" == told["Cube law"][2]


def test_slowing_saves_by_the_cube_law_what_is_published_when_there_is_no_static_head():
    # R: US DOE Motor Systems Tip Sheet 11: a fifth off the speed takes about half off the power
    # (48.8 %), so 51 % is left.
    figure = shown("slowing", speed_cut=20, static_head=0)
    told = table(figure)
    assert ["80%", "64%", "51%"] == told["In percent"] == told["Cube law"]
    assert "the cube law holds" in figure.headline.value
    _, below = two(figure)
    system, law = named(below, "this system"), named(below, "cube law")
    for one, other in zip(system, law, strict=True):
        assert one == pytest.approx(other)


def test_slowing_draws_more_power_than_the_cube_law_wherever_water_is_lifted():
    _, below = two(shown("slowing", static_head=30))
    system, law = named(below, "this system"), named(below, "cube law")
    pairs = list(zip(system, law, strict=True))[1:-1]
    assert all(one > other for (_, one), (_, other) in pairs)
    for end in (system[-1], law[-1]):
        assert [100, 100] == pytest.approx(list(end))


@pytest.mark.parametrize(
    ("cut", "moves"),
    # By the affinity laws 89.4 ft at no flow fall to 30 ft at 100 x sqrt(30 / 89.4) = 57.9 % speed.
    [(42, True), (43, False)],
)
def test_slowing_says_from_which_speed_on_no_water_moves(cut, moves):
    figure = shown("slowing", speed_cut=cut, static_head=30)
    assert moves == ("No water moves" not in figure.headline.value)
    assert "only above 58% speed" in figure.headline.value
    assert moves == (table(figure)[f"{100 - cut}% speed"][0] != "none")
    assert [moves, moves] == [bool(marks(chart, "diamond")) for chart in two(figure)]


def test_slowing_runs_at_one_point_at_full_speed_whatever_part_of_the_head_is_static():
    for static in (0, 20, 50):
        figure = shown("slowing", speed_cut=0, static_head=static)
        assert ["670 gpm", "70.1 ft"] == table(figure)["Full speed"][:2]
        assert "At full speed the pump moves 670 gpm" in figure.headline.value


def test_slowing_shows_the_pump_of_the_chapters_story_which_lifts_less_than_it_makes():
    assert WHERE in PUMPS
    most = FIGURES["slowing"].slides[1].us.high
    assert most < MACHINE.noted("rated_head") < MACHINE.noted("shutoff_head")

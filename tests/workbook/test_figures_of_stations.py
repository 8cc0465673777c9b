"""The figures of a sheave, of a feed pump and of a generator: their numbers, limits and drawings."""

import pytest

from solver.topics.chemical.small import HYPOCHLORITE
from workbook.figures.chart import ORANGE
from workbook.figures.explorer import FIGURES
from workbook.figures.feeding import HEAVIER

from .test_figures import drawn, shown, solved, table


def number(text):
    """The number that a cell begins with: 1044.0 of "1,044 rpm"."""
    return float(text.replace(",", "").split()[0].rstrip("%"))


def curve(figure, label):
    """The points of the line that the legend calls so."""
    return next(line for line in drawn(figure)[0].lines if line.label == label).points


@pytest.mark.parametrize("units", ["us", "si"])
def test_sheave_tells_the_speed_torque_and_power_that_the_solver_works(units):
    figure = shown("sheave", units)
    told, values = table(figure), figure.values
    pump = {"pump_sheave": {"us": 12.4, "si": 315}[units]}
    motor = {"running_speed": values["running_speed"], **pump}
    now = {"motor_sheave": values["motor_sheave"], **motor}
    new = {"motor_sheave": values["new_motor_sheave"], **motor}
    # The affinity laws are known by both speeds, and these by the sheaves.
    ratio = {"speed_ratio": values["new_motor_sheave"] / values["motor_sheave"]}
    power = {"brake_power": values["brake_power"]}
    assert told["Pump speed"] == [solved(one, "pump_speed", units) for one in (now, new)]
    assert told["Belt speed"] == [solved(one, "belt_speed", units) for one in (now, new)]
    assert told["Power at the pump"][1] == solved(power | ratio, "new_shaft_power", units)


def test_sheave_goes_by_the_affinity_laws_and_the_torque_rule():
    # By hand, from 6 in to 9 in: 1.5 times the speed, 2.25 the torque, 3.375 the power.
    figure = shown("sheave", motor_sheave=6, new_motor_sheave=9, brake_power=8, motor_size=30)
    assert (
        "turns 50% faster. It takes 125% more torque and 238% more power" in figure.headline.value
    )
    told = {row: [*map(number, cells)] for row, cells in table(figure).items() if row}
    assert [8, 27] == told["Power at the pump"]
    # 5,252 hp / rpm: Hubert, Electric Machines, Ex 5.3.
    for power, speed, torque in zip(
        told["Power at the pump"], told["Pump speed"], told["Torque at the pump"], strict=True
    ):
        assert torque == pytest.approx(5252 * power / speed, rel=1e-3)


def test_sheave_has_the_belt_speed_of_a_published_drive():
    # Wentzell, Machine Design, Ex 14.2: 4 in at 1,800 rpm run at 1,885 ft/min.
    told = table(shown("sheave", new_motor_sheave=4, running_speed=1800))
    assert number(told["Belt speed"][1]) == pytest.approx(1884.96, rel=1e-3)


@pytest.mark.parametrize(
    ("values", "says"),
    [
        ({"new_motor_sheave": 6.2, "motor_sheave": 6.2}, "This is the sheave that is on now."),
        (
            {"new_motor_sheave": 6, "motor_sheave": 7},
            "slower. It takes 27% less torque and 37% less",
        ),
        (
            {"new_motor_sheave": 8, "motor_size": 15},
            "Its nameplate says 15 hp: don't fit this one.",
        ),
        ({"new_motor_sheave": 8, "running_speed": 3500}, "are made for up to 6,500 ft/min."),
        ({"new_motor_sheave": 7, "motor_size": 30}, "of the 30 hp on its nameplate."),
    ],
)
def test_sheave_says_what_the_motor_and_the_rim_are_made_for(values, says):
    assert says in shown("sheave", **values).view.headline


def test_sheave_draws_all_curves_through_now_and_its_limits_where_they_are_reached():
    figure = shown("sheave", motor_sheave=6, running_speed=3500, brake_power=9.5, motor_size=15)
    for label, law in (("speed", 1), ("torque", 2), ("power", 3)):
        points = curve(figure, label)
        assert [100 * (x / 6) ** law for x, _ in points] == pytest.approx([y for _, y in points])
    assert [150, 150] == pytest.approx([y for _, y in curve(figure, "nameplate power")])
    # 6,500 ft/min over 3.14 and 3,500 rpm, in inches.
    limit = [6500 * 12 / 3.14 / 3500] * 2
    assert limit == pytest.approx([x for x, _ in curve(figure, "rim limit")])


@pytest.mark.parametrize("units", ["us", "si"])
def test_feeding_tells_the_feed_and_the_speed_that_the_solver_works(units):
    figure = shown("feeding", units, dose=4, stroke_setting=70)
    told, values = table(figure), figure.values
    job = {name: values[name] for name in ("daily_flow", "dose", "solution_strength")}
    job["specific_gravity"] = 1 + HEAVIER * values["solution_strength"]
    pump = {name: values[name] for name in ("feeder_capacity", "stroke_setting")}
    assert told["Solution needed"] == [solved(job, "solution_hour", units)]
    assert told["In the cylinder"] == [solved(job, "solution_minute", units)]
    assert told["Speed it takes"] == [solved(job | pump, "speed_setting", units)]


def test_feeding_has_the_dose_of_a_published_pump():
    # California SWRCB, chlorine dosage, example 2: 40 mL/min of 0.25% bleach, 0.9525 of it chlorine, that
    # weighs as water, make 0.72 mg/L in 35 gpm. The sliders start higher, so the view is asked itself.
    values = {"daily_flow": 35 * 1440 / 1e6, "dose": 0.72, "solution_strength": 0.25 * 0.9525}
    rest = {"stroke_setting": 100.0, "feeder_capacity": 1.0}
    rows = dict(FIGURES["feeding"].view(values | rest, "us").rows)
    assert 40 == pytest.approx(number(rows["In the cylinder"]), rel=0.01)


def test_feeding_takes_hypochlorite_as_heavy_as_it_is_delivered():
    # Makers' data sheets, from memory.
    for strength, gravity in HYPOCHLORITE.delivered:
        assert gravity == pytest.approx(1 + HEAVIER * strength, abs=0.011)


@pytest.mark.parametrize(
    ("values", "says"),
    [
        ({"feeder_capacity": 3}, "Get a larger one or a stronger solution."),
        ({"stroke_setting": 30}, "Lengthen the stroke."),
        ({"feeder_capacity": 45}, "Get a smaller pump or a weaker solution."),
        ({}, "that is 56% speed. At this stroke the pump keeps up from 0.72 MGD to 4.32 MGD."),
    ],
)
def test_feeding_says_whether_the_pump_reaches_and_what_to_change(values, says):
    assert says in shown("feeding", **values).headline.value


def test_feeding_draws_the_pumps_band_where_the_need_meets_it_at_the_flows_of_the_table():
    figure = shown("feeding", stroke_setting=50)
    chart, told = drawn(figure)[0], table(figure)
    (band,), (x, y) = chart.bars, curve(figure, "what the dose takes")[1]
    assert [1.2, 6] == pytest.approx(
        [band.foot, band.foot + band.tall]
    )  # 12 gph: a tenth, and half
    for row, edge in (("Least plant flow", 1.2), ("Most plant flow", 6)):
        assert number(told[row][0]) == pytest.approx(edge / (y / x), rel=1e-3)


def test_starting_counts_what_runs_and_every_start():
    # By hand: a motor of 50 A at 460 V takes 1.732 x 460 x 50 / 1,000 = 39.836 kVA running, and six times
    # that at the start; 17 kW at a power factor of 0.85 are 20 kVA.
    values = {"running_pumps": 2, "full_load_amps": 50, "starting_percent": 600, "other_load": 17}
    told = table(shown("starting", rated_volts=460, **values))
    run, start = 39.836, 6 * 39.836
    hand = {"All running": 20 + 2 * run, "Started in turn": 20 + run + start}
    hand["All at once"] = 20 + 2 * start
    assert hand == pytest.approx({row: number(told[row][0]) for row in hand}, rel=1e-3)


def test_starting_takes_the_smallest_set_that_is_sold_and_carries_it():
    # 298.9 kVA at a power factor of 0.8 are 239 kW: sets of 200 and 250 kW are sold (common practice).
    values = {"running_pumps": 2, "full_load_amps": 50, "starting_percent": 600, "other_load": 17}
    figure = shown("starting", rated_volts=460, **values)
    assert ["250 kW", "400 kW"] == [
        table(figure)[row][1] for row in ("Started in turn", "All at once")
    ]
    # Both pumps and the rest run at 0.85 x 99.67 kVA = 84.7 kW, which 80 kW do not carry.
    assert "100 kW" == table(figure)["All running"][1]
    assert number(table(figure)["Started in turn"][2]) == pytest.approx(84.7 / 2.5, rel=1e-3)


def test_starting_has_the_start_of_a_published_motor():
    # NEC Table 430.251(B): 60 hp at 460 V has 77 A (430.250) and locked-rotor 435 A, so 565%: 347 kVA.
    values = {"running_pumps": 1, "full_load_amps": 77, "starting_percent": 565, "other_load": 0}
    view = FIGURES["starting"].view(values | {"rated_volts": 460}, "us")
    told = {row: cells for row, *cells in view.rows}
    assert 347 == pytest.approx(number(told["Started in turn"][0]), rel=2e-3)


@pytest.mark.parametrize(
    ("values", "says"),
    [
        (
            {},
            "Started in turn, these pumps take a set of 200 kW. With all running, it is loaded to 38%.",
        ),
        ({}, "At 30% or less a diesel can wet stack."),  # NFPA 110 8.4.2 (from memory)
        ({"running_pumps": 1}, "To start, this pump takes a set of 150 kW. Once it runs,"),
    ],
)
def test_starting_says_which_set_it_takes_and_how_it_is_loaded(values, says):
    assert says in shown("starting", **values).headline.value


def test_starting_needs_a_smaller_set_with_a_soft_starter_and_says_nothing_of_wet_stacking():
    across, soft = shown("starting"), shown("starting", starting_percent=150)
    sizes = [number(table(figure)["Started in turn"][1]) for figure in (across, soft)]
    assert sizes[1] < sizes[0]
    assert "wet stack" not in soft.headline.value


def test_starting_draws_a_bar_for_each_start_and_one_for_all_at_once():
    figure = shown("starting", running_pumps=4)
    chart, told = drawn(figure)[0], table(figure)
    ends = {}
    for bar in chart.bars:
        ends[bar.foot] = max(ends.get(bar.foot, 0), bar.left + bar.wide)
    *starts, running, at_once = (ends[foot] for foot in sorted(ends))
    assert starts == sorted(starts)
    tops = {"Started in turn": starts[-1], "All running": running, "All at once": at_once}
    assert tops == pytest.approx({row: number(told[row][0]) for row in tops}, rel=1e-3)
    assert 5 == sum(bar.color == ORANGE for bar in chart.bars)
    (rated,) = {x for x, _ in chart.lines[0].points}
    assert rated == pytest.approx(number(told["Started in turn"][1]) / 0.8)

"""Efficiency and cost: mistakes and judgments against the same sums done here in plain numbers.

Nothing here uses the solver's formulas: the sums are written out again. The horsepower is 0.746 kW
and the water power constants 3960 and 102, as the workbook teaches them.
"""

import re
from math import prod

import pytest

from solver import draw, grade
from solver.topics.tables import motor_sizes

from .drawn import rounded, seeds, typed

SEEDS = seeds(40)
KW = {"us": 0.746, "si": 1.0}
LIFT = {"us": 3960, "si": 102}
both_systems = pytest.mark.parametrize("units", ["us", "si"])


def share(given, name):
    return given[f"{name}_efficiency"] / 100


def charges(given, for_energy, for_demand):
    return given["energy"] * for_energy + for_demand + given["fixed_charge"]


def points_saved(given, machine):
    points = share(given, f"new_{machine}") - share(given, machine)
    return given["input_power"] * points * given["yearly_hours"] * given["energy_price"]


# Family, level, mistake, and what a learner who makes it works out from the givens.
MISTAKES = [
    ("one_efficiency", 1, "motor_power.used_twice",
     lambda g, u: g["water_power"] / share(g, "overall") ** 2),
    ("one_efficiency", 1, "motor_power.second_invented",
     lambda g, u: g["water_power"] / share(g, "overall") / 0.90),
    ("efficiencies_in_a_row", 1, "overall_efficiency.averaged",
     lambda g, u: (g["pump_efficiency"] + g["motor_efficiency"]) / 2),
    ("through_the_drive", 1, "motor_power.drive_left_out",
     lambda g, u: g["brake_power"] / share(g, "motor") * KW[u]),
    ("energy_used", 2, "run_time.all_day", lambda g, u: g["input_power"] * 24 * g["days"]),
    ("energy_used", 1, "energy.left_out.run_time", lambda g, u: g["input_power"]),
    ("energy_cost", 2, "run_time.left_out.days",
     lambda g, u: g["input_power"] * g["hours_per_day"] * g["energy_price"]),
    ("cost_per_volume", 2, "energy_per_volume.time_not_in_hours",
     lambda g, u: g["input_power"] * 1e6 / g["flow"] * g["energy_price"]),
    ("pump_saving", 2, "saved_power.pump_points_saved", lambda g, u: points_saved(g, "pump")),
    ("motor_saving", 1, "saved_power.motor_points_saved", lambda g, u: points_saved(g, "motor")),
    ("pump_saving", 1, "saved_power.all_of_the_old",
     lambda g, u: g["input_power"] * g["yearly_hours"] * g["energy_price"]),
    ("pump_saving", 1, "saved_energy.all_year",
     lambda g, u: (g["input_power"] - g["new_input_power"]) * 8760 * g["energy_price"]),
    ("simple_payback", 1, "simple_payback.upside_down.installed_cost",
     lambda g, u: g["saved_energy"] * g["energy_price"] / g["installed_cost"]),
    ("bill", 2, "bill.demand_by_hours",
     lambda g, u: charges(g, g["energy_price"], g["energy"] * g["demand_price"])),
    ("bill", 2, "bill.prices_swapped",
     lambda g, u: charges(g, g["demand_price"], g["peak_demand"] * g["energy_price"])),
    ("average_price", 3, "average_price.energy_price_alone", lambda g, u: g["energy_price"]),
    ("time_of_use_bill", 1, "time_of_use_bill.prices_swapped",
     lambda g, u: g["on_peak_energy"] * g["off_peak_price"]
     + g["off_peak_energy"] * g["on_peak_price"]),
    ("shift_saving", 1, "shift_saving.whole_price_saved",
     lambda g, u: g["energy_moved"] * g["on_peak_price"]),
]  # fmt: skip


@both_systems
@pytest.mark.parametrize(
    ("family", "level", "mistake", "worked"), MISTAKES, ids=[f"{m[0]}-{m[2]}" for m in MISTAKES]
)
def test_a_slip_of_the_topic_is_named_to_the_learner_who_makes_it(
    family, level, mistake, worked, units
):
    cases = [draw(family, seed, units, level) for seed in SEEDS]
    heard = [grade(case, typed(worked(case.given, units), case.unit)).mistake for case in cases]
    # Where another mistake of the same draw gives the same number, that one is named.
    assert heard.count(mistake) > 0.8 * len(SEEDS)
    assert None not in heard


def test_horsepower_turned_into_kilowatts_twice_is_named():
    for seed in SEEDS:
        case = draw("input_power", seed, "us", 1)
        twice = case.given["brake_power"] / share(case.given, "motor") * 0.746 * 0.746
        assert grade(case, typed(twice, case.unit)).mistake == "input_power.converted_twice"


@both_systems
def test_a_motor_sized_on_what_it_takes_is_told_that_its_size_is_what_it_gives(units):
    heard = []
    for seed in SEEDS:
        case = draw("motor_size", seed, units, 2)
        given = case.given
        brake = given["flow"] * given["head"] / LIFT[units] / share(given, "pump")
        assert standard_size(brake, units) == case.answer
        too_large = standard_size(brake / share(given, "motor"), units)
        heard.append(grade(case, typed(too_large, case.unit)).mistake)
    # Sizes are few: another mistake of the same draw may lead to the same motor.
    assert heard.count("motor_size.sized_on_input") > 0.6 * len(SEEDS)
    assert None not in heard


def standard_size(load, units):
    return min(size for size in motor_sizes(units) if size >= load)


@both_systems
@pytest.mark.parametrize("family", ["pump_saving", "motor_saving"])
def test_a_saving_worked_from_useful_kilowatts_to_three_figures_is_right(family, units):
    """Another way than the worked steps: what the old machine passes on, over the new one."""
    machine = family.removesuffix("_saving")
    level = {"pump": 2, "motor": 1}[machine]
    right = 0
    for seed in SEEDS:
        case = draw(family, seed, units, level)
        given = case.given
        useful = rounded(given["input_power"] * share(given, machine), 3)
        saved = rounded(
            given["input_power"] - rounded(useful / share(given, f"new_{machine}"), 3), 3
        )
        energy = rounded(saved * given["yearly_hours"], 3)
        right += grade(case, typed(energy * given["energy_price"], case.unit)).status == "right"
    assert right >= 0.95 * len(SEEDS)


@both_systems
def test_prices_hours_and_demand_are_those_of_a_small_utility(units):
    """Ranges are common practice, no source."""
    for seed in SEEDS:
        given = draw("bill", seed, units, 3).given
        assert 0.06 <= given["energy_price"] <= 0.19
        assert 2.5 <= given["hours_per_day"] <= 20
        assert 6 <= given["demand_price"] <= 18
        assert given["peak_demand"] >= given["input_power"]


def numbers_of(text):
    return [float(n.replace(",", "")) for n in re.findall(r"\d[\d,]*\.?\d*", text)]


def least(case, measure):
    """The number of the choice whose numbers measure least."""
    return 1 + min(range(3), key=lambda i: measure(*numbers_of(case.choices[i])[:3]))


@both_systems
@pytest.mark.parametrize("level", [1, 2])
def test_the_offer_that_pays_back_first_has_the_least_cost_for_what_it_saves(level, units):
    # At level 2 hours and price are the same for all offers, so kilowatts stand for dollars.
    for seed in SEEDS:
        case = draw("pays_back_first", seed, units, level)
        assert case.answer == least(case, lambda cost, saved, *_: cost / saved)


@both_systems
def test_the_pump_cheaper_to_run_has_the_least_kilowatts_for_its_flow(units):
    for seed in SEEDS:
        case = draw("cheaper_pump", seed, units, 1)
        assert case.answer == least(case, lambda flow, power, *_: power / flow)


@both_systems
def test_where_hours_differ_in_price_the_price_counts_too(units):
    for seed in SEEDS:
        case = draw("cheaper_pump", seed, units, 2)
        assert case.answer == least(case, lambda flow, power, price: power / flow * price)


@both_systems
@pytest.mark.parametrize("level", [1, 2])
def test_the_machine_that_loses_most_or_least_is_found_from_what_reaches_it(level, units):
    for seed in SEEDS:
        case = draw("most_lost", seed, units, level)
        given = case.given
        if level == 1:
            names = ("motor_power", "motor_output", "brake_power", "water_power")
            powers = [given[name] for name in names]
        else:
            shares = [share(given, machine) for machine in ("motor", "drive", "pump")]
            powers = [given["motor_power"] * prod(shares[:n]) for n in range(4)]
        machines = ("the motor", "the belts", "the pump")
        losses = dict(zip(machines, (powers[n] - powers[n + 1] for n in range(3)), strict=True))
        wanted = max if "loses the most" in case.question else min
        assert wanted(losses, key=losses.get) == case.choices[int(case.answer) - 1].lower()


@both_systems
def test_the_only_report_called_wrong_has_wire_to_water_above_a_machine_of_its_own(units):
    for seed in SEEDS:
        case = draw("impossible_efficiency", seed, units, 1)
        impossible = [
            number
            for number, text in enumerate(case.choices, 1)
            if numbers_of(text)[2] > min(numbers_of(text)[:2])
        ]
        assert [case.answer] == impossible


@both_systems
def test_the_only_log_called_wrong_gives_the_water_more_than_the_meter_shows(units):
    for seed in SEEDS:
        case = draw("impossible_efficiency", seed, units, 2)
        impossible = []
        for number, text in enumerate(case.choices, 1):
            flow, head, meter = numbers_of(text)
            if flow * head / LIFT[units] * KW[units] > meter:
                impossible.append(number)
        assert [case.answer] == impossible


@both_systems
def test_the_energy_of_a_year_is_that_of_365_days(units):
    assert {365} == {draw("energy_cost", seed, units, 3).given["days"] for seed in SEEDS}

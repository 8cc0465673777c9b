"""Phase balance and motors, against published worked examples, manuals and tables."""

from itertools import pairwise
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver.engine.draw import Draw
from solver.engine.plan import find_plan
from solver.topics.balance.judgments_leads import judge_best, judge_cause
from solver.topics.balance.legs import TURNS
from solver.topics.formulas import FORMULAS
from solver.topics.tables import by_size, derating_factor, full_load_amps

from .published import Row, every, worked

SHEET_7 = "US DOE Motor Systems Tip Sheet 7 (-3733)"
HUBERT = "Hubert, Electric Machines, Ex 5.14"
MANUAL_A = "a pump maker's manual, current unbalance"
MANUAL_B = "another pump maker's manual, current unbalance"
MANUAL_C = "a third pump maker's manual, sample calculation"
LIMITS_PAGE = "a web page on the limits of NEMA MG 1"
CALCULATOR = "a web calculator of voltage unbalance"
ON_THE_GRAPH = 0.02  # of nameplate: how near MG 1 Figure 14-1 is read


def amps(a, b, c, turn=""):
    return {f"amps_a{turn}": a, f"amps_b{turn}": b, f"amps_c{turn}": c}


def volts(ab, bc, ca):
    return {"volts_ab": ab, "volts_bc": bc, "volts_ca": ca}


NINE = amps(51, 46, 53) | amps(50, 48, 52, "_2") | amps(50, 49, 51, "_3")

ROWS = [
    # Volts, by NEMA MG 1
    Row("460", "volts_average", "us", volts(462, 463, 455), SHEET_7, "R"),
    Row("1.1", "voltage_unbalance", "us", volts(462, 463, 455), SHEET_7, "R"),
    Row("2.58", "voltage_unbalance", "us", volts(460, 455, 440), HUBERT, "R2"),
    Row("0.84", "voltage_unbalance", "us", volts(480, 476, 472), LIMITS_PAGE, "R"),
    Row("1.96", "voltage_unbalance", "us", volts(460, 467, 450), CALCULATOR, "R"),
    # Amps, by the same definition
    Row("8", "current_unbalance", "us", amps(25.5, 23.0, 26.5), f"{MANUAL_A}, hookup 1", "R"),
    Row("4", "current_unbalance", "us", amps(25, 24, 26), f"{MANUAL_A}, hookup 2", "R"),
    Row("50", "amps_average", "us", amps(51, 46, 53), MANUAL_C, "R"),
    Row("4", "amps_deviation", "us", amps(51, 46, 53), MANUAL_C, "R"),
    Row("8", "current_unbalance", "us", amps(51, 46, 53), MANUAL_C, "R"),
    Row("8", "current_unbalance", "us", NINE, f"{MANUAL_B}, hookup 1", "R"),
    Row("4", "current_unbalance_2", "us", NINE, f"{MANUAL_B}, hookup 2", "R"),
    Row("2", "current_unbalance_3", "us", NINE, f"{MANUAL_B}, hookup 3", "R"),
    # The two definitions on the same readings
    Row("6.25", "current_unbalance", "us", amps(3.5, 3.8, 3.9), "usual practice", "C"),
    Row("10.7", "current_spread", "us", amps(3.5, 3.8, 3.9), "usual practice", "C"),
    # What unbalance does to a motor
    Row(
        "6.4", "added_rise", "us", {"balanced_rise": 80, "voltage_unbalance": 2}, SHEET_7, "R"
    ),
    Row(
        "124.64", "unbalanced_rise", "us", {"balanced_rise": 110, "voltage_unbalance": 2.58},
        HUBERT, "R2",
    ),
    Row(
        "27.6", "derated_power", "us", {"motor_size": 30} | volts(460, 455, 440),
        HUBERT, "R2", 0, 2 * 30 * ON_THE_GRAPH,
    ),
    Row(
        "9.5", "derated_power", "us", {"motor_size": 10} | volts(460, 467, 450),
        CALCULATOR, "R", 0, 2 * 10 * ON_THE_GRAPH,
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_unbalance(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


@pytest.mark.parametrize(
    "readings",
    [
        pytest.param(
            amps(25.5, 23.0, 26.5) | amps(25, 24, 26, "_2") | amps(25.0, 24.5, 25.5, "_3"),
            id=f"{MANUAL_A} (R)",
        ),
        pytest.param(NINE, id=f"{MANUAL_B} (R)"),
    ],
)
def test_rolled_leads_are_judged_as_the_manuals_judge_them(readings):
    # Both: the high leg is always L3, so the cause is in the supply; hookup 3 has the least
    # unbalance and is the one to keep.
    found = {
        f"current_unbalance{turn}": find_plan(
            tuple(readings), f"current_unbalance{turn}", FORMULAS, "us"
        ).run(readings)[f"current_unbalance{turn}"]
        for turn in TURNS
    }
    chance = Draw("a manual")
    assert "supply" == judge_cause(TURNS)(readings, "us", chance).right.id
    assert "rolled_twice" == judge_best(found, "us", chance).right.id


@pytest.mark.parametrize(
    ("published", "unbalance", "source"),
    [
        (100, 1, "NEMA MG 1 Figure 14-1 (M)"),
        (95, 2, "NEMA MG 1 Figure 14-1 (M)"),
        (88, 3, "NEMA MG 1 Figure 14-1 (M)"),
        (82, 4, "NEMA MG 1 Figure 14-1 (M)"),
        (75, 5, "NEMA MG 1 Figure 14-1 (M)"),
        (90, 3, "ABB, Power quality conditioning (R)"),
        (92, 2.58, "Hubert, Electric Machines, Ex 5.14: 27.6 of 30 hp (R2)"),
    ],
)
def test_the_derating_is_read_as_the_graph_is(published, unbalance, source):
    assert published == pytest.approx(derating_factor(unbalance, "us"), abs=100 * ON_THE_GRAPH)


def test_more_unbalance_never_allows_more_load():
    read = [derating_factor(tenths / 10, "us") for tenths in range(51)]
    assert all(before >= after for before, after in pairwise(read))


reading = st.integers(min_value=1, max_value=9999).map(lambda tenths: tenths / 10)


@given(reading, reading, reading)
def test_the_spread_is_one_and_a_half_to_two_times_the_unbalance(a, b, c):
    # Arithmetic, whatever the readings: the two that are not furthest share its deviation.
    def find(asked):
        return find_plan(tuple(values), asked, FORMULAS, "us").run(values)[asked]

    values = amps(a, b, c)
    unbalance, spread = find("current_unbalance"), find("current_spread")
    assert 1.5 * unbalance - 1e-9 <= spread <= 2 * unbalance + 1e-9


# NEC (NFPA 70) Table 430.250, 460 V (R2: two copies of the table).
NEC_460 = {
    1: 2.1, 1.5: 3.0, 2: 3.4, 3: 4.8, 5: 7.6, 7.5: 11, 10: 14, 15: 21, 20: 27, 25: 34, 30: 40,
    40: 52, 50: 65, 60: 77, 75: 96, 100: 124, 125: 156, 150: 180, 200: 240,
}  # fmt: skip
# NEMA MG 1 Table 12-12, 4 poles, enclosed, percent (R: Washington Admin. Code 51-11C-40508).
NEMA_PREMIUM = {
    1: 85.5, 1.5: 86.5, 2: 86.5, 3: 89.5, 5: 89.5, 7.5: 91.7, 10: 91.7, 15: 92.4, 20: 93.0, 25: 93.6,
    60: 95.0,  # R: a trade magazine
}  # fmt: skip
# IEC 60034-30, IE3, 4 poles, 50 Hz, percent (R2: a motor maker's table of minimum efficiencies).
IE3 = {0.75: 82.5, 1.1: 84.1, 1.5: 85.3, 2.2: 86.7, 3: 87.7, 4: 88.6, 5.5: 89.6, 7.5: 90.4}
# NEC Table 430.250 at 230 V and 208 V (R2, the same two).
NEC_230_208 = {
    5: (15.2, 16.7), 7.5: (22, 24.2), 10: (28, 30.8), 15: (42, 46.2), 20: (54, 59.4), 25: (68, 74.8),
    30: (80, 88), 40: (104, 114), 50: (130, 143), 60: (154, 169), 75: (192, 211), 100: (248, 273),
}  # fmt: skip


def test_full_load_amps_of_the_us_motors_are_those_of_the_nec():
    assert NEC_460 == by_size("full_load_amps_us", "460")


def test_efficiencies_of_the_us_motors_are_those_of_nema_premium():
    found = by_size("premium_motors_us", "4_poles")
    assert NEMA_PREMIUM == {size: found[size] for size in NEMA_PREMIUM}


def test_efficiencies_of_the_metric_motors_are_those_of_ie3():
    found = by_size("premium_motors_si", "4_poles")
    assert IE3 == {size: found[size] for size in IE3}


def test_amps_at_230_and_208_volts_are_2_and_2_2_times_those_at_460():
    for size, (at_230, at_208) in NEC_230_208.items():
        amps = full_load_amps(size, 460, "us")
        assert at_230 == pytest.approx(2 * amps, rel=0.005), size
        assert at_208 == pytest.approx(2.2 * amps, rel=0.005), size


def test_amps_of_the_metric_motors_carry_their_power_at_400_volts():
    # Arithmetic: P = root 3 x U x I x power factor x efficiency; power factors 0.68 to 0.88 (C).
    for size, percent in by_size("premium_motors_si", "4_poles").items():
        apparent = sqrt(3) * 400 * full_load_amps(size, 400, "si") / 1000
        assert 0.68 <= size / (percent / 100) / apparent <= 0.88, size


def test_a_100_hp_motor_draws_the_published_input():
    # Hubert, Electric Machines, Ex 4.6 (R2): 100 hp at 91 %, 230 V and 248 A: 81,978 W in,
    # power factor 0.8298.
    row = Row(
        "81.978", "input_power", "us", {"brake_power": 100, "motor_efficiency": 91},
        "Hubert, Ex 4.6", "R2",
    )  # fmt: skip
    assert row.value == pytest.approx(worked(row), abs=row.near)
    power_factor = 1000 * worked(row) / (sqrt(3) * 230 * 2 * 124)
    assert 0.8298 == pytest.approx(power_factor, abs=0.00005)

"""Three-phase power and the nameplate, against published worked examples and tables."""

import pytest

from solver.topics.nameplate.formulas import code_letter
from solver.topics.tables import full_load_amps, named_rows

from .published import CONSTANT, Row, every, worked

HUBERT = "Hubert, Electric Machines"
SHEET_9 = "US DOE Motor Systems Tip Sheet 9 (-3736)"
FACT_SHEET = "US DOE fact sheet GO-10097-517, Determining Electric Motor Load"
LESSON = "a web lesson on three-phase power"
LESSON_KVAR = "a web lesson on power factor correction"
LESSON_B = "another web lesson on three-phase power"
CAPACITOR = "a web page on sizing a capacitor for power factor"
CALCULATOR = "a web calculator of three-phase power"
OVERLOAD = "a web calculator of motor overloads"
START = "a web calculator of motor starting current"
SLIP = "a web calculator of slip"
AT_60_HZ = {"frequency": 60}


def motor_of(kilowatts: float, efficiency: float) -> dict[str, float]:
    return {"brake_power": kilowatts, "motor_efficiency": efficiency}


ROWS = [
    # kVA, kW and power factor
    Row("83.14", "apparent_power", "us", {"line_volts": 480, "line_amps": 100}, LESSON, "R"),
    Row("83.1", "apparent_power", "us", {"line_volts": 480, "line_amps": 100}, LESSON_B, "R"),
    Row(
        "74.82", "input_power", "us",
        {"line_volts": 480, "line_amps": 100, "power_factor": 0.9}, f"{LESSON}, Ex 1", "R",
    ),
    Row(
        "70.67", "input_power", "us",
        {"line_volts": 480, "line_amps": 100, "power_factor": 0.85}, f"{LESSON}, Ex 2", "R",
    ),
    Row(
        "52.59", "input_power", "us",
        {"line_volts": 600, "line_amps": 55, "power_factor": 0.92}, f"{LESSON}, Ex 3", "R", CONSTANT,
    ),
    Row("143", "apparent_power", "us", {"input_power": 100, "power_factor": 0.7}, CALCULATOR, "R"),
    Row("97.8", "input_power", "si", motor_of(90, 92), f"{CAPACITOR}, motor B", "R"),
    Row(
        "41.7", "apparent_power", "si", motor_of(30, 90) | {"power_factor": 0.8},
        f"{CAPACITOR}, motor A", "R",
    ),
    Row(
        "115", "apparent_power", "si", motor_of(90, 92) | {"power_factor": 0.85},
        f"{CAPACITOR}, motor B", "R",
    ),
    Row(
        "0.8298", "power_factor", "us",
        motor_of(100, 91) | {"line_volts": 230, "line_amps": 248}, f"{HUBERT}, Ex 4.6", "R2",
    ),
    # kvar to correct the power factor
    Row(
        "105.33", "capacitor_kvar", "us",
        {"input_power": 250, "power_factor": 0.8, "corrected_power_factor": 0.95},
        f"{LESSON_KVAR}, Ex 2", "R",
    ),
    Row(
        "40.19", "capacitor_kvar", "us",
        {"input_power": 75, "power_factor": 0.7, "corrected_power_factor": 0.9},
        f"{LESSON_KVAR}, Ex 3", "R",
    ),
    Row(
        "1.99", "capacitor_kvar", "si",
        {"input_power": 5, "power_factor": 0.75, "corrected_power_factor": 0.9},
        "a web lesson on capacitor size", "R",
    ),
    Row(
        "44", "capacitor_kvar", "si",
        {"input_power": 164.6, "power_factor": 0.86, "corrected_power_factor": 0.95}, CAPACITOR, "R",
    ),
    Row(
        "759.85", "capacitor_kvar", "si",
        {"input_power": 650, "power_factor": 0.65, "corrected_power_factor": 1},
        "a web page on capacitor size (by a table)", "R", CONSTANT,
    ),
    # Speed and slip
    Row("3600", "synchronous_speed", "us", AT_60_HZ | {"poles": 2}, SHEET_9, "R"),
    Row("1800", "synchronous_speed", "us", AT_60_HZ | {"poles": 4}, SHEET_9, "R"),
    Row("1200", "synchronous_speed", "us", AT_60_HZ | {"poles": 6}, SHEET_9, "R"),
    Row("900", "synchronous_speed", "us", AT_60_HZ | {"poles": 8}, SHEET_9, "R"),
    Row("1500", "synchronous_speed", "si", {"frequency": 50, "poles": 4}, SLIP, "R"),
    Row("3", "slip", "us", AT_60_HZ | {"poles": 6, "running_speed": 1164},
        f"{HUBERT}, Ex 4.3", "R2", 0, 0.001),
    Row("4", "slip", "si", {"frequency": 50, "poles": 4, "running_speed": 1440}, SLIP, "R",
        0, 0.001),
    Row("3.33", "slip", "us", AT_60_HZ | {"poles": 6, "running_speed": 1160}, SLIP, "R"),
    Row(
        "4.17", "slip", "us", {"synchronous_speed": 3600, "running_speed": 3450},
        "a web page, percent slip of a 3600 rpm motor", "R",
    ),
    Row(
        "1746", "running_speed", "us", {"synchronous_speed": 1800, "slip": 3},
        "a web calculator of motor speed from slip", "R",
    ),
    Row(
        "60", "load_by_slip", "us",
        {"synchronous_speed": 1800, "rated_speed": 1750, "running_speed": 1770},
        f"{FACT_SHEET}, slip method", "M", 0, 0.001,
    ),
    # The overload, and the start
    Row("35", "overload_limit", "us", {"full_load_amps": 28, "service_factor": 1.15}, OVERLOAD, "R"),
    Row("32.2", "overload_limit", "us", {"full_load_amps": 28, "service_factor": 1.0}, OVERLOAD, "R"),
    Row("39.2", "raised_limit", "us", {"full_load_amps": 28, "service_factor": 1.15}, OVERLOAD, "R"),
    Row("125", "overload_percent", "us", {"rated_rise": 40}, OVERLOAD, "R"),
    Row("115", "overload_percent", "us", {"rated_rise": 55}, OVERLOAD, "R"),
    Row(
        "59.5", "starting_kva", "us", {"motor_size": 10, "starting_kva_per_hp": 5.945},
        f"{START} (about)", "R", 0, 0.2,
    ),
    Row(
        "75", "locked_rotor_amps", "us",
        {"motor_size": 10, "starting_kva_per_hp": 5.945, "rated_volts": 460}, START, "R",
    ),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_figure(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


# NEC (NFPA 70) Table 430.250, 230 V and 208 V (R2: two copies of the table).
NEC = {
    230: {3: 9.6, 5: 15.2, 7.5: 22, 10: 28, 15: 42, 20: 54, 25: 68, 30: 80, 40: 104, 50: 130,
          60: 154, 75: 192, 100: 248, 125: 312},
    208: {5: 16.7, 7.5: 24.2, 10: 30.8, 15: 46.2, 20: 59.4, 25: 74.8, 30: 88, 40: 114, 50: 143,
          60: 169, 75: 211, 100: 273},
    460: {1: 2.1, 3: 4.8, 10: 14, 30: 40, 100: 124, 200: 240},
}  # fmt: skip


@pytest.mark.parametrize("volts", NEC)
def test_full_load_amps_are_those_of_the_nec_at_each_voltage(volts):
    assert NEC[volts] == {size: full_load_amps(size, volts, "us") for size in NEC[volts]}


# Approximate full-load amps at 400 V: two published lists, which differ by a few percent.
SWITCHGEAR = {
    0.75: 1.9, 1.1: 2.6, 1.5: 3.6, 2.2: 5.0, 3: 6.6, 4: 8.5, 5.5: 11.3, 7.5: 15.2, 11: 21.7,
    15: 29.3,
}  # fmt: skip
MOTOR_GUIDE = {  # R: a web guide to motors, 400 V
    1.5: 3.4, 2.2: 4.8, 3: 6.3, 4: 8.1, 5.5: 11, 7.5: 14.8, 11: 21, 15: 28.5, 18.5: 35, 22: 42,
    30: 57, 37: 69, 45: 81,
}  # fmt: skip


def test_metric_full_load_amps_are_those_of_the_switchgear_manual():
    # R: a switchgear maker's manual, rated currents of 3-phase motors.
    assert SWITCHGEAR == {size: full_load_amps(size, 400, "si") for size in SWITCHGEAR}


def test_metric_full_load_amps_from_memory_are_near_another_published_list():
    for size, amps in MOTOR_GUIDE.items():
        assert amps == pytest.approx(full_load_amps(size, 400, "si"), rel=0.06), size


# NEC Table 430.7(B) (R: two copies of the table).
LETTERS = {
    "A": 0, "B": 3.15, "C": 3.55, "D": 4.0, "E": 4.5, "F": 5.0, "G": 5.6, "H": 6.3, "J": 7.1,
    "K": 8.0, "L": 9.0, "M": 10.0, "N": 11.2, "P": 12.5, "R": 14.0, "S": 16.0, "T": 18.0,
    "U": 20.0, "V": 22.4,
}  # fmt: skip


def test_code_letters_begin_where_the_nec_has_them():
    assert LETTERS == {letter: row[0] for letter, row in named_rows("code_letters").items()}


@pytest.mark.parametrize(
    ("letter", "per_horsepower"), [("G", 5.945), ("F", 5.59), ("A", 1.6), ("V", 30), ("P", 13.2)]
)
def test_a_code_letter_is_the_one_whose_range_holds_the_kva(letter, per_horsepower):
    # Mid-range values of the same tables; V has no end.
    assert letter == code_letter(per_horsepower)

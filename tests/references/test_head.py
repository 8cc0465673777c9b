"""Head against published worked examples, other published forms, and EPANET, fluids and IAPWS."""

from math import pi, sqrt

import pytest
import wntr
from fluids.atmosphere import ATMOSPHERE_1976
from fluids.core import head_from_K, head_from_P
from fluids.friction import friction_factor
from iapws import IAPWS97

from solver import draw
from solver.topics.tables import table_rows

from .published import CONSTANT, Row, every, worked

GAUGE_EXAMPLE = "a published worked example of gauges and velocity heads (2012)"
GAUGE_MAKER = "an instrument maker's note on pump gauges"
NAVAL = "US Navy MO-405, pump inspection, Figure 3-11"
TRAINING = "a pump training text, 20 in of vacuum (printed for 0.98 gravity)"
TWO_PIPES = "a published worked problem, pump of 400 and 350 mm pipes"
SOLBERG = "Solberg, Elementary Heat Power, Ex 9.8"
SPELLMAN = "Spellman, Handbook of Water and Wastewater Treatment Plant Operations, Ex 10.4"
CENGEL = "Cengel & Cimbala, Fluid Mechanics, Ex 5-15"
TOTAL_EXAMPLE = "a pump maker's worked example of total head"
SUPPLIER = "a supplier's friction loss chart, 1 in schedule 40 steel, C 100"
WORKED_EXAMPLE = "a published Hazen-Williams worked example"
VENNARD = "Vennard, Elementary Fluid Mechanics, Ex 9.10"
FITTING_EXAMPLE = "a published worked example of minor losses"
PRACTICE_25 = "a pump training guide, NPSH example 4"
BACHUS = "Bachus & Custodio, Know and Understand Centrifugal Pumps, NPSH of an open tank"
DAVIS = "Davis, Water and Wastewater Engineering, Table 3-7"
PIPE_1_IN = {"pipe_diameter": 1.049, "c_factor": 100}
SOLBERG_FLOW = 8000 / 62.4 * 7.480519  # gpm, at the 62.4 lb/ft3 of the source


def round_pipe(square_feet: float) -> float:
    """Inches across a round pipe of this area."""
    return 12 * sqrt(4 * square_feet / pi)


ONE_PUMP = {  # a vacuum of 127 mmHg as a gauge below zero
    "flow": 20_000 / 60, "discharge_gauge": 75, "suction_gauge": -0.127 * 13.6 * 9.81,
    "discharge_gauge_height": 0.45, "suction_gauge_height": -0.075,
    "discharge_diameter": 350, "suction_diameter": 400,
}  # fmt: skip
NINE_PERCENT = {
    "flow": 70, "discharge_gauge": 80, "suction_gauge": 5, "discharge_gauge_height": 6,
    "suction_gauge_height": 1, "discharge_diameter": 1, "suction_diameter": 1.5,
}  # fmt: skip

ROWS = [
    # Levels
    Row("24", "static_head", "us", {"static_discharge_head": 17, "suction_lift": 7}, f"{SPELLMAN} (its levels read, its total from memory)", "M"),
    Row("24", "static_head", "us", {"discharge_elevation": 145, "suction_elevation": 121}, f"{SPELLMAN} (its levels read, its total from memory)", "M"),
    # Gauges
    Row("185", "discharge_gauge_head", "us", {"discharge_gauge": 80}, GAUGE_EXAMPLE, "R"),
    Row("59.6", "discharge_gauge", "us", {"head": 80, "suction_gauge": 25}, GAUGE_MAKER, "R"),
    Row("10", "pressure", "us", {"discharge_gauge": 35, "suction_gauge": 25}, NAVAL, "R"),
    Row("22.66", "dynamic_suction_lift", "us", {"suction_vacuum": 20}, TRAINING, "R"),
    Row("94.363", "head", "us", {"flow": SOLBERG_FLOW, "discharge_gauge": 50, "suction_gauge": 10, "discharge_gauge_height": 2, "discharge_diameter": round_pipe(0.75), "suction_diameter": round_pipe(1)}, SOLBERG, "R2", CONSTANT),
    Row("7.6453", "discharge_gauge_head", "si", {"discharge_gauge": 75}, TWO_PIPES, "R", CONSTANT),
    Row("1.7272", "dynamic_suction_lift", "si", {"suction_vacuum": 0.127 * 13.6 * 9.81}, TWO_PIPES, "R", CONSTANT),
    Row("3.465", "discharge_velocity", "si", ONE_PUMP, TWO_PIPES, "R", 1e-3),
    Row("2.653", "suction_velocity", "si", ONE_PUMP, TWO_PIPES, "R", 1e-3),
    Row("10.15", "head", "si", ONE_PUMP, TWO_PIPES, "R", CONSTANT),
    # Pipes and fittings
    Row("3.71", "velocity", "us", PIPE_1_IN | {"flow": 10}, SUPPLIER, "R"),
    Row("7.42", "velocity", "us", PIPE_1_IN | {"flow": 20}, SUPPLIER, "R"),
    Row("1.55", "velocity_head", "us", {"velocity": 10}, PRACTICE_25, "R"),
    Row("11.63", "friction_rate", "us", PIPE_1_IN | {"flow": 10}, SUPPLIER, "R", 0.006),
    Row("41.99", "friction_rate", "us", PIPE_1_IN | {"flow": 20}, SUPPLIER, "R", 0.006),
    Row("9", "friction_rate", "us", {"flow": 200, "pipe_diameter": 3.048, "c_factor": 140}, WORKED_EXAMPLE, "R"),
    Row("2.7", "friction_head", "us", {"flow": 200, "pipe_diameter": 3.048, "c_factor": 140, "pipe_length": 30}, WORKED_EXAMPLE, "R"),
    Row("65.7", "friction_head", "us", {"flow": 90, "pipe_diameter": 3, "c_factor": 140, "pipe_length": 3000}, VENNARD, "R2", CONSTANT),
    Row("4.59", "minor_loss", "si", {"velocity": 3, "loss_coefficient": 10}, FITTING_EXAMPLE, "R"),
    # Totals
    Row("80", "head", "us", {"static_head": 50, "delivery_head": 20, "friction_head": 10}, TOTAL_EXAMPLE, "R"),
    Row("29", "head", "si", {"static_head": 25, "friction_head": 4}, CENGEL, "R2"),
    # The suction side
    Row("35.061", "npsh_available", "us", {"atmospheric_head": 33.9, "static_suction_head": 6, "vapor_head": 0.839, "suction_loss": 4}, BACHUS, "R"),
    Row("26.2", "atmospheric_head", "us", {"altitude": 7000}, BACHUS, "R"),
    Row("33.9", "atmospheric_head", "us", {"altitude": 0}, BACHUS, "R"),
    Row("9.17", "atmospheric_head", "si", {"altitude": 1000}, DAVIS, "R"),
    Row("8.11", "atmospheric_head", "si", {"altitude": 2000}, DAVIS, "R"),
    Row("7.15", "atmospheric_head", "si", {"altitude": 3000}, DAVIS, "R"),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_head(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)


def test_heights_and_velocity_heads_add_the_nine_percent_that_was_published():
    """A published example of 2019: 9 percent over the gauges alone (R)."""
    row = Row("9", "head", "us", NINE_PERCENT, GAUGE_EXAMPLE, "R")
    assert 9 == pytest.approx(100 * (worked(row) / (75 * 2.31) - 1), abs=row.near)


# Other published forms of Hazen-Williams; each gives head over a length of 100 ft, or of 100 m.
FORMS = {
    ("us", "US EPA, EPANET 2.2 manual ch. 3, cfs and ft (R)"): lambda q, d, c: (
        100 * 4.727 * (q / 448.831) ** 1.852 / c**1.852 / (d / 12) ** 4.871
    ),
    ("us", "a published form, ft per 100 ft (R)"): lambda q, d, c: (
        0.2083 * (100 / c) ** 1.852 * q**1.852 / d**4.8655
    ),
    ("us", "a supplier's friction loss chart (R)"): lambda q, d, c: (
        1043.94 * q**1.852 / (c**1.852 * d**4.8655)
    ),
    ("us", "10.44 Q^1.85, as in civil engineering reviews (R)"): lambda q, d, c: (
        100 * 10.44 * q**1.85 / (c**1.85 * d**4.8655)
    ),
    ("us", "4.52 psi per ft, as in fire protection (R), at 2.31 ft per psi"): lambda q, d, c: (
        100 * 2.31 * 4.52 * q**1.85 / (c**1.85 * d**4.87)
    ),
    ("si", "10.67 in m3/s and m (R)"): lambda q, d, c: (
        100 * 10.67 * (q / 1000) ** 1.852 / (c**1.852 * (d / 1000) ** 4.87)
    ),
    ("si", "10.643 Q^1.85 in m3/s and m (M)"): lambda q, d, c: (
        100 * 10.643 * (q / 1000) ** 1.85 / (c**1.85 * (d / 1000) ** 4.87)
    ),
    ("si", "a published form, 279000 Q in L/s and mm (R)"): lambda q, d, c: (
        100 * (279_000 * q / (c * d**2.63)) ** 1.852
    ),
}


@pytest.mark.parametrize(("units", "form"), FORMS, ids=lambda part: part)
def test_every_published_form_of_hazen_williams_gives_a_right_answer(units, form):
    rate = FORMS[units, form]
    for seed in range(100):
        case = draw("friction_head", seed, units, 2)
        pipe = (case.given[name] for name in ("flow", "pipe_diameter", "c_factor"))
        answer = rate(*pipe) * case.given["pipe_length"] / 100
        assert case.low <= answer <= case.high, case.code


METRIC = {"flow": 3.785411784 / 60, "pipe_diameter": 25.4, "pipe_length": 0.3048}


@pytest.mark.parametrize(
    ("flow", "diameter", "c_factor"), [(150, 4, 100), (450, 6, 130), (900, 8, 140), (2200, 12, 120)]
)
def test_friction_is_that_of_epanet_to_one_percent(flow, diameter, c_factor, tmp_path):
    """A reservoir, one pipe and a draw, solved by EPANET 2.2 as wntr brings it."""
    network = wntr.network.WaterNetworkModel()
    network.options.hydraulic.headloss = "H-W"
    network.options.time.duration = 0
    network.add_reservoir("well", base_head=100)
    network.add_junction("end", base_demand=flow * METRIC["flow"] / 1000)
    network.add_pipe(
        "main",
        "well",
        "end",
        1000 * METRIC["pipe_length"],
        diameter * METRIC["pipe_diameter"] / 1000,
        c_factor,
    )
    heads = (
        wntr.sim.EpanetSimulator(network).run_sim(file_prefix=str(tmp_path / "main")).node["head"]
    )
    lost = float(heads["well"].iloc[0] - heads["end"].iloc[0]) / METRIC["pipe_length"]
    given = {"flow": flow, "pipe_diameter": diameter, "c_factor": c_factor, "pipe_length": 1000}
    assert lost == pytest.approx(
        worked(Row("1", "friction_head", "us", given, "EPANET", "R")), rel=0.01
    )


@pytest.mark.parametrize("diameter", [100, 200, 300, 400])
@pytest.mark.parametrize("speed", [0.8, 1.3, 2.0])
def test_friction_of_smooth_pipe_is_that_of_darcy_weisbach_to_a_tenth(diameter, speed):
    """fluids: Colebrook for drawn plastic of 0.0015 mm, water of 15 C; C 150 (Table 3.2)."""
    metres, viscosity = diameter / 1000, IAPWS97(T=288.15, P=0.101325).nu
    factor = friction_factor(Re=speed * metres / viscosity, eD=1.5e-6 / metres)
    lost = head_from_K(factor * 100 / metres, speed)
    flow = speed * pi / 4 * metres**2 * 1000
    given = {"flow": flow, "pipe_diameter": diameter, "c_factor": 150}
    assert lost == pytest.approx(
        worked(Row("1", "friction_rate", "si", given, "fluids", "R")), rel=0.1
    )


@pytest.mark.parametrize("speed", [0.5, 1.2, 3.4])
@pytest.mark.parametrize("k", [0.9, 6.9, 14.0])
def test_what_fittings_take_is_that_of_fluids(speed, k):
    given = {"velocity": speed, "loss_coefficient": k}
    ours = worked(Row("1", "minor_loss", "si", given, "fluids", "R"))
    assert head_from_K(k, speed) == pytest.approx(ours, rel=0.001)


@pytest.mark.parametrize("kilopascals", [30, 210, 640])
def test_a_gauge_as_head_is_that_of_fluids_for_water_of_ten_degrees(kilopascals):
    density = IAPWS97(T=283.15, P=0.101325).rho
    given = {"discharge_gauge": kilopascals}
    ours = worked(Row("1", "discharge_gauge_head", "si", given, "fluids", "R"))
    assert head_from_P(kilopascals * 1000, density) == pytest.approx(ours, rel=0.001)


@pytest.mark.parametrize(("units", "metre", "digit"), [("us", 0.3048, 0.1), ("si", 1, 0.01)])
def test_the_table_of_the_atmosphere_is_the_us_standard_of_1976(units, metre, digit):
    """Pressure from fluids, over water of 62.4 lb/ft3."""
    for row in table_rows(f"atmosphere_{units}"):
        height = ATMOSPHERE_1976(row["altitude"] * metre).P / (999.552 * 9.80665) / metre
        assert height == pytest.approx(row["head"], abs=digit / 2 + 1e-9)

"""Every limit of the pump-day record at its edge: right at it, and a little past it.

The figures here are written out from where they are published, not taken from the solver. Status
as in tests/references: R read in the source, R2 read in a copy, M from memory, C common
practice with no source.
"""

from typing import NamedTuple

import pytest

from solver.own.record import BEYOND, CHECKS, LOOK, NO_LIMIT, WITHIN, examine, read_entries


class Edge(NamedTuple):
    """One side of one limit: the readings, and what they must be judged."""

    check: str
    entries: dict[str, object]
    state: str
    source: str
    units: str = "us"


def volts(low, high, unbalance=None):
    """Three pairs of lines about 460 V."""
    return {"volts_ab": low, "volts_bc": 460, "volts_ca": high}


def amps(percent, turn=""):
    """Three legs about 100 A with this unbalance by NEMA MG 1."""
    legs = (100 - percent, 100, 100 + percent)
    return {f"amps_{leg}{turn}": value for leg, value in zip("abc", legs, strict=True)}


def legs_at(value, **more):
    return {"amps_a": value, "amps_b": value, "amps_c": value, **more}


def ohms(percent, **more):
    """Three windings about 1 ohm with this deviation from their average."""
    part = percent / 100
    return {"ohms_12": 1 - part, "ohms_23": 1, "ohms_31": 1 + part, **more}


def at_40(megohms, **more):
    return {"insulation_1min": megohms, "winding_temperature": 40, **more}


def ratio(first, second, **more):
    return {"insulation_1min": first, "insulation_10min": second, **more}


def rate(kw, **more):
    """A motor of 10 kW that is 80 % efficient, so 12.5 kW in is its nameplate load."""
    return {"motor_size": 10, "motor_efficiency": 80, "input_power": kw, **more}


def uneven(kw):
    """The same on volts 2 % out of balance, where NEMA MG 1 allows 95 % of the nameplate."""
    return rate(kw, volts_ab=392, volts_bc=400, volts_ca=408)


def in_a_well(meter):
    """A drawdown of 300 gpm: 60 ft2 of floor lose 4.0107 ft in 6 minutes, and nothing comes in."""
    return {
        "well_length": 10, "well_width": 6, "drawdown_level": 300 * 6 / (60 * 7.48),
        "drawdown_time": 360, "inflow": 0, "flow": meter,
    }  # fmt: skip


def gauges(read):
    """Two gauges 100 psi apart, which is 231 ft, and the head as read outright."""
    return {"discharge_gauge": 110, "suction_gauge": 10, "head": read}


LOW, HIGH = {"rated_volts": 460}, {"rated_volts": 2300}
RANDOM, FORM = {"winding_kind": "random-wound"}, {"winding_kind": "form-wound"}
OLDER = {"winding_kind": "before 1970", "rated_volts": 480}  # kV + 1 is 1.48 megohms
A, F = {"insulation_class": "A"}, {"insulation_class": "F"}
PLATE, WITH_FACTOR = {"full_load_amps": 25}, {"full_load_amps": 25, "service_factor": 1.15}
BY_AMPS = {"volts_ab": 460, "volts_bc": 460, "volts_ca": 460, **LOW, "full_load_amps": 100}

IEEE_TEST = "IEEE 43 test volts (R2); NETA MTS 100.1, 1,000 V DC for the 600 V class (M)"
IEEE = "IEEE 43-2013 least megohms at 40 °C (M); NETA MTS 100.1, 100 megohms (M)"
IEEE_PI = "IEEE 43-2000: 1.5 class A, 2.0 class B F H (R2); not used above 5,000 megohms (M)"
DAR = "insulation tester manuals (M)"
EASA = "ANSI/EASA AR100-2020: 2 % random-wound, 1 % form-wound (R2)"
NEMA_V = "NEMA MG 1 12.44: 10 % at rated frequency (M)"
NEMA_U = "NEMA MG 1 voltage unbalance: 1 %, 5 % (R)"
PRACTICE_I = "current unbalance: 5 % good, 10 % acceptable (C)"
NEMA_SF = "NEMA MG 1 14.37: the service factor multiplies rated load (R2)"
DOE = "US DOE fact sheet on motor load: from half load (M)"
GRAPH = "NEMA MG 1 Fig. 14-1: 95 % at 2 % (M, a graph)"
TENTH = "two ways agree within a tenth; a tenth of rated flow (C)"

ONE = {"phase": "1"}

EDGES = [
    Edge("test_volts", {"test_volts": 500, **LOW}, WITHIN, IEEE_TEST),
    Edge("test_volts", {"test_volts": 499, **LOW}, LOOK, IEEE_TEST),
    Edge("test_volts", {"test_volts": 1000, **LOW}, WITHIN, IEEE_TEST),
    Edge("test_volts", {"test_volts": 1001, **LOW}, BEYOND, IEEE_TEST),
    Edge("test_volts", {"test_volts": 1000, **HIGH}, WITHIN, IEEE_TEST),
    Edge("test_volts", {"test_volts": 1001, **HIGH}, BEYOND, IEEE_TEST),
    Edge("insulation_at_40", at_40(5, **RANDOM, **LOW), LOOK, IEEE),
    Edge("insulation_at_40", at_40(4.99, **RANDOM, **LOW), BEYOND, IEEE),
    Edge("insulation_at_40", at_40(100, **RANDOM), WITHIN, IEEE),
    Edge("insulation_at_40", at_40(99.9, **RANDOM), LOOK, IEEE),
    Edge("insulation_at_40", at_40(5, **FORM, **LOW), LOOK, IEEE),
    Edge("insulation_at_40", at_40(100, **FORM, **HIGH), WITHIN, IEEE),
    Edge("insulation_at_40", at_40(99.9, **FORM, **HIGH), BEYOND, IEEE),
    Edge("insulation_at_40", at_40(99.9, **HIGH), BEYOND, IEEE),
    Edge("insulation_at_40", at_40(5, **RANDOM, **HIGH), LOOK, IEEE),
    Edge("insulation_at_40", at_40(1.48, **OLDER), LOOK, IEEE),
    Edge("insulation_at_40", at_40(1.47, **OLDER), BEYOND, IEEE),
    Edge("insulation_as_read", {"insulation_1min": 5}, NO_LIMIT, IEEE),
    Edge("insulation_as_read", {"insulation_1min": 4.99}, BEYOND, IEEE),
    Edge("absorption_ratio", {"insulation_30s": 80, "insulation_1min": 100}, WITHIN, DAR),
    Edge("absorption_ratio", {"insulation_30s": 81, "insulation_1min": 100}, LOOK, DAR),
    Edge("absorption_ratio", {"insulation_30s": 100, "insulation_1min": 100}, LOOK, DAR),
    Edge("absorption_ratio", {"insulation_30s": 101, "insulation_1min": 100}, BEYOND, DAR),
    Edge("polarization_index", ratio(100, 200, **F), WITHIN, IEEE_PI),
    Edge("polarization_index", ratio(100, 199, **F), BEYOND, IEEE_PI),
    Edge("polarization_index", ratio(100, 150, **A), WITHIN, IEEE_PI),
    Edge("polarization_index", ratio(100, 149, **A), BEYOND, IEEE_PI),
    Edge("polarization_index", ratio(100, 200), WITHIN, IEEE_PI),
    Edge("polarization_index", ratio(100, 199), LOOK, IEEE_PI),
    Edge("polarization_index", ratio(100, 149), BEYOND, IEEE_PI),
    Edge("polarization_index", ratio(5000, 5000, **F), BEYOND, IEEE_PI),
    Edge("polarization_index", ratio(5001, 5001, **F), NO_LIMIT, IEEE_PI),
    Edge("resistance_unbalance", ohms(2, **RANDOM), WITHIN, EASA),
    Edge("resistance_unbalance", ohms(2.01, **RANDOM), BEYOND, EASA),
    Edge("resistance_unbalance", ohms(1, **FORM), WITHIN, EASA),
    Edge("resistance_unbalance", ohms(1.01, **FORM), BEYOND, EASA),
    Edge("resistance_unbalance", ohms(1), WITHIN, EASA),
    Edge("resistance_unbalance", ohms(1.01), LOOK, EASA),
    Edge("resistance_unbalance", ohms(2.01), BEYOND, EASA),
    Edge("volts_level", volts(460, 506) | LOW, WITHIN, NEMA_V),
    Edge("volts_level", volts(460, 506.1) | LOW, BEYOND, NEMA_V),
    Edge("volts_level", volts(414, 460) | LOW, WITHIN, NEMA_V),
    Edge("volts_level", volts(413.9, 460) | LOW, BEYOND, NEMA_V),
    Edge("voltage_unbalance", volts(455.4, 464.6), WITHIN, NEMA_U),
    Edge("voltage_unbalance", volts(455.3, 464.7), LOOK, NEMA_U),
    Edge("voltage_unbalance", volts(437, 483), LOOK, NEMA_U),
    Edge("voltage_unbalance", volts(436.9, 483.1), BEYOND, NEMA_U),
    Edge("current_unbalance", amps(5), WITHIN, PRACTICE_I),
    Edge("current_unbalance", amps(5.01), LOOK, PRACTICE_I),
    Edge("current_unbalance", amps(10), LOOK, PRACTICE_I),
    Edge("current_unbalance", amps(10.01), BEYOND, PRACTICE_I),
    Edge("rolled_once", amps(12) | amps(5, "_2"), WITHIN, PRACTICE_I),
    Edge("rolled_once", amps(12) | amps(5.01, "_2"), LOOK, PRACTICE_I),
    Edge("rolled_once", amps(12) | amps(10.01, "_2"), BEYOND, PRACTICE_I),
    Edge("rolled_twice", amps(12) | amps(11, "_2") | amps(5, "_3"), WITHIN, PRACTICE_I),
    Edge("rolled_twice", amps(12) | amps(5.01, "_2") | amps(11, "_3"), LOOK, PRACTICE_I),
    Edge("rolled_twice", amps(12) | amps(11, "_2") | amps(10.01, "_3"), BEYOND, PRACTICE_I),
    Edge("amps_highest", legs_at(25, **PLATE), WITHIN, NEMA_SF),
    Edge("amps_highest", legs_at(25.1, **PLATE), LOOK, NEMA_SF),
    Edge("amps_highest", legs_at(40, **PLATE), LOOK, NEMA_SF),
    Edge("amps_highest", legs_at(25, **WITH_FACTOR), WITHIN, NEMA_SF),
    Edge("amps_highest", legs_at(28.75, **WITH_FACTOR), LOOK, NEMA_SF),
    Edge("amps_highest", legs_at(28.76, **WITH_FACTOR), BEYOND, NEMA_SF),
    *(
        Edge("volts_of_one_phase", {"volts_ab": value, **LOW, **ONE}, state, NEMA_V)
        for value, state in ((506, WITHIN), (506.1, BEYOND), (414, WITHIN), (413.9, BEYOND))
    ),
    Edge("amps_of_one_phase", {"amps_a": 25, **PLATE, **ONE}, WITHIN, NEMA_SF),
    Edge("amps_of_one_phase", {"amps_a": 25.1, **PLATE, **ONE}, LOOK, NEMA_SF),
    Edge("amps_of_one_phase", {"amps_a": 28.75, **WITH_FACTOR, **ONE}, LOOK, NEMA_SF),
    Edge("amps_of_one_phase", {"amps_a": 28.76, **WITH_FACTOR, **ONE}, BEYOND, NEMA_SF),
    Edge("motor_load", rate(6.25), WITHIN, DOE, "si"),
    Edge("motor_load", rate(6.24), LOOK, DOE, "si"),
    Edge("motor_load", rate(12.5), WITHIN, NEMA_SF, "si"),
    Edge("motor_load", rate(12.51), BEYOND, NEMA_SF, "si"),
    Edge("motor_load", rate(12.51, service_factor=1.15), LOOK, NEMA_SF, "si"),
    Edge("motor_load", rate(14.375, service_factor=1.15), LOOK, NEMA_SF, "si"),
    Edge("motor_load", rate(14.38, service_factor=1.15), BEYOND, NEMA_SF, "si"),
    Edge("load_by_amps", legs_at(50, **BY_AMPS), WITHIN, DOE),
    Edge("load_by_amps", legs_at(49.9, **BY_AMPS), NO_LIMIT, DOE),
    Edge("load_by_amps", legs_at(100, **BY_AMPS), WITHIN, DOE),
    Edge("load_by_amps", legs_at(100.1, **BY_AMPS), LOOK, DOE),
    Edge("derated_power", uneven(11.875), WITHIN, GRAPH, "si"),
    Edge("derated_power", uneven(11.88), LOOK, GRAPH, "si"),
    Edge("derated_power", uneven(12.5), LOOK, GRAPH, "si"),
    Edge("derated_power", uneven(12.51), BEYOND, GRAPH, "si"),
    Edge("drawdown", in_a_well(270), WITHIN, TENTH),
    Edge("drawdown", in_a_well(269), LOOK, TENTH),
    Edge("drawdown", in_a_well(333), WITHIN, TENTH),
    Edge("drawdown", in_a_well(334), LOOK, TENTH),
    Edge("gauges", gauges(207.9), WITHIN, TENTH),
    Edge("gauges", gauges(207.8), LOOK, TENTH),
    Edge("flow_share", {"flow": 540, "rated_flow": 600}, WITHIN, TENTH),
    Edge("flow_share", {"flow": 539, "rated_flow": 600}, LOOK, TENTH),
    Edge("flow_share", {"flow": 660, "rated_flow": 600}, WITHIN, TENTH),
    Edge("flow_share", {"flow": 661, "rated_flow": 600}, LOOK, TENTH),
]
WITHOUT_LIMIT = {
    "least_insulation",  # a limit itself
    "rated_slip_speed",
    "apparent_power",
    "input_power",
    "power_factor",
    "brake_power",
    "flow",
    "head",
    "water_power",
    "pump_efficiency",
    "overall_efficiency",
    "energy",
    "energy_cost",
    "volume_pumped",
    "energy_per_volume",
    "cost_per_volume",
}


@pytest.mark.parametrize("edge", EDGES, ids=lambda edge: f"{edge.check}-{edge.state}")
def test_a_reading_is_judged_as_the_limit_says_right_at_it_and_past_it(edge):
    texts = {
        name: value if isinstance(value, str) else repr(value)
        for name, value in edge.entries.items()
    }
    record, faults = read_entries(texts, edge.units)
    assert () == faults
    found = examine(record).finding(edge.check)
    assert edge.state == found.state, (edge.source, found.verdict.says)
    assert found.verdict.limit
    assert found.verdict.source


def test_every_check_with_a_limit_is_tried_at_its_edge():
    assert {check.name for check in CHECKS} == {edge.check for edge in EDGES} | WITHOUT_LIMIT
    assert set() == WITHOUT_LIMIT & {edge.check for edge in EDGES}


def test_what_is_past_a_limit_always_says_what_to_check_next():
    for edge in EDGES:
        texts = {name: str(value) for name, value in edge.entries.items()}
        found = examine(read_entries(texts, edge.units)[0])
        one = found.finding(edge.check)
        if one.state in (LOOK, BEYOND):
            assert one.verdict.then, edge
            assert one.verdict.then in found.next_checks

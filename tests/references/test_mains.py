"""Force mains and measuring flow, against published worked examples and tables."""

from math import pi, sqrt

import pytest

from .published import CONSTANT, Row, every, worked

FAIR = "Fair, Geyer & Okun, Water and Wastewater Engineering, Table 14.9"
INDIANA = "Indiana 327 IAC 8-3.4-24, Table 24-1, 100 ft of pipe"
DAUGHERTY = "Daugherty & Franzini, Fluid Mechanics, Ex 13.4"
SUBRAMANYA = "Subramanya, 1000 Solved Problems in Fluid Mechanics, Ex 14.16"
CHOUDHARY = "Choudhary & Om Prakash, Fluid Mechanics, Ex 5.17"
SCHASCHKE = "Schaschke, Fluid Mechanics Worked Examples, Ex 5.7"
DIGHE = "Dighe, Hydraulics Made Easy, Ex 5.5 (12.98 cfs)"
SKRENTER = "after Skrenter, Instrumentation Handbook, and ASTM D5242"
BUREAU = "US Bureau of Reclamation, Water Measurement Manual"
UTAH = "Utah State University, Flumes for Open-Channel Flow Measurement, lecture 2 (2005)"
CFS = 448.831  # gpm
STOPPED = 30 / (pi / 4 * 4**2)  # ft/s: 30 cfs in a 48 in pipe
# A liquid of 1.43 GPa and 798.4 kg/m3 in a steel pipe (210 GPa) 80 cm across with walls of 80 mm.
WAVE = sqrt(1.43e9 / 798.4 / (1 + 1.43 * 0.8 / (210 * 0.08)))

ROWS = [
    # Mains
    Row("146.9", "main_volume", "us", {"pipe_diameter": 6, "pipe_length": 100}, INDIANA, "R", 1e-3),
    Row("261.1", "main_volume", "us", {"pipe_diameter": 8, "pipe_length": 100}, INDIANA, "R", 1e-3),
    Row("2350", "main_volume", "us", {"pipe_diameter": 24, "pipe_length": 100}, INDIANA, "R", 1e-3),
    Row("176", "flow", "us", {"pipe_diameter": 6, "velocity": 2}, FAIR, "R", 2e-3),
    Row("626", "flow", "us", {"pipe_diameter": 8, "velocity": 4}, FAIR, "R", 2e-3),
    Row("5638", "flow", "us", {"pipe_diameter": 24, "velocity": 4}, FAIR, "R", 2e-3),
    # Surge
    Row("102.9", "surge_pressure", "us", {"wave_speed": 3200, "velocity": STOPPED}, DAUGHERTY, "R2", CONSTANT),
    Row("68.6", "surge_pressure", "us", {"wave_speed": 3200, "velocity": STOPPED * 2 / 3}, DAUGHERTY, "R2", CONSTANT),
    Row("32.2", "slow_surge", "us", {"wave_speed": 3200, "velocity": STOPPED, "pipe_length": 2000, "closing_time": 4}, DAUGHERTY, "R2", CONSTANT),
    Row("1.544", "wave_time", "si", {"pipe_length": 1000, "wave_speed": WAVE}, SUBRAMANYA, "R2", 1e-3),
    # Weirs, flumes, meters
    Row("8.309", "weir_flow", "us", {"notch_angle": 45, "weir_head": 0.2}, SKRENTER, "R"),
    Row("22.90", "weir_flow", "us", {"notch_angle": 45, "weir_head": 0.3}, SKRENTER, "R"),
    Row(f"{12.98 * CFS:.0f}", "weir_flow", "us", {"crest_length": 6, "weir_head": 0.75}, DIGHE, "R2", 1e-3),
    *(
        Row(f"{cfs * CFS:.0f}", "flume_flow", "us", {"flume_throat": throat, "flume_head": head}, f"{BUREAU}, {throat} in at {head} ft", "M", CONSTANT)
        for throat, head, cfs in ((3, 0.5, 0.339), (6, 0.5, 0.689), (9, 0.5, 1.06), (12, 1, 4), (24, 1, 8), (36, 1, 12))
    ),
    Row("0.66", "flume_head", "si", {"flume_throat": 610, "flume_flow": 750}, UTAH, "R"),
    Row("59", "meter_flow", "si", {"pipe_diameter": 200, "throat_diameter": 100, "differential_head": 0.22 * 12.6, "discharge_coefficient": 0.98}, CHOUDHARY, "R2"),
    Row("4.59", "meter_flow", "si", {"pipe_diameter": 225, "throat_diameter": 75, "differential_head": 0.5 * (1075 / 860 - 1), "discharge_coefficient": 0.659}, SCHASCHKE, "R2", CONSTANT),
]  # fmt: skip


@every(ROWS)
def test_the_solver_gives_the_published_result(row):
    assert row.value == pytest.approx(worked(row), abs=row.near)

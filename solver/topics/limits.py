"""Limits that readings are judged against, each once, with the rule and where it is from.

The chapters' judgement questions and the pump-day record judge by the same ones; `zones.py` has how.
"""

from .zones import Limits

__all__ = [
    "ABSORPTION",
    "BEST_SHARE",
    "CLOSING_RATIO",
    "CURRENT_UNBALANCE",
    "DERATED",
    "FEEDER_SHARE",
    "FIELD_INSULATION",
    "FLOW_SHARE",
    "FORM_INSULATION",
    "FORM_OHMS",
    "GENERATOR_LOAD",
    "INDEX_CEILING",
    "LEAK_SHARE",
    "LOAD_BY_AMPS",
    "LOW_VOLTAGE",
    "MOTOR_CYCLE",
    "MOTOR_LOAD",
    "NAMEPLATE_AMPS",
    "OLDER_INSULATION",
    "OVERLOAD_SETTING",
    "PARALLEL_GAIN",
    "POLARIZATION",
    "RANDOM_INSULATION",
    "RANDOM_OHMS",
    "SERVICE_LOAD",
    "SHUTOFF_SHARE",
    "SPECIFIC_SPEED",
    "TIME_ON_GROUND",
    "VOLTAGE_UNBALANCE",
]

CURRENT_UNBALANCE = Limits(
    "current_unbalance",
    5,
    10,
    "up to 5% is good, up to 10% is acceptable (common practice)",
    "common practice, no source",
)
VOLTAGE_UNBALANCE = Limits(
    "voltage_unbalance",
    1,
    5,
    "NEMA MG 1: full load up to 1%, less load up to 5%, no running above 5%",
    "NEMA MG 1",
)
DERATED = Limits(
    "brake_power",
    "derated_power",
    "motor_size",
    "the load must stay at or below the derated power",
    "NEMA MG 1 Figure 14-1 (from memory, a graph)",
)
NAMEPLATE_AMPS = Limits(
    "amps_highest",
    "full_load_amps",
    "service_factor_amps",
    "the highest leg against full-load amps, then against service-factor amps",
    "NEMA MG 1 14.37; the nameplate",
)
MOTOR_LOAD = Limits(
    "motor_load",
    50,
    100,
    "a motor runs best from half load to full load",
    "US DOE fact sheet GO-10097-517 (from memory); the nameplate",
)
LOAD_BY_AMPS = Limits(
    "load_by_amps",
    50,
    100,
    "amps follow the load from half load up; below that they tell you little",
    "US DOE fact sheet GO-10097-517 (from memory)",
)
SERVICE_LOAD = Limits(
    "brake_power",
    "motor_size",
    "service_power",
    "the load against nameplate power, then against the service factor",
    "NEMA MG 1 14.37; the nameplate",
)
OVERLOAD_SETTING = Limits(
    "overload_setting",
    "overload_limit",
    "raised_limit",
    "NEC 430.32(A)(1), then 430.32(C) for a motor that won't start; your local code decides",
    "NEC (NFPA 70) 430.32",
)
FIELD_INSULATION = (
    100  # megohms at 40 °C; NETA's table is for equipment other than rotating machines
)
INDEX_CEILING = 5000  # megohms above which IEEE 43 does not use the polarization index
LOW_VOLTAGE = 1000  # rated volts under which a winding counts as low voltage (IEEE 43)
NETA = "100: common practice, from NETA MTS-2019 Table 100.1 for other equipment"
IEEE_43 = "IEEE 43-2013 (from memory)"
RANDOM_INSULATION = Limits(
    "insulation_at_40",
    5,
    FIELD_INSULATION,
    "at least 5 megohms at 40 °C, random-wound or under 1,000 V (IEEE 43); "
    "many shops want 100 or more, as NETA MTS asks of other 600 V equipment",
    f"{IEEE_43}; {NETA}",
)
FORM_INSULATION = Limits(
    "insulation_at_40", 100, 100, "at least 100 megohms at 40 °C, form-wound (IEEE 43)", IEEE_43
)
OLDER_INSULATION = Limits(
    "insulation_at_40",
    "least_insulation",
    FIELD_INSULATION,
    "at least kV + 1 megohms at 40 °C, made before about 1970 (IEEE 43); "
    "many shops want 100 or more, as NETA MTS asks of other 600 V equipment",
    f"IEEE 43; {NETA}",
)
POLARIZATION = Limits(
    "polarization_index",
    1.5,
    2.0,
    "at least 1.5 for class A, at least 2.0 for class B, F and H; not used above 5,000 megohms",
    "IEEE 43-2000; the 5,000 megohms from memory",
)
ABSORPTION = Limits(
    "absorption_ratio",
    1.0,
    1.25,
    "a falling reading is bad, and under 1.25 is questionable",
    "common practice, no source",
)
TIME_ON_GROUND = Limits(
    "times_grounded",
    1,
    4,
    "grounded for at least four times as long as the test",
    "IEEE 43 (from memory)",
)
RANDOM_OHMS = Limits(
    "resistance_unbalance", 2, 2, "random-wound: within 2% of the average", "ANSI/EASA AR100-2020"
)
FORM_OHMS = Limits(
    "resistance_unbalance", 1, 1, "form-wound: within 1% of the average", "ANSI/EASA AR100-2020"
)
MOTOR_CYCLE = Limits(
    "motor_cycle",
    "cycle_floor",
    "cycle_ceiling",
    "EI 11C201 Table 7-1: minimum time between starts by motor size",
    "US Army Corps of Engineers EI 11C201 (1997), Table 7-1",
)
FLOW_SHARE = Limits(
    "flow_share",
    90,
    110,
    "a pump should move within 10% of its rated flow",
    "common practice, no source",
)
LEAK_SHARE = Limits(
    "leak_share",
    10,
    50,
    "under 10% the check valves are holding; over 50% it is mostly leakage",
    "common practice, no source",
)
PARALLEL_GAIN = Limits(
    "parallel_gain",
    20,
    80,
    "a second pump would double the flow only if the force main had no friction",
    "arithmetic; the limits are common practice, no source",
)
SPECIFIC_SPEED = Limits(
    "specific_speed",
    4000,
    9000,
    "low specific speed is radial, medium is mixed flow, high is axial",
    "common practice, no source, and books differ on the limits; in rpm, US gpm and feet",
)
SHUTOFF_SHARE = Limits(
    "shutoff_share",
    95,
    105,
    "within 5% of the curve is a match",
    "ANSI/HI 14.6, the 5% of acceptance grade 2 (from memory)",
)
BEST_SHARE = Limits(
    "best_share",
    70,
    120,
    "the preferred operating region runs from 70% to 120% of best efficiency flow",
    "ANSI/HI 9.6.3, for low and medium specific speeds (from memory)",
)

FEEDER_SHARE = Limits(
    "capacity_share",
    10,
    100,
    "a feed pump turns down to about a tenth of its capacity",
    "common practice, no source; the pump's manual gives its own turndown",
)
CLOSING_RATIO = Limits(
    "closing_ratio",
    1,
    10,
    "up to the wave's time there and back, the surge is the full one; after that it shrinks with the time",
    "Daugherty & Franzini, Fluid Mechanics, Ex 13.4; a tenth is common practice, no source",
)

GENERATOR_LOAD = Limits(
    "generator_load",
    30,
    100,
    "NFPA 110 8.4.2: the monthly test of a diesel runs at 30% of its nameplate kW or more",
    "NFPA 110 8.4.2 (from memory); the nameplate",
)

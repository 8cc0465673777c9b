"""Phase balance: three legs against their average, and what unbalance costs a motor.

The families here ask for a number; those where something is to be judged are in `judgments.py`
and `judgments_leads.py`. `BALANCE` has the whole chapter, in the order of teaching.
"""

from collections.abc import Mapping
from dataclasses import replace

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.station.scene import Readings

from .judgments import AMPS_CHECK, CURRENT_LIMITS, DERATED_LOAD, VOLTAGE_LIMITS
from .judgments_leads import BEST_CONNECTION, ROLLED_LEADS, ROTATION
from .legs import (
    AMPS,
    CHAPTER,
    GRAPH,
    LEGS_READ,
    LINE,
    METHOD,
    POINTS,
    VOLTS,
    VOLTS_READ,
    amps,
    uneven_amps,
    volts,
)

__all__ = ["BALANCE"]

ON_AMPS = f"Use {METHOD}: NEMA MG 1's voltage method, used on amps."
ON_VOLTS = f"Use {METHOD}, as NEMA MG 1 does."
FIELD = "Spread, a method used in the field, is highest minus lowest, divided by the average."
HEATING = (
    "The extra rise, in percent, is about twice the unbalance squared: "
    "1.5% unbalance adds 4.5% (US DOE Tip Sheet 7)."
)
FULL_LOAD = "Nameplate full-load amps (FLA) are {full_load_amps}."
UNEVEN = ((4.6, 12.5),)
WIDE_APART = (0.38, 0.5)  # leaving out the middle reading shows in the average


def limited(seen: Mapping[str, float], draw: Draw) -> dict[str, float]:
    """The limit that a log sheet sets."""
    return {"current_unbalance": draw.pick((5.0, 6.0, 8.0, 10.0))}


ANY_LEGS = amps(*UNEVEN)
WELL_APART = amps((6.5, 12.5))  # the two ways to say it differ clearly
ANY_VOLTS = volts((1.9, 4.6))
WITH_MARGIN = amps(*UNEVEN, need=replace(LINE, service=(1.1, 1.15, 1.25)))

BALANCE = (
    CHAPTER.numeric(
        "amps_average",
        "UA",
        "Average amps of the three legs",
        "amps_average",
        amps(*UNEVEN, middle=WIDE_APART),
        Level(
            AMPS,
            f"{LEGS_READ} What is the average?",
            scene=Readings(LINE, uneven_amps(*UNEVEN, middle=WIDE_APART)),
        ),
        Level(
            ("amps_deviation", "current_unbalance"),
            "A report on {place} gives {amps_deviation} as the largest deviation from the average. "
            "It divides that by the average and gives {current_unbalance} current unbalance. "
            "What is the average of the three legs?",
        ),
    ),
    CHAPTER.numeric(
        "amps_deviation",
        "UD",
        "Largest deviation from the average",
        "amps_deviation",
        ANY_LEGS,
        Level(
            (*AMPS, "amps_average"),
            f"{LEGS_READ} Their average is {{amps_average}}. "
            "What is the largest deviation from the average?",
        ),
        Level(AMPS, f"{LEGS_READ} What is the largest deviation from the average?"),
        Level(
            ("amps_average", "current_unbalance"),
            "The log sheet for {place} sets a limit of {current_unbalance} current unbalance: the "
            "largest deviation from the average, divided by the average. The legs average "
            "{amps_average}. How many amps away from the average can a leg be?",
            scene=Readings(LINE, notes=limited),
        ),
    ),
    CHAPTER.numeric(
        "current_unbalance",
        "UC",
        "Current unbalance: largest deviation from the average",
        "current_unbalance",
        ANY_LEGS,
        Level(
            ("amps_average", "amps_deviation"),
            "The legs of {place} average {amps_average}. The largest deviation from the average "
            "is {amps_deviation}. Using that deviation, what is the current unbalance?",
        ),
        Level(AMPS, f"{LEGS_READ} {ON_AMPS} What is the current unbalance?"),
        Level(
            (*AMPS, "full_load_amps"),
            f"{LEGS_READ} {FULL_LOAD} {ON_AMPS} What is the current unbalance?",
        ),
    ),
    CHAPTER.numeric(
        "current_spread",
        "UH",
        "Current spread: highest minus lowest",
        "current_spread",
        WELL_APART,
        Level(
            (*AMPS, "amps_average"),
            f"{LEGS_READ} Their average is {{amps_average}}. {FIELD} What is the current spread?",
        ),
        Level(AMPS, f"{LEGS_READ} {FIELD} What is the current spread?"),
        Level(
            (*AMPS, "full_load_amps"),
            f"{LEGS_READ} {FULL_LOAD} {FIELD} What is the current spread?",
        ),
    ),
    CURRENT_LIMITS,
    CHAPTER.numeric(
        "voltage_unbalance",
        "VU",
        "Voltage unbalance by NEMA MG 1",
        "voltage_unbalance",
        ANY_VOLTS,
        Level(
            ("volts_average", "volts_deviation"),
            "Line to line, {place} averages {volts_average}. The largest deviation from the "
            "average is {volts_deviation}. What is the voltage unbalance by NEMA MG 1?",
        ),
        Level(VOLTS, f"{VOLTS_READ} {ON_VOLTS} What is the voltage unbalance?"),
    ),
    VOLTAGE_LIMITS,
    CHAPTER.numeric(
        "derated_power",
        "DP",
        "What a motor can carry on unbalanced volts",
        "derated_power",
        volts((2.3, 2.75), (3.3, 3.75), (4.3, 4.75)),
        Level(
            ("motor_size", "voltage_unbalance"),
            "The motor of {place} is rated {motor_size}. The voltage unbalance is "
            f"{{voltage_unbalance}}. {GRAPH} How much load can the motor carry?",
            table=POINTS,
            scene=volts((2, 2), (3, 3), (4, 4), (5, 5)),
        ),
        Level(
            ("motor_size", "voltage_unbalance"),
            "The motor of {place} is rated {motor_size}. The voltage unbalance is "
            f"{{voltage_unbalance}}. {GRAPH} How much load can the motor carry?",
            table=POINTS,
        ),
        Level(
            ("motor_size", *VOLTS),
            f"{VOLTS_READ} The motor is rated {{motor_size}}. {GRAPH} "
            "How much load can the motor carry?",
            table=POINTS,
        ),
    ),
    DERATED_LOAD,
    CHAPTER.numeric(
        "unbalanced_rise",
        "DR",
        "Temperature rise on unbalanced volts",
        "unbalanced_rise",
        ANY_VOLTS,
        Level(
            ("balanced_rise", "voltage_unbalance"),
            "On balanced volts, the motor of {place} runs at {balanced_rise}. The voltage "
            f"unbalance is now {{voltage_unbalance}}. {HEATING} What is the temperature rise now?",
        ),
        Level(
            ("balanced_rise", *VOLTS),
            f"{VOLTS_READ} On balanced volts, the motor runs at {{balanced_rise}}. {HEATING} "
            "What is the temperature rise now?",
        ),
    ),
    CHAPTER.numeric(
        "load_amps",
        "AL",
        "Percent of full-load amps",
        "load_amps",
        ANY_LEGS,
        Level(
            ("amps_highest", "full_load_amps"),
            f"The highest leg of {{place}} draws {{amps_highest}}. {FULL_LOAD} "
            "What percent of full-load amps is that?",
        ),
        Level(
            (*AMPS, "full_load_amps"),
            f"{LEGS_READ} {FULL_LOAD} What percent of full-load amps does the highest leg draw?",
        ),
        Level(
            (*AMPS, "full_load_amps", "service_factor"),
            f"{LEGS_READ} {FULL_LOAD} The service factor (SF) is {{service_factor}}. "
            "What percent of full-load amps does the highest leg draw?",
            scene=WITH_MARGIN,
        ),
    ),
    CHAPTER.numeric(
        "service_factor_amps",
        "AS",
        "Service-factor amps",
        "service_factor_amps",
        WITH_MARGIN,
        Level(
            ("full_load_amps", "service_factor"),
            "The nameplate of {place} shows full-load amps (FLA) of {full_load_amps} and a service "
            "factor (SF) of {service_factor}. What are the service-factor amps (SFA)?",
        ),
        Level(
            ("amps_highest", "load_amps", "service_factor"),
            "The highest leg of {place} draws {amps_highest}, which is {load_amps} of full-load "
            "amps (FLA). The service factor (SF) is {service_factor}. "
            "What are the service-factor amps (SFA)?",
        ),
    ),
    AMPS_CHECK,
    ROLLED_LEADS,
    BEST_CONNECTION,
    ROTATION,
)

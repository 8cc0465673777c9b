"""The nameplate by numbers: load, the overload, the start.

What is to be judged is in `judgments*.py`, powers and speeds in `problems_power.py` and `problems_speed.py`.
`NAMEPLATE` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level
from solver.topics.readings import AMPS

from .judgments import CODE_LETTER, OVERLOAD, TABLE_USE
from .judgments_running import FROM_AMPS, SERVICE
from .judgments_speed import FROM_SPEED
from .problems_power import POWERS
from .problems_speed import SPEEDS
from .stations import (
    CHAPTER,
    DIRECT,
    LEGS,
    LEGS_READ,
    OFF_VOLTS,
    OFF_VOLTS_LEGS,
    OLD_PLATE,
    ON_THE_LINE,
    PLATE,
    READ,
    WITH_MARGIN,
)

__all__ = ["NAMEPLATE"]

CODE = "Where the NEC applies, 430.32(A)(1) sets the overload by full-load amps (FLA): "
PERCENTS = "125% at a service factor of 1.15 or more, otherwise 115%. "
RISES = "125% at a temperature rise of 40 °C or less, otherwise 115%. "

MOST = (
    "Where a motor won't start, NEC 430.32(C) lets the overload go higher: 140% of full-load amps "
    "(FLA) at a service factor of 1.15 or more, otherwise 130%. "
)

PLATE_SAYS = "The nameplate of {place} shows full-load amps (FLA) of {full_load_amps}"
WITH_FACTOR = f"{PLATE_SAYS} and a service factor (SF) of {{service_factor}}. "

LOADS = (
    CHAPTER.numeric(
        "motor_load",
        "NM",
        "Motor load from kilowatts, volts and amps",
        "motor_load",
        DIRECT,
        Level(
            ("input_power", "motor_efficiency", "motor_size"),
            "The {motor_size} motor of {place} draws {input_power} at an efficiency of "
            "{motor_efficiency}. What percent of its nameplate rating is it carrying?",
        ),
        Level(
            ("line_volts", "line_amps", "power_factor", "motor_efficiency", "motor_size"),
            f"{READ} The motor is rated {{motor_size}}. At this load its power factor (PF) is "
            "{power_factor} and its efficiency is {motor_efficiency}. "
            "What percent of its nameplate rating is it carrying?",
        ),
        Level(
            ("line_volts", *AMPS, "power_factor", "motor_efficiency", "motor_size"),
            f"{LEGS_READ} The motor is rated {{motor_size}}. At this load its power factor (PF) is "
            "{power_factor} and its efficiency is {motor_efficiency}. "
            "What percent of its nameplate rating is it carrying?",
            scene=LEGS,
        ),
    ),
    CHAPTER.numeric(
        "load_by_amps",
        "NI",
        "Motor load from amps and volts",
        "load_by_amps",
        OFF_VOLTS,
        Level(
            ("line_volts", "line_amps", "rated_volts", "full_load_amps"),
            f"{READ} The nameplate shows {{rated_volts}} and full-load amps (FLA) of "
            "{full_load_amps}. What is the load from the amps, corrected for the volts?",
        ),
        Level(
            ("line_volts", *AMPS, "rated_volts", "full_load_amps"),
            f"{LEGS_READ} The nameplate shows {{rated_volts}} and full-load amps (FLA) of "
            "{full_load_amps}. What is the load from the average amps, corrected for the volts?",
            scene=OFF_VOLTS_LEGS,
        ),
    ),
)

LIMITS = (
    CHAPTER.numeric(
        "nameplate_share",
        "NT",
        "Nameplate amps against the table",
        "nameplate_share",
        PLATE,
        Level(
            ("full_load_amps", "table_amps"),
            f"{PLATE_SAYS}. The code table lists {{table_amps}} for a motor this size. "
            "What percent of the table amps are the nameplate amps?",
        ),
        Level(
            ("full_load_amps", "table_amps", "service_factor"),
            f"{WITH_FACTOR}The code table lists {{table_amps}} for a motor this size. "
            "What percent of the table amps are the nameplate amps?",
            scene=WITH_MARGIN,
        ),
    ),
    CHAPTER.numeric(
        "overload_limit",
        "NO",
        "The highest overload setting",
        "overload_limit",
        PLATE,
        Level(
            ("full_load_amps", "overload_percent"),
            f"{PLATE_SAYS}. The code allows an overload setting of {{overload_percent}} of that. "
            "What is the highest setting, in amps?",
        ),
        Level(
            ("full_load_amps", "service_factor"),
            f"{CODE}{PERCENTS}The nameplate of {{place}} shows {{full_load_amps}} and a service "
            "factor of {service_factor}. What is the highest setting, in amps?",
        ),
        Level(
            ("full_load_amps", "rated_rise"),
            f"{CODE}{RISES}The nameplate of {{place}} shows {{full_load_amps}}, {{rated_rise}} "
            "and no service factor. What is the highest setting, in amps?",
            scene=OLD_PLATE,
        ),
        Level(
            ("full_load_amps", "table_amps", "service_factor"),
            f"{CODE}{PERCENTS}The code table lists {{table_amps}} for the motor of {{place}}. The "
            "nameplate shows {full_load_amps} and a service factor of {service_factor}. "
            "What is the highest setting, in amps?",
        ),
    ),
    CHAPTER.numeric(
        "raised_limit",
        "NX",
        "The overload setting for a motor that won't start",
        "raised_limit",
        PLATE,
        Level(
            ("full_load_amps", "service_factor"),
            f"{MOST}The nameplate of {{place}} shows {{full_load_amps}} and a service factor of "
            "{service_factor}. How high can the overload go, in amps?",
        ),
        Level(
            ("full_load_amps", "table_amps", "service_factor"),
            f"{MOST}Below are the nameplate readings of {{place}}, and the code table's amps for "
            "that motor. How high can the overload go, in amps?",
            table=("full_load_amps", "table_amps", "service_factor"),
        ),
    ),
)

START = (
    CHAPTER.numeric(
        "starting_kva",
        "NW",
        "Starting kVA",
        "starting_kva",
        ON_THE_LINE,
        Level(
            ("rated_volts", "locked_rotor_amps"),
            "The motor of {place} has locked-rotor amps (LRA) of {locked_rotor_amps} at "
            "{rated_volts}. How many kVA does it take to start?",
        ),
        Level(
            ("motor_size", "starting_kva_per_hp"),
            "The {motor_size} motor of {place} takes {starting_kva_per_hp} with the rotor locked. "
            "How many kVA does it take to start?",
        ),
    ),
    CHAPTER.numeric(
        "locked_rotor_amps",
        "ND",
        "Locked-rotor amps",
        "locked_rotor_amps",
        ON_THE_LINE,
        Level(
            ("starting_kva", "rated_volts"),
            "The motor of {place} takes {starting_kva} to start at {rated_volts}. "
            "What are the locked-rotor amps (LRA)?",
        ),
        Level(
            ("motor_size", "starting_kva_per_hp", "rated_volts"),
            "The {motor_size} motor of {place} takes {starting_kva_per_hp} to start at "
            "{rated_volts}. What are the locked-rotor amps (LRA)?",
        ),
    ),
)

NAMEPLATE = (*POWERS, *LOADS, *FROM_AMPS, *SPEEDS, *FROM_SPEED, *LIMITS, *OVERLOAD, *TABLE_USE,
             *SERVICE, *START, *CODE_LETTER)  # fmt: skip

"""The nameplate: full-load amps, the overload, the start; here worked by numbers.

`NAMEPLATE` has the whole chapter in the order of teaching, with what the other files judge.
"""

from solver.engine.family import Level

from .judged import CODE_LETTER, OVERLOAD, SERVICE, TABLE_USE
from .judged_load import FROM_AMPS, FROM_SPEED
from .problems_slip import SPEEDS
from .problems_three_phase import THREE_PHASE, numeric
from .scenes import nameplate, starting

__all__ = ["NAMEPLATE"]

CODE = "Where the NEC applies, 430.32(A)(1) sets the overload by full-load amps (FLA): "
PERCENTS = "125% at a service factor of 1.15 or more, otherwise 115%. "
RISES = "125% at a temperature rise of 40 °C or less, otherwise 115%. "
MOST = (
    "Where a motor won't start, NEC 430.32(C) lets the overload go higher: 140% of full-load amps "
    "(FLA) at a service factor of 1.15 or more, otherwise 130%. "
)
PLATE = "The nameplate of {place} shows full-load amps (FLA) of {full_load_amps}"
WITH_FACTOR = f"{PLATE} and a service factor (SF) of {{service_factor}}. "

LIMITS = (
    numeric(
        "nameplate_share",
        "NT",
        "Nameplate amps against the table",
        "nameplate_share",
        nameplate,
        Level(
            ("full_load_amps", "table_amps"),
            f"{PLATE}. The code table lists {{table_amps}} for a motor this size. "
            "What percent of the table amps are the nameplate amps?",
        ),
        Level(
            ("full_load_amps", "table_amps", "service_factor"),
            f"{WITH_FACTOR}The code table lists {{table_amps}} for a motor this size. "
            "What percent of the table amps are the nameplate amps?",
        ),
    ),
    numeric(
        "overload_limit",
        "NO",
        "The highest overload setting",
        "overload_limit",
        nameplate,
        Level(
            ("full_load_amps", "overload_percent"),
            f"{PLATE}. The code allows an overload setting of {{overload_percent}} of that. "
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
        ),
        Level(
            ("full_load_amps", "table_amps", "service_factor"),
            f"{CODE}{PERCENTS}The code table lists {{table_amps}} for the motor of {{place}}. The "
            "nameplate shows {full_load_amps} and a service factor of {service_factor}. "
            "What is the highest setting, in amps?",
        ),
    ),
    numeric(
        "raised_limit",
        "NX",
        "The overload setting for a motor that won't start",
        "raised_limit",
        nameplate,
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
    numeric(
        "starting_kva",
        "NW",
        "Starting kVA",
        "starting_kva",
        starting,
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
    numeric(
        "locked_rotor_amps",
        "ND",
        "Locked-rotor amps",
        "locked_rotor_amps",
        starting,
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

NAMEPLATE = (*THREE_PHASE, *FROM_AMPS, *SPEEDS, *FROM_SPEED, *LIMITS, *OVERLOAD, *TABLE_USE,
             *SERVICE, *START, *CODE_LETTER)  # fmt: skip

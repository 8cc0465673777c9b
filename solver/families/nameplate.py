"""The nameplate: full-load amps, the overload, the start; here worked by numbers.

`NAMEPLATE` has the whole chapter in the order of teaching, with what the other files judge.
"""

from ..family import Level
from .judged_load import FROM_AMPS, FROM_SPEED
from .judged_nameplate import CODE_LETTER, OVERLOAD, SERVICE, TABLE_USE
from .scenes_nameplate import nameplate, starting
from .slip import SPEEDS
from .three_phase import THREE_PHASE, numeric

__all__ = ["NAMEPLATE"]

CODE = "Where the NEC is the code, 430.32(A)(1) sets the overload by nameplate amps. "
PERCENTS = "It allows 125% at a service factor of 1.15 or more, otherwise 115%. "
RISES = "It allows 125% at a rise of 40 °C or less, otherwise 115%. "
MOST = (
    "Where a motor will not start, NEC 430.32(C) lets the overload go up. It allows 140% at a "
    "service factor of 1.15 or more, otherwise 130%. "
)

LIMITS = (
    numeric(
        "nameplate_share",
        "NT",
        "Nameplate amps against the table",
        "nameplate_share",
        nameplate,
        Level(
            ("full_load_amps", "table_amps"),
            "The nameplate of {place} says {full_load_amps}. The table has {table_amps} for a "
            "motor of its size. What percent of the table are the nameplate amps?",
        ),
        Level(
            ("full_load_amps", "table_amps", "service_factor"),
            "The nameplate of {place} says {full_load_amps} and a service factor of "
            "{service_factor}. The table has {table_amps} for a motor of its size. "
            "What percent of the table are the nameplate amps?",
        ),
    ),
    numeric(
        "overload_limit",
        "NO",
        "The overload's limit",
        "overload_limit",
        nameplate,
        Level(
            ("full_load_amps", "overload_percent"),
            "The nameplate of {place} says {full_load_amps}. The code allows an overload setting "
            "of {overload_percent} of that. What is the limit, in amps?",
        ),
        Level(
            ("full_load_amps", "service_factor"),
            f"{CODE}{PERCENTS}The nameplate of {{place}} says {{full_load_amps}} and a service "
            "factor of {service_factor}. What is the limit, in amps?",
        ),
        Level(
            ("full_load_amps", "rated_rise"),
            f"{CODE}{RISES}The nameplate of {{place}} says {{full_load_amps}}, {{rated_rise}} "
            "and no service factor. What is the limit, in amps?",
        ),
        Level(
            ("full_load_amps", "table_amps", "service_factor"),
            f"{CODE}{PERCENTS}The table has {{table_amps}} for the motor of {{place}}. Its "
            "nameplate says {full_load_amps} and a service factor of {service_factor}. "
            "What is the limit, in amps?",
        ),
    ),
    numeric(
        "raised_limit",
        "NX",
        "The most an overload may be set to",
        "raised_limit",
        nameplate,
        Level(
            ("full_load_amps", "service_factor"),
            f"{MOST}The nameplate of {{place}} says {{full_load_amps}} and a service factor of "
            "{service_factor}. What is the most, in amps?",
        ),
        Level(
            ("full_load_amps", "table_amps", "service_factor"),
            f"{MOST}The table has {{table_amps}} for the motor of {{place}}. Its nameplate says "
            "{full_load_amps} and a service factor of {service_factor}. "
            "What is the most, in amps?",
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
            "The motor of {place} draws {locked_rotor_amps} at {rated_volts} with its rotor "
            "locked. How many kVA does it take to start?",
        ),
        Level(
            ("motor_size", "starting_kva_per_hp"),
            "The {motor_size} motor of {place} takes {starting_kva_per_hp} with its rotor locked. "
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
            "How many amps does each line carry at that moment?",
        ),
        Level(
            ("motor_size", "starting_kva_per_hp", "rated_volts"),
            "The {motor_size} motor of {place} takes {starting_kva_per_hp} to start, at "
            "{rated_volts}. How many amps does each line carry at that moment?",
        ),
    ),
)

NAMEPLATE = (*THREE_PHASE, *FROM_AMPS, *SPEEDS, *FROM_SPEED, *LIMITS, *OVERLOAD, *TABLE_USE,
             *SERVICE, *START, *CODE_LETTER)  # fmt: skip

"""The powers of a running motor: kVA, kilowatts, amps, power factor, kvar."""

from solver.engine.family import Level
from solver.topics.readings import AMPS

from .stations import CHAPTER, DIRECT, LEGS, LEGS_READ, READ

__all__ = ["POWERS"]

POWERS = (
    CHAPTER.numeric(
        "apparent_power",
        "NA",
        "Apparent power, in kVA",
        "apparent_power",
        DIRECT,
        Level(("line_volts", "line_amps"), f"{READ} What is the apparent power, in kVA?"),
        Level(
            ("line_volts", *AMPS), f"{LEGS_READ} What is the apparent power, in kVA?", scene=LEGS
        ),
        Level(
            ("input_power", "power_factor"),
            "The meter at {place} shows {input_power} at a power factor (PF) of {power_factor}. "
            "What is the apparent power, in kVA?",
        ),
    ),
    CHAPTER.numeric(
        "three_phase_kilowatts",
        "NK",
        "Kilowatts of a three-phase motor",
        "input_power",
        DIRECT,
        Level(
            ("apparent_power", "power_factor"),
            "{place} draws {apparent_power} at a power factor (PF) of {power_factor}. "
            "How many kilowatts is that?",
        ),
        Level(
            ("line_volts", "line_amps", "power_factor"),
            f"{READ} The power factor (PF) is {{power_factor}}. What is the input power, in "
            "kilowatts?",
        ),
        Level(
            ("line_volts", *AMPS, "power_factor"),
            f"{LEGS_READ} The power factor (PF) is {{power_factor}}. "
            "What is the input power, in kilowatts?",
            scene=LEGS,
        ),
    ),
    CHAPTER.numeric(
        "amps_from_power",
        "NL",
        "Amps from power",
        "line_amps",
        DIRECT,
        Level(
            ("apparent_power", "line_volts"),
            "{place} draws {apparent_power} at {line_volts} line to line. "
            "How many amps is that on each leg?",
        ),
        Level(
            ("input_power", "power_factor", "line_volts"),
            "The meter at {place} shows {input_power} at a power factor (PF) of {power_factor}. "
            "The supply is {line_volts} line to line. How many amps does each leg carry?",
        ),
        Level(
            ("brake_power", "motor_efficiency", "power_factor", "line_volts"),
            "The {brake_power:full} of {place} is {brake_power}. The motor efficiency is "
            "{motor_efficiency} and the power factor (PF) is {power_factor}. The supply is "
            "{line_volts} line to line. How many amps does each leg carry?",
        ),
    ),
    CHAPTER.numeric(
        "power_factor",
        "NF",
        "Power factor",
        "power_factor",
        DIRECT,
        Level(
            ("input_power", "apparent_power"),
            "The meter at {place} shows {input_power} and {apparent_power}. "
            "What is the power factor, as a decimal?",
        ),
        Level(
            ("input_power", "line_volts", "line_amps"),
            f"{READ} The meter shows {{input_power}}. What is the power factor, as a decimal?",
        ),
        Level(
            ("brake_power", "motor_efficiency", "line_volts", "line_amps"),
            f"{READ} The {{brake_power:full}} is {{brake_power}} and the motor efficiency is "
            "{motor_efficiency}. What is the power factor, as a decimal?",
        ),
    ),
    CHAPTER.numeric(
        "reactive_power",
        "NQ",
        "Reactive power, in kvar",
        "reactive_power",
        DIRECT,
        Level(
            ("apparent_power", "input_power"),
            "{place} draws {apparent_power}, and its meter shows {input_power}. "
            "How many kvar does it draw?",
        ),
        Level(
            ("input_power", "power_factor"),
            "The meter at {place} shows {input_power} at a power factor (PF) of {power_factor}. "
            "How many kvar does it draw?",
        ),
        Level(
            ("line_volts", "line_amps", "input_power"),
            f"{READ} The meter shows {{input_power}}. How many kvar does it draw?",
        ),
    ),
    CHAPTER.numeric(
        "capacitor_kvar",
        "NC",
        "Capacitor kvar to correct the power factor",
        "capacitor_kvar",
        DIRECT,
        Level(
            ("input_power", "apparent_power", "corrected_apparent_power"),
            "{place} draws {apparent_power} to get {input_power}. A capacitor has to bring that "
            "kVA down to {corrected_apparent_power}. How many kvar does it have to supply?",
        ),
        Level(
            ("input_power", "power_factor", "corrected_power_factor"),
            "The meter at {place} shows {input_power} at a power factor (PF) of {power_factor}. "
            "A capacitor has to bring the power factor up to {corrected_power_factor}. "
            "How many kvar does it have to supply?",
        ),
        Level(
            ("line_volts", "line_amps", "input_power", "corrected_power_factor"),
            f"{READ} The meter shows {{input_power}}. A capacitor has to bring the power factor "
            "up to {corrected_power_factor}. How many kvar does it have to supply?",
        ),
    ),
)

"""Three-phase power: kVA, kW and power factor, amps, the motor's load, and kvar to correct."""

from solver.engine.family import Family, Judge, Level, Scene
from solver.topics.drawn.legs import AMPS
from solver.topics.formulas import COST, NAMEPLATE, POWER

from .scenes import off_volts, running

__all__ = ["LEGS_READ", "READ", "THREE_PHASE", "judged", "numeric"]

CHAPTER = "nameplate"
FORMULAS = (*POWER, *COST, *NAMEPLATE)
READ = "A qualified person reads {line_volts} line to line at {place} and {line_amps} on each leg."
LEGS_READ = (
    "A qualified person reads {line_volts} line to line at {place}. The three legs read "
    "{amps_a}, {amps_b} and {amps_c}."
)


def numeric(name: str, tag: str, title: str, asked: str, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a number."""
    return Family(name, tag, CHAPTER, title, asked, levels, scene, FORMULAS)


def judged(name: str, tag: str, title: str, judge: Judge, scene: Scene, *levels: Level) -> Family:
    """A family of the chapter that asks for a choice."""
    return Family(name, tag, CHAPTER, title, "choice", levels, scene, FORMULAS, judge)


POWERS = (
    numeric(
        "apparent_power",
        "NA",
        "Apparent power, in kVA",
        "apparent_power",
        running,
        Level(("line_volts", "line_amps"), f"{READ} What is the apparent power, in kVA?"),
        Level(("line_volts", *AMPS), f"{LEGS_READ} What is the apparent power, in kVA?"),
        Level(
            ("input_power", "power_factor"),
            "The meter at {place} shows {input_power} at a power factor (PF) of {power_factor}. "
            "What is the apparent power, in kVA?",
        ),
    ),
    numeric(
        "three_phase_kilowatts",
        "NK",
        "Kilowatts of a three-phase motor",
        "input_power",
        running,
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
        ),
    ),
    numeric(
        "amps_from_power",
        "NL",
        "Amps from power",
        "line_amps",
        running,
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
    numeric(
        "power_factor",
        "NF",
        "Power factor",
        "power_factor",
        running,
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
    numeric(
        "reactive_power",
        "NQ",
        "Reactive power, in kvar",
        "reactive_power",
        running,
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
    numeric(
        "capacitor_kvar",
        "NC",
        "Capacitor kvar to correct the power factor",
        "capacitor_kvar",
        running,
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

LOADS = (
    numeric(
        "motor_load",
        "NM",
        "Motor load from kilowatts, volts and amps",
        "motor_load",
        running,
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
        ),
    ),
    numeric(
        "load_by_amps",
        "NI",
        "Motor load from amps and volts",
        "load_by_amps",
        off_volts,
        Level(
            ("line_volts", "line_amps", "rated_volts", "full_load_amps"),
            f"{READ} The nameplate shows {{rated_volts}} and full-load amps (FLA) of "
            "{full_load_amps}. What is the load from the amps, corrected for the volts?",
        ),
        Level(
            ("line_volts", *AMPS, "rated_volts", "full_load_amps"),
            f"{LEGS_READ} The nameplate shows {{rated_volts}} and full-load amps (FLA) of "
            "{full_load_amps}. What is the load from the average amps, corrected for the volts?",
        ),
    ),
)

THREE_PHASE = (*POWERS, *LOADS)

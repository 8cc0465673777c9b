"""The efficiency chain: how much of the power passes each machine, and what motor carries it."""

from ..family import Family, Level
from ..formulas import POWER
from .judged_efficiency import judge_loss, judge_meter, judge_report
from .scenes import machines_in_a_row, pump, pump_near_full_load

__all__ = ["EFFICIENCY"]

CHAPTER = "efficiency"


def numeric(name: str, tag: str, title: str, asked: str, *levels: Level) -> Family:
    return Family(name, tag, CHAPTER, title, asked, levels, pump, POWER)


EFFICIENCY = (
    numeric(
        "pump_efficiency",
        "PE",
        "Pump efficiency from readings",
        "pump_efficiency",
        Level(
            ("water_power", "brake_power"),
            "{place} gives the water {water_power} and takes {brake_power} at its shaft. "
            "What is the pump efficiency?",
        ),
        Level(
            ("flow", "head", "brake_power"),
            "{place} moves {flow} against {head} of head. Its shaft takes {brake_power}. "
            "What is the pump efficiency?",
        ),
        Level(
            ("flow", "pressure", "input_power", "motor_efficiency"),
            "{person} reads {flow}, a pressure rise of {pressure} and {input_power} on the "
            "meter of {place}. The motor efficiency is {motor_efficiency}. "
            "What is the pump efficiency?",
        ),
    ),
    numeric(
        "motor_efficiency",
        "ME",
        "Motor efficiency from readings",
        "motor_efficiency",
        Level(
            ("brake_power", "motor_power"),
            "The motor of {place} takes {motor_power} and gives the shaft {brake_power}. "
            "What is the motor efficiency?",
        ),
        Level(
            ("brake_power", "input_power"),
            "The shaft of {place} takes {brake_power}. The meter shows {input_power}. "
            "What is the motor efficiency?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "input_power"),
            "{place} moves {flow} against {head} of head. Its curve gives a pump efficiency of "
            "{pump_efficiency}. The meter shows {input_power}. What is the motor efficiency?",
        ),
    ),
    numeric(
        "wire_to_water",
        "WW",
        "Wire-to-water efficiency from the meter",
        "overall_efficiency",
        Level(
            ("water_power", "input_power"),
            "{place} gives the water {water_power}. The meter shows {input_power}. "
            "What is the wire-to-water efficiency?",
        ),
        Level(
            ("flow", "head", "input_power"),
            "{place} moves {flow} against {head} of head. The meter shows {input_power}. "
            "What is the wire-to-water efficiency?",
        ),
        Level(
            ("flow", "pressure", "input_power"),
            "{person} reads {flow}, a pressure rise of {pressure} and {input_power} on the "
            "meter of {place}. What is the wire-to-water efficiency?",
        ),
    ),
    numeric(
        "efficiencies_in_a_row",
        "ER",
        "Efficiencies in a row",
        "overall_efficiency",
        Level(
            ("pump_efficiency", "motor_efficiency"),
            "{place} has a pump efficiency of {pump_efficiency} and a motor efficiency of "
            "{motor_efficiency}. What is the wire-to-water efficiency?",
        ),
        Level(
            ("pump_efficiency", "drive_efficiency", "motor_efficiency"),
            "Belts drive {place}. The motor efficiency is {motor_efficiency}, the drive "
            "efficiency {drive_efficiency} and the pump efficiency {pump_efficiency}. "
            "What is the wire-to-water efficiency?",
        ),
    ),
    numeric(
        "pump_from_overall",
        "PO",
        "The pump's share of the wire-to-water efficiency",
        "pump_efficiency",
        Level(
            ("overall_efficiency", "motor_efficiency"),
            "A test of {place} gave a wire-to-water efficiency of {overall_efficiency}. The "
            "motor efficiency is {motor_efficiency}. What is the pump efficiency?",
        ),
        Level(
            ("flow", "head", "input_power", "drive_efficiency", "motor_efficiency"),
            "Belts drive {place}, which moves {flow} against {head} of head. The meter shows "
            "{input_power}. The motor efficiency is {motor_efficiency} and the drive efficiency "
            "{drive_efficiency}. What is the pump efficiency?",
        ),
    ),
    numeric(
        "one_efficiency",
        "OE",
        "Only one efficiency is given",
        "motor_power",
        Level(
            ("water_power", "overall_efficiency"),
            "{place} gives the water {water_power}. The wire-to-water efficiency is "
            "{overall_efficiency}. What motor power goes in?",
        ),
        Level(
            ("flow", "head", "overall_efficiency"),
            "{place} moves {flow} against {head} of head. The wire-to-water efficiency is "
            "{overall_efficiency}. What motor power goes in?",
        ),
        Level(
            ("flow", "pressure", "overall_efficiency"),
            "{person} reads {flow} and a pressure rise of {pressure} at {place}. The last test "
            "found a wire-to-water efficiency of {overall_efficiency}. What motor power goes in?",
        ),
    ),
    numeric(
        "through_the_drive",
        "TD",
        "Pump, drive and motor in a row",
        "input_power",
        Level(
            ("brake_power", "drive_efficiency", "motor_efficiency"),
            "The shaft of {place} needs {brake_power}. The drive efficiency is "
            "{drive_efficiency} and the motor efficiency {motor_efficiency}. "
            "What input power does the meter show?",
        ),
        Level(
            ("water_power", "pump_efficiency", "drive_efficiency", "motor_efficiency"),
            "{place} gives the water {water_power}. The pump efficiency is {pump_efficiency}, "
            "the drive efficiency {drive_efficiency} and the motor efficiency "
            "{motor_efficiency}. What input power does the meter show?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "drive_efficiency", "motor_efficiency"),
            "{place} moves {flow} against {head} of head. The pump efficiency is "
            "{pump_efficiency}, the drive efficiency {drive_efficiency} and the motor "
            "efficiency {motor_efficiency}. What input power does the meter show?",
        ),
    ),
    numeric(
        "motor_size",
        "MS",
        "The next standard motor size",
        "motor_size",
        Level(
            ("brake_power",),
            "The shaft of {place} needs {brake_power}. "
            "What is the smallest standard motor that carries it?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "motor_efficiency"),
            "{place} moves {flow} against {head} of head. The pump efficiency is "
            "{pump_efficiency}. A new motor will have an efficiency of {motor_efficiency}. "
            "What is the smallest standard motor that carries it?",
            scene=pump_near_full_load,
        ),
        Level(
            ("flow", "head", "pump_efficiency", "drive_efficiency"),
            "Belts drive {place}, which moves {flow} against {head} of head. The pump "
            "efficiency is {pump_efficiency} and the drive efficiency {drive_efficiency}. "
            "What is the smallest standard motor that carries it?",
            scene=pump_near_full_load,
        ),
    ),
    Family(
        "most_lost",
        "LM",
        CHAPTER,
        "Which machine loses the most power",
        "choice",
        (
            Level(
                ("motor_power", "motor_output", "brake_power", "water_power"),
                "The motor of {place} takes {motor_power} and gives its drive {motor_output}. "
                "The drive gives the pump {brake_power}, and the water gets {water_power}. "
                "Which machine loses the most power?",
            ),
            Level(
                ("motor_power", "motor_efficiency", "drive_efficiency", "pump_efficiency"),
                "The motor of {place} takes {motor_power} at an efficiency of "
                "{motor_efficiency}. The drive efficiency is {drive_efficiency} and the pump "
                "efficiency {pump_efficiency}. Which machine loses the most power?",
                find=("motor_output", "brake_power", "water_power"),
            ),
        ),
        machines_in_a_row,
        POWER,
        judge_loss,
    ),
    Family(
        "impossible_efficiency",
        "IE",
        CHAPTER,
        "Which efficiency or reading must be wrong",
        "choice",
        (
            Level(
                (),
                "Three reports give the efficiencies of pumps at {station}. "
                "Which report must be wrong?",
            ),
            Level(
                (),
                "Three people read the flow, the head and the meter of pumps at {station}. "
                "Which set must hold a wrong reading?",
                judge=judge_meter,
            ),
        ),
        pump,
        POWER,
        judge_report,
    ),
)

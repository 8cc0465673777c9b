"""The efficiency chain: how much power each machine passes on, and what motor carries it."""

from solver.engine.family import Level
from solver.topics.scenes import BELTED, DIRECT

from .judgments import judge_loss, judge_meter, judge_report
from .stations import CHAPTER, NEAR_A_SIZE, OVER_A_SIZE

__all__ = ["EFFICIENCY"]

EFFICIENCY = (
    CHAPTER.numeric(
        "pump_efficiency",
        "PE",
        "Pump efficiency from readings",
        "pump_efficiency",
        DIRECT,
        Level(
            ("water_power", "brake_power"),
            "The {water_power:full} of {place} is {water_power} and its {brake_power:full} is "
            "{brake_power}. What is the pump efficiency?",
        ),
        Level(
            ("flow", "head", "brake_power"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. Its "
            "{brake_power:full} is {brake_power}. What is the pump efficiency?",
        ),
        Level(
            ("flow", "pressure", "input_power", "motor_efficiency"),
            "At {place}, {person} reads a flow of {flow}, a pressure rise of {pressure} and "
            "{input_power} on the power meter. The motor efficiency is {motor_efficiency}. "
            "What is the pump efficiency?",
        ),
    ),
    CHAPTER.numeric(
        "motor_efficiency",
        "ME",
        "Motor efficiency from readings",
        "motor_efficiency",
        DIRECT,
        Level(
            ("brake_power", "motor_power"),
            "The motor of {place} takes in {motor_power} and delivers {brake_power} at its shaft. "
            "What is the motor efficiency?",
        ),
        Level(
            ("brake_power", "input_power"),
            "The {brake_power:full} of {place} is {brake_power}. The power meter reads "
            "{input_power}. What is the motor efficiency?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "input_power"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. Its pump curve "
            "shows an efficiency of {pump_efficiency} at this point. The power meter reads "
            "{input_power}. What is the motor efficiency?",
        ),
    ),
    CHAPTER.numeric(
        "wire_to_water",
        "WW",
        "Wire-to-water efficiency from the meter",
        "overall_efficiency",
        DIRECT,
        Level(
            ("water_power", "input_power"),
            "The {water_power:full} of {place} is {water_power}. The power meter reads "
            "{input_power}. What is the wire-to-water efficiency?",
        ),
        Level(
            ("flow", "head", "input_power"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. The power meter "
            "reads {input_power}. What is the wire-to-water efficiency?",
        ),
        Level(
            ("flow", "pressure", "input_power"),
            "At {place}, {person} reads a flow of {flow}, a pressure rise of {pressure} and "
            "{input_power} on the power meter. What is the wire-to-water efficiency?",
        ),
    ),
    CHAPTER.numeric(
        "efficiencies_in_a_row",
        "ER",
        "Wire-to-water efficiency from its parts",
        "overall_efficiency",
        DIRECT,
        Level(
            ("pump_efficiency", "motor_efficiency"),
            "{place} has a pump efficiency of {pump_efficiency} and a motor efficiency of "
            "{motor_efficiency}. What is the wire-to-water efficiency?",
        ),
        Level(
            ("pump_efficiency", "drive_efficiency", "motor_efficiency"),
            "{place} is belt-driven. The motor efficiency is {motor_efficiency}, the drive "
            "efficiency is {drive_efficiency}, and the pump efficiency is {pump_efficiency}. "
            "What is the wire-to-water efficiency?",
            scene=BELTED,
        ),
    ),
    CHAPTER.numeric(
        "pump_from_overall",
        "PO",
        "Pump efficiency from wire-to-water efficiency",
        "pump_efficiency",
        DIRECT,
        Level(
            ("overall_efficiency", "motor_efficiency"),
            "A test of {place} shows a wire-to-water efficiency of {overall_efficiency}. The "
            "motor efficiency is {motor_efficiency}. What is the pump efficiency?",
        ),
        Level(
            ("flow", "head", "input_power", "drive_efficiency", "motor_efficiency"),
            "{place} is belt-driven. It moves {flow} against a total dynamic head (TDH) of {head}, "
            "and the power meter reads {input_power}. The motor efficiency is {motor_efficiency} "
            "and the drive efficiency is {drive_efficiency}. What is the pump efficiency?",
            scene=BELTED,
        ),
    ),
    CHAPTER.numeric(
        "one_efficiency",
        "OE",
        "From water to wire with one efficiency",
        "motor_power",
        DIRECT,
        Level(
            ("water_power", "overall_efficiency"),
            "The {water_power:full} of {place} is {water_power}. The wire-to-water efficiency is "
            "{overall_efficiency}. What is the {motor_power:full}?",
        ),
        Level(
            ("flow", "head", "overall_efficiency"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. The wire-to-water "
            "efficiency is {overall_efficiency}. What is the {motor_power:full}?",
        ),
        Level(
            ("flow", "pressure", "overall_efficiency"),
            "{person} reads {flow} and a pressure rise of {pressure} at {place}. The last test "
            "showed a wire-to-water efficiency of {overall_efficiency}. What is the "
            "{motor_power:full}?",
        ),
    ),
    CHAPTER.numeric(
        "through_the_drive",
        "TD",
        "Through the pump, the drive and the motor",
        "input_power",
        BELTED,
        Level(
            ("brake_power", "drive_efficiency", "motor_efficiency"),
            "{place} needs {brake_power} at its shaft. The drive efficiency is "
            "{drive_efficiency} and the motor efficiency is {motor_efficiency}. How many "
            "kilowatts does the power meter read?",
        ),
        Level(
            ("water_power", "pump_efficiency", "drive_efficiency", "motor_efficiency"),
            "The {water_power:full} of {place} is {water_power}. The pump efficiency is "
            "{pump_efficiency}, the drive efficiency is {drive_efficiency}, and the motor "
            "efficiency is {motor_efficiency}. How many kilowatts does the power meter read?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "drive_efficiency", "motor_efficiency"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. The pump "
            "efficiency is {pump_efficiency}, the drive efficiency is {drive_efficiency}, and the "
            "motor efficiency is {motor_efficiency}. How many kilowatts does the power meter read?",
        ),
    ),
    CHAPTER.numeric(
        "motor_size",
        "MS",
        "The next standard motor size",
        "motor_size",
        DIRECT,
        Level(
            ("brake_power",),
            "{place} needs {brake_power} at its shaft. What is the smallest standard motor that "
            "can carry this load?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "motor_efficiency"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. The pump "
            "efficiency is {pump_efficiency}. The new motor's efficiency will be "
            "{motor_efficiency}. What is the smallest standard motor that can carry this load?",
            scene=NEAR_A_SIZE,
        ),
        Level(
            ("flow", "head", "pump_efficiency", "drive_efficiency"),
            "{place} is belt-driven. It moves {flow} against a total dynamic head (TDH) of "
            "{head}. The pump efficiency is {pump_efficiency} and the drive efficiency is "
            "{drive_efficiency}. What is the smallest standard motor that can carry this load?",
            scene=OVER_A_SIZE,
        ),
    ),
    CHAPTER.judged(
        "most_lost",
        "LM",
        "Which machine loses the most power, and which the least",
        judge_loss,
        BELTED,
        Level(
            ("motor_power", "motor_output", "brake_power", "water_power"),
            "The motor of {place} takes in {motor_power} and delivers {motor_output} to the "
            "belts. The belts deliver {brake_power} to the pump, and the water gets "
            "{water_power}. {asks}",
        ),
        Level(
            ("motor_power", "motor_efficiency", "drive_efficiency", "pump_efficiency"),
            "The motor of {place} takes in {motor_power} and drives the pump by belts. The motor efficiency is "
            "{motor_efficiency}, the drive efficiency is {drive_efficiency}, and the pump "
            "efficiency is {pump_efficiency}. {asks}",
            find=("motor_output", "brake_power", "water_power"),
        ),
    ),
    CHAPTER.judged(
        "impossible_efficiency",
        "IE",
        "Which report or reading must be wrong",
        judge_report,
        DIRECT,
        Level(
            (),
            "Three reports give the efficiencies of pumps at {station}. Which report must be "
            "wrong?",
        ),
        Level(
            (),
            "Three people each took readings on a pump at {station}: flow, total dynamic head "
            "(TDH) and power meter. Which set must have a wrong reading?",
            judge=judge_meter,
        ),
    ),
)

"""The three horsepowers: what the water gets, what the shaft carries, what the motor takes in."""

from solver.engine.family import Level
from solver.topics.chapter import Chapter
from solver.topics.formulas import POWER
from solver.topics.scenes import ANY, DIRECT

from .judgments import judge_claim, judge_impossible, judge_which

__all__ = ["HORSEPOWER"]

CHAPTER = Chapter("horsepower", POWER)

HORSEPOWER = (
    CHAPTER.numeric(
        "water_power",
        "WP",
        "Water horsepower from flow and head",
        "water_power",
        ANY,
        Level(
            ("flow", "head"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. What is the "
            "{water_power:full}?",
        ),
        Level(
            ("flow", "pressure"),
            "{place} moves {flow}. The gauges show a pressure rise of {pressure} from suction to "
            "discharge. What is the {water_power:full}?",
        ),
        Level(
            ("daily_flow", "pressure"),
            "{place} runs around the clock and moves {daily_flow}. The gauges show a pressure rise "
            "of {pressure} from suction to discharge. What is the {water_power:full}?",
        ),
    ),
    CHAPTER.numeric(
        "brake_power",
        "BP",
        "Brake horsepower at the pump shaft",
        "brake_power",
        ANY,
        Level(
            ("water_power", "pump_efficiency"),
            "The {water_power:full} of {place} is {water_power}. The pump efficiency is "
            "{pump_efficiency}. What is the {brake_power:full}?",
        ),
        Level(
            ("flow", "head", "pump_efficiency"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. The pump "
            "efficiency is {pump_efficiency}. What is the {brake_power:full}?",
        ),
        Level(
            ("daily_flow", "pressure", "pump_efficiency"),
            "{place} runs around the clock and moves {daily_flow} with a pressure rise of "
            "{pressure}. The pump efficiency is {pump_efficiency}. What is the "
            "{brake_power:full}?",
        ),
    ),
    CHAPTER.numeric(
        "motor_power",
        "MP",
        "Motor horsepower, the input to the motor",
        "motor_power",
        DIRECT,
        Level(
            ("brake_power", "motor_efficiency"),
            "{place} needs {brake_power} at its shaft. The motor efficiency is "
            "{motor_efficiency}. What is the {motor_power:full}?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "motor_efficiency"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. The pump "
            "efficiency is {pump_efficiency} and the motor efficiency is {motor_efficiency}. "
            "What is the {motor_power:full}?",
        ),
        Level(
            ("flow", "pressure", "pump_efficiency", "motor_efficiency"),
            "{person} reads {flow} and a pressure rise of {pressure} at {place}. The pump "
            "efficiency is {pump_efficiency} and the motor efficiency is {motor_efficiency}. "
            "What is the {motor_power:full}?",
        ),
    ),
    CHAPTER.numeric(
        "flow_from_power",
        "FL",
        "The flow a pump can move",
        "flow",
        DIRECT,
        Level(
            ("brake_power", "pump_efficiency", "head"),
            "The motor delivers {brake_power} to the shaft of {place}. The pump efficiency is "
            "{pump_efficiency} and the total dynamic head (TDH) is {head}. What flow can the pump move?",
        ),
        Level(
            ("motor_power", "motor_efficiency", "pump_efficiency", "head"),
            "The motor of {place} takes in {motor_power}. The motor efficiency is "
            "{motor_efficiency} and the pump efficiency is {pump_efficiency}. The total dynamic "
            "head (TDH) is {head}. What flow can the pump move?",
        ),
        Level(
            ("input_power", "motor_efficiency", "pump_efficiency", "pressure"),
            "The power meter at {place} reads {input_power}. The motor efficiency is "
            "{motor_efficiency} and the pump efficiency is {pump_efficiency}. The pressure rise is "
            "{pressure}. What flow is the pump moving?",
        ),
    ),
    CHAPTER.numeric(
        "head_from_power",
        "HD",
        "The head from power and flow",
        "head",
        DIRECT,
        Level(
            ("water_power", "flow"),
            "The {water_power:full} of {place} is {water_power} while it moves {flow}. What is the "
            "total dynamic head (TDH)?",
        ),
        Level(
            ("brake_power", "pump_efficiency", "flow"),
            "The shaft of {place} carries {brake_power} while the pump moves {flow}. The pump "
            "efficiency is {pump_efficiency}. What is the total dynamic head (TDH)?",
        ),
        Level(
            ("input_power", "motor_efficiency", "pump_efficiency", "flow"),
            "The power meter at {place} reads {input_power} while the pump moves {flow}. The motor "
            "efficiency is {motor_efficiency} and the pump efficiency is {pump_efficiency}. "
            "What is the total dynamic head (TDH)?",
        ),
    ),
    CHAPTER.judged(
        "which_power",
        "WH",
        "Which reading is which horsepower",
        judge_which,
        DIRECT,
        Level(
            (),
            "{person} wrote down the {water_power:full}, the {brake_power:full} and the "
            "{motor_power:full} of {place}, but not which number was which. Which set of "
            "labels is right?",
        ),
        Level(
            ("flow", "head"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. Someone wrote "
            "down its {water_power:full}, {brake_power:full} and {motor_power:full}, but not "
            "which number was which. Which set of labels is right?",
            find=("water_power",),
        ),
    ),
    CHAPTER.judged(
        "impossible_powers",
        "IM",
        "Which set of readings is impossible",
        judge_impossible,
        DIRECT,
        Level(
            (),
            "Three sets of readings came in for the pumps at {station}. Which set is impossible?",
        ),
        Level(
            ("flow", "head"),
            "{place} moves {flow} against a total dynamic head (TDH) of {head}. Three people "
            "each worked out its {brake_power:full}. Which value is impossible?",
            find=("water_power",),
            judge=judge_claim,
        ),
    ),
)

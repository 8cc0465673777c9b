"""The three horsepowers: what the water gets, what the shaft carries, what the motor takes in."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Family, Judgement, Level, Option
from solver.topics.drawn.pumps import pump
from solver.topics.drawn.readings import noted
from solver.topics.formulas import POWER
from solver.units.show import exact, with_unit

__all__ = ["HORSEPOWER"]

CHAPTER = "horsepower"
POWER_UNIT = {"us": "hp", "si": "kW"}
IN_ORDER = "{motor_power:short} > {brake_power:short} > {water_power:short}"


def numeric(name: str, tag: str, title: str, asked: str, *levels: Level) -> Family:
    return Family(name, tag, CHAPTER, title, asked, levels, pump, POWER)


def judge_which(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Three readings without names: water horsepower is the least, motor horsepower the most."""
    water, brake, motor = (noted(values[f"{name}_power"]) for name in ("water", "brake", "motor"))
    unit = POWER_UNIT[units]
    in_order = " > ".join(with_unit(exact(value), unit) for value in (motor, brake, water))

    def wrong(id: str, says: str, *powers: float) -> Option:
        return Option(id, _set_text(*powers, units), says)

    return Judgement(
        IN_ORDER,
        in_order,
        Option(
            "in_order",
            _set_text(water, brake, motor, units),
            "Each machine passes on less than it gets, so the power drops from the motor to the water.",
        ),
        (
            wrong(
                "water_over_brake",
                "Here {water_power:short} is bigger than {brake_power:short}. The water can't get more "
                "power than the shaft carries.",
                *(brake, water, motor),
            ),
            wrong(
                "brake_over_motor",
                "Here {brake_power:short} is bigger than {motor_power:short}. The shaft can't carry more "
                "power than the motor takes in.",
                *(water, motor, brake),
            ),
            wrong(
                "reversed",
                "This order is backward. The motor takes in the most, and the water gets the least.",
                *(motor, brake, water),
            ),
        ),
    )


def _set_text(water: float, brake: float, motor: float, units: str) -> str:
    unit = POWER_UNIT[units]
    parts = (("water", water), ("brake", brake), ("motor", motor))
    return ", ".join(f"{{{n}_power:short}} {with_unit(exact(value), unit)}" for n, value in parts)


def judge_impossible(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Three sets of readings, one of which breaks motor > brake > water."""
    water, brake, motor = (values[f"{n}_power"] for n in ("water", "brake", "motor"))
    swapped = draw.pick(("water_over_brake", "brake_over_motor"))
    if swapped == "water_over_brake":
        broken, says = (
            (brake, water, motor),
            "In this set {water_power:short} is bigger than {brake_power:short}. A pump can't give the water more "
            "than it gets.",
        )
    else:
        broken, says = (
            (water, motor, brake),
            "In this set {brake_power:short} is bigger than {motor_power:short}. A motor can't deliver more than it "
            "takes in.",
        )
    scales = draw.shuffled((0.62, 0.81, 1.24, 1.45))[:2]
    possible = [tuple(noted(p * scale) for p in (water, brake, motor)) for scale in scales]
    fine = (
        "This set is possible: {motor_power:short} is the biggest, then {brake_power:short}, then "
        "{water_power:short}."
    )
    return Judgement(
        IN_ORDER,
        _set_text(*broken, units),
        Option("broken", _set_text(*broken, units), says),
        tuple(
            Option(f"possible_{i}", _set_text(*s, units), fine) for i, s in enumerate(possible, 1)
        ),
    )


def judge_claim(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Readings of flow and head against three claims for the shaft, one below the water power."""
    water = values["water_power"]
    shares = (draw.between(0.72, 0.9), 1 / draw.between(0.55, 0.68), 1 / draw.between(0.72, 0.84))
    low, high, middle = (noted(water * share) for share in shares)
    unit = POWER_UNIT[units]
    text = {value: with_unit(exact(value), unit) for value in (low, high, middle)}
    water_text = with_unit(f"{water:.3g}", unit)
    return Judgement(
        "{brake_power:short} must be bigger than {water_power:short}",
        f"{text[low]} is less than {water_text}",
        Option(
            "below_water", text[low], "The shaft can't give the water more power than it carries."
        ),
        tuple(
            Option(
                f"possible_{i}",
                text[value],
                f"This one is possible: it is more than the {water_text} that the water gets.",
            )
            for i, value in enumerate((high, middle), 1)
        ),
    )


HORSEPOWER = (
    numeric(
        "water_power",
        "WP",
        "Water horsepower from flow and head",
        "water_power",
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
    numeric(
        "brake_power",
        "BP",
        "Brake horsepower at the pump shaft",
        "brake_power",
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
    numeric(
        "motor_power",
        "MP",
        "Motor horsepower, the input to the motor",
        "motor_power",
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
    numeric(
        "flow_from_power",
        "FL",
        "The flow a pump can move",
        "flow",
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
    numeric(
        "head_from_power",
        "HD",
        "The head from power and flow",
        "head",
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
    Family(
        "which_power",
        "WH",
        CHAPTER,
        "Which reading is which horsepower",
        "choice",
        (
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
        pump,
        POWER,
        judge_which,
    ),
    Family(
        "impossible_powers",
        "IM",
        CHAPTER,
        "Which set of readings is impossible",
        "choice",
        (
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
        pump,
        POWER,
        judge_impossible,
    ),
)

"""The three horsepowers: what the water gets, what the shaft gives, what the wire brings."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Family, Judgement, Level, Option
from ..formulas import POWER
from ..show import exact, with_unit
from .scenes import noted, pump

__all__ = ["HORSEPOWER"]

CHAPTER = "horsepower"
POWER_UNIT = {"us": "hp", "si": "kW"}


def numeric(name: str, tag: str, title: str, asked: str, *levels: Level) -> Family:
    return Family(name, tag, CHAPTER, title, asked, levels, pump, POWER)


def judge_which(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Three readings without names: water power is the least, motor power the most."""
    water, brake, motor = (noted(values[f"{name}_power"]) for name in ("water", "brake", "motor"))
    unit = POWER_UNIT[units]
    in_order = " ≥ ".join(with_unit(exact(value), unit) for value in (motor, brake, water))

    def wrong(id: str, says: str, *powers: float) -> Option:
        return Option(id, _set_text(*powers, units), says)

    return Judgement(
        "motor power ≥ brake power ≥ water power",
        in_order,
        Option(
            "in_order",
            _set_text(water, brake, motor, units),
            "Each machine passes on less than it gets, so power falls from the motor to the water.",
        ),
        (
            wrong(
                "water_over_brake",
                "Here the water gets more than the shaft gives. The pump must waste some.",
                *(brake, water, motor),
            ),
            wrong(
                "brake_over_motor",
                "Here the shaft carries more than the motor takes in. The motor must waste some.",
                *(water, motor, brake),
            ),
            wrong(
                "reversed",
                "This is the wrong way round. Power falls from the wire to the water.",
                *(motor, brake, water),
            ),
        ),
    )


def _set_text(water: float, brake: float, motor: float, units: str) -> str:
    unit = POWER_UNIT[units]
    parts = (("water", water), ("brake", brake), ("motor", motor))
    return ", ".join(f"{name} {with_unit(exact(value), unit)}" for name, value in parts)


def judge_impossible(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Three sets of readings, one of which breaks motor ≥ brake ≥ water."""
    water, brake, motor = (values[f"{n}_power"] for n in ("water", "brake", "motor"))
    swapped = draw.pick(("water_over_brake", "brake_over_motor"))
    if swapped == "water_over_brake":
        broken, says = (
            (brake, water, motor),
            "Water power is above brake power, as if the pump made power.",
        )
    else:
        broken, says = (
            (water, motor, brake),
            "Brake power is above motor power, as if the motor made power.",
        )
    scales = draw.shuffled((0.62, 0.81, 1.24, 1.45))[:2]
    possible = [tuple(noted(p * scale) for p in (water, brake, motor)) for scale in scales]
    fine = (
        "This set is possible: motor power is above brake power, and brake power above water power."
    )
    return Judgement(
        "possible only if motor power ≥ brake power ≥ water power",
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
        "possible only if brake power ≥ water power",
        f"{text[low]} is below {water_text}",
        Option(
            "below_water", text[low], "The shaft cannot give the water more than it carries itself."
        ),
        tuple(
            Option(
                f"possible_{i}",
                text[value],
                f"This is possible: it is above the {water_text} that the water gets.",
            )
            for i, value in enumerate((high, middle), 1)
        ),
    )


HORSEPOWER = (
    numeric(
        "water_power",
        "WP",
        "Water power from flow and head",
        "water_power",
        Level(
            ("flow", "head"),
            "{place} moves {flow} against a total head of {head}. What is the water power?",
        ),
        Level(
            ("flow", "pressure"),
            "{place} moves {flow}. The gauges show a pressure rise of {pressure} across it. "
            "What is the water power?",
        ),
        Level(
            ("daily_flow", "pressure"),
            "{place} runs all day and moves {daily_flow}. The gauges show a pressure rise of "
            "{pressure} across it. What is the water power?",
        ),
    ),
    numeric(
        "brake_power",
        "BP",
        "Brake power at the pump shaft",
        "brake_power",
        Level(
            ("water_power", "pump_efficiency"),
            "{place} gives the water {water_power} at a pump efficiency of {pump_efficiency}. "
            "What brake power does its shaft need?",
        ),
        Level(
            ("flow", "head", "pump_efficiency"),
            "{place} moves {flow} against {head} of head. The pump efficiency is "
            "{pump_efficiency}. What is the brake power?",
        ),
        Level(
            ("daily_flow", "pressure", "pump_efficiency"),
            "{place} runs all day and moves {daily_flow} with a pressure rise of {pressure}. "
            "The pump efficiency is {pump_efficiency}. What is the brake power?",
        ),
    ),
    numeric(
        "motor_power",
        "MP",
        "Motor power, the input to the motor",
        "motor_power",
        Level(
            ("brake_power", "motor_efficiency"),
            "The shaft of {place} needs {brake_power}. The motor efficiency is "
            "{motor_efficiency}. What motor power goes in?",
        ),
        Level(
            ("flow", "head", "pump_efficiency", "motor_efficiency"),
            "{place} moves {flow} against {head} of head. The pump efficiency is "
            "{pump_efficiency} and the motor efficiency {motor_efficiency}. "
            "What motor power goes in?",
        ),
        Level(
            ("flow", "pressure", "pump_efficiency", "motor_efficiency"),
            "{person} notes {flow} and a pressure rise of {pressure} at {place}. The pump "
            "efficiency is {pump_efficiency} and the motor efficiency {motor_efficiency}. "
            "What motor power goes in?",
        ),
    ),
    numeric(
        "flow_from_power",
        "FL",
        "The flow a given motor can lift",
        "flow",
        Level(
            ("brake_power", "pump_efficiency", "head"),
            "A motor gives the shaft of {place} {brake_power}. The pump efficiency is "
            "{pump_efficiency} and the head {head}. What flow can it lift?",
        ),
        Level(
            ("motor_power", "motor_efficiency", "pump_efficiency", "head"),
            "The motor of {place} takes {motor_power}. Its efficiency is {motor_efficiency}, "
            "the pump's is {pump_efficiency}, and the head is {head}. What flow can it lift?",
        ),
        Level(
            ("input_power", "motor_efficiency", "pump_efficiency", "pressure"),
            "The meter at {place} shows {input_power}. The motor efficiency is "
            "{motor_efficiency} and the pump efficiency {pump_efficiency}. The pressure rise is "
            "{pressure}. What flow can it lift?",
        ),
    ),
    numeric(
        "head_from_power",
        "HD",
        "The head a given power allows",
        "head",
        Level(
            ("water_power", "flow"),
            "{place} gives the water {water_power} while it moves {flow}. What head is that?",
        ),
        Level(
            ("brake_power", "pump_efficiency", "flow"),
            "The shaft of {place} carries {brake_power}. The pump efficiency is "
            "{pump_efficiency} and the flow {flow}. What head can it reach?",
        ),
        Level(
            ("input_power", "motor_efficiency", "pump_efficiency", "flow"),
            "The meter at {place} shows {input_power}. The motor efficiency is "
            "{motor_efficiency} and the pump efficiency {pump_efficiency}. The flow is {flow}. "
            "What head can it reach?",
        ),
    ),
    Family(
        "which_power",
        "WH",
        CHAPTER,
        "Which reading is which power",
        "choice",
        (
            Level(
                (),
                "{person} wrote down the water, brake and motor power of {place}, but not which "
                "is which. Which set has the names right?",
            ),
            Level(
                ("flow", "head"),
                "{place} moves {flow} against {head} of head. Its water, brake and motor power "
                "were noted without names. Which set has the names right?",
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
        "Which readings are impossible",
        "choice",
        (
            Level(
                (),
                "Three sets of readings came in for pumps at {station}. Which set is impossible?",
            ),
            Level(
                ("flow", "head"),
                "{place} moves {flow} against {head} of head. Three people report its brake "
                "power. Which report is impossible?",
                find=("water_power",),
                judge=judge_claim,
            ),
        ),
        pump,
        POWER,
        judge_impossible,
    ),
)

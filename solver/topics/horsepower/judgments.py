"""Judgments of the horsepower chapter: which reading is which, and which can't be right."""

from collections.abc import Mapping, Sequence

from solver.engine.draw import Draw
from solver.engine.judgement import Judgement, Option
from solver.topics.formulas import POWER
from solver.topics.readings import by, noted, shown

__all__ = ["judge_claim", "judge_impossible", "judge_which"]

IN_ORDER = "{motor_power:short} > {brake_power:short} > {water_power:short}"
worked = by(POWER)


def judge_which(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Three readings without names: water horsepower is the least, motor horsepower the most."""
    water, brake, motor = (noted(values[f"{name}_power"]) for name in ("water", "brake", "motor"))
    in_order = " > ".join(shown("brake_power", value, units) for value in (motor, brake, water))

    def wrong(id: str, says: str, *powers: float) -> Option:
        return Option(id, _set_text(powers, units), says)

    return Judgement(
        IN_ORDER,
        in_order,
        Option(
            "in_order",
            _set_text((water, brake, motor), units),
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


def _set_text(powers: Sequence[float], units: str) -> str:
    """Water, brake and motor power, each with its name."""
    parts = zip(("water", "brake", "motor"), powers, strict=True)
    return ", ".join(
        f"{{{n}_power:short}} {shown(f'{n}_power', value, units)}" for n, value in parts
    )


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
        _set_text(broken, units),
        Option("broken", _set_text(broken, units), says),
        tuple(
            Option(f"possible_{i}", _set_text(s, units), fine) for i, s in enumerate(possible, 1)
        ),
    )


def judge_claim(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Readings of flow and head against three claims for the shaft, one below the water power."""
    water = values["water_power"]
    share, poor, good = (draw.between(*e) for e in ((0.72, 0.9), (0.55, 0.68), (0.72, 0.84)))
    high, middle = (
        noted(worked({"water_power": water, "pump_efficiency": 100 * e}, "brake_power", units))
        for e in (poor, good)
    )
    low = noted(water * share)
    text = {value: shown("brake_power", value, units) for value in (low, high, middle)}
    water_text = shown("water_power", noted(water), units)
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

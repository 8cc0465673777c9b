"""Judgments of the efficiency chapter: the greatest loss, and readings that can't be right."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.judgement import Judgement, Option
from solver.topics.formulas import POWER
from solver.topics.readings import by, noted, only, shown
from solver.topics.scenes import DIRECT
from solver.units.show import figures

__all__ = ["judge_loss", "judge_meter", "judge_report"]

MACHINES = ("motor", "drive", "pump")
NAMES = {"motor": "the motor", "drive": "the belts", "pump": "the pump"}
LOSES = {"motor": "loses", "drive": "lose", "pump": "loses"}
ROW = ("motor_power", "motor_output", "brake_power", "water_power")
APART = 1.1  # losses nearer than a tenth are too close to call from readings
worked = by(POWER)


def judge_loss(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """What each machine takes in minus what it delivers; the most or the least is asked.

    The pump loses the most in nearly every station, so the other question is asked more often.
    """
    powers = only(values, *ROW)
    losses = {machine: worked(powers, f"{machine}_loss", units) for machine in MACHINES}
    most = draw.pick((True, False, False))
    asked, other, *_ = sorted(losses, key=lambda machine: losses[machine], reverse=most)
    if not 1 / APART < losses[asked] / losses[other] < APART:
        return _loss_asked(losses, asked, most, units)
    return None


def _loss_asked(losses: Mapping[str, float], asked: str, most: bool, units: str) -> Judgement:
    text = {m: shown(f"{m}_loss", loss, units, figures) for m, loss in losses.items()}
    which = "most" if most else "least"
    than = "more than either of the other two" if most else "less than either of the other two"

    def wrong(machine: str) -> Option:
        called, others = NAMES[machine], f"{NAMES[asked]} {LOSES[asked]}"
        says = (
            f"{called.capitalize()} {LOSES[machine]} {text[machine]}, but {others} {text[asked]}."
        )
        return Option(f"took_{machine}", called.capitalize(), says)

    return Judgement(
        "power lost = power in − power out",
        "; ".join(f"{NAMES[machine]} {loss}" for machine, loss in text.items()),
        Option(
            asked,
            NAMES[asked].capitalize(),
            f"{NAMES[asked].capitalize()} {LOSES[asked]} {text[asked]}, {than}.",
        ),
        tuple(wrong(machine) for machine in losses if machine != asked),
        f"Which of the three loses the {which} power?",
    )


def _in_a_row(pump_part: float, motor: float, units: str) -> int:
    """Wire-to-water efficiency to a whole percent."""
    parts = {"pump_efficiency": pump_part, "motor_efficiency": motor}
    return round(noted(worked(parts, "overall_efficiency", units), 6))


def _report(pump_part: float, motor: float, overall: float) -> str:
    return f"pump {pump_part:g}%, motor {motor:g}%, wire-to-water {overall:g}%"


def judge_report(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Three reports of pump, motor and wire-to-water efficiency; one is higher than its pump's."""
    pumps = draw.shuffled(range(54, 83, 4))[:3]
    motors = [draw.step(85, 95, 1) for _ in pumps]
    sets = [(p, m, _in_a_row(p, m, units)) for p, m in zip(pumps, motors, strict=True)]
    (low, high, _), *possible = sets
    reported = draw.pick((round((low + high) / 2), low + draw.step(2, 4, 1)))
    return Judgement(
        "wire-to-water efficiency = pump efficiency × motor efficiency, so it is lower than either one",
        f"{reported:g}% is higher than the pump's {low:g}%",
        Option(
            "above_the_pump",
            _report(low, high, reported),
            f"Wire-to-water can't be higher than the pump's own {low:g}%, because the motor wastes "
            "some too.",
        ),
        tuple(
            Option(
                f"possible_{i}",
                _report(*parts),
                f"This one is possible: {parts[0]:g}% of {parts[1]:g}% is about {parts[2]:g}%.",
            )
            for i, parts in enumerate(possible, 1)
        ),
    )


def _log(seen: Mapping[str, float], units: str, meter: float) -> str:
    parts = {**only(seen, "flow", "head"), "input_power": meter}
    return ", ".join(shown(name, value, units) for name, value in parts.items())


def judge_meter(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Three logs of flow, head and meter; one meter reads less than its water gets."""
    seen = [DIRECT(draw, units).values for _ in range(3)]
    lossless = [{**only(p, "flow", "head"), "overall_efficiency": 100.0} for p in seen]
    water = [worked(readings, "input_power", units) for readings in lossless]
    low = noted(water[0] / draw.between(1.08, 1.35))
    carried = [f"{kw:.3g} kW" for kw in water]
    meters = [shown("input_power", p["input_power"], units) for p in seen]
    return Judgement(
        "{input_power:name} must be bigger than {water_power:name}",
        f"the water gets {carried[0]}; the meter reads {shown('input_power', low, units)}",
        Option(
            "below_water",
            _log(seen[0], units, low),
            f"The water would get {carried[0]}, more than the meter reads. Nothing is over 100% efficient.",
        ),
        tuple(
            Option(
                f"possible_{i}",
                _log(seen[i], units, seen[i]["input_power"]),
                f"This one is possible: the water gets {carried[i]} of the {meters[i]} on the meter.",
            )
            for i in (1, 2)
        ),
    )

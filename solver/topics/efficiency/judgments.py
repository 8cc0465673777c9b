"""Judgments of the efficiency chapter: the greatest loss, and readings that can't be right."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Option
from solver.topics.drawn.pumps import pump
from solver.topics.drawn.readings import by, noted, only, shown
from solver.topics.formulas import POWER
from solver.units.show import figures

__all__ = ["judge_loss", "judge_meter", "judge_report"]

MACHINES = ("motor", "drive", "pump")
ROW = ("motor_power", "motor_output", "brake_power", "water_power")
APART = 1.1  # losses nearer than a tenth are too close to call from readings
worked = by(POWER)


def judge_loss(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """What each machine takes in minus what it delivers; the largest is asked."""
    powers = only(values, *ROW)
    losses = {machine: worked(powers, f"{machine}_loss", units) for machine in MACHINES}
    second, most = sorted(losses.values())[-2:]
    if most < second * APART:
        return None
    text = {m: shown(f"{m}_loss", loss, units, figures) for m, loss in losses.items()}
    worst = max(losses, key=lambda machine: losses[machine])
    least_efficient = min(losses, key=lambda machine: values[f"{machine}_efficiency"])

    def wrong(machine: str) -> Option:
        says = f"The {machine} loses {text[machine]}, but the {worst} loses {text[worst]}."
        if machine == least_efficient:
            says += f" The {machine} has the lowest efficiency, but less power reaches it."
        return Option(f"took_{machine}", f"The {machine}", says)

    return Judgement(
        "power lost = power in − power out",
        "; ".join(f"{machine} {loss}" for machine, loss in text.items()),
        Option(worst, f"The {worst}", f"The {worst} loses {text[worst]}, more than the other two."),
        tuple(wrong(machine) for machine in losses if machine != worst),
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
    seen = [pump(draw, units) for _ in range(3)]
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

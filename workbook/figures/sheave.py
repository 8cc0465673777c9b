"""Another sheave on the motor: what it makes of the pump's speed, its torque and its power."""

from solver.algebra.expression import Known, Percent
from solver.topics.formulas import FORMULAS
from solver.units.show import exact

from .chart import BLUE, GREEN, GREY, ORANGE, Axis, Chart, Dot, Line
from .view import Figure, Scale, Slide, Values, View, told, valued, worked

__all__ = ["SHEAVE"]

RIM = {"us": 6500.0, "si": 33.0}  # ft/min | m/s: cast iron, common practice, no source
PUMP_SHEAVE = {"us": 12.4, "si": 315.0}  # in | mm, a size that is sold
BELTS = 95.0  # percent that V-belts pass on (common practice, no source)
MOST, TALL, SHOWN = 300, 230, 40  # percent of now; px; steps of a curve
TURNING = ("pump_speed", "shaft_torque", "brake_power", "motor_output", "belt_speed")
CURVES = (
    ("speed", "pump_speed", BLUE),
    ("torque", "shaft_torque", GREEN),
    ("power", "brake_power", ORANGE),
)
NEW = Slide(
    "new_motor_sheave",
    Scale(4, 12, 0.2, 7.4),
    Scale(100, 300, 5, 185),
    label="New motor sheave, {unit}",
)


def driven(sheave: float, power: float, values: Values, units: str) -> dict[str, float]:
    """The drive with this sheave on the motor, and this power at the pump."""
    known = {
        "motor_sheave": sheave,
        "pump_sheave": PUMP_SHEAVE[units],
        "running_speed": values["running_speed"],
        "brake_power": power,
        "drive_efficiency": BELTS,
    }
    for asked in TURNING:
        known |= worked(known, asked, FORMULAS, units)
    return known


def fitted(values: Values, units: str) -> tuple[dict[str, float], dict[str, float]]:
    """The drive now, and with the new sheave; the pump's power goes by the cube law."""
    now = driven(values["motor_sheave"], values["brake_power"], values, units)
    turned = {name: now[name] for name in ("motor_sheave", "pump_speed")}
    turned["new_motor_sheave"] = values["new_motor_sheave"]
    turned = {
        "brake_power": now["brake_power"],
        "pump_speed": now["pump_speed"],
        "new_speed": worked(turned, "new_speed", FORMULAS, units)["new_speed"],
    }
    power = worked(turned, "new_shaft_power", FORMULAS, units)["new_shaft_power"]
    return now, driven(values["new_motor_sheave"], power, values, units)


def percent(part: float, whole: float, units: str) -> float:
    """A number in percent of another."""
    share = Percent(Known("part") / Known("whole"))
    return valued(share, {"part": part, "whole": whole}, units)


def view(values: Values, units: str) -> View:
    """The drive with the new sheave, beside the one that is on now."""
    now, new = fitted(values, units)
    sheaves = (told(one["motor_sheave"], "motor_sheave", units, exact) for one in (now, new))
    rows = [("Motor sheave", *sheaves)]
    for label, name in zip(
        ("Pump speed", "Torque at the pump", "Power at the pump", "Power from the motor", "Belt speed"),
        TURNING, strict=True,
    ):  # fmt: skip
        rows.append((label, told(now[name], name, units), told(new[name], name, units)))
    size = told(values["motor_size"], "motor_size", units, exact)
    rows.append(("Motor's nameplate", size, size))
    says = f"{_change(now, new, units)} {_verdict(values, new, units)}"
    told_all = "; ".join(f"{label} {was}, then {then}" for label, was, then in rows)
    alt = (
        "Speed, torque and power of the pump against the motor's sheave, in percent of now. Speed is a "
        f"straight line, torque bends up, and power bends up most. {told_all}. {says}"
    )
    return View(says, alt, ("", "Now", "New sheave"), tuple(rows), values, units)


def _change(now: Values, new: Values, units: str) -> str:
    """How much more or less the pump turns and takes."""
    speed, torque, power = (percent(new[name], now[name], units) - 100 for _, name, _ in CURVES)
    if not round(speed, 6):
        return "This is the sheave that is on now."
    turn, more = ("faster", "more") if speed > 0 else ("slower", "less")
    return (
        f"The pump turns {abs(speed):.0f}% {turn}. It takes {abs(torque):.0f}% {more} torque and "
        f"{abs(power):.0f}% {more} power."
    )


def _verdict(values: Values, new: Values, units: str) -> str:
    """Whether the motor and the sheave are made for it."""
    output, size = (
        told(value, "motor_size", units) for value in (new["motor_output"], values["motor_size"])
    )
    says = [f"The motor gives {output} of the {size} on its nameplate."]
    if new["motor_output"] > values["motor_size"]:
        says = [
            f"The motor would have to give {output}. Its nameplate says {size}: don't fit this one."
        ]
    if new["belt_speed"] > RIM[units]:
        rim, most = (told(speed, "belt_speed", units) for speed in (new["belt_speed"], RIM[units]))
        says.append(
            f"The belts would run at {rim}. Ordinary cast-iron sheaves are made for up to {most}."
        )
    return " ".join(says)


def draw(view: View) -> tuple[Chart, ...]:
    """Three curves over the sheave's diameter, with the motor's limit across and the rim's upright."""
    values, units = view.known, view.units
    scale = NEW.scale(units)
    unit = "in" if units == "us" else "mm"
    chart = Chart(
        Axis(scale.low, scale.high, f"New motor sheave, {unit}"), Axis(0, MOST, "% of now"), TALL
    )
    now, new = fitted(values, units)
    steps = [scale.low + (scale.high - scale.low) * n / SHOWN for n in range(SHOWN + 1)]
    turned = [fitted({**values, "new_motor_sheave": x}, units)[1] for x in steps]
    for label, name, color in CURVES:
        line = [
            (x, percent(one[name], now[name], units)) for x, one in zip(steps, turned, strict=True)
        ]
        chart.put(Line(line, color, label))
    full = percent(values["motor_size"], now["motor_output"], units)
    chart.put(Line([(scale.low, full), (scale.high, full)], ORANGE, "nameplate power", dashed=True))
    fastest = {"belt_speed": RIM[units], "running_speed": values["running_speed"]}
    most = worked(fastest, "motor_sheave", FORMULAS, units)["motor_sheave"]
    if most < scale.high:
        chart.put(Line([(most, 0), (most, MOST)], GREY, "rim limit", dashed=True))
    for _, name, color in CURVES:
        share = percent(new[name], now[name], units)
        if share <= MOST:
            chart.put(Dot(values["new_motor_sheave"], share, color))
    return (chart,)


SHEAVE = Figure(
    "sheave",
    "Another sheave on the motor",
    (
        NEW,
        Slide(
            "motor_sheave",
            Scale(5, 10, 0.2, 6.2),
            Scale(125, 250, 5, 160),
            label="Motor sheave now, {unit}",
        ),
        Slide(
            "brake_power",
            Scale(3, 40, 0.5, 10),
            Scale(2, 30, 0.5, 7.5),
            label="Power at the pump now, {unit}",
        ),
        Slide(
            "motor_size",
            Scale(5, 50, 1, 15),
            Scale(4, 37, 0.5, 11),
            label="Motor's nameplate, {unit}",
        ),
        Slide(
            "running_speed",
            Scale(850, 3550, 10, 1750),
            Scale(700, 2950, 10, 1460),
            label="Motor speed, rpm",
        ),
    ),
    view,
    draw,
)

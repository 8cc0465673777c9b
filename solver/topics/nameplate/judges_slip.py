"""What frequency, poles and slip tell of a motor, as judges of a choice."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judge, Judgement, Option, Scene
from solver.units.show import exact, figures, with_unit

from .scenes import speeds

__all__ = ["ABOVE", "FULL", "HEAVY", "LIGHT", "judge_poles", "judge_slip", "slipping_by"]

LIVE = "Only a qualified person takes readings on live parts."


def judge_poles(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """How many poles a motor has, from its frequency and its nameplate speed."""
    poles = round(values["poles"])
    field = with_unit(figures(values["synchronous_speed"]), "rpm")
    options = []
    for count in sorted({2, 4, 6, 8, poles // 2} - {poles, 1}, key=lambda n: abs(n - poles))[:3]:
        speed = with_unit(figures(120 * values["frequency"] / count), "rpm")
        says = (
            f"With {count} poles the field would turn at {speed}. The shaft runs just below that."
        )
        if count == poles // 2:
            says = "That is how many pairs of poles it has. Each pair is two poles."
        options.append(Option(f"poles_{count}", f"{count} poles", says))
    return Judgement(
        "120 × frequency / poles comes out just above the shaft speed",
        f"120 × {exact(values['frequency'])} / {poles} = {field}",
        Option(
            f"poles_{poles}",
            f"{poles} poles",
            f"The field turns at {field}, and the shaft slips a few percent below that.",
        ),
        tuple(options),
    )


LIGHT = ("light", "It is carrying less than full load")
FULL = ("full", "It is carrying about full load")
HEAVY = ("heavy", "It is carrying more than full load, or the volts are low")
ABOVE = ("above", "The speed reading or the frequency is wrong")
SLIPS = {
    "light": (0.3, 0.78), "full": (0.97, 1.03), "heavy": (1.22, 1.5), "above": (-0.5, -0.2),
}  # fmt: skip
TELLS = {
    "light": "It turns faster than the nameplate speed, but slower than the field.",
    "full": "It turns at about the nameplate speed, so it slips about as much as at full load.",
    "heavy": "It turns slower than the nameplate speed, so it slips more than at full load.",
    "above": "The reading is faster than the field. A motor can't do that on its own power.",
}
THEN = {
    "light": "Less slip means less load. Nameplate speeds are rounded, so trust it to about 20%.",
    "full": "Full-load slip means about full load. Check it with kilowatts before you change anything.",
    "heavy": f"More slip means more load, or low volts. Measure both soon. {LIVE}",
    "above": "Check the tachometer, and check if a drive is set above line frequency.",
}


def slipping_by(*kinds: str) -> Scene:
    """The speeds of a motor whose slip is of one of these kinds."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        values = speeds(draw, units)
        field, rated = values["synchronous_speed"], values["rated_speed"]
        share = draw.between(*SLIPS[draw.pick(kinds)])
        return values | {"running_speed": float(round(field - share * (field - rated)))}

    return scene


def judge_slip(*kinds: tuple[str, str]) -> Judge:
    """What the slip tells, from these answers to choose."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        field, rated, now = (
            values[f"{which}_speed"] for which in ("synchronous", "rated", "running")
        )
        share = (field - now) / (field - rated)
        fitting = [kind for kind, (low, high) in SLIPS.items() if low - 0.1 < share < high + 0.1]
        if len(fitting) != 1:
            return None
        options = {
            id: Option(id, text, THEN[id] if id == fitting[0] else TELLS[fitting[0]])
            for id, text in kinds
        }
        right = options.pop(fitting[0])
        shown = [with_unit(figures(n), "rpm") for n in (field, rated, now)]
        return Judgement(
            "compare the slip now with the slip at full load",
            "field {}, nameplate {}, measured {}".format(*shown),
            right,
            tuple(options.values()),
        )

    return judge

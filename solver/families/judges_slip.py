"""What frequency, poles and slip tell of a motor, as judges of a choice."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Judge, Judgement, Option, Scene
from ..show import exact, figures, with_unit
from .scenes_nameplate import speeds

__all__ = ["ABOVE", "FULL", "HEAVY", "LIGHT", "judge_poles", "judge_slip", "slipping_by"]

LIVE = "Only a qualified person measures on live parts."


def judge_poles(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """How many poles a motor has, from its frequency and its nameplate speed."""
    poles = round(values["poles"])
    field = with_unit(figures(values["synchronous_speed"]), "rpm")
    options = []
    for count in sorted({2, 4, 6, 8, poles // 2} - {poles, 1}, key=lambda n: abs(n - poles))[:3]:
        speed = with_unit(figures(120 * values["frequency"] / count), "rpm")
        says = f"With {count} poles the field would turn at {speed}. The shaft runs just below it."
        if count == poles // 2:
            says = "Those are the pairs of poles. Each pair is two poles."
        options.append(Option(f"poles_{count}", f"{count} poles", says))
    return Judgement(
        "120 × frequency / poles is just above the nameplate speed",
        f"120 × {exact(values['frequency'])} / {poles} = {field}",
        Option(
            f"poles_{poles}",
            f"{poles} poles",
            f"The field turns at {field}; the shaft slips a few percent below it.",
        ),
        tuple(options),
    )


LIGHT = ("light", "It carries less than full load")
FULL = ("full", "It carries about full load")
HEAVY = ("heavy", "It carries more than full load, or its volts are low")
ABOVE = ("above", "The reading or the frequency is wrong")
SLIPS = {
    "light": (0.3, 0.78), "full": (0.97, 1.03), "heavy": (1.22, 1.5), "above": (-0.5, -0.2),
}  # fmt: skip
TELLS = {
    "light": "It turns faster than the nameplate speed, and slower than the field.",
    "full": "It turns at about the nameplate speed.",
    "heavy": "It turns slower than the nameplate speed, so it slips more than at full load.",
    "above": "It turns faster than the field. No motor does that by its own power.",
}
THEN = {
    "light": "Less slip is less load. Nameplate speeds are rounded, so trust it to about 20%.",
    "full": "Full-load slip is full load. Check it by kilowatts before you change anything.",
    "heavy": f"More slip is more load, or low volts. Measure both soon. {LIVE}",
    "above": "Check the tachometer, and whether a drive is set above line frequency.",
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
            "slip now against slip at full load",
            "field {}, nameplate {}, measured {}".format(*shown),
            right,
            tuple(options.values()),
        )

    return judge

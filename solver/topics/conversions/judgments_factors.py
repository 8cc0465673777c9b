"""Which figure is plainly wrong: a sense for how large a reading is in another unit."""

from collections.abc import Mapping
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.family import Scene
from solver.engine.judgement import Judge, Judgement, Option
from solver.topics.readings import noted, shown
from solver.topics.scenes import ANY
from solver.vocabulary import quantity_named

from .small import PRESSURES, RATINGS, TANK, worked

__all__ = ["FLOW", "STANDING", "WORKING", "judge_factor"]

POINT = "The decimal point slipped."
SLIPPED = ((10, POINT), (0.1, POINT))
COPIED = (None, "Only the unit was changed; the number was copied.")

Wrong = tuple[float | None, str]  # what the true figure is multiplied by, and what was done


class Pair(NamedTuple):
    """Readings, and what they come to in another unit; then how people get that wrong.

    `us` and `si` are wrong in that system only; a slipped decimal point is wrong in both.
    """

    scene: Scene
    seen: tuple[str, ...]
    other: str
    us: tuple[Wrong, ...]
    si: tuple[Wrong, ...]
    says: str = "{} is {}"


FLOW = (
    Pair(
        ANY,
        ("flow",),
        "daily_flow",
        ((1 / 24, "The number is what it moves in an hour."),),
        ((1 / 24, "The number is what it moves in an hour."),),
        "a steady {} is {}",
    ),
    Pair(ANY, ("flow",), "flow_per_hour", (COPIED,), (COPIED,)),
    Pair(
        ANY,
        ("flow",),
        "flow_per_second",
        ((60, "The number is cubic feet per minute."),),
        ((60, "The number is cubic meters per minute."),),
    ),
)
STANDING = (
    Pair(
        PRESSURES,
        ("gauge_pressure",),
        "water_height",
        ((2.31**-2, "It was divided by 2.31. One psi holds up 2.31 ft, so multiply."),),
        (COPIED,),
        "{} holds up {} of water",
    ),
    Pair(
        ANY,
        ("gauge_pressure",),
        "second_scale",
        ((2.31 / 6.895, "The number is feet of water, not kilopascals."),),
        (),
    ),
    Pair(
        TANK,
        ("water_volume",),
        "volume_converted",
        ((7.48**2, "It was multiplied by 7.48. A cubic foot is bigger than a gallon, so divide."),),
        (COPIED,),
    ),
    Pair(TANK, ("water_volume",), "water_weight", (COPIED,), (COPIED,), "{} of water weighs {}"),
)
WORKING = (
    Pair(
        ANY,
        ("flow", "head"),
        "water_power",
        ((8.34, "The weight of water was used twice."),),
        ((9.81, "The weight of water was used twice."),),
        "{} against {} of head puts {} into the water",
    ),
    Pair(ANY, ("flow",), "weight_flow", (COPIED,), (COPIED,), "{} of water weighs {}"),
    Pair(
        RATINGS,
        ("horsepower_rating",),
        "kilowatt_rating",
        (
            (
                0.746**-2,
                "It was divided by 0.746. A horsepower is less than a kilowatt, so multiply.",
            ),
        ),
        (
            (
                0.746**-2,
                "It was divided by 0.746. A horsepower is less than a kilowatt, so multiply.",
            ),
        ),
    ),
)


class Statement(NamedTuple):
    """A statement as it is written, the readings in it, and what they truly come to."""

    text: str
    seen: str
    true: str


def could_be(name: str, value: float, units: str) -> bool:
    """Whether an ordinary pump, tank or motor shows that."""
    low, high = quantity_named(name).usual(units)
    return low <= value <= high


def readings(pair: Pair, units: str, draw: Draw) -> dict[str, float]:
    """Readings of a machine that could exist."""
    while True:
        values = pair.scene(draw, units).values
        if all(could_be(name, values[name], units) for name in pair.seen):
            return {name: values[name] for name in pair.seen}


def stated(pair: Pair, units: str, draw: Draw, wrong: float | None = 1) -> Statement:
    """What a pair comes to for readings of its own, times `wrong`, or copied where that is None."""
    seen = readings(pair, units, draw)
    true = worked(seen, pair.other, units)
    claimed = seen[pair.seen[-1]] if wrong is None else noted(true * wrong)
    parts = [shown(name, value, units) for name, value in seen.items()]
    text = pair.says.format(*parts, shown(pair.other, claimed, units))
    return Statement(text, " and ".join(parts), shown(pair.other, noted(true), units))


def judge_factor(pairs: tuple[Pair, ...]) -> Judge:
    """Three statements of different kinds, one of them wrong by a factor."""

    def chosen(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
        pair, *others = draw.shuffled(pairs)[:3]
        wrong, done = draw.pick((*getattr(pair, units), *SLIPPED))
        broken = stated(pair, units, draw, wrong)
        return Judgement(
            "work each one in round numbers; one is off by far more than rounding",
            f"{broken.seen}: {broken.true}",
            Option("wrong_by_a_factor", broken.text, f"It should be {broken.true}. {done}"),
            tuple(
                Option(f"fits_{i}", fit.text, f"This one is right: it comes to {fit.true}.")
                for i, fit in enumerate((stated(each, units, draw) for each in others), 1)
            ),
        )

    return chosen

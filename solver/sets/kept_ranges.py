"""Problems that fit a pump of a plant: by leaving out the seeds that do not.

A problem read off a station is one of the pump's own kind, so that a lift station gets no booster's
readings; and its values keep to the pump's ranges. A seed gives the same problem with a plant and
without. So which seeds fit is looked for once, as they are needed, and remembered.
"""

from collections.abc import Mapping
from functools import lru_cache

from solver.engine.family import Family, Small
from solver.engine.posing import draw, drawn_values
from solver.errors import SolverError, Unfit
from solver.scenario import Place, kind_of, kinds_of
from solver.vocabulary import quantity_named

from .own_plant import Pump, Range, between

__all__ = ["keeping"]

SEEDS = 5_000  # among which those are that keep the ranges
SHOWN = 200  # problems by which a refusal says what there is
_NO, _YES = 1, 2


class Keeping:
    """Which seeds of one kind of problem fit one pump."""

    def __init__(self, family: Family, level: int, units: str, pump: Pump):
        self.family, self.level, self.units, self.pump = family, level, units, pump
        scene = family.scene_at(level)
        self._anywhere = isinstance(scene, Small) or pump.kind not in kinds_of(scene.places)
        self._seen = bytearray(SEEDS)

    def seed_from(self, start: int) -> int:
        """The first seed from `start` on, round the end, that fits; `start` itself where all do.

        Raises:
            SolverError: there is none; the sentence names the range, and what values there are.
        """
        if self._anywhere and not self.pump.ranges:
            return start
        for seed in range(start, start + SEEDS):
            if self._keeps(seed % SEEDS):
                return seed % SEEDS
        raise SolverError(self._why_none())

    def _keeps(self, seed: int) -> bool:
        if not self._seen[seed]:
            self._seen[seed] = _YES if self._looked_at(seed) else _NO
        return self._seen[seed] == _YES

    def _looked_at(self, seed: int) -> bool:
        """A quick look first: most of what is not kept shows before a problem is worked."""
        try:
            drawn, _ = drawn_values(self.family, self.level, self.units, seed)
            given = {name: drawn.values[name] for name in self.family.level(self.level).given}
        except Unfit:
            return False
        if not (self._is_there(drawn.place) and all(_keeps(r, given) for r in self.pump.ranges)):
            return False
        case = draw(self.family, seed, self.units, self.level)
        there = self._is_there(case.wording.place)
        return there and all(_keeps(each, case.known) for each in self.pump.ranges)

    def _is_there(self, place: Place | None) -> bool:
        """Whether a problem of this place is one of a pump of this kind."""
        return self._anywhere or place is None or kind_of(place) == self.pump.kind

    def _why_none(self) -> str:
        pump = f"{self.pump.name} at {self.pump.station}"
        which, problem = (
            f"{pump} asks for",
            f"No problem of “{self.family.title}”, level {self.level}",
        )
        cases = (draw(self.family, seed, self.units, self.level) for seed in range(SHOWN))
        seen = [case.known for case in cases if self._is_there(case.wording.place)]
        asked = [each for each in self.pump.ranges if seen and each.quantity in seen[0]]
        if not asked:
            return f"{problem}, is of a pump like {pump}. Leave that kind out, or add another pump."
        for each in asked:
            quantity, values = quantity_named(each.quantity), [k[each.quantity] for k in seen]
            least, most = min(values), max(values)
            if each.high < least or each.low > most:
                has, wanted = (
                    between(quantity, *ends, self.units)
                    for ends in ((least, most), (each.low, each.high))
                )
                return (
                    f"{which} {quantity.label(self.units)} of {wanted}. {problem}, has that; most have {has}. "
                    "Change the range, or take it out."
                )
        labels = " and ".join(quantity_named(each.quantity).label(self.units) for each in asked)
        return f"{which} {labels} in a narrow range. {problem}, has that. Widen a range, or take it out."


def _keeps(each: Range, known: Mapping[str, float]) -> bool:
    return each.quantity not in known or each.low <= known[each.quantity] <= each.high


@lru_cache(maxsize=1024)
def keeping(family: Family, level: int, units: str, pump: Pump) -> Keeping:
    """The one memory of this kind of problem and this pump."""
    return Keeping(family, level, units, pump)

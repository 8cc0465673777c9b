"""The kinds of station, and what each lets its numbers be.

Ranges of duty, lift and length are what ordinary small and middle stations have (common practice, no
source). Each system has round numbers of its own.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import NamedTuple

__all__ = ["DRIVES", "KINDS", "Kind", "Spans"]

DRIVES = ("direct", "belt", "gear", "variable")

Range = tuple[float, float]
Steps = tuple[float, float, float]  # from, to, step


class Spans(NamedTuple):
    """Ranges in one system: flow (gpm | L/s), static head (ft | m), length (ft | m).

    `suction`: how far the water is below the pump (ft | m), below zero when flooded; `delivery`: pressure
    wanted at the end (psi | kPa); `head`: the least and the most total head (ft | m).
    """

    flow: Range
    head: Range
    static: Steps | None
    length: Range
    suction: Steps | None = None
    delivery: Steps | None = None


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of station.

    `place`: what stations of the invented town it stands in; `coarse`: points of efficiency that its impellers
    give up to pass solids; `speeds` in the main (ft/s); `specific`: US specific speeds of a stage;
    `nozzles`: whether its main ends in one, as likely as they stand here; `stages`: whether it may have several;
    `usual`: how often one is drawn beside the others, as there are more of some than of others.
    """

    name: str
    says: str
    place: str
    us: Spans
    si: Spans
    poles: tuple[int, ...]
    coarse: Range
    speeds: Range
    specific: Range
    well: bool
    submerged: bool = False
    nozzles: tuple[bool, ...] = (False,)
    stages: bool = False
    usual: int = 1

    @property
    def drives(self) -> tuple[str, ...]:
        """The drives it may have: no belt under water, nor between a motor and stages on one shaft."""
        return ("direct", "variable") if self.submerged or self.stages else DRIVES

    def spans(self, units: str) -> Spans:
        """Its ranges in "us" or "si"."""
        return self.us if units == "us" else self.si


KINDS: Mapping[str, Kind] = MappingProxyType(
    {
        kind.name: kind
        for kind in (
            Kind(
                "lift",
                "a lift station with submersible pumps",
                "lift",
                Spans((80, 3000), (15, 170), (12, 90, 1), (150, 6000)),
                Spans((5, 190), (5, 52), (4, 28, 0.5), (50, 2000)),
                (2, 4, 4, 6, 6, 8),
                (3, 7),
                (2.5, 6.0),
                (900, 4000),
                well=True,
                submerged=True,
                usual=4,
            ),
            Kind(
                "flooded",
                "a dry-pit pump with a flooded suction",
                "plant",
                Spans((250, 6000), (15, 160), (12, 70, 1), (80, 4000), (-16, -3, 0.5)),
                Spans((15, 380), (5, 48), (4, 21, 0.5), (40, 1200), (-5, -1, 0.1)),
                (4, 4, 6, 6, 8),
                (1, 6),
                (3.0, 7.0),
                (900, 4000),
                well=True,
                usual=2,
            ),
            Kind(
                "booster",
                "a booster pump between a tank and a pressure zone",
                "booster",
                Spans((80, 2500), (40, 330), (5, 80, 1), (100, 3000), (-20, -4, 0.5), (30, 80, 1)),
                Spans(
                    (4, 160), (12, 100), (2, 24, 0.5), (30, 900), (-6, -1.2, 0.1), (200, 550, 10)
                ),
                (2, 2, 4, 4),
                (0, 1),
                (3.0, 7.0),
                (800, 3300),
                well=False,
                stages=True,
                usual=2,
            ),
            Kind(
                "above",
                "a pump above its water, with a suction lift",
                "plant",
                Spans((75, 1500), (20, 170), (18, 90, 1), (60, 2500), (3, 14, 0.5)),
                Spans((5, 95), (6, 52), (5, 28, 0.5), (20, 800), (1, 4.2, 0.1)),
                (2, 4, 4, 6),
                (0, 5),
                (3.0, 7.0),
                (800, 3600),
                well=True,
                nozzles=(False, False, False, True),
            ),
            Kind(
                "recirculation",
                "a recirculation pump: all of its head is friction",
                "plant",
                Spans((120, 6000), (10, 75), None, (250, 1200), (-16, -3, 0.5)),
                Spans((8, 380), (3, 23), None, (75, 360), (-5, -1, 0.1)),
                (4, 4, 6, 6, 8),
                (0, 4),
                (5.0, 8.0),
                (1000, 6000),
                well=False,
                nozzles=(True, True, False),
            ),
            Kind(
                "low_lift",
                "a low-lift pump with a propeller, set in a channel",
                "plant",
                Spans((2200, 11_000), (7, 24), (4, 14, 0.5), (150, 600)),
                Spans((140, 690), (2, 7.5), (1.2, 4.5, 0.1), (50, 180)),
                (6, 8, 8),
                (0, 4),
                (4.0, 7.0),
                (6500, 11_500),
                well=False,
                submerged=True,
            ),
        )
    }
)

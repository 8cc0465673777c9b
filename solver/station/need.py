"""What a problem needs of its station."""

from dataclasses import dataclass

from .kinds import Kind

__all__ = ["ANY", "Need"]

LOAD = (42.0, 100.0)  # percent of its motor's size that a pump takes, when no need says another


@dataclass(frozen=True, slots=True)
class Need:
    """What a problem needs of its station; nothing said is nothing needed.

    `kinds` and `drives` by name; whether it has `static` head, several `stages`, a `well`, a `round_well`, so
    many `pumps` that take turns in it, a suction `lift`, level gauges on equal pipes, a `nozzle`; from and to:
    the `load` of the motor (percent of its size), its `sizes` (hp | kW), its total `head` (ft), what `part` of
    the head is static (percent), the US `specific` speed of a stage; what its `fittings` lose of the head at
    least (percent); nominal `volts` (V); the service factors it may have (`service`), or an `old_plate` that
    gives the rise instead; the `change` thought of ("speed", "trim", or "stall", a speed that no longer lifts
    the water); whether a drive has it `turned_down` now; the `upgrade`; the `days` billed, where a month
    won't do; the `state` beside today's: "then", a year ago, or "now", after its water was pumped higher.
    """

    kinds: tuple[str, ...] = ()
    drives: tuple[str, ...] = ()
    static: bool | None = None
    stages: bool | None = None
    well: bool | None = None
    round_well: bool | None = None
    pumps: int | None = None
    lift: bool | None = None
    level_gauges: bool | None = None
    nozzle: bool | None = None
    load: tuple[float, float] | None = None
    sizes: tuple[float, float] | None = None
    part: tuple[float, float] | None = None
    fittings: float = 0.0
    head: tuple[float, float] | None = None
    specific: tuple[float, float] | None = None
    service: tuple[float, ...] = ()
    old_plate: bool = False
    turned_down: bool = False
    volts: tuple[float, ...] = ()
    change: str = ""
    upgrade: str = ""
    days: float = 0.0
    state: str = ""

    @property
    def loaded(self) -> tuple[float, float]:
        """From and to what load of the motor (percent of its size)."""
        return self.load or LOAD

    def of_kind(self, kind: Kind) -> bool:
        """Whether a station of this kind could do."""
        return (
            (not self.kinds or kind.name in self.kinds)
            and (not self.drives or any(drive in kind.drives for drive in self.drives))
            and self.static in (None, kind.us.static is not None)
            and self.well in (None, kind.well)
            and ((self.round_well is None and self.pumps is None) or kind.well)
            and self.lift in (None, bool(kind.us.suction and kind.us.suction[0] > 0))
            and (not self.stages or kind.stages)
            and (self.level_gauges is None or not kind.submerged)
            and self.nozzle in (None, *kind.nozzles)
            and (not self.specific or _overlap(self.specific, kind.specific))
        )


def _overlap(one: tuple[float, float], other: tuple[float, float]) -> bool:
    return one[0] <= other[1] and other[0] <= one[1]


ANY = Need()

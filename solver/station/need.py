"""What a problem needs of its station."""

from dataclasses import dataclass

from .kinds import Kind

__all__ = ["Need"]


@dataclass(frozen=True, slots=True)
class Need:
    """What a problem needs of its station; nothing said is nothing needed.

    `kinds` and `drives` by name; whether it has `static` head, several `stages`, a `well` and a `round_well`, a suction
    `lift`, level gauges on equal pipes, a `nozzle`; the `load` of the motor (percent of its size) and its
    `sizes` (hp | kW), from and to; nominal `volts` (V); the `change` thought of ("speed", "trim"); the
    `upgrade`; the `state` beside today's: "then", a year ago, or "now", after its water was pumped higher.
    """

    kinds: tuple[str, ...] = ()
    drives: tuple[str, ...] = ()
    static: bool | None = None
    stages: bool | None = None
    well: bool | None = None
    round_well: bool | None = None
    lift: bool | None = None
    level_gauges: bool | None = None
    nozzle: bool | None = None
    load: tuple[float, float] | None = None
    sizes: tuple[float, float] | None = None
    volts: tuple[float, ...] = ()
    change: str = ""
    upgrade: str = ""
    state: str = ""

    def of_kind(self, kind: Kind) -> bool:
        """Whether a station of this kind could do."""
        return (
            (not self.kinds or kind.name in self.kinds)
            and (not self.drives or any(drive in kind.drives for drive in self.drives))
            and self.static in (None, kind.us.static is not None)
            and self.well in (None, kind.well)
            and (self.round_well is None or kind.well)
            and self.lift in (None, bool(kind.us.suction and kind.us.suction[0] > 0))
            and (not self.stages or kind.stages)
            and (self.level_gauges is None or not kind.submerged)
            and self.nozzle in (None, *kind.nozzles)
        )

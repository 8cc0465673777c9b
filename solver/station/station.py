"""A whole station, and every reading of it by its quantity's name."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property

from solver.engine.draw import Draw
from solver.errors import BadDefinition
from solver.scenario import Place

from .bill import Bill, draw_bill
from .condition import Condition, draw_condition
from .drive import Drive
from .instruments import noted
from .kinds import Kind
from .main import Main
from .motor import Motor
from .pump import Pump
from .readings import READINGS, NotRead
from .running import Running, operate
from .suction import Gauges, Suction
from .supply import Supply
from .system import System
from .well import Well
from .what_if import Changed, Plans, changed, draw_plans, least_ratio, two_pumps

__all__ = ["Station"]


@dataclass(frozen=True)
class Station:
    """One pump with all that is around it; `then` and `now` are the same one a year ago, and later.

    Every reading comes by the project's name of its quantity, unrounded, in the units of `system`;
    `noted` gives it as its instrument shows it. What is not asked for is not worked out, nor drawn: bill,
    condition and plans come from their own `chance`, the same whenever they are asked for. `wish`: the
    change and the upgrade that are wanted of the plans. `days`: those billed, if it isn't a month. `altered`: a condition other than the drawn one.
    """

    system: System
    kind: Kind
    place: Place
    supply: Supply
    motor: Motor
    drive: Drive
    pump: Pump
    suction: Suction | None
    gauges: Gauges
    main: Main
    well: Well | None
    rated: tuple[float, float]
    chance: str
    wish: tuple[str, str] = ("", "")
    days: float = 0.0
    altered: Condition | None = None
    fault: str = ""
    then: "Station | None" = None
    now: "Station | None" = None

    @cached_property
    def running(self) -> Running:
        """The pump at work."""
        fall = self.well.fall if self.well else 0.0
        return operate(
            self.pump,
            self.motor,
            self.drive,
            self.supply,
            self.main,
            self.suction,
            fall,
            self.rated,
        )

    @cached_property
    def bill(self) -> Bill:
        """Prices and hours."""
        drawn = draw_bill(Draw(f"bill {self.chance}"), self.motor.rated_input)
        return replace(drawn, days=self.days) if self.days else drawn

    @cached_property
    def condition(self) -> Condition:
        """Insulation, windings, bearings, oil, overload."""
        return self.altered or draw_condition(Draw(f"condition {self.chance}"), self.motor)

    @cached_property
    def plans(self) -> Plans:
        """What is thought of, the same as when the station was sound."""
        if self.then:
            return self.then.plans
        draw = Draw(f"plans {self.chance}")
        change, upgrade = self.wish
        now = self.running
        drawn = draw_plans(draw, self.pump, self.motor, now, self.static, self.kept, change)
        return replace(drawn, upgrade=upgrade or drawn.upgrade)

    @property
    def kept(self) -> float:
        """The motor's efficiency as it is loaded, over its nameplate's."""
        load = self.running.load
        output = load.share * self.motor.size * self.system.kilowatts
        return min(output / load.kilowatts * 100 / self.motor.efficiency, 1.0)

    @property
    def static(self) -> float:
        """Static head and wanted pressure now (ft | m)."""
        return self.main.lift + (self.well.fall if self.well else 0.0)

    @property
    def least_ratio(self) -> float:
        """The speed that only just lifts water, over that of now."""
        return least_ratio(self.pump, self.running.speed, self.static)

    @cached_property
    def changed(self) -> Changed:
        """The pump after the change that is thought of."""
        return changed(self.pump, self.running, self.static, self.change)

    @cached_property
    def paired(self) -> Changed:
        """Two such pumps on the main."""
        return two_pumps(self.pump, self.running, self.static)

    @property
    def change(self) -> float:
        """New speed over the speed, or new diameter over the diameter."""
        if self.plans.change == "speed":
            return self.plans.new_speed / self.running.speed
        return self.plans.new_diameter / self.pump.diameter

    def reading(self, name: str) -> float:
        """A quantity by its name, unrounded.

        Raises:
            NotRead: this station has no such reading.
            BadDefinition: no station has one.
        """
        try:
            read = READINGS[name]
        except KeyError:
            raise BadDefinition(f"no station has a reading called {name!r}") from None
        try:
            return read(self)
        except ZeroDivisionError:
            raise NotRead("nothing flows, or nothing runs") from None

    def noted(self, name: str) -> float:
        """A reading as its instrument shows it; errors as in `reading`."""
        return noted(name, self.reading(name), self.system.name)

    def readings(self, names: Iterable[str]) -> dict[str, float]:
        """Readings as noted, those that this station has."""
        found = {}
        for name in names:
            try:
                found[name] = self.noted(name)
            except NotRead:
                continue
        return found

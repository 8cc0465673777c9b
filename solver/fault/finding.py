"""What an act finds in a case, as the instrument shows it, with how far it may be off.

What an instrument adds by chance comes from the case's code and the act, so it is the same for anyone,
and always less than the error that is told.
"""

from dataclasses import dataclass
from functools import lru_cache

from solver.engine.draw import Draw
from solver.station.instruments import instrument_of
from solver.station.readings import NotRead
from solver.units.show import capital

from .acts import CHECK
from .case import FaultCase
from .signals import SIGNALS, TOO_LONG, Signal, Value, worked
from .stories import over_setting

__all__ = ["Finding", "Shown", "finding", "may_be_off"]

Chances = tuple[float, float, tuple[float, ...]]
MAY_BE_OFF = 0.09  # of a reading, by an instrument that nobody has checked at level 3
USED = 0.8  # of the told error, that chance may use
LONG_RUNS = ("drawdown", "levels")  # longer than a motor lasts over its overload's setting
TRIPPED = "{}: the overload tripped partway. The reading is from what the pump did until then."


@dataclass(frozen=True, slots=True)
class Shown:
    """One reading as shown, and between what the truth lies; words have no such bounds."""

    signal: Signal
    value: Value
    low: float = 0.0
    high: float = 0.0

    def text(self, units: str) -> str:
        """The reading with its unit."""
        return self.signal.text(self.value, units)

    def named(self, units: str) -> str:
        """The reading after its name; words after a colon."""
        between = ":" if isinstance(self.value, str) else ""
        return f"{self.signal.label}{between} {self.text(units)}"

    def fits(self, values: tuple[Value, ...]) -> bool:
        """Whether a suspect that shows anything between these values could show this."""
        numbers = [value for value in values if isinstance(value, float)]
        if isinstance(self.value, str) or not numbers:
            return self.value in values
        return self.low <= max(numbers) and min(numbers) <= self.high


@dataclass(frozen=True, slots=True)
class Finding:
    """What an act found: its name, its readings, and what else it told."""

    act: str
    shown: tuple[Shown, ...]
    says: str = ""


@lru_cache(maxsize=4096)
def _chance(code: str, act: str) -> Chances:
    """Of the instrument, of the day, and of each reading by itself, each from -1 to 1."""
    draw = Draw(f"reading {code} {act}")
    meter, day, *own = (USED * draw.between(-1, 1) for _ in range(8))
    return meter, day, tuple(own)


def finding(case: FaultCase, act: str, checked: bool = False) -> Finding:
    """What this act finds; `checked`: the instruments have been held against others."""
    if act == CHECK:
        name, times = case.off
        away = "high" if times > 1 else "low"
        return Finding(
            act, (), f"The {name} reads {abs(times - 1):.1%} {away}. The others read right."
        )
    meter, day, own = _chance(str(case.code), act)
    shown: list[Shown] = []
    for signal, chance in zip(map(SIGNALS.get, case.acts[act].signals), own, strict=False):
        assert signal is not None
        try:
            true = signal.read(case.faulty)
        except NotRead:
            continue
        if isinstance(true, str):
            shown.append(Shown(signal, true))
        elif signal.of:
            by_name = {s.signal.name: s.value for s in shown if isinstance(s.value, float)}
            value, off = worked(signal, by_name, case.units)
            shown.append(Shown(signal, value, value - off, value + off))
        else:
            shown.append(_measured(case, signal, true, (meter, day, chance), checked))
    trips = act in LONG_RUNS and over_setting(case.faulty)
    return Finding(
        act, tuple(shown), TRIPPED.format(capital(case.acts[act].label)) if trips else ""
    )


def may_be_off(case: FaultCase, signal: Signal, value: float, checked: bool) -> float:
    """What an instrument that nobody has checked may add to the error of a value, in its unit."""
    return MAY_BE_OFF * abs(value) if case.can_check and signal.instrument and not checked else 0.0


def _measured(
    case: FaultCase, signal: Signal, true: float, chances: tuple[float, float, float], checked: bool
) -> Shown:
    """A number as its instrument shows it."""
    name, times = case.off
    off = times if signal.instrument == name else 1.0
    instrument = instrument_of(signal.read_as)
    meter, day, own = chances
    today = true * (1 + day * signal.daily)
    seen = today * (1 + meter * instrument.percent / 100) + own * instrument.least
    if signal.name == "drawdown_time" and true >= TOO_LONG:
        return Shown(signal, TOO_LONG, TOO_LONG * 0.97, TOO_LONG)
    seen = max(seen, 0.0) if true >= 0 else seen  # nothing reads below none
    value = float(signal.noted(seen * off, case.units))
    middle = value / off if checked else value
    error = signal.error(middle, case.units) + may_be_off(case, signal, value, checked)
    return Shown(signal, value, middle - error, middle + error)

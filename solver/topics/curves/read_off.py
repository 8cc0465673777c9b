"""What can be read off a drawn pump curve: its scales, its points, choices that can be told apart."""

from collections.abc import Callable, Iterable, Mapping
from typing import NamedTuple

from solver.engine.judgement import Option
from solver.errors import NotSolvable
from solver.station.scene import station_in
from solver.station.sheet import Sheet, sheet_of
from solver.topics.readings import shown

__all__ = [
    "EFFICIENCY",
    "HEAD",
    "NPSH",
    "POWER",
    "SCALES",
    "WITHOUT_POWER",
    "at_work",
    "chosen",
    "clear_peak",
    "flow_at",
    "rows",
    "sheet_in",
]

APART = 0.09  # of the larger of two choices: farther than a reading is off
PEAK = 0.08  # how near the best flow is to a line of the sheet
WORKING = (0.45, 1.15)  # of the best flow, where questions ask


class Scale(NamedTuple):
    """A curve of the sheet: its quantity, what is read of it, and what the eye may take for it."""

    name: str
    read: Callable[[Sheet], tuple[float, ...]]
    beside: str


HEAD, EFFICIENCY, POWER, NPSH = "head", "pump_efficiency", "brake_power", "npsh_required"
SCALES = {
    HEAD: Scale(HEAD, lambda sheet: sheet.heads, EFFICIENCY),
    EFFICIENCY: Scale(EFFICIENCY, lambda sheet: sheet.efficiencies, HEAD),
    POWER: Scale(POWER, lambda sheet: sheet.powers, NPSH),
    NPSH: Scale(NPSH, lambda sheet: sheet.npsh, POWER),
}
ALL = (HEAD, EFFICIENCY, POWER, NPSH)
WITHOUT_POWER = (HEAD, EFFICIENCY)


def rows(sheet: Sheet, units: str, curves: tuple[str, ...] = ALL) -> tuple[tuple[str, str], ...]:
    """The points of a sheet: a flow, and what is read there."""
    read = {name: SCALES[name].read(sheet) for name in curves}
    return tuple(
        (
            f"At {shown('flow', flow, units)}",
            ", ".join(f"{{{name}:short}} {shown(name, read[name][n], units)}" for name in curves),
        )
        for n, flow in enumerate(sheet.flows)
    )


def sheet_in(values: Mapping[str, float]) -> Sheet | None:
    """The sheet of the station that is judged; none where its curve can't be drawn."""
    try:
        return sheet_of(station_in(values))
    except NotSolvable:
        return None


def clear_peak(values: Mapping[str, float]) -> Sheet | None:
    """The sheet, where its best point is at one of its lines and can be told from the others."""
    sheet = sheet_in(values)
    if sheet is None:
        return None
    is_top = sheet.efficiencies.count(max(sheet.efficiencies)) == 1
    return sheet if is_top and abs(sheet.best_line / sheet.best_flow - 1) < PEAK else None


def at_work(sheet: Sheet) -> list[int]:
    """Which lines of flow are near where such a pump works."""
    low, high = (share * sheet.best_flow for share in WORKING)
    return [n for n, flow in enumerate(sheet.flows) if low <= flow <= high]


def chosen(
    right: Option, size: float, wrong: Iterable[tuple[float, Option]]
) -> tuple[Option, ...] | None:
    """The first three wrong choices that are apart from the right one and each other; None if fewer."""
    kept, sizes = [], [size]
    for value, option in wrong:
        if value > 0 and all(abs(value - other) > APART * max(value, other) for other in sizes):
            kept.append(option)
            sizes.append(value)
    return tuple(kept[:3]) if len(kept) >= 3 else None


def flow_at(sheet: Sheet, n: int, units: str, says: str) -> Option:
    """A flow of the sheet as a choice."""
    return Option(f"flow_{n}", shown("flow", sheet.flows[n], units), says)

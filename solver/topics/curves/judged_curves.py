"""What is read off a drawn pump curve: head, efficiency, power, NPSHr, a flow; and what comes of it.

The picture is the question. The same points are in its table, for somebody who cannot see it.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.family import Judge, Judgement, Level, Option
from solver.errors import NotSolvable
from solver.station.scene import station_in
from solver.station.sheet import Sheet, sheet_of
from solver.topics.readings import noted, shown

from .stations import CHAPTER, SHEETS, SHEETS_AT_PUMP, worked

__all__ = [
    "CURVE_TO_POWER",
    "NPSH_OFF_CURVE",
    "READ_CURVE",
    "WITHOUT_POWER",
    "clear_peak",
    "rows",
]

APART = 0.09  # of the larger of two choices: farther than a reading is off
PEAK = 0.08  # how near the best flow is to a line of the sheet
WORKING = (0.45, 1.15)  # of the best flow, where questions ask
LEAST_NPSH = {"us": 8, "si": 2.4}  # ft | m: less is hardly left over a pump's own suction anywhere


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


def judge_reading(*names: str) -> Judge:
    """One of these quantities, read at a flow."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        sheet = sheet_in(values)
        if sheet is None:
            return None
        scale = SCALES[draw.pick(names)]
        read, there = scale.read(sheet), draw.pick(at_work(sheet))
        flow = shown("flow", sheet.flows[there], units)
        right = Option(
            "read",
            shown(scale.name, read[there], units),
            f"Go up from {flow} to the curve, then across to its own scale.",
        )
        others = draw.shuffled([n for n in range(len(read)) if n != there])
        misread = SCALES[scale.beside].read(sheet)[there]
        if scale.name == EFFICIENCY:
            misread = round(misread)  # the others are whole: one with a decimal would stand out
        wrong = [
            (misread, Option(
                "other_curve", shown(scale.name, misread, units),
                f"You read the other curve. That number is the {{{scale.beside}:name}} at {flow}.",
            )),
            *((read[n], Option(
                f"other_flow_{n}", shown(scale.name, read[n], units),
                f"You read it at {shown('flow', sheet.flows[n], units)}. Go up from {flow}.",
            )) for n in others),
        ]  # fmt: skip
        found = chosen(right, read[there], wrong)
        asks = f"What is the {{{scale.name}:full}} at {flow}?"
        rule = "Go up from the flow to the curve, then across to the scale of that curve"
        return Judgement(rule, "", right, found, asks, rows(sheet, units)) if found else None

    return judge


def judge_flow(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The flow at a head."""
    sheet = sheet_in(values)
    if sheet is None:
        return None
    there = draw.pick(at_work(sheet))
    head = shown(HEAD, sheet.heads[there], units)
    right = _flow(
        sheet, there, units, f"Go across from {head} to the head curve, then down to the flow."
    )
    others = draw.shuffled([n for n in range(1, len(sheet.flows)) if n != there])
    wrong = [
        (
            sheet.flows[n],
            _flow(
                sheet, n, units,
                f"At that flow the head is {shown(HEAD, sheet.heads[n], units)}, not {head}.",
            ),
        )
        for n in others
        if abs(sheet.heads[n] - sheet.heads[there]) > 0.03 * sheet.heads[there]
    ]  # fmt: skip
    found = chosen(right, sheet.flows[there], wrong)
    rule = "Go across from the head to the curve, then down to the flow"
    asks = f"The total dynamic head (TDH) is {head}. What flow does the pump move?"
    return Judgement(rule, "", right, found, asks, rows(sheet, units)) if found else None


def _flow(sheet: Sheet, n: int, units: str, says: str) -> Option:
    return Option(f"flow_{n}", shown("flow", sheet.flows[n], units), says)


READ_CURVE = CHAPTER.judged(
    "read_curve",
    "QH",
    "Read a pump curve",
    judge_reading(HEAD),
    SHEETS,
    Level((), "This is the pump curve of {place}. {asks}", judge=judge_reading(HEAD)),
    Level(
        (),
        "These are the pump curves of {place}, each with its own scale. {asks}",
        judge=judge_reading(EFFICIENCY, POWER, NPSH),
    ),
    Level((), "This is the pump curve of {place}. {asks}", judge=judge_flow),
    since=2,
)


def judge_power(asked: str) -> Judge:
    """Water or brake horsepower at a flow, from the head and the efficiency that are read."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        sheet = sheet_in(values)
        if sheet is None:
            return None
        there = draw.pick(at_work(sheet))
        flow, head, efficiency = sheet.flows[there], sheet.heads[there], sheet.efficiencies[there]
        water = worked({"flow": flow, "head": head}, "water_power", units)
        brake = water / efficiency * 100
        shutoff = worked({"flow": flow, "head": sheet.heads[0]}, "water_power", units)
        is_brake = asked == POWER
        read = f"{shown(HEAD, head, units)} and {shown(EFFICIENCY, efficiency, units)}"
        at = shown("flow", flow, units)

        def power(id: str, value: float, says: str) -> tuple[float, Option]:
            return value, Option(id, shown(asked, noted(value), units), says)

        size = brake if is_brake else water
        _, right = power(
            "worked",
            size,
            f"At {at} you read {read}."
            + (
                " Divide {water_power:short} by the efficiency, as a decimal."
                if is_brake
                else " {water_power:Short} needs no efficiency."
            ),
        )
        other = (
            power(
                "stopped_at_water",
                water,
                "That is the {water_power:name}. Divide by the efficiency too.",
            )
            if is_brake
            else power(
                "divided",
                brake,
                "You divided by the efficiency. That gives the {brake_power:name}.",
            )
        )
        wrong = [
            other,
            power("multiplied", water * efficiency / 100, "You multiplied by the efficiency."),
            power(
                "at_shutoff",
                (shutoff / efficiency * 100) if is_brake else shutoff,
                f"You used the head at shutoff. At {at} the head is {shown(HEAD, head, units)}.",
            ),
            power("no_constant", size * 10, "You put the decimal point in the wrong place."),
        ]
        found = chosen(right, size, wrong)
        numbers = f"at {at}: {read}"
        asks = f"What is the {{{asked}:full}} at {at}?"
        rule = "Read the head and the efficiency at the flow, then work out the power"
        table = rows(sheet, units, WITHOUT_POWER)
        return Judgement(rule, numbers, right, found, asks, table) if found else None

    return judge


CURVE_TO_POWER = CHAPTER.judged(
    "curve_to_power",
    "QB",
    "From the curve to horsepower",
    judge_power("water_power"),
    SHEETS,
    Level((), "This is the pump curve of {place}. {asks}", judge=judge_power("water_power")),
    Level((), "This is the pump curve of {place}. {asks}", judge=judge_power(POWER)),
    since=2,
)


def judge_margin(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """How far NPSHa is over NPSHr at a flow."""
    sheet = sheet_in(values)
    if sheet is None:
        return None
    there = draw.pick(at_work(sheet))
    needed, has = sheet.npsh[there], noted(values["npsh_available"])
    flow, has_said, needs = (
        shown(name, value, units)
        for name, value in (("flow", sheet.flows[there]), ("npsh_available", has), (NPSH, needed))
    )

    def margin(id: str, value: float, says: str) -> tuple[float, Option]:
        return value, Option(id, shown("npsh_margin", round(value, 2), units), says)

    size = has - needed
    if size < 0.12 * has:
        return None
    _, right = margin(
        "margin",
        size,
        f"You read NPSHr {needs} at {flow}. NPSHa must stay above it, here by this much.",
    )
    other = draw.pick([n for n in range(1, len(sheet.npsh)) if n != there])
    wrong = [
        margin("added", has + needed, "You added them. The margin is what is left over."),
        margin("required", needed, "That is NPSHr. The margin is NPSHa minus NPSHr."),
        margin("available", has, "That is NPSHa. Take NPSHr away from it."),
        margin(
            "other_flow",
            has - sheet.npsh[other],
            f"You read NPSHr at {shown('flow', sheet.flows[other], units)}. Go up from {flow}.",
        ),
    ]
    found = chosen(right, size, wrong)
    asks = f"At {flow} its NPSHa is {has_said}. How much is that over the NPSHr?"
    numbers = f"{has_said} - {needs}"
    rule = "The margin is NPSHa minus NPSHr, and NPSHr is read at the flow"
    return Judgement(rule, numbers, right, found, asks, rows(sheet, units)) if found else None


def judge_most_flow(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The flow at which NPSHr comes up to NPSHa."""
    sheet = sheet_in(values)
    if sheet is None:
        return None
    low = LEAST_NPSH[units]
    deep = [n for n in at_work(sheet) if low <= sheet.npsh[n] < values["npsh_available"]]
    if not deep:
        return None
    there = draw.pick(deep)
    has = shown("npsh_available", sheet.npsh[there], units)
    right = _flow(
        sheet, there, units, f"There NPSHr comes up to {has}. Beyond it the pump cavitates."
    )
    wrong = [
        (
            sheet.flows[n],
            _flow(
                sheet, n, units,
                f"There NPSHr is {shown(NPSH, sheet.npsh[n], units)}, "
                + ("less than it has. It could move more." if n < there else "more than it has."),
            ),
        )
        for n in draw.shuffled([n for n in range(1, len(sheet.flows)) if n != there])
        if abs(sheet.npsh[n] - sheet.npsh[there]) > 0.03 * sheet.npsh[there]
    ]  # fmt: skip
    found = chosen(right, sheet.flows[there], wrong)
    rule = "NPSHr grows with the flow. Go across from NPSHa to the NPSHr curve, then down"
    asks = f"With the water low, its NPSHa is {has}. At what flow does NPSHr come up to that?"
    return Judgement(rule, "", right, found, asks, rows(sheet, units)) if found else None


NPSH_OFF_CURVE = CHAPTER.judged(
    "npsh_off_curve",
    "QA",
    "NPSHr off the curve",
    judge_margin,
    SHEETS_AT_PUMP,
    Level((), "These are the pump curves of {place}. {asks}", judge=judge_margin),
    Level((), "These are the pump curves of {place}. {asks}", judge=judge_most_flow),
    since=2,
)

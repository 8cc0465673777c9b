"""What is read off the curve of NPSHr: the margin at a flow, and the flow where none is left."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.topics.readings import noted, shown

from .read_off import NPSH, at_work, chosen, flow_at, rows, sheet_in
from .stations import CHAPTER, SHEETS_AT_PUMP

__all__ = ["NPSH_OFF_CURVE"]

LEAST_NPSH = {"us": 8, "si": 2.4}  # ft | m: less is hardly left over a pump's own suction anywhere


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
    right = flow_at(
        sheet, there, units, f"There NPSHr comes up to {has}. Beyond it the pump cavitates."
    )
    wrong = [
        (
            sheet.flows[n],
            flow_at(
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

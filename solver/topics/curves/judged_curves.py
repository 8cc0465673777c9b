"""What is read off a drawn pump curve: head, efficiency, power, a flow; and what comes of it.

The picture is the question. The same points are in its table, for somebody who cannot see it.
"""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judge, Judgement, Option
from solver.topics.readings import noted, shown

from .read_off import (
    EFFICIENCY,
    HEAD,
    NPSH,
    POWER,
    SCALES,
    WITHOUT_POWER,
    at_work,
    chosen,
    flow_at,
    rows,
    sheet_in,
)
from .stations import CHAPTER, SHEETS, worked

__all__ = ["CURVE_TO_POWER", "READ_CURVE"]


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
    right = flow_at(
        sheet, there, units, f"Go across from {head} to the head curve, then down to the flow."
    )
    others = draw.shuffled([n for n in range(1, len(sheet.flows)) if n != there])
    wrong = [
        (
            sheet.flows[n],
            flow_at(
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

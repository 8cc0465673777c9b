"""Judgments of the head chapter: a part left out, a pipe by its C factor."""

from collections.abc import Callable, Mapping

from solver.engine.draw import Draw
from solver.engine.judgement import Judge, Judgement, Option
from solver.station.instruments import noted
from solver.station.scene import station_in
from solver.topics.readings import shown
from solver.topics.tables import named_rows
from solver.units.show import figures

from .stations import all_losses, worked

__all__ = ["judge_missing", "judge_pipe", "left_out_of"]

CALLED = {
    "static_head": "static head",
    "friction_head": "friction loss",
    "minor_loss": "minor losses",
    "delivery_head": "pressure at the end",
}
APART = 0.03  # of the total: parts nearer than this could not be told from a rounded sum
SAME = 0.01  # of the total: what a sum may be short by, besides the part
NEAR = 2  # how far outside a row of the table a measured C may lie


def left_out_of(*parts: str) -> Callable[[Mapping[str, float], Draw], Mapping[str, float]]:
    """The total noted as somebody has it who added up all of these parts but one."""

    def notes(values: Mapping[str, float], draw: Draw) -> Mapping[str, float]:
        losses = {} if "minor_loss" in parts else all_losses(values, draw)
        gone = draw.pick(parts)
        kept = sum(losses.get(part) or values[part] for part in parts if part != gone)
        return {**losses, "head": noted("head", kept, station_in(values).system.name)}

    return notes


def judge_missing(*parts: str) -> Judge:
    """Which part the difference between the sum and the figure is."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        sizes = {part: values[part] for part in parts}
        total = worked(sizes, "head", units)
        by_size = sorted(sizes.values())
        if min(b - a for a, b in zip((0, *by_size), by_size, strict=False)) < APART * total:
            return None
        missing = total - values["head"]
        gone = min(parts, key=lambda part: abs(sizes[part] - missing))
        if abs(sizes[gone] - missing) > SAME * total:
            return None
        short = shown("head", missing, units, figures)
        all_of_it = f"all the parts add up to {shown('head', total, units, figures)}"
        return Judgement(
            "what the total falls short by is the part that was left out",
            f"{all_of_it}; {shown('head', values['head'], units)} is {short} short",
            Option(
                gone,
                f"The {CALLED[gone]}",
                f"The total is {short} short, which is the {CALLED[gone]}.",
            ),
            (
                *(
                    Option(
                        f"took_{part}",
                        f"The {CALLED[part]}",
                        f"That part is {shown(part, size, units, figures)}, but the total is {short} short.",
                    )
                    for part, size in sizes.items()
                    if part != gone
                ),
                Option("nothing", "Nothing was left out", f"Add it up again: {all_of_it}."),
            ),
        )

    return judge


def judge_pipe(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The row of the table of C factors that fits, among four."""
    found = values["c_factor"]
    rows = named_rows("c_factors")
    fitting = [n for n, (low, high) in rows.items() if low - NEAR <= found <= high + NEAR]
    if len(fitting) != 1:
        return None
    (right,) = fitting
    others = draw.shuffled([name for name in rows if name != right])[:3]

    def usual(name: str) -> str:
        low, high = rows[name]
        return f"{low:g}" if low == high else f"{low:g} to {high:g}"

    return Judgement(
        "C factors: " + "; ".join(f"{name} {usual(name)}" for name in (right, *others)),
        f"C is {figures(found)}",
        Option(
            "fits",
            right[:1].upper() + right[1:],
            f"This pipe's C is {usual(right)}. C drops as a pipe gets rougher, so write it down with "
            "the date.",
        ),
        tuple(
            Option(
                f"other_{i}",
                name[:1].upper() + name[1:],
                f"That pipe's C would be {usual(name)}, but here C is {found:.0f}.",
            )
            for i, name in enumerate(others, 1)
        ),
    )

"""A total that lacks a part, and a pipe told by its C factor."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Judge, Judgement, Level, Option, Scene
from ..show import exact, figures, with_unit
from ..tables import named_rows
from ..vocabulary import quantity_named
from .head_family import judged
from .scenes_head import FOOT, force_main, only, station, worked

__all__ = ["MISSING_PART", "WHICH_PIPE"]

APART = 0.04  # of the total: parts nearer than this could not be told from a rounded sum


def shown(name: str, value: float, units: str, write=figures) -> str:
    unit = quantity_named(name).unit(units)
    return with_unit(write(value, unit), unit)


def left_out_of(*parts: str) -> Scene:
    """A scene in which somebody has added up all of these parts but one."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        seen = station(draw, units)
        gone = draw.pick(parts)
        seen["minor_loss"] = float(f"{draw.between(5, 14) * FOOT[units]:.2g}")
        seen["delivery_head"] = worked(only(seen, "delivery_pressure"), "delivery_head", units)
        kept = sum(seen[part] for part in parts if part != gone)
        return seen | {"head": float(f"{kept:.3g}"), "gone": float(parts.index(gone))}

    return scene


def judge_missing(*parts: str) -> Judge:
    """Which part the difference between the sum and the figure is."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        sizes = {part: values[part] for part in parts}
        total = sum(sizes.values())
        by_size = sorted(sizes.values())
        if min(b - a for a, b in zip((0, *by_size), by_size, strict=False)) < APART * total:
            return None
        gone = parts[int(values["gone"])]
        short = shown("head", total - values["head"], units)
        names = {part: quantity_named(part).label.removesuffix(" as head") for part in parts}
        all_of_it = f"all parts come to {shown('head', total, units)}"
        return Judgement(
            "what the figure is short of the sum is the part that was left out",
            f"{all_of_it}; {shown('head', values['head'], units, exact)} is {short} short",
            Option(gone, f"the {names[gone]}", f"The figure is {short} short: the {names[gone]}."),
            (
                *(
                    Option(
                        f"took_{part}",
                        f"the {names[part]}",
                        f"The {names[part]} is {shown(part, size, units)}. The figure is {short} short.",
                    )
                    for part, size in sizes.items()
                    if part != gone
                ),
                Option("nothing", "nothing", f"Add again: {all_of_it}."),
            ),
        )

    return judge


THREE = ("static_head", "friction_head", "minor_loss")
FOUR = ("static_head", "friction_head", "delivery_head")

MISSING_PART = judged(
    "missing_part",
    "HX",
    "Which part of the head was left out",
    judge_missing(*THREE),
    left_out_of(*THREE),
    Level(
        (*THREE, "head"),
        "{place} lifts the water by {static_head}. The pipe takes {friction_head} and the "
        "fittings {minor_loss}. {person} notes {head} of total dynamic head. "
        "What was left out?",
    ),
    Level(
        ("static_head", "friction_head", "delivery_pressure", "head"),
        "{place} lifts the water by {static_head}. The pipe takes {friction_head}. At the end "
        "{delivery_pressure} must be left. {person} notes {head} of total dynamic head. "
        "What was left out?",
        find=("delivery_head",),
        scene=left_out_of(*FOUR),
        judge=judge_missing(*FOUR),
    ),
)

NEAR = 2  # how far outside a row of the table a measured C may lie


def old_or_new(draw: Draw, units: str) -> dict[str, float]:
    """A main of one of the table's pipes, tested."""
    low, high = draw.pick(list(named_rows("c_factors").values()))
    pipe = only(force_main(draw, units), "flow", "pipe_diameter", "pipe_length")
    pipe["c_factor"] = draw.between(low, high)
    return pipe | {
        "friction_rate": float(f"{worked(pipe, 'friction_rate', units):.3g}"),
        "friction_head": float(f"{worked(pipe, 'friction_head', units):.3g}"),
    }


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
        "C by pipe: " + "; ".join(f"{name} {usual(name)}" for name in (right, *others)),
        f"C is {figures(found)}",
        Option(
            "fits",
            right,
            f"Its C is {usual(right)}. C falls as a pipe roughens: note it with the date.",
        ),
        tuple(
            Option(f"other_{i}", name, f"Its C would be {usual(name)}; here it is {found:.0f}.")
            for i, name in enumerate(others, 1)
        ),
    )


WHICH_PIPE = judged(
    "which_pipe",
    "HE",
    "Which pipe has this C factor",
    judge_pipe,
    old_or_new,
    Level(
        ("flow", "pipe_diameter", "friction_rate"),
        "A test on the main of {place} finds {friction_rate} at {flow}. The inside diameter is "
        "{pipe_diameter}. By Hazen-Williams, which pipe is it most like?",
        find=("c_factor",),
    ),
    Level(
        ("flow", "pipe_diameter", "pipe_length", "friction_head"),
        "A test finds {friction_head} of friction over {pipe_length} of the main of {place}. "
        "The flow is {flow}, the inside diameter {pipe_diameter}. "
        "By Hazen-Williams, which pipe is it most like?",
        find=("friction_rate", "c_factor"),
    ),
)

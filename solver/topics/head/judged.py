"""A total with a part missing, and a pipe known by its C factor."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judge, Judgement, Level, Option, Scene
from solver.topics.tables import named_rows
from solver.units.show import exact, figures, with_unit
from solver.vocabulary import quantity_named

from .kinds import judged
from .problems_total import PARTS
from .scenes import FOOT, force_main, only, station, worked

__all__ = ["MISSING_PART", "WHICH_PIPE"]

CALLED = {
    "static_head": "static head",
    "friction_head": "friction loss",
    "minor_loss": "minor losses",
    "delivery_head": "pressure at the end",
}
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
        all_of_it = f"all the parts add up to {shown('head', total, units)}"
        return Judgement(
            "what the total falls short by is the part that was left out",
            f"{all_of_it}; {shown('head', values['head'], units, exact)} is {short} short",
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
                        f"That part is {shown(part, size, units)}, but the total is {short} short.",
                    )
                    for part, size in sizes.items()
                    if part != gone
                ),
                Option("nothing", "Nothing was left out", f"Add it up again: {all_of_it}."),
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
        f"{PARTS} {{person}} wrote down a total dynamic head (TDH) of {{head}}. What was left out?",
    ),
    Level(
        ("static_head", "friction_head", "delivery_pressure", "head"),
        "{place} works against a static head of {static_head}. Friction loss is {friction_head}, and "
        "the pressure at the end of the pipe must be {delivery_pressure}. {person} wrote down a "
        "total dynamic head (TDH) of {head}. What was left out?",
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


WHICH_PIPE = judged(
    "which_pipe",
    "HE",
    "Which kind of pipe has this C factor",
    judge_pipe,
    old_or_new,
    Level(
        ("flow", "pipe_diameter", "friction_rate"),
        "A test on the force main of {place} finds a friction loss of {friction_rate} at {flow}. The "
        "inside diameter is {pipe_diameter}. Going by Hazen-Williams, what kind of pipe is it most "
        "likely to be?",
        find=("c_factor",),
    ),
    Level(
        ("flow", "pipe_diameter", "pipe_length", "friction_head"),
        "A test on the force main of {place} finds {friction_head} of friction loss over "
        "{pipe_length} of pipe. The flow is {flow}, and the inside diameter is {pipe_diameter}. Going by "
        "Hazen-Williams, what kind of pipe is it most likely to be?",
        find=("friction_rate", "c_factor"),
    ),
)

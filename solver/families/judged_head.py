"""Head judged: velocities, suction lifts and NPSH against limits, a part left out, an old pipe."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Judge, Judgement, Level, Option
from ..limits import Limits
from ..show import exact, figures, with_unit
from ..tables import named_rows
from ..vocabulary import quantity_named
from .against import Zone, against
from .head_family import judged
from .scenes_head import force_main, station, suction, worked

__all__ = ["MISSING_PART", "NPSH_CHECK", "SUCTION_LIMIT", "VELOCITY_CHECK", "WHICH_PIPE"]

FOOT = {"us": 1, "si": 0.3048}


def by_system(us: Limits, si: Limits, *zones: Zone) -> Judge:
    """A judge whose limits are round numbers in each system."""
    judges = {"us": against(us, us.rule, *zones), "si": against(si, si.rule, *zones)}
    return lambda values, units, draw: judges[units](values, units, draw)


# --- Velocity in a force main -----------------------------------------------------------------

CLEANSING = "Ten States Standards (from memory): at least 2 ft/s or 0.6 m/s in a force main"
SPEED = "slower than {} lets solids settle; over {} is hard on pipe and valves (common practice)"


def at_any_speed(draw: Draw, units: str) -> dict[str, float]:
    """A main that may be far too wide for its flow, or far too narrow."""
    seen = force_main(draw, units)
    target = draw.between(*draw.pick(((0.9, 1.8), (2.3, 7), (8.6, 12)))) * FOOT[units]
    flow = worked({**only(seen, "pipe_diameter"), "velocity": target}, "flow", units)
    flow = float(f"{flow:.2g}")
    daily = float(f"{worked({'flow': flow}, 'daily_flow', units):.2g}")
    return seen | {"flow": flow, "daily_flow": daily}


def only(values: Mapping[str, float], *wanted: str) -> dict[str, float]:
    return {name: values[name] for name in wanted}


VELOCITY_CHECK = judged(
    "velocity_check",
    "HQ",
    "Does the water in a main run too slowly or too fast",
    by_system(
        Limits("velocity", 2, 8, SPEED.format("2 ft/s", "8 ft/s"), CLEANSING),
        Limits("velocity", 0.6, 2.4, SPEED.format("0.6 m/s", "2.4 m/s"), CLEANSING),
        (
            "too_slow",
            "Too slowly: solids settle in the main",
            "What settles narrows the main, and turns septic. Look at the flow, or flush it.",
        ),
        (
            "as_usual",
            "As it should: fast enough to carry solids, and not too fast",
            "Solids are carried along, and friction stays moderate.",
        ),
        (
            "too_fast",
            "Too fast: it wears the pipe, and a stop hammers",
            "Friction is high, and a sudden stop sends a heavy surge through the main.",
        ),
    ),
    at_any_speed,
    Level(
        ("flow", "pipe_diameter"),
        "{place} sends {flow} through a force main of {pipe_diameter} inside diameter. "
        "How does the water run?",
        find=("velocity",),
    ),
    Level(
        ("daily_flow", "pipe_diameter"),
        "The pumps at {station} send {daily_flow} at all hours through a force main of {pipe_diameter} inside "
        "diameter. How does the water run?",
        find=("flow", "velocity"),
    ),
)

# --- Suction lift -----------------------------------------------------------------------------

LIFT = (
    "at sea level: up to {} is common practice; about {} is the practical limit "
    "(Engineering ToolBox, suction head and altitude)"
)
TOOLBOX = "common practice; Engineering ToolBox, suction head and altitude"


def any_lift(draw: Draw, units: str) -> dict[str, float]:
    """A dynamic suction lift within the usual, over it, or over what is practical."""
    seen = suction()(draw, units)
    total = draw.between(*draw.pick(((8, 14.5), (15.5, 21.5), (22.5, 27)))) * FOOT[units]
    step = 0.5 if units == "us" else 1
    vacuum = worked({"dynamic_suction_lift": total}, "suction_vacuum", units)
    lift = round(total - seen["suction_loss"], 1)
    return seen | {"suction_vacuum": round(vacuum / step) * step, "suction_lift": lift}


SUCTION_LIMIT = judged(
    "suction_limit",
    "HL",
    "Is the suction lift too high",
    by_system(
        Limits("dynamic_suction_lift", 15, 22, LIFT.format("15 ft", "22 ft"), TOOLBOX),
        Limits("dynamic_suction_lift", 4.5, 6.7, LIFT.format("4.5 m", "6.7 m"), TOOLBOX),
        (
            "usual",
            "No: it is within common practice",
            "Most pumps manage that. The maker's NPSH still has the last word.",
        ),
        (
            "check",
            "It may be: work the NPSH before it runs",
            "Some pumps manage that, others cavitate. Compare NPSH available and required.",
        ),
        (
            "too_high",
            "Yes: over the practical limit at sea level",
            "It will lose its prime or cavitate. Stop it, and look for a blocked suction.",
        ),
    ),
    any_lift,
    Level(
        ("suction_lift", "suction_loss"),
        "At sea level {place} stands {suction_lift} above the water it draws. Its suction pipe "
        "takes {suction_loss}. Is the dynamic suction lift too high?",
        find=("dynamic_suction_lift",),
    ),
    Level(
        ("suction_vacuum",),
        "At sea level the suction gauge of {place} shows a vacuum of {suction_vacuum}. "
        "Is the dynamic suction lift too high?",
        find=("dynamic_suction_lift",),
    ),
)

# --- NPSH -------------------------------------------------------------------------------------


def any_need(draw: Draw, units: str) -> dict[str, float]:
    """A pump that needs less than is usable, part of the margin, or more than there is."""
    seen = suction()(draw, units)
    known = only(seen, "atmospheric_head", "vapor_head", "suction_lift", "suction_loss")
    available = round(worked(known, "npsh_available", units), 2 if units == "si" else 1)
    usable = available - seen["npsh_margin"]
    low, high = draw.pick(
        (
            (0.6 * usable, 0.95 * usable),
            (1.05 * usable, 0.96 * available),
            (1.05 * available, 1.4 * available),
        )
    )
    needed = round(draw.between(low, high), 1)
    return seen | {"npsh_available": available, "npsh_required": needed}


NPSH_CHECK = judged(
    "npsh_check",
    "HJ",
    "Is there enough NPSH",
    against(
        Limits("npsh_required", "npsh_usable", "npsh_available"),
        "NPSH available must be over NPSH required, by the margin that is wanted",
        (
            "enough",
            "Yes: the margin is kept",
            "The pump gets what it needs, with the margin left for a bad day.",
        ),
        (
            "in_margin",
            "Only just: the margin is not kept",
            "A warm day, a low level or a foul strainer makes it cavitate. Keep the margin.",
        ),
        (
            "cavitates",
            "No: the pump cavitates",
            "Water boils in the impeller, with a noise like gravel. Stop it and mend the suction.",
        ),
    ),
    any_need,
    Level(
        ("npsh_available", "npsh_margin", "npsh_required"),
        "{place} has {npsh_available} of NPSH available. Its curve asks for {npsh_required}, and "
        "{npsh_margin} is wanted as a margin. Is there enough?",
        find=("npsh_usable",),
    ),
    Level(
        (
            "atmospheric_head",
            "vapor_head",
            "suction_lift",
            "suction_loss",
            "npsh_margin",
            "npsh_required",
        ),
        "The atmosphere holds up {atmospheric_head} of water, whose vapor head is {vapor_head}. "
        "{place} stands {suction_lift} above it, and the suction pipe takes {suction_loss}. Its "
        "curve asks for {npsh_required} of NPSH, and {npsh_margin} is wanted as a margin. "
        "Is there enough?",
        find=("npsh_available", "npsh_usable"),
    ),
)

# --- A part left out of the total -------------------------------------------------------------

APART = 0.04  # of the total: parts nearer than this could not be told from a rounded sum


def shown(name: str, value: float, units: str, write=figures) -> str:
    unit = quantity_named(name).unit(units)
    return with_unit(write(value, unit), unit)


def left_out_of(*parts: str):
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

# --- Which pipe it is -------------------------------------------------------------------------

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

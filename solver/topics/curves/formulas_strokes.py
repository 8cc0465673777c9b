"""Pumps that push a fixed volume at every stroke or turn: their output and their slip."""

from solver.algebra.expression import Constant, Expr, Figure, Fraction, Known, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import CIRCLE_IN_SQUARE, SECONDS_PER_MINUTE

__all__ = ["STROKES"]

diameter, stroke, per_stroke = map(Known, ("plunger_diameter", "plunger_stroke", "stroke_volume"))
strokes, plungers = map(Known, ("stroke_rate", "plungers"))
theory, output, slipped = map(Known, ("theoretical_output", "pd_output", "slip_flow"))
CUBIC = Constant(
    "stroke_constant",
    "volume unit of a stroke",
    us=Figure(231, "in2 in / gal", exact=231.0),
    si=Figure(1e6, "mm2 mm / L", exact=1e6),
    source="definition of the US gallon, 231 cubic inches; a liter is 1,000,000 cubic millimeters",
)
DISPLACED = "Sullivan, Fluid Power, ch. 7 and 9: displacement times speed"
SLIPS = (
    "Sullivan, Fluid Power, Ex 7.2: volumetric efficiency is the output over the theoretical output"
)
share_out = Fraction(Known("volumetric_efficiency"))


def displaced(
    at_a_time: Expr, why: str, slipped: Expr | None = None, unless: tuple[str, ...] = ()
) -> tuple[Formula, Formula]:
    """Theoretical output in each system from what is moved in a minute; `slipped` with one plunger."""

    def in_system(units: str) -> Formula:
        def a_unit(of: Expr) -> Expr:
            return of / SECONDS_PER_MINUTE if units == "si" else of

        says = "You counted one plunger. Count them all."
        slips = (Slip("one_plunger", a_unit(slipped), says),) if slipped else ()
        return Formula(
            "theoretical_output",
            a_unit(at_a_time),
            DISPLACED,
            why,
            slips,
            systems=(units,),
            unless=unless,
        )

    return in_system("us"), in_system("si")


STROKES = (
    Formula(
        "stroke_volume",
        CIRCLE_IN_SQUARE * diameter**2 * stroke / CUBIC,
        f"{CIRCLE_IN_SQUARE.source}; {CUBIC.source}",
        "A stroke pushes out a round column as wide as the plunger and as long as the stroke.",
        slips=(
            Slip(
                "radius_for_diameter",
                CIRCLE_IN_SQUARE * (diameter / Number(2)) ** 2 * stroke / CUBIC,
                "You squared the radius. With 0.785, square the diameter.",
            ),
            Slip(
                "square_column",
                diameter**2 * stroke / CUBIC,
                "You left out the 0.785. A plunger is round, not square.",
            ),
        ),
    ),
    *displaced(
        per_stroke * strokes * plungers,
        "Every plunger pushes out its volume at each of its strokes.",
        per_stroke * strokes,
    ),
    *displaced(
        per_stroke * strokes,
        "Every stroke pushes out the same volume, whatever the pressure.",
        unless=("plungers",),
    ),
    *displaced(
        Known("turn_volume") * Known("rotor_speed"),
        "Every turn moves the same volume along, whatever the pressure.",
    ),
    Formula(
        "pd_output",
        theory * share_out,
        SLIPS,
        "Some of the volume slips back past the valves or the rotor, so less comes out.",
        slips=(
            Slip(
                "divided",
                theory / share_out,
                "You divided by the volumetric efficiency. Slip takes some away, so multiply.",
            ),
        ),
        back="Some of the volume slips back, so the pump has to displace more than comes out.",
    ),
    Formula(
        "slip_flow",
        theory - output,
        "arithmetic: what is displaced, minus what comes out",
        "What is displaced and doesn't come out has slipped back.",
    ),
    Formula(
        "pump_slip",
        Percent(slipped / theory),
        SLIPS,
        "Slip is counted against what the pump would move without any.",
        slips=(
            Slip(
                "over_the_output",
                Percent(slipped / output),
                "You divided by the output. Divide by the theoretical output.",
            ),
            Slip(
                "what_comes_out",
                Percent(output / theory),
                "You found the volumetric efficiency. Slip is the rest.",
            ),
        ),
    ),
)

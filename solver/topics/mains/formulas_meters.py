"""Venturi tubes and orifices, and a meter against a test."""

from solver.algebra.expression import Fraction, Known, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.head.formulas_pipes import GRAVITY, VELOCITY

__all__ = ["METERS"]

flow, metered = map(Known, ("flow", "metered_flow"))
ratio, across = map(Known, ("meter_ratio", "differential_head"))
coefficient, throat = map(Known, ("discharge_coefficient", "throat_diameter"))
throat_velocity = Known("throat_velocity")
THROAT = "Bernoulli, in Choudhary & Om Prakash, Fluid Mechanics, Ex 5.17"
SQUARE_ROOT = "common practice, no source: the differential of a Venturi or an orifice grows with the square of the flow"

METERS = (
    Formula(
        "meter_flow",
        Known("full_flow") * Fraction(Known("differential_share")) ** 0.5,
        SQUARE_ROOT,
        "The differential grows with the square of the flow, so the flow goes with its square root.",
        slips=(
            Slip(
                "root_left_out",
                Known("full_flow") * Fraction(Known("differential_share")),
                "You left out the square root. At a quarter of the differential, half the flow goes through.",
            ),
        ),
    ),
    Formula(
        "meter_ratio",
        throat / Known("pipe_diameter"),
        "definition of the diameter ratio",
        "This tells you how much the meter narrows the pipe.",
    ),
    Formula(
        "throat_velocity",
        (Number(2) * GRAVITY * across / (Number(1) - ratio**4)) ** 0.5,
        THROAT,
        "The head that is lost at the throat has become velocity. The water was moving before, so 1 minus "
        "the ratio to the fourth.",
        slips=(
            Slip(
                "two_left_out",
                (GRAVITY * across / (Number(1) - ratio**4)) ** 0.5,
                "You left out the 2. It's the square root of 2g times the head.",
            ),
        ),
        turns=("differential_head",),
    ),
    Formula(
        "meter_flow",
        coefficient * throat_velocity * throat**2 / VELOCITY,
        f"{THROAT}; {VELOCITY.source}",
        "Velocity times the area of the throat, less what the coefficient takes off for the real meter.",
        slips=(
            Slip(
                "coefficient_left_out",
                throat_velocity * throat**2 / VELOCITY,
                "You left out the discharge coefficient. A real meter passes a little less.",
            ),
            Slip(
                "pipe_for_throat",
                coefficient * throat_velocity * Known("pipe_diameter") ** 2 / VELOCITY,
                "You used the diameter of the pipe. This velocity is in the throat.",
            ),
        ),
    ),
    Formula(
        "meter_error",
        Percent((metered - flow) / flow),
        "common practice, no source: the error is counted against the tested flow",
        "The test is what you trust, so divide by the tested flow.",
        slips=(
            Slip(
                "over_the_meter",
                Percent((metered - flow) / metered),
                "You divided by the meter's reading. Divide by the tested flow.",
            ),
        ),
    ),
)

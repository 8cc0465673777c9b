"""Water in pipes: its velocity and velocity head, friction, and what fittings take."""

from ..expression import Expr, Known, Number
from ..formula import Formula, Slip
from .head_factors import FRICTION, GRAVITY, HUNDRED, VELOCITY

__all__ = ["FITTINGS", "PIPES", "velocity_head_of", "velocity_of"]

TORRICELLI = "v squared over 2g: US EPA, EPANET 2.2 manual ch. 3, and any text on hydraulics"
TABLE = "common practice, no source: a friction table counts by 100 ft, or 100 m, of pipe"
HAZEN_WILLIAMS = (
    f"Hazen-Williams, fitted to water at ordinary temperatures in full pipes; {FRICTION.source}"
)
EPANET_K = "US EPA, EPANET 2.2 manual ch. 3: minor loss = K v squared over 2g"

flow, length, c_factor = map(Known, ("flow", "pipe_length", "c_factor"))
diameter, rate = map(Known, ("pipe_diameter", "friction_rate"))
elbows, one_elbow, all_elbows = map(Known, ("elbows", "elbow_coefficient", "elbows_coefficient"))
check, gate, outlet = map(
    Known, (f"{part}_coefficient" for part in ("check_valve", "gate_valve", "outlet"))
)


def velocity_of(result: str, diameter: Expr) -> Formula:
    """The velocity of the flow in a pipe of this inside diameter."""
    return Formula(
        result,
        VELOCITY * flow / diameter**2,
        VELOCITY.source,
        "The same flow runs faster through a smaller area, and area goes with diameter squared.",
        slips=(
            Slip(
                "radius_for_diameter",
                VELOCITY * flow / (diameter / Number(2)) ** 2,
                "The radius is squared here. This constant takes the whole diameter.",
            ),
        ),
    )


def velocity_head_of(result: str, velocity: Expr) -> Formula:
    """The height from which water would have to fall to reach this velocity."""
    return Formula(
        result,
        velocity**2 / (Number(2) * GRAVITY),
        TORRICELLI,
        "It is the height from which water falls to reach this velocity.",
        slips=(
            Slip(
                "two_left_out",
                velocity**2 / GRAVITY,
                "Left out: the 2. Velocity head is v squared over twice gravity.",
            ),
        ),
    )


PIPES = (
    velocity_of("velocity", diameter),
    velocity_head_of("velocity_head", Known("velocity")),
    Formula(
        "friction_rate",
        FRICTION * (flow / c_factor) ** 1.852 / diameter**4.87,
        HAZEN_WILLIAMS,
        "A rougher, narrower pipe or a larger flow costs more head. C is high for smooth pipe.",
        empirical=True,
    ),
    Formula(
        "friction_head",
        rate * length / HUNDRED,
        TABLE,
        "The rate holds for 100 ft, or 100 m; the pipe has so many of those.",
    ),
)

FITTINGS = (
    Formula(
        "elbows_coefficient",
        elbows * one_elbow,
        EPANET_K,
        "Each elbow takes its share.",
        slips=(Slip("one_elbow", one_elbow, "This is one elbow. Count each of them."),),
    ),
    Formula(
        "loss_coefficient",
        all_elbows + check + gate + outlet,
        EPANET_K,
        "The same water passes every fitting in turn, so their K add up.",
        slips=(
            Slip(
                "one_elbow",
                one_elbow + check + gate + outlet,
                "This counts one elbow. Count each of them.",
            ),
        ),
    ),
    Formula(
        "minor_loss",
        Known("loss_coefficient") * Known("velocity_head"),
        EPANET_K,
        "K says how many velocity heads the fittings take.",
        slips=(
            Slip(
                "velocity_for_its_head",
                Known("loss_coefficient") * Known("velocity"),
                "This takes K times the velocity. K counts velocity heads, v squared over 2g.",
            ),
        ),
    ),
)

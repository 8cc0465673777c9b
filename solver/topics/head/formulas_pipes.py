"""Water in pipes: its velocity and velocity head, friction, and minor losses in fittings."""

from solver.algebra.expression import Constant, Expr, Figure, Known, Number
from solver.algebra.formula import Formula, Slip

__all__ = ["FITTINGS", "GRAVITY", "PIPES", "VELOCITY", "velocity_head_of", "velocity_of"]

VELOCITY = Constant(
    "velocity_constant",
    "velocity constant",
    us=Figure(0.4085, "ft/s in2 / gpm", also=(0.408,), exact=0.4084977),
    si=Figure(1273, "m/s mm2 / L/s", also=(1270, 1273.2), exact=1273.2395),
    source="arithmetic: the flow over the area of a round pipe",
)
GRAVITY = Constant(
    "gravity",
    "acceleration of gravity",
    us=Figure(32.2, "ft/s2", also=(32.17, 32.174), exact=32.174049),
    si=Figure(9.81, "m/s2", also=(9.8, 9.807), exact=9.80665),
    source="NIST SP 811: standard gravity 9.80665 m/s2; 32.2 ft/s2 in common practice",
)
# `also` spans the other published forms, whose exponents are 1.85, 4.8655, 4.8704 or 4.871, for
# pipes of 3 to 16 in and 80 to 400 mm: 0.2083 (100/C)^1.852, 10.44 Q^1.85, 4.52 psi and 4.727 in
# cfs; 10.67 and 10.643 in m3/s. A test works each of them.
FRICTION = Constant(
    "hazen_williams",
    "Hazen-Williams constant",
    us=Figure(1050, "", also=(1035, 1067)),
    si=Figure(1.212e12, "", also=(1.205e12, 1.232e12)),
    source="Keller & Bliesner, Sprinkle and Trickle Irrigation (from memory): 1050 for gpm, "
    "inches and ft/100 ft; 1.212 x 10^12 for L/s, mm and m/100 m",
)
HUNDRED = Constant(
    "hundred",
    "100 in the table",
    us=Figure(100, "ft/100 ft", exact=100),
    si=Figure(100, "m/100 m", exact=100),
    source="arithmetic: the table gives the loss per 100 ft, or per 100 m, of pipe",
)

TORRICELLI = "v squared over 2g: US EPA, EPANET 2.2 manual ch. 3, and any text on hydraulics"
TABLE = (
    "common practice, no source: a friction table gives the loss per 100 ft, or per 100 m, of pipe"
)
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
        "The same flow moves faster through a smaller area, and the area depends on the diameter "
        "squared.",
        slips=(
            Slip(
                "radius_for_diameter",
                VELOCITY * flow / (diameter / Number(2)) ** 2,
                "You squared the radius. This constant takes the full diameter.",
            ),
        ),
    )


def velocity_head_of(result: str, velocity: Expr) -> Formula:
    """The height from which water would have to fall to reach this velocity."""
    return Formula(
        result,
        velocity**2 / (Number(2) * GRAVITY),
        TORRICELLI,
        "Velocity head is how far water would have to fall to reach this velocity.",
        slips=(
            Slip(
                "two_left_out",
                velocity**2 / GRAVITY,
                "You left out the 2. Velocity head is v squared divided by 2g.",
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
        "More flow, a narrower pipe or a rougher pipe costs more head. A high C means smooth pipe.",
        empirical=True,
        back="A smooth pipe loses little head at a given flow, so its C is high.",
    ),
    Formula(
        "friction_head",
        rate * length / HUNDRED,
        TABLE,
        "The table's loss is for each 100 ft (or 100 m) of pipe. Count the hundreds in the length.",
        back="The table counts the loss for each 100 ft (or 100 m) of pipe.",
    ),
)

FITTINGS = (
    Formula(
        "elbows_coefficient",
        elbows * one_elbow,
        EPANET_K,
        "Each elbow has its own loss.",
        slips=(Slip("one_elbow", one_elbow, "You counted one elbow. Count every elbow."),),
    ),
    Formula(
        "loss_coefficient",
        all_elbows + check + gate + outlet,
        EPANET_K,
        "The same water goes through every fitting, so the K values add up.",
        slips=(
            Slip(
                "one_elbow",
                one_elbow + check + gate + outlet,
                "You counted one elbow. Count every elbow.",
            ),
        ),
    ),
    Formula(
        "minor_loss",
        Known("loss_coefficient") * Known("velocity_head"),
        EPANET_K,
        "K is the number of velocity heads that the fittings use up.",
        slips=(
            Slip(
                "velocity_for_its_head",
                Known("loss_coefficient") * Known("velocity"),
                "You multiplied K by the velocity. K counts velocity heads, so use v squared over 2g.",
            ),
        ),
    ),
)

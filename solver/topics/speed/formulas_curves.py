"""Where a pump's curve meets a system's, with one pump and with two; and specific speed."""

from solver.algebra.expression import Expr, Known, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import LITRES_PER_CUBIC_METRE

__all__ = ["CROSSING"]

PARABOLAS = (
    "common practice, no source: pump and system curves taken as parabolas, equal where they cross "
    "(Hazen-Williams would have friction go with the power 1.852)"
)
HI = "Hydraulic Institute practice (from memory)"
US_UNITS = f"{HI}: rpm, US gpm and feet of one stage at the best point"
SI_UNITS = f"{HI}: rpm, cubic meters per second and meters of one stage at the best point"

flow, rated_flow, parallel_flow = map(Known, ("flow", "rated_flow", "parallel_flow"))
rated_friction, friction_head = map(Known, ("rated_friction", "friction_head"))
spare, drop, shared_drop = map(Known, ("spare_head", "curve_drop", "shared_drop"))
static_head, shutoff_head = map(Known, ("static_head", "shutoff_head"))
speed, head, stage_head, stages = map(Known, ("pump_speed", "head", "stage_head", "stages"))


def met(fall: Expr) -> Expr:
    """The flow at which the fall of the curve and the friction use up the spare head."""
    return rated_flow * (spare / fall) ** 0.5


CURVES = (
    Formula(
        "spare_head",
        shutoff_head - static_head,
        PARABOLAS,
        "This is the head the pump has at zero flow beyond what it takes to lift the water.",
        slips=(
            Slip(
                "static_left_out",
                shutoff_head,
                "You left out the static head. It uses up part of the shutoff head.",
            ),
        ),
    ),
    Formula(
        "curve_drop",
        shutoff_head - Known("rated_head"),
        PARABOLAS,
        "The pump makes this much less head at its rated flow than at shutoff.",
    ),
    Formula(
        "rated_friction",
        Known("known_friction") * (rated_flow / Known("known_flow")) ** 2,
        PARABOLAS,
        "Friction loss changes with the square of the flow.",
    ),
    Formula(
        "flow",
        met(drop + rated_friction),
        PARABOLAS,
        "Both curves change with the square of the flow, so take a square root to get the flow.",
        slips=(
            Slip(
                "friction_left_out",
                met(drop),
                "You left out the friction loss. It uses up head too.",
            ),
            Slip(
                "curve_left_out",
                met(rated_friction),
                "You left out the drop of the pump curve. The pump makes less head as flow goes up.",
            ),
        ),
    ),
    Formula(
        "friction_head",
        rated_friction * (flow / rated_flow) ** 2,
        PARABOLAS,
        "Friction loss changes with the square of the flow.",
        slips=(
            Slip(
                "at_the_rated_flow",
                rated_friction,
                "You used the friction loss at the rated flow. The pump doesn't run there.",
            ),
        ),
    ),
)

TWO_PUMPS = (
    Formula(
        "shared_drop",
        drop / Number(4),
        PARABOLAS,
        "Each pump carries half of the flow, so its curve drops only a quarter as far.",
        slips=(
            Slip(
                "halved",
                drop / Number(2),
                "You cut the drop in half. At half the flow the drop is one-half squared, a quarter.",
            ),
            Slip(
                "not_shared",
                drop,
                "You used the drop for one pump with all of the flow. Two pumps share the flow.",
            ),
        ),
    ),
    Formula(
        "parallel_flow",
        met(shared_drop + rated_friction),
        PARABOLAS,
        "Both pumps use the same force main, so more flow means more friction for both.",
        slips=(
            Slip(
                "doubled",
                Number(2) * met(drop + rated_friction),
                "You doubled the flow of one pump. Friction in the shared main goes up too.",
            ),
        ),
    ),
    Formula(
        "added_flow",
        parallel_flow - flow,
        "arithmetic: the flow of both minus that of one",
        "The second pump adds whatever the station moves beyond the flow of one pump.",
        slips=(
            Slip(
                "as_much_as_one",
                flow,
                "You used the flow of one pump. The second pump adds less, because friction goes up.",
            ),
        ),
    ),
    Formula(
        "parallel_gain",
        Percent(Known("added_flow") / flow),
        "arithmetic: what is added over the flow of one pump",
        "Twice the flow would be a gain of 100%.",
        slips=(
            Slip(
                "over_both",
                Percent(Known("added_flow") / parallel_flow),
                "You divided by the flow of both pumps. Compare the gain with the flow of one.",
            ),
        ),
    ),
    Formula(
        "head_share",
        Percent(head / Known("rated_head")),
        "common practice, no source: measured head against the pump's rated head",
        "This is how much of its rated head the pump still makes.",
    ),
)


def specific_speed(system: str, of_flow: Expr, source: str) -> Formula:
    """The specific speed in one system, by the flow in the unit its source names."""
    top = speed * of_flow**0.5
    return Formula(
        "specific_speed",
        top / stage_head**0.75,
        source,
        "Specific speed tells you the shape of the impeller. Low means wide and flat, and high means a "
        "propeller.",
        slips=(
            Slip(
                "square_root_of_head",
                top / stage_head**0.5,
                "You took the square root of the head. Here the head goes to the power 0.75.",
            ),
            Slip(
                "head_not_divided",
                top * stage_head**0.75,
                "You multiplied by the head to the power 0.75. Divide by it.",
            ),
        ),
        systems=(system,),
        empirical=True,
    )


SPECIFIC_SPEED = (
    Formula(
        "stage_head",
        head,
        HI,
        "The pump has one stage, which makes all of the head.",
        unless=("stages",),
    ),
    Formula(
        "stage_head",
        head / stages,
        HI,
        "Stages work in series, so each one makes an equal share of the head.",
        turns=("head",),
    ),
    specific_speed("us", flow, US_UNITS),
    specific_speed("si", flow / LITRES_PER_CUBIC_METRE, SI_UNITS),
)

CROSSING = (*CURVES, *TWO_PUMPS, *SPECIFIC_SPEED)

"""Where a pump's curve meets a system's, with one pump and with two; and specific speed."""

from ..expression import Expr, Known, Number, Percent
from ..formula import Formula, Slip
from .well_units import LITRES_PER_CUBIC_METRE

__all__ = ["CROSSING"]

PARABOLAS = (
    "common practice, no source: pump and system curves taken as parabolas, equal where they cross"
)
HI = "Hydraulic Institute practice (from memory)"
US_UNITS = f"{HI}: rpm, US gpm and feet of one stage at the best point"
SI_UNITS = f"{HI}: rpm, cubic metres a second and metres of one stage at the best point"

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
        "So much head is there at no flow, beyond what lifting the water takes.",
        slips=(
            Slip(
                "static_left_out",
                shutoff_head,
                "The static head is left out. It takes part of the shutoff head.",
            ),
        ),
    ),
    Formula(
        "curve_drop",
        shutoff_head - Known("rated_head"),
        PARABOLAS,
        "The pump gives so much less head at its rated flow than at shutoff.",
    ),
    Formula(
        "rated_friction",
        Known("known_friction") * (rated_flow / Known("known_flow")) ** 2,
        PARABOLAS,
        "Friction goes with the square of the flow.",
    ),
    Formula(
        "flow",
        met(drop + rated_friction),
        PARABOLAS,
        "Both curves bend with the square of the flow, so the spare head gives its square.",
        slips=(
            Slip(
                "friction_left_out",
                met(drop),
                "The friction is left out. It uses up head as the curve does.",
            ),
            Slip(
                "curve_left_out",
                met(rated_friction),
                "The fall of the pump curve is left out. The pump gives less head as flow grows.",
            ),
        ),
    ),
    Formula(
        "friction_head",
        rated_friction * (flow / rated_flow) ** 2,
        PARABOLAS,
        "Friction goes with the square of the flow.",
        slips=(
            Slip(
                "at_the_rated_flow",
                rated_friction,
                "This is the friction at the rated flow. The pump does not run there.",
            ),
        ),
    ),
)

TWO_PUMPS = (
    Formula(
        "shared_drop",
        drop / Number(4),
        PARABOLAS,
        "Each pump carries half the flow, so its curve falls only a quarter as far.",
        slips=(
            Slip(
                "halved",
                drop / Number(2),
                "This halves the fall. At half the flow it falls by half squared, a quarter.",
            ),
            Slip(
                "not_shared",
                drop,
                "This is the fall for one pump with all the flow. Two pumps share the flow.",
            ),
        ),
    ),
    Formula(
        "parallel_flow",
        met(shared_drop + rated_friction),
        PARABOLAS,
        "The main is the same one, so with more flow its friction grows for both pumps.",
        slips=(
            Slip(
                "doubled",
                Number(2) * met(drop + rated_friction),
                "This doubles the flow of one pump. Friction in the shared main grows too.",
            ),
        ),
    ),
    Formula(
        "added_flow",
        parallel_flow - flow,
        "arithmetic: the flow of both less that of one",
        "The second pump adds what the station moves beyond the flow of one.",
        slips=(
            Slip(
                "as_much_as_one",
                flow,
                "This is the flow of one pump. The second adds less, as friction grows.",
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
                "This divides by the flow of both. The gain is set against the flow of one.",
            ),
        ),
    ),
    Formula(
        "head_share",
        Percent(head / Known("rated_head")),
        "common practice, no source: measured head against the pump's rated head",
        "This says how much of its rated head the pump gives now.",
    ),
)


def specific_speed(system: str, of_flow: Expr, source: str) -> Formula:
    """The specific speed in one system, by the flow in the unit its source names."""
    top = speed * of_flow**0.5
    return Formula(
        "specific_speed",
        top / stage_head**0.75,
        source,
        "It tells the shape of the impeller: low is wide and flat, high is a propeller.",
        slips=(
            Slip(
                "square_root_of_head",
                top / stage_head**0.5,
                "The head is under a square root. Here it takes the power 0.75.",
            ),
            Slip(
                "head_not_divided",
                top * stage_head**0.75,
                "This multiplies by the head's power. Divide by it.",
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
        "The pump has one stage, which gives all of the head.",
        unless=("stages",),
    ),
    Formula(
        "stage_head",
        head / stages,
        HI,
        "Stages stand in a row, so each gives its equal part of the head.",
        turns=("head",),
    ),
    specific_speed("us", flow, US_UNITS),
    specific_speed("si", flow / LITRES_PER_CUBIC_METRE, SI_UNITS),
)

CROSSING = (*CURVES, *TWO_PUMPS, *SPECIFIC_SPEED)

"""Speed and impeller judged: the cube law's limit, two pumps on one main, the kind of impeller."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.topics.limits import PARALLEL_GAIN, SPECIFIC_SPEED
from solver.topics.readings import shown
from solver.topics.zones import against
from solver.units.show import figures, with_unit

from .stations import BEST, CHAPTER, CUBE_OR_NOT, PUMP, SHAPES_OF, SQUARES, TWINS, TWO_ON_ONE

__all__ = ["CUBE_LAW", "IMPELLER_TYPE", "TWO_PUMPS"]

NEAR_ENOUGH = 5  # percent of static head that hardly bends the cube law


def judge_cube(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Whether power may be worked out by the cube of the speed."""
    share, static, shutoff = (
        values[n] for n in ("static_share", "static_head", "new_shutoff_head")
    )
    if NEAR_ENOUGH < share < 2 * NEAR_ENOUGH or abs(static / shutoff - 1) < 0.05:
        return None
    of_head = f"static head is {with_unit(figures(share), '%')} of the head"
    volume = "gallon" if units == "us" else "liter"
    lifts = f"{shown('new_shutoff_head', shutoff, units, figures)} at shutoff"
    yes = Option(
        "allowed",
        "Yes, close enough: almost all of the head is friction",
        f"The {of_head}, so the cube law is close enough.",
    )
    no = Option(
        "not_allowed",
        f"No: it lifts water, so each {volume} saves less than the law says",
        f"The {of_head}. That part stays the same at any speed, and every {volume} has to be lifted that far.",
    )
    none = Option(
        "no_water",
        "No: at that speed the pump can't move any water",
        f"The slowed pump makes {lifts}, less than the static head. It would only heat the water.",
    )
    right = none if static > shutoff else no if share > NEAR_ENOUGH else yes
    wrong = (option for option in (yes, no, none) if option is not right)
    return Judgement(
        "the cube law holds only with no static head (US DOE Tip Sheet 11)",
        f"{of_head}; the slowed pump makes {lifts}",
        right,
        tuple(_refuted(option, right, of_head, lifts) for option in wrong),
    )


def _refuted(option: Option, right: Option, of_head: str, lifts: str) -> Option:
    """Why a choice is not the right one here."""
    moves = right.id != "no_water"
    says = {
        "allowed": f"The {of_head}, and lifting takes that much at any speed.",
        "not_allowed": (
            f"The {of_head}, too little to matter."
            if moves
            else f"The slowed pump makes only {lifts}, less than the static head: no water moves."
        ),
        "no_water": f"The slowed pump makes {lifts}, more than the static head. Water still moves.",
    }
    return Option(option.id, option.text, says[option.id])


CUBE_LAW = CHAPTER.judged(
    "cube_law",
    "SK",
    "Can you use the cube law here",
    judge_cube,
    CUBE_OR_NOT,
    Level(
        ("head", "static_head", "shutoff_head", "speed_cut"),
        "{place} works at {head} of head, {static_head} of it static. Its shutoff head is {shutoff_head}. "
        "It will be slowed down by {speed_cut}. Can you use the cube law for its power?",
        find=("static_share", "speed_ratio", "new_shutoff_head"),
    ),
    Level(
        ("head", "static_head", "shutoff_head", "pump_speed", "new_speed"),
        "{place} works at {head} of head, {static_head} of it static. Its shutoff head is {shutoff_head} "
        "at {pump_speed}. It will run at {new_speed}. Can you use the cube law for its power?",
        find=("static_share", "speed_ratio", "new_shutoff_head"),
    ),
)

GAINS = (
    (
        "hardly",
        "Not much: flow goes up 20% or less",
        "Friction uses up most of what the second pump could add. Run one, and check the main.",
    ),
    (
        "some",
        "Some: flow goes up more than 20%, but not more than 80%",
        "Two pumps share one main, so its friction goes up and holds both back.",
    ),
    (
        "nearly_double",
        "Nearly double: flow goes up more than 80%",
        "Here the head is nearly all static, so the main hardly holds them back.",
    ),
)


TWO_PUMPS = CHAPTER.judged(
    "two_pumps",
    "SJ",
    "Do two pumps move twice as much",
    against(PARALLEL_GAIN, PARALLEL_GAIN.rule, *GAINS),
    TWO_ON_ONE,
    Level(
        ("flow", "parallel_flow"),
        "{place} moves {flow} alone. With a second pump just like it on the same main, the two move "
        "{parallel_flow} together. How much does the second pump help?",
        find=("parallel_gain",),
    ),
    Level(
        (*PUMP, "static_head", "rated_friction"),
        f"{TWINS}{SQUARES} How much does the second pump help?",
        find=("flow", "parallel_flow", "parallel_gain"),
        table=(*PUMP, "static_head", "rated_friction"),
    ),
)

SHAPES = {"us": (4000, 9000), "si": (80, 175)}

SHAPED = (
    (
        "radial",
        "Radial: it throws the water outward",
        "A low specific speed means a wide, flat impeller that makes a lot of head.",
    ),
    (
        "mixed",
        "Mixed flow: partly outward, partly along the shaft",
        "In between, the impeller throws the water outward and pushes it along.",
    ),
    (
        "axial",
        "Axial: it pushes the water along the shaft",
        "A high specific speed means a propeller: a lot of flow and little head.",
    ),
)


def judge_shape(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Radial, mixed or axial, by the limits of the system."""
    low, high = SHAPES[units]
    limits = SPECIFIC_SPEED._replace(low=low, high=high)
    return against(limits, SPECIFIC_SPEED.rule, *SHAPED)(values, units, draw)


BANDS = (
    "Radial impellers run up to about 4,000 (metric 80), mixed-flow up to about 9,000 (metric 175). "
    "Axial impellers run above that. "
)

IMPELLER_TYPE = CHAPTER.judged(
    "impeller_type",
    "ST",
    "Which impeller goes with a specific speed",
    judge_shape,
    SHAPES_OF,
    Level(
        ("specific_speed",),
        f"{{place}} has a specific speed of {{specific_speed}}. {BANDS}"
        "What kind of impeller does it have?",
    ),
    Level(
        ("pump_speed", "flow", "head"),
        f"{BEST} {{flow}} against {{head}} at {{pump_speed}}, with one stage. "
        f"{BANDS}What kind of impeller does it have?",
        find=("specific_speed",),
    ),
)

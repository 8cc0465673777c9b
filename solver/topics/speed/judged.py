"""Speed and impeller judged: the cube law's limit, two pumps, a changed duty."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Level, Option
from solver.topics.limits import PARALLEL_GAIN, against
from solver.units.show import figures, with_unit

from .judged_duty import WITHOUT_STATIC, changed_duty, judge_duty
from .kinds import judged
from .problems_duty import PUMP, SQUARES, TWINS
from .scenes import on_a_system, speeds, to_step

__all__ = ["CUBE_LAW", "DUTY_CHANGE", "TWO_PUMPS"]

NEAR_ENOUGH = 5  # percent of static head that hardly bends the cube law


def slowed_on_a_system(draw: Draw, units: str) -> dict[str, float]:
    """A pump to be slowed: with hardly any static head, with some, or with too much to lift."""
    share = draw.pick(((0.02, 0.045), (0.15, 0.45), (0.8, 0.96)))
    values = on_a_system(draw, units, static=(0.2, 0.3))
    turning = speeds(draw, units, draw.between(0.6, 0.88))
    static = values["rated_head"] * draw.between(*share)
    return values | turning | {
        "head": values["rated_head"],
        "static_head": max(to_step(static, units), to_step(0, units)),
    }  # fmt: skip


def judge_cube(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Whether power may be worked out by the cube of the speed."""
    share, static, shutoff = (
        values[n] for n in ("static_share", "static_head", "new_shutoff_head")
    )
    if NEAR_ENOUGH < share < 2 * NEAR_ENOUGH or abs(static / shutoff - 1) < 0.05:
        return None
    unit = "ft" if units == "us" else "m"
    of_head = f"static head is {with_unit(figures(share), '%')} of the head"
    volume = "gallon" if units == "us" else "liter"
    lifts = f"{with_unit(figures(shutoff), unit)} at shutoff"
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
    if static > shutoff:
        right, wrong = none, (yes, no)
    elif share > NEAR_ENOUGH:
        right, wrong = no, (yes, none)
    else:
        right, wrong = yes, (no, none)
    wrong = tuple(_refuted(option, right, of_head, lifts) for option in wrong)
    return Judgement(
        "the cube law holds only with no static head (US DOE Tip Sheet 11)",
        f"{of_head}; the slowed pump makes {lifts}",
        right,
        wrong,
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


CUBE_LAW = judged(
    "cube_law",
    "SK",
    "Can you use the cube law here",
    judge_cube,
    slowed_on_a_system,
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


def shared_main(draw: Draw, units: str) -> dict[str, float]:
    """A main with much friction, with some, or with hardly any."""
    static, friction = draw.pick(
        (((0.2, 0.4), (1.3, 2.2)), ((0.3, 0.6), (0.3, 0.8)), ((0.88, 0.95), (0.02, 0.25)))
    )
    return on_a_system(draw, units, static, friction)


TWO_PUMPS = judged(
    "two_pumps",
    "SJ",
    "Do two pumps move twice as much",
    against(PARALLEL_GAIN, PARALLEL_GAIN.rule, *GAINS),
    shared_main,
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

WAS = "When new, {place} moved {rated_flow} at {rated_head}. "

DUTY_CHANGE = judged(
    "duty_change",
    "SZ",
    "Why the duty point moved",
    judge_duty(),
    changed_duty(),
    Level(
        ("rated_flow", "rated_head", "flow", "head"),
        f"{WAS}Now, at the same speed and water levels, it moves {{flow}} at {{head}}. What changed?",
        find=("flow_share", "head_share"),
        scene=changed_duty(WITHOUT_STATIC),
        judge=judge_duty(WITHOUT_STATIC),
    ),
    Level(
        ("rated_flow", "rated_head", "static_head", "flow", "head", "static_now"),
        f"{WAS}With the pumps off, the static head was {{static_head}}. Now, at the same speed, it "
        "moves {flow} at {head}, and the static head is {static_now}. What changed?",
        find=("flow_share", "head_share"),
    ),
)

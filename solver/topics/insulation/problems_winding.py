"""Ohms between three leads against the limit for the kind of winding."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Level, Option
from solver.topics.limits import FORM_OHMS, RANDOM_OHMS, too_near
from solver.units.show import figures

from .kinds import TESTED, judged
from .scenes import OHMS, windings

__all__ = ["OHMS_LIMIT"]

KINDS = (("random-wound", RANDOM_OHMS), ("form-wound", FORM_OHMS))


def judge_limit(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Unbalance against 2 % of a random-wound winding, or 1 % of a form-wound one."""
    kind, limits = draw.pick(KINDS)
    size, limit = values["resistance_unbalance"], limits.high
    if too_near(size, limit) or abs(size - limit) < 0.1:
        return None
    over = size > limit
    found = f"The unbalance is {figures(size)}%, {'over' if over else 'within'} {limit}%"
    find = f"{found}. Measure again at the motor leads, then check the splices and joints."
    keep = f"{found}. Write it down with the date and the temperature."
    options = [
        Option("over", f"Find the cause: over {limit}%", find if over else f"{found}."),
        Option("within", f"Accept it: {limit}% or less", f"{found}." if over else keep),
    ]
    right = options.pop(0 if over else 1)
    other = Option(
        "never_equal",
        "Ignore it: three phases never read the same",
        "Three good phases agree within a percent or two, so a difference means something.",
    )
    return Judgement(
        "ANSI/EASA AR100: within 2% of the average for random-wound, 1% for form-wound",
        f"{kind}: {figures(size)}% against {limit}%",
        right,
        (*options, other),
        asks=f"The motor is {kind}. What is your call?",
    )


OHMS_LIMIT = (
    judged(
        "resistance_limit",
        "GX",
        "Winding resistance: accept it or not",
        judge_limit,
        windings((0.5, 0.85), (1.15, 1.8), (2.3, 4)),
        Level(
            ("ohms_average", "ohms_deviation"),
            f"{TESTED}The three lead-to-lead readings average {{ohms_average}}. The largest "
            "deviation from the average is {ohms_deviation}. {asks}",
            find=("resistance_unbalance",),
        ),
        Level(
            OHMS,
            f"{TESTED}Lead to lead it reads {{ohms_12}}, {{ohms_23}} and {{ohms_31}}. {{asks}}",
            find=("resistance_unbalance",),
        ),
    ),
)

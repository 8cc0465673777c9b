"""Phase balance by rolling the motor leads: where the cause is, and what keeps the rotation.

The high leg stays with the line: the supply. It moves with the motor lead: motor, cable or
splice (pump makers' manuals).
"""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judge, Judgement, Option
from solver.topics.scenes import NO_NUMBERS
from solver.units.show import figures, with_unit

from .legs import AMPS, BOTH_CAUSES, CHAPTER, ONE_CAUSE, TURNS

__all__ = ["BEST_CONNECTION", "ROLLED_LEADS", "ROTATION"]

CAUTION = (
    "Only a qualified person moves leads, with the power locked out and tested dead. "
    "Check the rotation afterward."
)
CONNECTIONS = ("As found", "Rolled once", "Rolled twice")
CLEAR = 0.5  # how many percent of unbalance the best connection is ahead of the next

ROLLED = (
    "With {place} locked out and tested dead, a qualified person rolls the motor leads "
    "one leg over: A to B, B to C, C to A. "
)
ONCE_MORE = "Later they roll them once more the same way. "
ROUND = ((2, 3, 1), (3, 1, 2))
SWAPPED = ((2, 1, 3), (1, 3, 2), (3, 2, 1))


def legs_of(turn: str) -> tuple[str, ...]:
    """The amps of the three legs in one connection."""
    return tuple(f"{leg}{turn}" for leg in AMPS)


def highest_leg(values: Mapping[str, float], turn: str) -> str:
    """ "A", "B" or "C", whichever draws most in one connection."""
    return max("ABC", key=lambda leg: values[f"amps_{leg.lower()}{turn}"])


def supply(says: str) -> Option:
    return Option("supply", "In the supply", says)


def motor(says: str) -> Option:
    return Option("motor", "In the motor, its cable or a splice", says)


ROTATION_KEPT = Option(
    "rotation",
    "In the rotation: rolling the leads reversed it",
    "All three leads moved one leg over, and that keeps the rotation. "
    "Only swapping two leads reverses it.",
)


def judge_cause(turns: tuple[str, ...]) -> Judge:
    """Where the cause is, from the high leg in each of these connections."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        high = "".join(highest_leg(values, turn) for turn in turns)
        path = ", then ".join(high)
        if len(set(high)) == 1:
            right = supply(
                f"The high leg stays on line {high[0]}, no matter which lead is on it. {CAUTION}"
            )
            wrong = motor(
                f"The high leg stayed on line {high[0]}. If the cause were in the motor, "
                "the high leg would move with its lead."
            )
        elif high in "ABCABC":
            right = motor(f"The high leg follows one motor lead: {path}. {CAUTION}")
            wrong = supply(
                "The high leg moved with its lead. If the cause were in the supply, "
                "the high leg would stay on one line."
            )
        else:
            return None
        return Judgement(
            "the high leg stays with the line: supply; it moves with the lead: motor, cable or splice",
            f"high leg: {path}",
            right,
            (wrong, ROTATION_KEPT),
        )

    return judge


def judge_best(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The connection with the least current unbalance; None where two are about as good."""
    found = [values[f"current_unbalance{turn}"] for turn in TURNS]
    order = sorted(range(3), key=found.__getitem__)
    if found[order[1]] - found[order[0]] < CLEAR:
        return None
    shown = [with_unit(figures(value), "%") for value in found]
    least = f"It has the lowest unbalance, {shown[order[0]]}, so the motor runs coolest."
    options = [
        Option(
            CONNECTIONS[at].lower().replace(" ", "_"),
            CONNECTIONS[at],
            f"{least} {CAUTION}"
            if at == order[0]
            else f"Its unbalance is {shown[at]}. Another connection has a lower one.",
        )
        for at in order
    ]
    return Judgement(
        "keep the connection with the lowest current unbalance",
        ", ".join(
            f"{name.lower()} {value}" for name, value in zip(CONNECTIONS, shown, strict=True)
        ),
        options[0],
        tuple(options[1:]),
    )


def connection(leads: tuple[int, int, int]) -> str:
    """Which motor lead is on which leg."""
    return ", ".join(f"T{lead} on {leg}" for lead, leg in zip(leads, "ABC", strict=True))


def all_round(says: str) -> list[Option]:
    """The two connections in which every lead moved."""
    return [
        Option(f"rolled_{times}", connection(leads), f"All three leads rolled. {says}")
        for times, leads in enumerate(ROUND, 1)
    ]


def two_swapped(says: str) -> list[Option]:
    """The connections in which one lead stayed; lead T1 is on leg A before, T2 on B, T3 on C."""
    options = []
    for leads in SWAPPED:
        stayed = next(lead for at, lead in enumerate(leads, 1) if lead == at)
        text = f"T{stayed} stayed and the other two traded places. {says}"
        options.append(Option(f"swapped_{stayed}", connection(leads), text))
    return options


def judge_kept(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Which connection turns the motor as before."""
    return Judgement(
        "rolling all three leads keeps the rotation; swapping two reverses it",
        "",
        draw.pick(
            all_round(f"The phases keep their order, so the rotation stays the same. {CAUTION}")
        ),
        tuple(draw.shuffled(two_swapped("Swapping two reverses the motor."))[:2]),
    )


def judge_reversed(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Which connection turns the motor the other way."""
    return Judgement(
        "swapping two leads reverses the rotation; rolling all three keeps it",
        "",
        draw.pick(two_swapped(f"Swapping two reverses the motor. {CAUTION}")),
        tuple(all_round("That keeps the rotation, so the motor would still run backward.")),
    )


ROLLED_LEADS = CHAPTER.judged(
    "rolled_leads",
    "RL",
    "Rolled leads: supply side or motor side",
    judge_cause(TURNS),
    ONE_CAUSE,
    Level(
        legs_of("") + legs_of("_2"),
        f"{ROLLED}Where is the cause of the high leg?",
        table=legs_of("") + legs_of("_2"),
        judge=judge_cause(TURNS[:2]),
    ),
    Level(
        tuple(name for turn in TURNS for name in legs_of(turn)),
        f"{ROLLED}{ONCE_MORE}Where is the cause of the high leg?",
        table=tuple(name for turn in TURNS for name in legs_of(turn)),
    ),
)

BEST_CONNECTION = CHAPTER.judged(
    "best_connection",
    "RB",
    "Rolled leads: which connection to keep",
    judge_best,
    BOTH_CAUSES,
    Level(
        tuple(f"amps_{part}{turn}" for turn in TURNS for part in ("average", "deviation")),
        f"{ROLLED}{ONCE_MORE}Which connection has the lowest current unbalance?",
        find=tuple(f"current_unbalance{turn}" for turn in TURNS),
        table=tuple(f"amps_{part}{turn}" for turn in TURNS for part in ("average", "deviation")),
    ),
    Level(
        tuple(name for turn in TURNS for name in legs_of(turn)),
        f"{ROLLED}{ONCE_MORE}Going by the largest deviation from the average, which connection "
        "has the lowest current unbalance?",
        find=tuple(f"current_unbalance{turn}" for turn in TURNS),
        table=tuple(name for turn in TURNS for name in legs_of(turn)),
    ),
)

ROTATION = CHAPTER.judged(
    "roll_rotation",
    "RR",
    "Moving leads: what happens to the rotation",
    judge_kept,
    NO_NUMBERS,
    Level(
        (),
        f"The motor of {{place}} turns the right way with {connection((1, 2, 3))}. The leads "
        "have to be moved. Which connection keeps the rotation?",
    ),
    Level(
        (),
        f"After a repair, the motor of {{place}} runs backward with {connection((1, 2, 3))}. "
        "Which connection makes it run the right way?",
        judge=judge_reversed,
    ),
)

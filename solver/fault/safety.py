"""What comes before an act: who may do it, lockout in its order and proof, the permit. Rules by paragraph.

The words of a way that are steps: `QUALIFIED`, `PERMIT`, the steps of `LOCKOUT`, `RESTORE`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from .acts import Act

__all__ = [
    "LOCKOUT",
    "PERMIT",
    "QUALIFIED",
    "RESTORE",
    "STEPS",
    "Rule",
    "Step",
    "stop_of",
    "stop_of_step",
]


@dataclass(frozen=True, slots=True)
class Rule:
    """Why an act stops: what to do first, and the rule's source."""

    says: str
    source: str


@dataclass(frozen=True, slots=True)
class Step:
    """A step before an act: its word, its label, minutes, and the rule behind it."""

    name: str
    label: str
    minutes: int
    rule: Rule


QUALIFIED, PERMIT, RESTORE = "qualified", "permit", "restore"
_LOCKOUT = (
    Step("tell", "Tell everyone", 1, Rule(
        "Tell everyone affected before the locks go on.", "29 CFR 1910.147(c)(9)")),
    Step("stop", "Shut it down", 1, Rule(
        "Stop the pump the normal way before you open its disconnect: one opened under load can burn you.",
        "29 CFR 1910.147(d)(2)")),
    Step("isolate", "Isolate it", 2, Rule(
        "Isolate every energy source. A lock on a closed switch keeps it closed.", "29 CFR 1910.147(d)(3)")),
    Step("lock", "Lock and tag it", 1, Rule(
        "Hang your own lock and tag on every isolating device that is open.", "29 CFR 1910.147(d)(4)")),
    Step("release", "Release energy", 3, Rule(
        "Release what is stored: close and lock the valves, bleed the pressure, discharge capacitors.",
        "29 CFR 1910.147(d)(5)")),
    Step("prove", "Prove it dead", 3, Rule(
        "Try the start, then test every leg, with the tester tried on a live point before and after.",
        "29 CFR 1910.147(d)(6), 1910.333(b)(2)(iv); NFPA 70E Article 120")),
)  # fmt: skip
LOCKOUT = tuple(step.name for step in _LOCKOUT)
STEPS: Mapping[str, Step] = MappingProxyType(
    {
        step.name: step
        for step in (
            Step(QUALIFIED, "Call a qualified person", 5, Rule(
                "Behind the panel door parts are live. Only a qualified person with rated gear takes these "
                "readings. Have one do it.", "29 CFR 1910.333(c)(2); NFPA 70E")),
            *_LOCKOUT,
            Step(PERMIT, "Get the permit", 15, Rule(
                "The vault or pit with the check valve is a permit space. Test its air from outside, post the attendant, and get "
                "the permit signed before anyone goes in.", "29 CFR 1910.146(d)")),
            Step(RESTORE, "Unlock and start it", 5, Rule(
                "The pump is locked out. Check that everyone is clear and take your locks off before it runs.",
                "29 CFR 1910.147(e)")),
        )
    }
)  # fmt: skip
_RUNNING_ON = Rule(
    "The pump is being locked out, so it isn't running. Finish the lockout, or take the locks off in order.",
    "29 CFR 1910.147(e)",
)
_NOTHING_TO_CLEAR = Rule(
    "The pump isn't locked out, so nothing has to come off.", "29 CFR 1910.147(e)"
)


def stop_of(act: Act, done: tuple[str, ...]) -> Rule | None:
    """Why an act may not be done after these steps; None where it may."""
    if act.needs == "dead":
        if locked := next((name for name in LOCKOUT if name not in done), ""):
            step = STEPS[locked].rule
            return Rule(
                f"Nothing is opened or touched before it is locked out and proved dead. {step.says}",
                step.source,
            )
        return STEPS[PERMIT].rule if act.permit and PERMIT not in done else None
    if any(name in done for name in LOCKOUT[1:]):
        return STEPS[RESTORE].rule if LOCKOUT[-1] in done else _RUNNING_ON
    return STEPS[QUALIFIED].rule if act.needs == "live" and QUALIFIED not in done else None


def stop_of_step(name: str, done: tuple[str, ...]) -> Rule | None:
    """Why a step may not be taken after these: one of lockout left out, or nothing to undo."""
    if name in LOCKOUT:
        before = LOCKOUT[: LOCKOUT.index(name)]
        missing = next((each for each in before if each not in done), "")
        return STEPS[missing].rule if missing else None
    if name == RESTORE and not any(each in done for each in LOCKOUT):
        return _NOTHING_TO_CLEAR
    return None

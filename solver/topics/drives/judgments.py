"""Vibration judged: by its zone, and by how much it changed."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.topics.readings import shown
from solver.topics.zones import too_near

from .small import CHAPTER, SHAKING, ZONES

__all__ = ["VIBRATION"]

CHANGED = 0.25  # of the top of zone B: ISO 20816-1, from memory
RULE = "ISO 20816-3, group 2 on a rigid base: zones A to D by the vibration velocity (rms)"
ACTS = (
    ("zone_a", "Zone A: as good as new", "Write it down with its date. It is the reading to compare with."),
    ("zone_b", "Zone B: fine for long running", "Run it, and keep watching how the reading moves."),
    ("zone_c", "Zone C: not for long running; plan a repair", "It may run for a while. Find the cause and plan a stop."),
    ("zone_d", "Zone D: stop it before it breaks", "At this level the machine can do itself damage."),
)  # fmt: skip
TOPS = [f"{inches} in/s ({mm} mm/s)" for inches, mm in zip(ZONES["us"], ZONES["si"], strict=True)]
LIMITS = (
    ("Zone A, as good as new", f"up to {TOPS[0]}"),
    ("Zone B, fine for long running", f"up to {TOPS[1]}"),
    ("Zone C, plan a repair", f"up to {TOPS[2]}"),
    ("Zone D, can do damage", f"above {TOPS[2]}"),
)


def judge_zone(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The zone that a reading falls into."""
    size, tops = values["bearing_vibration"], ZONES[units]
    if any(too_near(size, top) for top in tops):
        return None
    here = sum(size > top for top in tops)
    reads = f"The reading is {_said(size, units)}."
    options = [
        Option(id, text, then if at == here else f"{reads} {_off(at, here, tops, units)}")
        for at, (id, text, then) in enumerate(ACTS)
    ]
    right = options.pop(here)
    tops_said = ", ".join(_said(top, units) for top in tops)
    return Judgement(
        RULE, f"{_said(size, units)}; the zones end at {tops_said}", right, tuple(options)
    )


def _off(at: int, here: int, tops: tuple[float, ...], units: str) -> str:
    if at < here:
        return f"Zone {'ABC'[at]} ends at {_said(tops[at], units)}."
    return f"Zone {'ABCD'[at]} begins above {_said(tops[at - 1], units)}."


def judge_change(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Whether a change matters where the zone alone would not say so."""
    now, then, tops = values["bearing_vibration"], values["earlier_vibration"], ZONES[units]
    change, much = values["vibration_change"], CHANGED * tops[1]
    if change <= 0 or abs(change / much - 1) < 0.1 or any(too_near(now, top) for top in tops):
        return None
    rose = f"It went up by {_said(change, units)}. A quarter of zone B's limit is {_said(much, units)}."
    act = Option(
        "find_out",
        "It has changed: find out why, though it may keep running",
        f"{rose} ISO 20816-1 calls such a change significant in any zone.",
    )
    keep = Option(
        "keep_on",
        "It hasn't changed enough to matter: keep taking readings",
        f"{rose} Readings move that much by themselves.",
    )
    stop = Option(
        "stop",
        "It is in zone D: stop it before it breaks",
        f"It reads {_said(now, units)}, zone D.",
    )
    right = stop if now > tops[2] else act if change > much else keep
    if right is keep and now > tops[1]:
        return None  # in zone C a repair is planned, however little it rose
    says = {
        "find_out": f"{rose} That is too little to act on."
        if right is keep
        else f"It reads {_said(now, units)}, zone D. It shouldn't keep running.",
        "keep_on": rose if right is act else f"It reads {_said(now, units)}. That's zone D.",
        "stop": f"It reads {_said(now, units)}. Zone D begins above {_said(tops[2], units)}.",
    }
    wrong = tuple(
        Option(each.id, each.text, says[each.id]) for each in (act, keep, stop) if each is not right
    )
    numbers = f"{_said(now, units)} now and {_said(then, units)} before; a quarter is {_said(much, units)}"
    rule = (
        "ISO 20816-1: a change of more than a quarter of zone B's limit is significant in any zone"
    )
    return Judgement(rule, numbers, right, wrong)


def _said(value: float, units: str) -> str:
    return shown("bearing_vibration", round(value, 3 if units == "us" else 2), units)


VIBRATION = CHAPTER.judged(
    "vibration_zone",
    "KZ",
    "What a vibration reading says",
    judge_zone,
    SHAKING,
    Level(
        ("bearing_vibration",),
        "{person} reads {bearing_vibration} (rms) at a motor bearing of {place}. The motor is of medium size, "
        "on a rigid base. What does the reading say?",
        table=LIMITS,
    ),
    Level(
        ("bearing_vibration", "earlier_vibration"),
        "A motor bearing of {place} reads {bearing_vibration} (rms). A year ago, at the same load and speed, it "
        "read {earlier_vibration}. A change of more than a quarter of zone B's limit is significant. "
        "What is your call?",
        find=("vibration_change",),
        judge=judge_change,
        table=LIMITS,
    ),
    since=2,
)

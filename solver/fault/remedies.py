"""What to do about each fault, the best first, and why."""

from collections.abc import Mapping
from types import MappingProxyType

__all__ = ["ACTIONS", "RIGHT"]

ACTIONS: Mapping[str, str] = MappingProxyType(
    {
        "run": "Fix it now, check it again, and let it run",
        "watch": "Let it run, plan the repair, and measure it again soon",
        "call": "Keep it off and call the people qualified for it",
        "pull": "Keep it locked out, and take it out for repair",
    }
)
# What to do about each fault, the best first, and why.
RIGHT: Mapping[str, tuple[tuple[str, ...], str]] = MappingProxyType(
    {
        "worn_rings": (
            ("watch", "pull"),
            "It still pumps, at a price. Plan new rings, and measure it again until then.",
        ),
        "worn_impeller": (
            ("watch", "pull"),
            "It still pumps less and less. Plan a new impeller before it can't keep up.",
        ),
        "clogged_impeller": (
            ("pull",),
            "Nothing clears it from outside. It has to come out, under lockout, to be cleared.",
        ),
        "throttled_valve": (("run",), "Open the valve all the way and read the gauges again."),
        "clogged_main": (
            ("watch", "call"),
            "The pump is sound. Plan a cleaning of the main with the crew that does it.",
        ),
        "broken_main": (
            ("call",),
            "It's pumping sewage into the ground. Stop it, and call the main crew and whoever has to be told about a spill.",
        ),
        "passing_check": (
            ("pull", "watch"),
            "The same water is pumped twice. The valve has to be isolated and rebuilt.",
        ),
        "open_seat": (
            ("pull",),
            "Lift it and set it down again on its seat. Rags or a bent guide may hold it off.",
        ),
        "blocked_suction": (("pull",), "The strainer has to be opened and cleared, under lockout."),
        "air_bound": (("run",), "Vent it, find out where the air came in, and read it again."),
        "turned_supply": (
            ("call",),
            "Every motor on this supply turns backward now. Call the utility and a qualified electrician.",
        ),
        "swapped_leads": (
            ("call",),
            "A qualified person swaps two leads back under lockout, and the rotation is checked.",
        ),
        "open_leg": (
            ("call",),
            "On two legs a motor overheats in minutes, and once stopped it only hums. Keep it off until a qualified electrician has found the open leg.",
        ),
        "loose_joint": (
            ("call",),
            "A loose joint heats up and starts fires. A qualified electrician remakes it, locked out.",
        ),
        "unbalanced_supply": (
            ("call",),
            "The volts themselves are uneven, so it's the utility's side or another load. Don't run it past 5%.",
        ),
        "low_volts": (
            ("call",),
            "Low volts mean more amps and more heat. The utility or the transformer taps come first.",
        ),
        "damp_winding": (
            ("pull",),
            "Damp insulation fails at the next start. Dry it out, find the leak, and test again.",
        ),
        "grounded_winding": (
            ("pull",),
            "The winding is down to ground. It must not be started again.",
        ),
        "shorted_turns": (
            ("pull",),
            "Shorted turns get hotter and spread. The motor goes to the shop.",
        ),
        "failing_bearing": (
            ("pull",),
            "It gets worse by the day and takes seal and winding with it.",
        ),
        "leaking_seal": (
            ("watch", "pull"),
            "Water has passed the first seal. Plan new seals soon, before it reaches the winding.",
        ),
        "wrong_overload": (
            ("call",),
            "Set too high, it protects nothing. A qualified person sets it by the nameplate.",
        ),
        "high_float": (
            ("run",),
            "Set the float back to its level on the drawings, from outside the well.",
        ),
        "stuck_float": (
            ("run",),
            "Free or clear the float from outside the well, and watch a whole cycle.",
        ),
        "short_cycling": (
            ("run",),
            "Set the on float back to its level on the drawings, from outside, and count starts again.",
        ),
    }
)

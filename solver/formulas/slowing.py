"""A pump slowed down: what it saves where it only overcomes friction, and where it lifts water."""

from ..expression import Known, Number, Percent
from ..formula import Formula, Slip
from .affinity import STATIC_KNOWN

__all__ = ["SLOWING"]

TIP_SHEET_11 = "US DOE Motor Systems Tip Sheet 11 (DOE/GO-102012-3730)"
SYSTEM = "common practice, no source: friction goes with the square of the flow, static head stays"
CUBE = "The cube law holds only with no static head."
ALIKE = "Power goes with flow times head, as far as the efficiency stays the same."

speed_ratio, power_ratio, flow_ratio = map(Known, ("speed_ratio", "power_ratio", "flow_ratio"))
static_head, new_friction, system_head = map(Known, ("static_head", "new_friction", "system_head"))
input_power, slowed_power, head = map(Known, ("input_power", "slowed_power", "head"))
energy_per_volume, shutoff_head = map(Known, ("energy_per_volume", "shutoff_head"))


FRICTION_ONLY = (
    Formula(
        "power_ratio",
        speed_ratio**3,
        TIP_SHEET_11,
        f"Power goes with the cube of the speed. {CUBE}",
        slips=(Slip("squared", speed_ratio**2, "The ratio is squared. Power takes its cube."),),
        unless=STATIC_KNOWN,
    ),
    Formula(
        "power_cut",
        Percent(Number(1) - power_ratio),
        TIP_SHEET_11,
        "What is saved is all of the power less what is left.",
        slips=(
            Slip(
                "what_is_left",
                Percent(power_ratio),
                "This is what the pump still takes. What it saves is the rest.",
            ),
            Slip(
                "as_the_speed",
                Percent(Number(1) - speed_ratio),
                "This is the cut in speed. The power falls by more, with the cube.",
            ),
        ),
    ),
    Formula(
        "slowed_power",
        input_power * speed_ratio**3,
        TIP_SHEET_11,
        f"Power goes with the cube of the speed. {CUBE}",
        slips=(
            Slip(
                "squared",
                input_power * speed_ratio**2,
                "The ratio is squared. Power takes its cube.",
            ),
        ),
        unless=STATIC_KNOWN,
    ),
    Formula(
        "new_energy_per_volume",
        energy_per_volume * speed_ratio**2,
        TIP_SHEET_11,
        "Power falls with the cube, but flow falls too: a volume takes the square. "
        "It holds only with no static head.",
        slips=(
            Slip(
                "cubed",
                energy_per_volume * speed_ratio**3,
                "The ratio is cubed. A slower pump runs longer for a volume: take the square.",
            ),
        ),
        unless=STATIC_KNOWN,
    ),
)

WITH_STATIC = (
    Formula(
        "flow_ratio",
        Known("new_flow") / Known("flow"),
        SYSTEM,
        "Friction wants the new flow over the old one.",
    ),
    Formula(
        "new_friction",
        Known("friction_head") * flow_ratio**2,
        SYSTEM,
        "Friction falls with the square of the flow.",
        slips=(
            Slip(
                "unchanged",
                Known("friction_head"),
                "The friction is the old one. It falls with the square of the flow.",
            ),
        ),
    ),
    Formula(
        "system_head",
        static_head + new_friction,
        SYSTEM,
        "However slow the water, it is lifted by the whole static head.",
        slips=(
            Slip(
                "static_forgotten",
                new_friction,
                "This is the friction alone. The water is lifted by the static head as well.",
            ),
            Slip(
                "cube_law",
                head * flow_ratio**2,
                "All the head went by the square, as the cube law has it. "
                "That law holds only with no static head, and here water is lifted.",
            ),
        ),
    ),
    Formula(
        "slowed_power",
        input_power * flow_ratio * system_head / head,
        SYSTEM,
        ALIKE,
        slips=(
            Slip(
                "head_left_out",
                input_power * flow_ratio,
                "This goes with the flow alone. The head is smaller now, too.",
            ),
        ),
    ),
    Formula(
        "new_energy_per_volume",
        energy_per_volume * system_head / head,
        SYSTEM,
        "To move one volume takes energy in step with the head.",
    ),
    Formula(
        "saved_power",
        input_power - slowed_power,
        TIP_SHEET_11,
        "The saving is what the pump takes at full speed less what it takes slowed.",
        slips=(
            Slip(
                "what_is_left",
                slowed_power,
                "This is what the slowed pump still takes. The saving is the rest.",
            ),
        ),
    ),
    Formula(
        "new_shutoff_head",
        shutoff_head * speed_ratio**2,
        "affinity laws: head goes with the square of the speed",
        "At no flow the pump still follows the law for head.",
    ),
    Formula(
        "least_speed",
        Known("pump_speed") * (static_head / shutoff_head) ** 0.5,
        "affinity laws: head goes with the square of the speed",
        "Below this speed the pump cannot hold the static head, and no water moves.",
    ),
    Formula(
        "static_share",
        Percent(static_head / head),
        SYSTEM,
        "This part of the head is there at any flow.",
    ),
    Formula(
        "static_rise",
        Known("static_now") - static_head,
        "common practice, no source: static head is read at the gauge with the pumps off",
        "The levels, or the pressure at the far end, have changed by this.",
    ),
)

SLOWING = (*FRICTION_ONLY, *WITH_STATIC)

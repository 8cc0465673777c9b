"""What slowing a pump down saves, with and without lift, and the slowest it can go."""

from solver.algebra.expression import Known, Number, Percent
from solver.algebra.formula import Formula, Slip

__all__ = ["FRICTION_ONLY", "STATIC_KNOWN", "TIP_SHEET_11", "WITH_STATIC"]

head = Known("head")
speed_ratio, power_ratio, flow_ratio = map(Known, ("speed_ratio", "power_ratio", "flow_ratio"))
static_head, new_friction, system_head = map(Known, ("static_head", "new_friction", "system_head"))
input_power, slowed_power = map(Known, ("input_power", "slowed_power"))
energy_per_volume, shutoff_head = map(Known, ("energy_per_volume", "shutoff_head"))

TIP_SHEET_11 = "US DOE Motor Systems Tip Sheet 11 (DOE/GO-102012-3730)"
# Where water is lifted, the flow does not go with the speed: WITH_STATIC has what does.
STATIC_KNOWN = ("static_head", "friction_head", "discharge_elevation", "static_discharge_head")

SYSTEM = (
    "common practice, no source: friction changes with the square of the flow (Hazen-Williams: the power "
    "1.852), and static head stays"
)
CUBE = "The cube law holds only with no static head."
ALIKE = "Power changes with flow times head, as long as the efficiency stays the same."

FRICTION_ONLY = (
    Formula(
        "power_ratio",
        speed_ratio**3,
        TIP_SHEET_11,
        f"Power changes with the cube of the speed. {CUBE}",
        slips=(
            Slip("squared", speed_ratio**2, "You squared the ratio. Power changes with its cube."),
        ),
        unless=STATIC_KNOWN,
    ),
    Formula(
        "power_cut",
        Percent(Number(1) - power_ratio),
        TIP_SHEET_11,
        "The saving is the full power minus what the pump still takes.",
        slips=(
            Slip(
                "what_is_left",
                Percent(power_ratio),
                "You found what the pump still takes. The saving is the rest.",
            ),
            Slip(
                "as_the_speed",
                Percent(Number(1) - speed_ratio),
                "You used the cut in speed. Power drops by more, with the cube.",
            ),
        ),
    ),
    Formula(
        "slowed_power",
        input_power * speed_ratio**3,
        TIP_SHEET_11,
        f"Power changes with the cube of the speed. {CUBE}",
        slips=(
            Slip(
                "squared",
                input_power * speed_ratio**2,
                "You squared the ratio. Power changes with its cube.",
            ),
        ),
        unless=STATIC_KNOWN,
    ),
    Formula(
        "new_energy_per_volume",
        energy_per_volume * speed_ratio**2,
        TIP_SHEET_11,
        "Power drops with the cube, but flow drops too, so the energy per volume drops with the "
        "square. This holds only with no static head.",
        slips=(
            Slip(
                "cubed",
                energy_per_volume * speed_ratio**3,
                "You cubed the ratio. A slower pump runs longer for the same volume, so use the square.",
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
        "For friction, use the new flow divided by the old flow.",
    ),
    Formula(
        "new_friction",
        Known("friction_head") * flow_ratio**2,
        SYSTEM,
        "Friction loss drops with the square of the flow here. Hazen-Williams uses the power 1.852, which "
        "leaves a little more of it.",
        slips=(
            Slip(
                "unchanged",
                Known("friction_head"),
                "You kept the old friction loss. It drops with the square of the flow.",
            ),
        ),
    ),
    Formula(
        "system_head",
        static_head + new_friction,
        SYSTEM,
        "However slowly the pump runs, the water is still lifted by the whole static head.",
        slips=(
            Slip(
                "static_forgotten",
                new_friction,
                "You used the friction loss alone. The water still has to be lifted by the static head.",
            ),
            Slip(
                "cube_law",
                head * flow_ratio**2,
                "You changed all of the head with the square. That holds only with no static head, and "
                "here water is lifted.",
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
                "You changed power with the flow alone. The head is lower now too.",
            ),
        ),
    ),
    Formula(
        "new_energy_per_volume",
        energy_per_volume * system_head / head,
        SYSTEM,
        "The energy it takes to move a volume of water changes in step with the head.",
    ),
    Formula(
        "slowing_saved_power",
        input_power - slowed_power,
        TIP_SHEET_11,
        "The saving is what the pump takes at full speed minus what it takes slowed down.",
        slips=(
            Slip(
                "what_is_left",
                slowed_power,
                "You found what the slowed-down pump still takes. The saving is the rest.",
            ),
        ),
    ),
    Formula(
        "slowing_saved_energy",
        Known("slowing_saved_power") * Known("yearly_hours"),
        TIP_SHEET_11,
        "You save energy only in the hours that the pump runs.",
        slips=(
            Slip(
                "all_year",
                Known("slowing_saved_power") * Number(8760),
                "You counted all 8,760 hours of the year. Count only the hours the pump runs.",
            ),
        ),
    ),
    Formula(
        "slowing_saving",
        Known("slowing_saved_energy") * Known("energy_price"),
        TIP_SHEET_11,
        "Each kilowatt-hour you don't use saves its price.",
    ),
    Formula(
        "new_shutoff_head",
        shutoff_head * speed_ratio**2,
        "affinity laws: head changes with the square of the speed",
        "At zero flow, the pump still follows the affinity law for head.",
    ),
    Formula(
        "least_speed",
        Known("pump_speed") * (static_head / shutoff_head) ** 0.5,
        "affinity laws: head changes with the square of the speed",
        "Below this speed the pump can't hold the static head, so no water moves.",
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
        "This is how much the levels, or the pressure at the far end, have changed.",
    ),
    Formula(
        "static_kept",
        Percent(Known("static_now") / static_head),
        "common practice, no source: static head is read at the gauge with the pumps off",
        "Over 100% means the pump now has to lift the water higher than before.",
    ),
)

"""The affinity laws: what another speed or another impeller does to flow, head and power."""

from ..expression import Expr, Fraction, Known, Number
from ..formula import Formula, Slip

__all__ = ["AFFINITY", "STATIC_KNOWN"]

LAWS = (
    "affinity laws: Solberg, Elementary Heat Power, Ex 9.10; "
    "US DOE Motor Systems Tip Sheet 11 (DOE/GO-102012-3730)"
)
TRIM = "affinity laws for a trimmed impeller, good for small trims (common practice, no source)"
# Where water is lifted, the flow does not go with the speed: slowing.py has what does.
STATIC_KNOWN = ("static_head", "friction_head", "discharge_elevation", "static_discharge_head")
NO_STATIC = "This holds with no static head."

flow, head, brake_power = map(Known, ("flow", "head", "brake_power"))


def ratio(result: str, new: str, old: str, source: str, why: str) -> Formula:
    """What is now over what was."""
    return Formula(result, Known(new) / Known(old), source, why)


def laws(name: str, what: str, source: str, unless: tuple[str, ...]) -> tuple[Formula, ...]:
    """Flow, head and power by a ratio `name`, which is of `what`."""

    def law(result: str, was: Known, by: Expr, why: str, slip: Slip) -> Formula:
        ruled_out = (*STATIC_KNOWN, *unless)
        return Formula(result, was * by, source, why, slips=(slip,), unless=ruled_out)

    by = Known(name)
    return (
        law(
            "new_flow", flow, by,
            f"Flow goes with the {what} itself. {NO_STATIC}",
            Slip("squared", flow * by**2, "The ratio is squared. Flow takes it as it is."),
        ),
        law(
            "new_head", head, by**2,
            f"Head goes with the square of the {what}. {NO_STATIC}",
            Slip("cubed", head * by**3, "The ratio is cubed. Head takes its square."),
        ),
        law(
            "new_shaft_power", brake_power, by**3,
            f"Power goes with the cube of the {what}. The cube law holds with no static head.",
            Slip("squared", brake_power * by**2, "The ratio is squared. Power takes its cube."),
        ),
    )  # fmt: skip


AFFINITY = (
    ratio(
        "speed_ratio", "new_speed", "pump_speed", LAWS,
        "The laws want the new speed over the old one.",
    ),
    Formula(
        "speed_ratio",
        Number(1) - Fraction(Known("speed_cut")),
        LAWS,
        "What is left of the speed is all of it less the cut.",
        slips=(
            Slip(
                "cut_for_ratio",
                Fraction(Known("speed_cut")),
                "This is the cut itself. The laws want what is left of the speed.",
            ),
        ),
    ),
    ratio(
        "trim_ratio", "new_diameter", "impeller_diameter", TRIM,
        "The laws want the new diameter over the old one.",
    ),
    # A change of flow alone does not say which of the two was changed: speed, unless told.
    *laws("speed_ratio", "speed", LAWS, ("impeller_diameter", "new_diameter", "trim_ratio")),
    *laws("trim_ratio", "diameter", TRIM, ("pump_speed", "new_speed", "speed_cut", "speed_ratio")),
)  # fmt: skip

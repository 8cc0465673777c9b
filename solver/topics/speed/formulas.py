"""Speed and impeller: the affinity laws.

`SPEED_AND_IMPELLER` has every formula of the chapter; what slowing down saves is in
`formulas_slowing.py`, curves that cross and specific speed in `formulas_curves.py`.
"""

from solver.algebra.expression import Expr, Fraction, Known, Number
from solver.algebra.formula import Formula, Slip

from .formulas_curves import CROSSING
from .formulas_slowing import FRICTION_ONLY, STATIC_KNOWN, TIP_SHEET_11, WITH_STATIC

__all__ = ["SPEED_AND_IMPELLER"]

LAWS = f"affinity laws: Solberg, Elementary Heat Power, Ex 9.10; {TIP_SHEET_11}"
TRIM = (
    "affinity laws for a trimmed impeller, good down to about 85% of the full diameter "
    "(common practice, no source)"
)
NO_STATIC = "This holds only with no static head."
flow, head, brake_power = map(Known, ("flow", "head", "brake_power"))


def ratio(result: str, new: str, old: str, source: str, why: str) -> Formula:
    """What is now over what was."""
    back = "The ratio is new over old, so the new value is the old one times the ratio."
    return Formula(result, Known(new) / Known(old), source, why, back=back)


def laws(name: str, what: str, source: str, unless: tuple[str, ...]) -> tuple[Formula, ...]:
    """Flow, head and power by a ratio `name`, which is of `what`."""

    def law(result: str, was: Known, by: Expr, why: str, back: str, slip: Slip) -> Formula:
        ruled_out = (*STATIC_KNOWN, *unless)
        return Formula(
            result, was * by, source, f"{why} {NO_STATIC}", (slip,), unless=ruled_out, back=back
        )

    by = Known(name)
    return (
        law(
            "new_flow", flow, by,
            f"Flow changes in step with the {what}.",
            f"Flow and {what} change by the same ratio. {NO_STATIC}",
            Slip("squared", flow * by**2, "You squared the ratio. Flow changes with the ratio itself."),
        ),
        law(
            "new_head", head, by**2,
            f"Head changes with the square of the {what}.",
            f"Going back from head to {what} takes a square root. {NO_STATIC}",
            Slip("cubed", head * by**3, "You cubed the ratio. Head changes with its square."),
        ),
        law(
            "new_shaft_power", brake_power, by**3,
            f"Power changes with the cube of the {what}.",
            f"Going back from power to {what} takes a cube root. {NO_STATIC}",
            Slip("squared", brake_power * by**2, "You squared the ratio. Power changes with its cube."),
        ),
    )  # fmt: skip


AFFINITY = (
    ratio(
        "speed_ratio", "new_speed", "pump_speed", LAWS,
        "The affinity laws use the new speed divided by the old speed. Before you run any pump faster, "
        "check the maker's limit, the motor's size and the drive's amps.",
    ),
    Formula(
        "speed_ratio",
        Number(1) - Fraction(Known("speed_cut")),
        LAWS,
        "Full speed is 1, so take the reduction away from 1.",
        slips=(
            Slip(
                "cut_for_ratio",
                Fraction(Known("speed_cut")),
                "You used the reduction itself. The affinity laws use the speed that is left.",
            ),
        ),
    ),
    ratio(
        "trim_ratio", "new_diameter", "impeller_diameter", TRIM,
        "The affinity laws use the new diameter divided by the old diameter.",
    ),
    # A change of flow alone does not say which of the two was changed: speed, unless told.
    *laws("speed_ratio", "speed", LAWS, ("impeller_diameter", "new_diameter", "trim_ratio")),
    *laws("trim_ratio", "diameter", TRIM, ("pump_speed", "new_speed", "speed_cut", "speed_ratio")),
)  # fmt: skip

SPEED_AND_IMPELLER = (*AFFINITY, *FRICTION_ONLY, *WITH_STATIC, *CROSSING)

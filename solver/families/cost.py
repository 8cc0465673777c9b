"""Kilowatt-hours and cost: what a pump's hours cost, and what would cost less."""

from ..family import Family, Level
from .bills import BILLS
from .cost_family import CHAPTER, FORMULAS
from .judged_cost import judge_energy, judge_payback, judge_price, judge_upgrade
from .kilowatt_hours import ENERGY
from .scenes_cost import better_pump, duty
from .upgrades import UPGRADES

__all__ = ["COST"]

JUDGED = (
    Family(
        "pays_back_first",
        "PF",
        CHAPTER,
        "Which offer pays back first",
        "choice",
        (
            Level(
                (),
                "Three offers came in for a more efficient pump at {station}. Which one pays back "
                "first?",
            ),
            Level(
                ("yearly_hours", "energy_price"),
                "Three offers came in for a more efficient pump at {station}. The pump runs "
                "{yearly_hours}, and energy costs {energy_price}. Which one pays back first?",
                judge=judge_upgrade,
            ),
        ),
        better_pump,
        FORMULAS,
        judge_payback,
    ),
    Family(
        "cheaper_pump",
        "CP",
        CHAPTER,
        "Which pump is cheapest to run",
        "choice",
        (
            Level(
                (),
                "Any one of three pumps at {station} can fill the same tank. "
                "Which one uses the least energy to fill it?",
            ),
            Level(
                (),
                "Any one of three pumps at {station} can fill the same tank. Each runs at a time "
                "of day with a different price. Which one fills the tank for the least money?",
                judge=judge_price,
            ),
        ),
        duty(),
        FORMULAS,
        judge_energy,
    ),
)

COST = (*ENERGY, *UPGRADES, *BILLS, *JUDGED)

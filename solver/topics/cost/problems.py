"""Kilowatt-hours and cost: what a pump's hours cost, and what would cost less."""

from solver.engine.family import Family, Level

from .judged import judge_energy, judge_payback, judge_price, judge_upgrade
from .kinds import CHAPTER, FORMULAS
from .problems_bills import BILLS
from .problems_energy import ENERGY
from .problems_upgrades import UPGRADES
from .scenes import better_pump, duty

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

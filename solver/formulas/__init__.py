"""Every equation by topic, each with its source; `FORMULAS` is the whole library in order.

Where two chains of equal depth lead to an answer, the formula that stands first is used.
"""

from .balance import BALANCE
from .cost import COST
from .power import POWER

__all__ = ["BALANCE", "COST", "FORMULAS", "POWER"]

FORMULAS = (*POWER, *COST, *BALANCE)

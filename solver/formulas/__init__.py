"""Every equation by topic, each with its source; `FORMULAS` is the whole library in order.

Where two chains of equal depth lead to an answer, the formula that stands first is used.
"""

from .balance import BALANCE
from .conversions import CONVERSIONS
from .cost import COST
from .insulation import INSULATION
from .nameplate import NAMEPLATE
from .power import POWER
from .wet_well import WET_WELL

__all__ = [
    "BALANCE",
    "CONVERSIONS",
    "COST",
    "FORMULAS",
    "INSULATION",
    "NAMEPLATE",
    "POWER",
    "WET_WELL",
]

FORMULAS = (*POWER, *COST, *BALANCE, *NAMEPLATE, *INSULATION, *WET_WELL, *CONVERSIONS)

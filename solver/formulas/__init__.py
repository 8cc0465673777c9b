"""Every equation by topic, each with its source; `FORMULAS` is the whole library in order.

Where two chains of equal depth lead to an answer, the formula that stands first is used.
"""

from .balance import BALANCE
from .conversions import CONVERSIONS
from .cost import COST
from .head import HEAD
from .insulation import INSULATION
from .nameplate import NAMEPLATE
from .power import POWER
from .speed_and_impeller import SPEED_AND_IMPELLER
from .wet_well import WET_WELL

__all__ = [
    "BALANCE",
    "CONVERSIONS",
    "COST",
    "FORMULAS",
    "HEAD",
    "INSULATION",
    "NAMEPLATE",
    "POWER",
    "SPEED_AND_IMPELLER",
    "WET_WELL",
]

FORMULAS = (
    *POWER,
    *COST,
    *BALANCE,
    *NAMEPLATE,
    *INSULATION,
    *WET_WELL,
    *CONVERSIONS,
    *HEAD,
    *SPEED_AND_IMPELLER,
)

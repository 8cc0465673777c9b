"""Every equation by topic, each with its source; `FORMULAS` is the whole library in order.

Where two chains of equal depth lead to an answer, the formula that stands first is used.
"""

from .balance.formulas import BALANCE
from .chemical.formulas import CHEMICAL
from .controls.formulas import CONTROLS
from .conversions.formulas import CONVERSIONS
from .cost.formulas import COST
from .curves.formulas import CURVES
from .drives.formulas import DRIVES
from .electricity.formulas import ELECTRICITY
from .head.formulas import HEAD
from .horsepower.formulas import POWER
from .insulation.formulas import INSULATION
from .mains.formulas import MAINS
from .nameplate.formulas import NAMEPLATE
from .speed.formulas import SPEED_AND_IMPELLER
from .standby.formulas import STANDBY
from .wet_well.formulas import WET_WELL

__all__ = [
    "BALANCE",
    "CHEMICAL",
    "CONTROLS",
    "CONVERSIONS",
    "COST",
    "CURVES",
    "DRIVES",
    "ELECTRICITY",
    "FORMULAS",
    "HEAD",
    "INSULATION",
    "MAINS",
    "NAMEPLATE",
    "POWER",
    "SPEED_AND_IMPELLER",
    "STANDBY",
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
    *CURVES,
    *ELECTRICITY,
    *DRIVES,
    *CONTROLS,
    *CHEMICAL,
    *MAINS,
    *STANDBY,
)

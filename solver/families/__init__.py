"""Every problem family, in the order of the chapters.

A new family is added to its chapter's tuple and nowhere else.
"""

from ..family import Family
from .balance import BALANCE
from .conversions import CONVERSIONS
from .cost import COST
from .efficiency import EFFICIENCY
from .head import HEAD
from .horsepower import HORSEPOWER
from .insulation import INSULATION
from .machine import MACHINE
from .nameplate import NAMEPLATE
from .speed_and_impeller import SPEED
from .wet_well import WET_WELL

__all__ = ["FAMILIES"]

FAMILIES: tuple[Family, ...] = (
    *HORSEPOWER,
    *EFFICIENCY,
    *COST,
    *BALANCE,
    *CONVERSIONS,
    *HEAD,
    *NAMEPLATE,
    *INSULATION,
    *WET_WELL,
    *SPEED,
    *MACHINE,
)

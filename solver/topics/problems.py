"""Every problem family, in the order of the chapters.

A new family is added to its chapter's tuple and nowhere else.
"""

from solver.engine.family import Family

from .balance.problems import BALANCE
from .chemical.problems import CHEMICAL
from .controls.problems import CONTROLS
from .conversions.problems import CONVERSIONS
from .cost.problems import COST
from .curves.problems import CURVES
from .drives.problems import DRIVES
from .efficiency.problems import EFFICIENCY
from .electricity.problems import ELECTRICITY
from .head.problems import HEAD
from .horsepower.problems import HORSEPOWER
from .insulation.problems import INSULATION
from .machine.problems import MACHINE
from .mains.problems import MAINS
from .nameplate.problems import NAMEPLATE
from .order.problems import ORDER
from .speed.problems import SPEED
from .standby.problems import STANDBY
from .wet_well.problems import WET_WELL

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
    *CURVES,
    *ELECTRICITY,
    *DRIVES,
    *CONTROLS,
    *CHEMICAL,
    *MAINS,
    *STANDBY,
    *ORDER,
)

"""Every quantity, one file a topic; vocabulary.py finds one by its name."""

from .balance.quantities import BALANCE
from .chemical.quantities import CHEMICAL
from .controls.quantities import CONTROLS
from .conversions.quantities import CONVERSIONS
from .cost.quantities import COST
from .curves.quantities import CURVES
from .drives.quantities import DRIVES
from .efficiency.quantities import EFFICIENCY
from .electricity.quantities import ELECTRICITY
from .head.quantities import HEAD
from .horsepower.quantities import POWER
from .insulation.quantities import INSULATION
from .mains.quantities import MAINS
from .nameplate.quantities import NAMEPLATE
from .speed.quantities import AFFINITY
from .standby.quantities import STANDBY
from .wet_well.quantities import WET_WELL

__all__ = ["ALL"]

ALL = (
    *POWER,
    *EFFICIENCY,
    *COST,
    *BALANCE,
    *NAMEPLATE,
    *INSULATION,
    *WET_WELL,
    *CONVERSIONS,
    *HEAD,
    *AFFINITY,
    *CURVES,
    *ELECTRICITY,
    *DRIVES,
    *CONTROLS,
    *CHEMICAL,
    *MAINS,
    *STANDBY,
)

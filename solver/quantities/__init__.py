"""Every quantity, one file a topic; vocabulary.py finds one by its name."""

from .affinity import AFFINITY
from .balance import BALANCE
from .conversions import CONVERSIONS
from .cost import COST
from .head import HEAD
from .insulation import INSULATION
from .nameplate import NAMEPLATE
from .power import POWER
from .wet_well import WET_WELL

__all__ = ["ALL"]

ALL = (*POWER, *COST, *BALANCE, *NAMEPLATE, *INSULATION, *WET_WELL, *CONVERSIONS, *HEAD, *AFFINITY)

"""Every quantity, one file a topic; vocabulary.py finds one by its name."""

from .balance import BALANCE
from .cost import COST
from .power import POWER
from .wet_well import WET_WELL

__all__ = ["ALL"]

ALL = (*POWER, *COST, *BALANCE, *WET_WELL)

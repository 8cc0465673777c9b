"""Every quantity, one file a topic; vocabulary.py finds one by its name."""

from .balance import BALANCE
from .cost import COST
from .power import POWER

__all__ = ["ALL"]

ALL = (*POWER, *COST, *BALANCE)

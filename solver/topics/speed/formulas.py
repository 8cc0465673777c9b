"""Speed and impeller: the affinity laws, slowing down, curves that cross, specific speed."""

from .formulas_affinity import AFFINITY
from .formulas_crossing import CROSSING
from .formulas_slowing import SLOWING

__all__ = ["SPEED_AND_IMPELLER"]

SPEED_AND_IMPELLER = (*AFFINITY, *SLOWING, *CROSSING)

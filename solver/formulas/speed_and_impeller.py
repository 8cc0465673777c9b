"""Speed and impeller: the affinity laws, slowing down, curves that cross, specific speed."""

from .affinity import AFFINITY
from .crossing import CROSSING
from .slowing import SLOWING

__all__ = ["SPEED_AND_IMPELLER"]

SPEED_AND_IMPELLER = (*AFFINITY, *SLOWING, *CROSSING)

"""Every quantity once: name, label, symbol, unit in each system, plausible range, hard limit.

The plausible range is what an ordinary pump, motor, bill or reading shows (common practice, no
source). A problem drawn outside it is drawn again; a reader's own value outside it is remarked
on. The hard limits are what nature or arithmetic allow: beyond them a reading is wrong.
"""

from types import MappingProxyType

from .errors import BadDefinition
from .topics.quantities import ALL
from .units.quantity import Quantity

__all__ = ["QUANTITIES", "Quantity", "quantity_called", "quantity_named"]

QUANTITIES = MappingProxyType({q.name: q for q in ALL})
if len(QUANTITIES) != len(ALL):
    raise BadDefinition("two quantities have one name: give each its own")

_CALLED = {alias: quantity for quantity in ALL for alias in quantity.aliases}


def quantity_named(name: str) -> Quantity:
    """The quantity called `name`.

    >>> quantity_named("brake_power").unit("si")
    'kW'
    """
    try:
        return QUANTITIES[name]
    except KeyError:
        raise BadDefinition(
            f"no quantity is called {name!r}: add it to quantities.py of its topic, "
            "or use one of the names there"
        ) from None


def quantity_called(text: str) -> Quantity | None:
    """The quantity that people mean by `text`, in any case: its name here, or one of its aliases.

    >>> quantity_called("TDH").name, quantity_called("water_horsepower").name
    ('head', 'water_power')
    """
    return QUANTITIES.get(text) or _CALLED.get(" ".join(text.replace("_", " ").lower().split()))

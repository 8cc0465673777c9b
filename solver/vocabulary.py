"""Every quantity once: name, label, symbol, unit in each system, plausible range, hard limit.

The plausible range is what an ordinary pump, motor, bill or reading shows (common practice, no
source). A problem drawn outside it is drawn again; a reader's own value outside it is remarked
on. The hard limits are what nature or arithmetic allow: beyond them a reading is wrong.

`spoken` says a sentence with the names of quantities in it, as each system says them.
"The {water_power:name} is too low." says "water horsepower" in US units and "water power" in metric.
{water_power:short} is its abbreviation, or its name where there is none; {water_power:full} is both,
for its first use: "water horsepower (WHP)". {water_power:Name} and :Short begin with a capital.
{minor_losses:them} is "them" or "it", as its name has several or one.
"""

import re
from collections.abc import Callable
from types import MappingProxyType

from .errors import BadDefinition
from .topics.quantities import ALL
from .units.quantity import Quantity
from .units.show import capital

__all__ = ["QUANTITIES", "Quantity", "quantity_called", "quantity_named", "spoken"]

QUANTITIES = MappingProxyType({q.name: q for q in ALL})
if len(QUANTITIES) != len(ALL):
    raise BadDefinition("two quantities have one name: give each its own")

_CALLED = {alias: quantity for quantity in ALL for alias in quantity.aliases}
_SLOT = re.compile(r"\{(\w+):(\w+)\}")


def quantity_named(name: str) -> Quantity:
    """The quantity called `name`.

    Raises:
        BadDefinition: there is none.

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


def _short(quantity: Quantity, units: str) -> str:
    return quantity.short(units) or quantity.label(units)


_FORMS: dict[str, Callable[[Quantity, str], str]] = {
    "name": Quantity.label,
    "Name": lambda quantity, units: capital(quantity.label(units)),
    "short": _short,
    "Short": lambda quantity, units: capital(_short(quantity, units)),
    "full": Quantity.spoken,
    "them": lambda quantity, units: "them" if quantity.be(units) == "are" else "it",
}


def spoken(text: str, units: str) -> str:
    """A text whose {QUANTITY:name}, :Name, :short, :Short, :full and :them are said in "us" or "si".

    Other braces stay as they are.

    Raises:
        BadDefinition: a slot names a quantity or a form that there is not.

    >>> spoken("{Flow} and the {flow:name}", "us")
    '{Flow} and the flow'
    """
    return _SLOT.sub(lambda slot: _said(slot, units), text) if "{" in text else text


def _said(slot: re.Match[str], units: str) -> str:
    quantity, form = QUANTITIES.get(slot[1]), _FORMS.get(slot[2])
    if quantity is None or form is None:
        raise BadDefinition(
            f"the slot {slot[0]}: write a quantity's name, a colon, and one of {', '.join(_FORMS)}"
        )
    return form(quantity, units)

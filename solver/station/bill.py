"""The bill: prices, hours, and what else is on the meter.

Prices are those of ordinary commercial rates (common practice, no source): one price all day lies
between the off-peak price and the on-peak price of the same utility.
"""

from dataclasses import dataclass

from solver.engine.draw import Draw

__all__ = ["Bill", "draw_bill"]

MONTHS = (28.0, 30.0, 30.0, 31.0, 31.0)  # days


@dataclass(frozen=True, slots=True)
class Bill:
    """Prices ($/kWh, $/kW), fixed charge ($), days billed, hours a day without a wet well (h/day).

    `others`: kW of the peak that other machines take; `on_peak` and `moved`: shares of the run time
    that are on-peak, and that could be moved off it.
    """

    energy_price: float
    demand_price: float
    fixed: float
    on_price: float
    off_price: float
    days: float
    hours: float
    others: float
    on_peak: float
    moved: float


def draw_bill(draw: Draw, kilowatts: float) -> Bill:
    """A bill for a pump whose motor takes this at full load (kW)."""
    off_price, more = draw.step(0.05, 0.11, 0.005), draw.step(0.04, 0.16, 0.005)
    return Bill(
        round(round((off_price + more * draw.between(0.3, 0.5)) / 0.005) * 0.005, 3),
        draw.step(6, 18, 0.5),
        draw.step(15, 60, 5) * (1 if kilowatts < 10 else 2 if kilowatts < 50 else 4),
        round(off_price + more, 3),
        off_price,
        draw.pick(MONTHS),
        draw.step(4, 20, 0.5),
        kilowatts * draw.between(0.1, 0.9),
        draw.step(0.15, 0.45, 0.01),
        draw.step(0.3, 0.9, 0.05),
    )

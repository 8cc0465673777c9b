"""The figures that are followed over the years: what still counts as steady, what a change means."""

from typing import NamedTuple

__all__ = ["FOLLOWED", "Followed"]


class Followed(NamedTuple):
    """A figure that is followed over the years.

    `steady` is the change that still counts as steady: a percent of the earlier half, or with
    `points` that many percentage points.
    """

    name: str
    check: str
    steady: float
    rising: str
    falling: str
    points: bool = False

    @property
    def share(self) -> str:
        """The change that still counts as steady, in words."""
        return f"{self.steady:g} percentage points" if self.points else f"{self.steady:g}%"


FOLLOWED = (
    Followed(
        "insulation_at_40",
        "insulation_at_40",
        30,
        "Drier or cleaner than before, or a different test voltage. Write down what was done.",
        "Moisture, dirt or age may be getting into the winding. Check it before it reaches the minimum.",
    ),
    Followed(
        "amps_average",
        "current_unbalance",
        10,
        "More load: solids, a tight bearing, a valve or main that changed. Or lower volts.",
        "It moves less water: wear, a clog, a closed valve. Compare with the flow.",
    ),
    Followed(
        "current_unbalance",
        "current_unbalance",
        2,
        "A connection, a splice, a contact or a winding may be going bad, or the supply has changed.",
        "The legs are more even. Write down what was done.",
        points=True,
    ),
    Followed(
        "overall_efficiency",
        "overall_efficiency",
        3,
        "Better than before: a repair, or a reading to double-check. Write down what was done.",
        "Wear, a clog or water leaking back: you lose more of the power you pay for.",
        points=True,
    ),
    Followed(
        "energy_per_volume",
        "energy_per_volume",
        10,
        "It takes more energy to pump the same volume: wear, a clog, more head, or water leaking back.",
        "It takes less energy to pump the same volume: a repair, less head, or a reading to double-check.",
    ),
)

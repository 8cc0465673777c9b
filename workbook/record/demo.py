"""The demo record: eight pumps of the invented town over five years, with three faults to find.

`tests/workbook/make_demo.py` makes the file; a test makes it again.
"""

from pathlib import Path
from typing import NamedTuple

__all__ = ["FAULTS", "FILE", "TASK", "Hidden", "demo_csv"]

FILE = Path(__file__).with_name("demo.csv")
TASK = (
    "Eight pumps of Marlow Bend were read once a year for five years. None of them exists. "
    "Three have a fault that grows. Find which, and what it is, before you open the answers."
)


class Hidden(NamedTuple):
    """A fault in the demo record: where, what shows it, what it may be, what would tell more.

    `checks` are the checks of the newest record that it moves out of their limits, `trends` the
    figures that go up or down with it.
    """

    station: str
    pump: str
    title: str
    shows: str
    may_be: str
    tells_more: str
    checks: tuple[str, ...]
    trends: tuple[str, ...]


def demo_csv() -> str:
    """The whole file as text, for a reader to keep."""
    return FILE.read_text(encoding="utf-8")


FAULTS = (
    Hidden(
        "Heron Slough lift station",
        "Pump 3",
        "The insulation falls year by year",
        "At 40 °C it fell from over 700 megohms to under 70. The legs and the water stayed as they "
        "were. In the last year the polarization index and the absorption ratio are low too.",
        "Moisture, most likely: it makes both ratios fall along with the reading. Dirt can do so too.",
        "Isolate it and look at the cable entry, the splices and the seal. Dry it, and test again "
        "at the motor and at the starter, to tell the cable from the winding.",
        ("insulation_at_40", "absorption_ratio", "polarization_index"),
        ("insulation_at_40",),
    ),
    Hidden(
        "Quarry Road lift station",
        "Pump 2",
        "One leg draws more each year, and goes with the motor",
        "The current unbalance rose from under 2% to 8% on even volts. When the leads were rolled, "
        "the high leg moved on with its lead. The winding resistances part as well, by 2.6%.",
        "The motor side: a winding with turns shorted, or a bad splice or cable. The volts are even "
        "and the high leg moves, so it is not the supply.",
        "Measure the three resistances again at the motor leads, past the splice. Then have a motor "
        "shop test the winding. The insulation to ground is good, and says nothing of this.",
        ("resistance_unbalance", "current_unbalance", "rolled_twice"),
        ("current_unbalance",),
    ),
    Hidden(
        "Heron Slough lift station",
        "Pump 1",
        "Less water for nearly the same power",
        "The wire-to-water efficiency fell by over ten points, and each volume costs a fifth more. "
        "It moves 78% of its rated flow. The amps hardly changed, so they did not show it.",
        "The pump side: a worn impeller or wear ring, a clog, or a check valve that leaks back. "
        "These readings alone cannot tell which.",
        "Watch the level with both pumps off and their valves shut, then open: that shows a leak "
        "back. If there is none, isolate and open the pump, and look at the impeller and the rings.",
        ("flow_share",),
        ("overall_efficiency", "energy_per_volume"),
    ),
)

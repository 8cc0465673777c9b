"""The demo record: eight pumps of the invented town over five years, with three faults to find.

`tests/workbook/make_demo.py` makes the file; a test makes it again.
"""

from pathlib import Path
from typing import NamedTuple

__all__ = ["FAULTS", "FILE", "TASK", "Hidden", "demo_csv"]

FILE = Path(__file__).with_name("demo.csv")
TASK = (
    "Eight pumps in Marlow Bend were tested once a year for five years. The town and its pumps are "
    "invented. Three of them have a fault that gets worse. Find which ones, and what the fault is, "
    "before you open the answers."
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
        "The insulation drops year by year",
        "Corrected to 40 °C it dropped from over 700 megohms to under 20. The amps and the flow stayed "
        "the same. In the last year the polarization index and the absorption ratio are low too.",
        "Moisture, most likely: it lowers both ratios along with the reading. Dirt can do that too.",
        "Lock it out and check the cable entry, the splices and the seal. Dry it out, and test again "
        "at the motor and at the starter, to see whether it is the cable or the winding.",
        ("insulation_at_40", "absorption_ratio", "polarization_index"),
        ("insulation_at_40",),
    ),
    Hidden(
        "Quarry Road lift station",
        "Pump 2",
        "One leg draws more every year, and it moves with the motor lead",
        "The current unbalance rose from under 2% to 13% on even volts. When the leads were rolled, "
        "the high leg moved with its lead. The winding resistances differ too, by 2.1%.",
        "The motor side: a winding with shorted turns, or a bad splice or cable. The volts are even "
        "and the high leg moves, so it isn't the supply.",
        "Measure the three resistances again at the motor leads, past the splice. Then have a motor "
        "shop test the winding. The insulation to ground is good, but it doesn't show this fault.",
        ("resistance_unbalance", "current_unbalance", "rolled_twice"),
        ("current_unbalance",),
    ),
    Hidden(
        "Heron Slough lift station",
        "Pump 1",
        "Less water for nearly the same power",
        "The wire-to-water efficiency dropped about twenty points, and it takes about a third more energy "
        "to pump the same water. It moves 78% of its rated flow. The amps hardly changed.",
        "The pump side: a worn impeller or wear ring, a clog, or a check valve that leaks back. "
        "These readings alone can't tell which.",
        "Watch the level with both pumps off and their valves closed, then open: that shows water "
        "leaking back. If there is none, lock out, open the pump, and check the impeller and rings.",
        ("flow_share",),
        ("overall_efficiency", "energy_per_volume"),
    ),
)

"""Order of steps: jobs at the pump whose steps come shuffled, each pair of them with its reason and source."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Family, Level, Scene, Small
from solver.engine.judgement import Orders
from solver.engine.order import Ordering
from solver.scenario import places_of
from solver.topics.chapter import Chapter
from solver.topics.orders import orders
from solver.topics.scenes import NO_NUMBERS

__all__ = ["ORDER"]

CHAPTER = Chapter("order", (), redrawn=())
# Where there is a wet well with pumps on rails.
LIFT = Small(NO_NUMBERS.values, places_of("lift"))


def judge(topic: str, level: int) -> Orders:
    """One ordering of a topic and level, drawn by chance."""

    def drawn(values: Mapping[str, float], units: str, draw: Draw) -> Ordering:
        return draw.pick(orders(topic, level))

    return drawn


def family(topic: str, tag: str, title: str, scene: Scene = NO_NUMBERS) -> Family:
    """The family of a topic's orderings, which has a level for each of theirs."""
    levels = tuple(Level((), "{asks}", judge=judge(topic, level)) for level in (1, 2))
    return CHAPTER.ordered(topic, tag, title, judge(topic, 1), scene, *levels, since=2)


ORDER = (
    family("lock_and_try", "EL", "In order: lock out and try"),
    family("test_insulation", "EI", "In order: an insulation test"),
    family("start_and_stop", "ES", "In order: starting and stopping a centrifugal pump"),
    family("prime_pump", "EM", "In order: priming"),
    family("enter_wet_well", "EW", "In order: entering a wet well", LIFT),
    family("pull_and_set", "EP", "In order: pulling and setting a pump on rails", LIFT),
    family("repack_pump", "EK", "In order: repacking a stuffing box"),
    family("swap_leads", "ET", "In order: reversing a motor"),
)

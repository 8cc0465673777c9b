"""Which questions a record bears out: one that says more than it knows is not asked of it."""

from collections.abc import Callable, Mapping

from solver.engine.family import Family

from .examine import Examined
from .rolling import TURNS, cause, high_leg
from .verdict import Seen

__all__ = ["borne_out"]

Fits = Callable[[Examined], bool]


def _never(_: Examined) -> bool:
    return False


def _says(field: str, word: str) -> Fits:
    return lambda examined: examined.record.texts.get(field) == word


def _without(*names: str) -> Fits:
    return lambda examined: not set(names) & examined.record.values.keys()


def _up_to(name: str, most: float) -> Fits:
    return lambda examined: examined.record.values[name] <= most


def _clear_cause(turns: tuple[str, ...]) -> Fits:
    def fits(examined: Examined) -> bool:
        seen = Seen(examined.record, examined.record.values)
        return cause([high_leg(seen, turn) for turn in turns])[1].startswith("Look at")

    return fits


GAUGE_HEIGHTS = ("discharge_gauge_height", "suction_gauge_height")
PIPES = ("discharge_diameter", "suction_diameter")
# Level 0 stands for every level.
ONLY: Mapping[tuple[str, int], Fits] = {
    # They set out invented reports, a curve, a manual, a drive or a whole day besides the readings.
    **dict.fromkeys(
        [
            *(("which_power", 0), ("impossible_powers", 0), ("conversion_chain", 0)),
            *(("gauges_story", 0), ("names_of_powers", 0), ("which_is_below", 0)),
            *(("expected_gauge", 0), ("current_limits", 3), ("resistance_limit", 0)),
            *(("index_limit", 3), ("synchronous_speed", 2), ("suction_limit", 0)),
            *(("daily_flow", 0), ("flow_of_a_day", 0), ("pole_count", 0)),
        ],
        _never,
    ),
    ("gauges_to_head", 1): _without(*GAUGE_HEIGHTS, *PIPES),
    ("gauges_to_head", 2): _without(*PIPES),
    ("gauges_to_head", 3): _without(*GAUGE_HEIGHTS, *PIPES),
    ("drawdown_check", 1): _without("flow"),
    ("test_volts", 2): _up_to("rated_volts", 600),
    ("test_volts", 3): _up_to("rated_volts", 600),
    ("energy_used", 1): _up_to("run_time", 24),
    ("energy_cost", 1): _up_to("run_time", 24),
    ("least_insulation", 2): _says("winding_kind", "before 1970"),
    ("insulation_limit", 2): _says("winding_kind", "random-wound"),
    ("index_limit", 2): _says("insulation_class", "F"),
    ("rolled_leads", 1): _clear_cause(TURNS[:2]),
    ("rolled_leads", 2): _clear_cause(TURNS),
}
LEGS = {"amps_a", "volts_ab", "ohms_12"}


def borne_out(family: Family, level: int, examined: Examined) -> bool:
    """Whether a record bears out all that a question says."""
    if examined.record.texts.get("phase") == "1" and LEGS & set(family.level(level).given):
        return False
    only = ONLY.get((family.name, 0)) or ONLY.get((family.name, level))
    return only is None or only(examined)

"""What the machines of a station must do: its kind, main and suction, and its duty."""

from functools import cache
from math import pow
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.errors import NotSolvable

from .built import EFFICIENCY, is_main
from .kinds import KINDS, Kind
from .main import Main, draw_main
from .need import Need
from .suction import Suction, draw_suction
from .system import System

__all__ = ["Site", "draw_site", "head_of", "round_flow"]


class Site(NamedTuple):
    """What the machines of a station must do: their kind, main and suction, and the duty (gpm, ft | L/s, m)."""

    system: System
    kind: Kind
    main: Main
    suction: Suction | None
    duty: tuple[float, float]


def draw_site(draw: Draw, system: System, need: Need) -> Site | None:
    """Duty, main and suction of a kind that the need admits; none when what was drawn does not meet it."""
    kind = draw.pick(_kinds(need))
    spans = kind.spans(system.name)
    low, high = spans.flow
    flow = round_flow(low * pow(high / low, draw.between(0, 1)), system)
    main = draw_main(draw, system, kind, flow)
    if need.part and not need.part[0] <= _part(main, flow) <= need.part[1]:
        return None
    if 100 * main.minor(flow) < need.fittings * (main.lift + main.lost(flow)):
        return None
    suction = None if kind.submerged else draw_suction(draw, system, kind, main, flow)
    head = head_of(main, suction, flow)
    if not (is_main(main, flow) and spans.head[0] <= head <= spans.head[1]):
        return None
    if need.sizes and not _could_take(need, need.sizes, flow * head / system.water_power):
        return None
    if need.head and not need.head[0] <= head * system.feet <= need.head[1]:
        return None
    if need.nozzle not in (None, bool(main.nozzle)):
        return None
    return Site(system, kind, main, suction, (flow, head))


def head_of(main: Main, suction: Suction | None, flow: float) -> float:
    """Total head (ft | m) of a main and its suction at a flow (gpm | L/s)."""
    return main.lift + main.lost(flow) + (suction.lost(flow) if suction else 0.0)


@cache
def _kinds(need: Need) -> tuple[Kind, ...]:
    """The kinds of station that could meet a need, each as often as it is usual."""
    fitting = (kind for kind in KINDS.values() if need.of_kind(kind))
    kinds = tuple(kind for kind in fitting for _ in range(kind.usual))
    if not kinds:
        raise NotSolvable(f"no kind of station meets {need}: ask less of it")
    return kinds


def _could_take(need: Need, sizes: tuple[float, float], water: float) -> bool:
    """Whether any pump could need a motor of these sizes for a water power (hp | kW): told before it is drawn."""
    low, high = need.loaded
    least, most = EFFICIENCY
    return (
        100 * water / least >= sizes[0] * low / 100 * 0.9
        and 100 * water / most <= sizes[1] * high / 100
    )


def _part(main: Main, flow: float) -> float:
    """Percent of the head that is static."""
    return 100 * main.lift / (main.lift + main.lost(flow))


def round_flow(flow: float, system: System) -> float:
    """A flow (gpm | L/s) to the steps that a duty is written in."""
    if system.name == "us":
        step = 50.0 if flow >= 2000 else 10.0 if flow >= 400 else 5.0
    else:
        step = 5.0 if flow >= 150 else 1.0 if flow >= 20 else 0.5
    return round(flow / step) * step

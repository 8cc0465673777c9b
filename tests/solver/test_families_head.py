"""Head: what is to be judged, against the same sums by hand and in plain numbers."""

import re

import pytest

from solver import draw
from solver.topics.head.by_hand import PER_PRESSURE, Hand
from solver.topics.tables import named_rows

from .drawn import seeds


def right_text(case) -> str:
    return case.choices[int(case.answer) - 1]


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
def test_two_gauges_are_judged_by_which_of_them_moved(level, units):
    """Suction down: blocked; rise up: shut; discharge down: worn; suction up alone: deeper water."""
    words = {
        "shut": "blocks the discharge|closed discharge",
        "blocked": "blocks the suction|blocked suction",
    }
    words |= {"worn": "worn", "deeper": "higher"}
    for seed in seeds(100):
        case = draw("gauges_story", seed, units, level)
        usual = case.given["discharge_gauge"], case.given["suction_gauge"]
        if level == 1:
            now = case.given["discharge_gauge_now"], case.given["suction_gauge_now"]
            said = right_text(case)
        else:
            now = tuple(map(float, re.findall(r"([\d.]+) (?:psi|kPa)", right_text(case))))
            said = case.question
        (discharge, suction), rise = now, (now[0] - now[1]) / (usual[0] - usual[1])
        if suction < usual[1]:
            found = "blocked"
        elif rise > 1.05:
            found = "shut"
        else:
            found = "worn" if discharge < usual[0] else "deeper"
        assert re.search(words[found], said), (case.code, said, now)
        assert found != "shut" or discharge > usual[0]
        assert found != "deeper" or suction > usual[1]


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
def test_the_part_left_out_is_what_the_figure_is_short_of(level, units):
    for seed in seeds(100):
        case = draw("missing_part", seed, units, level)
        given = dict(case.given)
        parts = {
            "The static head": given["static_head"],
            "The friction loss": given["friction_head"],
            "The minor losses": given.get("minor_loss"),
            "The pressure at the end": given.get("delivery_pressure", 0) * PER_PRESSURE[units],
        }
        total = sum(filter(None, parts.values()))
        short = pytest.approx(total - given["head"], abs=0.006 * total)
        assert [right_text(case)] == [name for name, size in parts.items() if size == short]


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
def test_a_pipe_is_told_by_the_row_its_c_stands_in(level, units):
    for seed in seeds(100):
        case = draw("which_pipe", seed, units, level)
        found = Hand(dict(case.given), units).c_factor
        rows = {name[:1].upper() + name[1:]: row for name, row in named_rows("c_factors").items()}
        low, high = rows[right_text(case)]
        assert low - 2 <= found <= high + 2, case.code
        for choice in set(case.choices) - {right_text(case)}:
            low, high = rows[choice]
            assert not low - 2 <= found <= high + 2, case.code


LIMITS = {
    # Ten States Standards, cleansing velocity (M); common practice above it.
    "velocity_check": {"us": (2, 8), "si": (0.6, 2.4)},
    # Common practice at sea level, no source.
    "suction_limit": {"us": (15, 22), "si": (4.5, 6.7)},
}
ZONES = {
    "velocity_check": ("Too slow", "About right", "Too fast"),
    "suction_limit": ("No:", "Maybe:", "Yes:"),
    "npsh_check": ("Yes:", "Barely:", "No:"),
}


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
@pytest.mark.parametrize("name", LIMITS)
def test_a_reading_is_judged_by_the_limits_it_lies_between(name, level, units):
    asked = {"velocity_check": "velocity", "suction_limit": "dynamic_suction_lift"}[name]
    seen = set()
    for seed in seeds(100):
        case = draw(name, seed, units, level)
        size = getattr(Hand(dict(case.given), units), asked)
        zone = sum(size > limit for limit in LIMITS[name][units])
        assert right_text(case).startswith(ZONES[name][zone]), case.code
        seen.add(zone)
    assert {0, 1, 2} == seen


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("level", [1, 2])
def test_npsh_is_enough_only_where_the_margin_is_kept(level, units):
    for seed in seeds(100):
        case = draw("npsh_check", seed, units, level)
        hand = Hand(dict(case.given), units)
        available = hand.npsh_available
        needed = hand.npsh_required
        zone = (needed > available - hand.npsh_margin) + (needed > available)
        assert right_text(case).startswith(ZONES["npsh_check"][zone]), case.code

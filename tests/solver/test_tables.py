"""Tables and how they are read; tests/references holds their rows to what was published."""

from itertools import pairwise
from math import nextafter

import numpy as np
import pytest

from solver.errors import NotSolvable
from solver.topics.tables import (
    by_size,
    derating_factor,
    full_load_amps,
    largest_motor_below,
    motor_sizes,
    next_motor_size,
    second_motor_above,
    table_rows,
    table_source,
)

each_system = pytest.mark.parametrize("units", ["us", "si"])


@pytest.mark.parametrize(
    "name", ["premium_motors_us", "standard_motors_si", "full_load_amps_us", "derating"]
)
def test_a_table_names_its_source_and_says_what_is_from_memory(name):
    source = table_source(name)
    assert "ource" in source
    assert any(standard in source for standard in ("NEMA", "NEC", "IEC"))
    assert len(table_rows(name)) > 5


@each_system
def test_a_larger_motor_draws_more_and_wastes_no_larger_share(units):
    """Premium and IE3 efficiencies rise with size (common practice, no source)."""
    volts = {"us": 460, "si": 400}[units]
    percent = by_size(f"premium_motors_{units}", "4_poles")
    for small, large in pairwise(motor_sizes(units)):
        assert small < large
        assert full_load_amps(small, volts, units) < full_load_amps(large, volts, units)
        assert percent[small] <= percent[large]


@each_system
def test_the_next_size_carries_the_load_and_the_one_below_does_not(units):
    sizes = motor_sizes(units)
    for load in np.linspace(sizes[0] / 2, sizes[-1], 400):
        expected = min(size for size in sizes if size >= load * (1 - 1e-9))
        assert expected == next_motor_size(load, units)
        assert load > sizes[0] or expected == sizes[0]


@each_system
def test_a_load_of_just_a_size_is_carried_by_it_with_or_without_a_last_digit_of_a_float(units):
    for size in motor_sizes(units):
        for load in (size, nextafter(size, 0), nextafter(size, 1e9), size * (1 + 1e-12)):
            assert size == next_motor_size(load, units)


@each_system
def test_wrong_sizes_are_one_step_to_either_side(units):
    sizes = motor_sizes(units)
    for below, right, above in zip(sizes, sizes[1:], sizes[2:], strict=False):
        load = (below + right) / 2
        assert below == largest_motor_below(load, units)
        assert right == next_motor_size(load, units)
        assert above == second_motor_above(load, units)


@each_system
def test_a_load_above_the_table_is_refused_with_what_to_do(units):
    last = motor_sizes(units)[-1]
    message = f"above {last:g}, the largest motor of the table: give a smaller load, or ask the mo"
    with pytest.raises(NotSolvable, match=message):
        next_motor_size(last * 1.01, units)


def test_the_derating_graph_is_read_in_straight_lines_between_its_rows():
    """numpy.interp reads the same rows, taken here from NEMA MG 1 Figure 14-1 (from memory)."""
    at, allowed = [0, 1, 2, 3, 4, 5], [100, 100, 95, 88, 82, 75]
    for unbalance in np.linspace(0, 5, 101):
        expected = np.interp(unbalance, at, allowed)
        assert expected == pytest.approx(derating_factor(float(unbalance), "us"), rel=1e-12)


@pytest.mark.parametrize("unbalance", [5.001, 12.0, -0.1])
def test_an_unbalance_off_the_graph_is_refused_and_the_motor_kept_from_running(unbalance):
    with pytest.raises(NotSolvable, match="ends at 5 %: do not run the motor above that; find"):
        derating_factor(unbalance, "us")

"""The picture in Chromium at 390 px: no two labels touch, none leaves it, and letters are large enough."""

import pytest

from solver.render.picture import picture
from solver.station.faults import FAULTS, applies, with_fault
from solver.station.kinds import KINDS
from solver.station.need import Need
from tests.labels import LABELS, touching

from .stations import BOTH, stations


@pytest.mark.browser
@pytest.mark.parametrize("units", BOTH)
def test_labels_stand_clear_of_each_other_on_a_phone(page, axe, units):
    drawn = [s for kind in KINDS for s in stations(units, Need(kinds=(kind,)), 1)[:12]]
    drawn += [
        with_fault(station, fault)
        for fault in ("high_float", "short_cycling", "stuck_float", "broken_main", "clogged_main")
        for station in stations(units, Need(kinds=("lift", "flooded")), 1)[:4]
        if applies(FAULTS[fault], station)
    ]
    page.set_viewport_size({"width": 390, "height": 800})
    pictures = "".join(f"<p>{picture(s, name=f'n{n}')}</p>" for n, s in enumerate(drawn))
    page.set_content(f"<style>body {{ margin: 0; font-family: sans-serif }}</style>{pictures}")
    assert [] == axe(page, "svg.w2w-station")
    found = page.evaluate(LABELS)
    assert len(drawn) == len(found)
    for one in found:
        assert 390 == pytest.approx(one["width"], abs=16)
        assert [] == touching(one["labels"])
        for label in one["labels"]:
            assert label["size"] >= 13
            assert label["left"] >= -1, label
            assert label["right"] <= one["width"] + 1, label
            assert label["bottom"] <= label["tall"] + 4, label

"""Where each reading of a record is taken: told for every reading, and marked in the drawing."""

from xml.etree import ElementTree

from solver.own.record import FIELDS, PLACES, place_of
from solver.render.taken import AT, TALL, WIDTH, taken

NOT_THERE = {"bill", "head"}  # on paper, and worked out
SVG = "{http://www.w3.org/2000/svg}"


def test_every_reading_has_one_place_and_a_name_or_a_date_has_none():
    told = [field for place in PLACES for field in place.fields]
    assert sorted(told) == sorted(field.name for field in FIELDS if field.group != "pump")
    assert len(told) == len(set(told))
    assert place_of("date") is None


def test_every_place_at_the_station_has_its_ring_within_the_drawing():
    assert {place.name for place in PLACES} - NOT_THERE == set(AT)
    drawn = ElementTree.fromstring(taken())
    rings = {
        group.get("class").split()[-1].removeprefix("w2w-place-"): group.find(f"{SVG}circle")
        for group in drawn.iter(f"{SVG}g")
        if "w2w-place" in (group.get("class") or "")
    }
    assert set(AT) == set(rings)
    for ring in rings.values():
        x, y, r = (float(ring.get(name)) for name in ("cx", "cy", "r"))
        assert r < x < WIDTH - r
        assert r < y < TALL - r


def test_who_cannot_see_the_drawing_hears_every_place_in_it():
    words = ElementTree.fromstring(taken()).find(f"{SVG}desc").text
    assert [] == [p.name for p in PLACES if p.name in AT and p.says not in words]

"""The picture of a station: well-formed, every value in it and in its words, nothing of a text taken as markup."""

from xml.etree import ElementTree

import pytest

from solver.render.picture import SHOWN, picture, texts_of
from solver.station.drawn import seeded
from solver.station.faults import FAULTS, applies, with_fault
from solver.station.kinds import KINDS
from solver.station.need import Need

from .stations import BOTH, stations

SVG = "{http://www.w3.org/2000/svg}"


def said(drawing: str) -> str:
    """All that the picture shows, in letters."""
    root = ElementTree.fromstring(drawing)
    return " ".join("".join(text.itertext()) for text in root.iter(f"{SVG}text"))


@pytest.mark.parametrize("units", BOTH)
@pytest.mark.parametrize("kind", KINDS)
def test_every_value_is_in_the_picture_and_in_its_words(kind, units):
    for station in stations(units, Need(kinds=(kind,)), 1):
        drawing, texts = picture(station), texts_of(station)
        words = ElementTree.fromstring(drawing).find(f"{SVG}desc").text
        shown = said(drawing)
        for name, text in texts.items():
            assert text in words, name
            height = name.endswith("gauge_height")  # minus and zero are said in words
            other = name == "suction_gauge" and "suction_vacuum" in texts
            if not height and not other:
                assert text in shown, name
        assert station.place.station in words


def test_a_text_left_out_is_not_shown_and_a_question_mark_is():
    station = next(s for s in stations("us") if s.well)
    texts = texts_of(station) | {"flow": "?"}
    del texts["inflow"]
    drawing = picture(station, texts)
    assert "? →" in said(drawing)
    assert " in " not in f" {said(drawing)} ".replace(" in main", "")


def test_a_picture_with_no_values_is_still_one():
    for station in stations("us", each=1):
        assert ElementTree.fromstring(picture(station, {})) is not None


def test_what_is_said_cannot_be_markup():
    drawing = picture(stations("us")[0], {"flow": '<b>"&'})
    assert "<b>" not in drawing
    assert '<b>"&' in said(drawing)


def test_two_pictures_on_a_page_have_ids_of_their_own():
    one, other = (picture(seeded(1, "us"), name=name) for name in ("now", "before"))
    assert 'id="now-title"' in one
    assert 'aria-labelledby="before-title before-words"' in other


@pytest.mark.parametrize("fault", FAULTS)
def test_a_fault_can_be_drawn(fault):
    for station in stations("si", each=1):
        if applies(FAULTS[fault], station):
            assert ElementTree.fromstring(picture(with_fault(station, fault))) is not None


def test_colors_are_the_pages():
    drawing = picture(seeded(1, "us"))
    assert "currentColor" in drawing
    assert "var(--w2w-" in drawing


def test_shown_is_what_can_be_read():
    read = {name for units in BOTH for station in stations(units) for name in texts_of(station)}
    assert set(SHOWN) == read

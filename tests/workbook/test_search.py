"""What the search in the bar can find leads to a page that has it."""

import json

from workbook.reference.entry import find
from workbook.reference.reference_panel import parts
from workbook.reference.search import search_json
from workbook.ui.pages import chapters, shipped_pages

FOUND = [
    dict(zip(("kind", "name", "about", "page", "find", "words"), row, strict=True))
    for row in json.loads(search_json())
]


def named(kind, *words):
    return [
        each["name"]
        for each in FOUND
        if each["kind"] == kind and all(f" {word}" in f" {each['words']}" for word in words)
    ]


def test_every_chapter_is_found_by_its_title_and_by_its_problems():
    assert [chapter.title for chapter in chapters()] == named("chapter")
    assert "1. Three horsepowers" in named("chapter", "three")
    assert "4. Phase balance" in named("chapter", "rolled")


def test_a_word_is_found_by_whatever_people_call_it():
    assert ["Water horsepower (WHP)"] == named("word", "whp")
    assert "Total dynamic head (TDH)" in named("word", "tdh")
    assert "Water horsepower (WHP)" in named("word", "water", "power")


def test_whatever_is_found_is_on_its_page():
    pages = {path.name for path in shipped_pages()}
    assert pages >= {each["page"] for each in FOUND}
    wanted = {each["find"] for each in FOUND if each["find"]}
    assert len(wanted) > 300
    every = parts()
    assert [] == [w for w in wanted if not (find(every, "us", w) or find(every, "si", w))]

"""The words in a page's address, and links to pages of the static site."""

import json
from urllib.parse import quote

import pytest

from workbook.ui import static_site

BASE = "https://example.org/pumps/"


@pytest.fixture(autouse=True)
def nothing_told(monkeypatch):
    monkeypatch.setattr(static_site, "_told", {})


def tell(query):
    static_site.tell(quote(BASE, safe=""), quote(query, safe=""))


def test_outside_the_static_site_there_are_no_words_and_no_link():
    assert static_site.words_of_address() is None
    assert static_site.link_to_page("00-start-here.ipynb") is None


def test_words_come_by_their_names_as_they_were_written():
    tell("path=00-start-here.ipynb&set=W2W+1%20A%26B&empty=")
    assert {
        "path": "00-start-here.ipynb",
        "set": "W2W 1 A&B",
        "empty": "",
    } == static_site.words_of_address()


def test_an_address_without_words_has_none():
    tell("")
    assert {} == static_site.words_of_address()


def test_more_words_than_any_link_holds_are_none():
    tell("&".join(f"a{n}=1" for n in range(1000)))
    assert {} == static_site.words_of_address()


def test_a_link_leads_back_to_the_same_words():
    tell("")
    words = {"path": "17-a.ipynb", "set": "<b>&'\" é 1+1"}
    link = static_site.link_to_page("17-a.ipynb", set=words["set"])
    base, _, query = link.partition("?")
    tell(query)
    assert (BASE, words) == (base, static_site.words_of_address())


def test_what_was_shared_to_the_installed_site_is_handed_over_once():
    files = [["a.txt", "line é\n"], ["<b>.jsonl", ""]]
    static_site.receive(quote(json.dumps(files), safe=""))
    assert [("a.txt", "line é\n".encode()), ("<b>.jsonl", b"")] == static_site.shared()
    assert [] == static_site.shared()

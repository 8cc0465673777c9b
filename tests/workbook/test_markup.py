from html import unescape
from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbook.ui.markup import Markup, joined, tag

HOSTILE = """<script>alert(1)</script> " ' & &amp; <!-- ]]> \x00 onload=x"""
ANY_TEXT = st.text() | st.sampled_from([HOSTILE, "</p>", '"><b>', "'", "&lt;", "$x$"])


class Reader(HTMLParser):
    """What a browser would see: each element with its attributes, and the text."""

    def __init__(self, html):
        super().__init__(convert_charrefs=True)
        self.elements, self.text = [], ""
        self.feed(html)
        self.close()

    def handle_starttag(self, name, attributes):
        self.elements.append((name, dict(attributes)))

    def handle_data(self, data):
        self.text += data


@given(ANY_TEXT, ANY_TEXT)
def test_no_text_becomes_an_element_and_no_attribute_ends_early(text, title):
    made = tag("p", text, tag("b", text), cls="w2w-about", title=title)
    seen = Reader(made)
    assert [("p", {"class": "w2w-about", "title": title}), ("b", {})] == seen.elements
    assert text * 2 == seen.text


@given(ANY_TEXT)
def test_text_is_escaped_once_however_deep_it_stands(text):
    inner = tag("li", text)
    assert unescape(tag("div", tag("ul", [inner, [inner]]))).count(text) >= 2
    assert tag("ul", inner) == f"<ul>{inner}</ul>"
    assert joined(joined(text)) == joined(text)


@pytest.mark.parametrize("children", [(), (None,), ([],), ("",), (iter(()),)])
def test_an_element_of_nothing_is_empty(children):
    assert "<p></p>" == tag("p", *children)


def test_children_are_text_html_numbers_and_iterables_of_them():
    items = (tag("li", number) for number in (1, 2))
    assert "<ul><li>1</li><li>2</li>&lt;</ul>" == tag("ul", items, "<")


def test_markup_added_to_text_escapes_the_text():
    assert "<b>a</b>&lt;" == tag("b", "a") + "<"
    assert "&lt;<b>a</b>" == "<" + tag("b", "a")


def test_a_mere_string_with_tags_is_shown_as_text():
    assert "<p>&lt;b&gt;</p>" == tag("p", "<b>")
    assert "<p><b></p>" == tag("p", Markup("<b>"))


@pytest.mark.parametrize(
    ("attributes", "shown"),
    [
        ({"aria_label": "Steps"}, ' aria-label="Steps"'),
        ({"for_": "a"}, ' for="a"'),
        ({"tabindex": 0}, ' tabindex="0"'),
        ({"alt": ""}, ' alt=""'),
        ({"readonly": True}, " readonly"),
        ({"readonly": False, "role": None, "cls": ""}, ""),
    ],
)
def test_attributes(attributes, shown):
    assert f"<p{shown}></p>" == tag("p", **attributes)


@pytest.mark.parametrize("name", ["", "P", "p onclick=x", "p>", "1", "script "])
def test_an_element_has_a_plain_name(name):
    with pytest.raises(ValueError, match="names no element"):
        tag(name)


@pytest.mark.parametrize("name", ["a b", "title=x", 'a"', "Onclick", "é"])
def test_an_attribute_has_a_plain_name(name):
    with pytest.raises(ValueError, match="no attribute"):
        tag("p", **{name: "x"})


@pytest.mark.parametrize(
    "address",
    ["javascript:alert(1)", " JavaScript:x", "java\nscript:x", "vbscript:x", "\x01data:x"],
)
def test_an_address_runs_nothing(address):
    for name in ("href", "src"):
        with pytest.raises(ValueError, match="could run a script"):
            tag("a", **{name: address})


def test_nothing_is_done_at_an_event():
    with pytest.raises(ValueError, match="could run a script"):
        tag("p", onclick="x")


@pytest.mark.parametrize(
    "address",
    [
        "02-pumps.ipynb",
        "#top",
        "a/b?c=d:e",
        "https://example.org/",
        "data:text/plain;base64,QQ==",
        "",
    ],
)
def test_an_address_of_a_page_or_a_file_is_taken(address):
    assert f'<a href="{address}"></a>' == tag("a", href=address)

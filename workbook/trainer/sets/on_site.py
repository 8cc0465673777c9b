"""A set of work as a link: each person's own numbers open on the static site, and answers come back as a file."""

from collections.abc import Collection
from typing import NamedTuple

from solver import SolverError
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.qr import elsewhere
from workbook.ui.static_site import link_at

from .as_text import MOST_LISTED, text_of
from .set_file import Assigned

__all__ = ["BACK", "PROVES", "Linked", "linked", "page_html", "sentences"]

PAGE, WORD = "27-from-your-trainer.ipynb", "class"
OPENS = "People open it in a browser, and type their name or number the way your list has it. Then they get their own numbers."
BACK = (
    "At the end they press “Save your work as one file”, and send you that file. Take it in like any other "
    "work: it's graded again and goes into the gradebook."
)
PROVES = (
    "A file shows what was typed and when that device says it was. It doesn't prove who typed it, that "
    "nobody helped, or that it was the first try: nothing is signed, and another browser starts fresh. "
    "The link has no names and no ids in it, but whoever knows somebody's id can open that person's "
    "numbers. For a grade that counts, have people work where you can see them."
)
UNCHECKED = (
    f"Your list has more than {MOST_LISTED} people, so it doesn't go into the link. A mistyped id shows when "
    "you take the work in."
)
SCAN = "Scan it, or send it"


class Linked(NamedTuple):
    """A set as a text to send, and the link that opens it; `checked` where mistyped ids are noticed."""

    title: str
    text: str
    link: str
    checked: bool


def linked(assigned: Assigned, site: str, people: Collection[str] = ()) -> Linked:
    """The set as it opens on the site at this address, for these ids.

    Raises:
        SolverError: the address is none.
    """
    text = text_of(assigned, people)
    try:
        link = link_at(site.strip(), PAGE, **{WORD: text})
    except ValueError as refusal:
        raise SolverError(str(refusal)) from None
    return Linked(assigned.title, text, link, len(people) <= MOST_LISTED)


def sentences(one: Linked) -> list[str]:
    """The link, how the answers come back, and what they prove."""
    told = ["This link opens the set on your website:", f"    {one.link}", OPENS]
    return [*told, *([] if one.checked else [UNCHECKED]), BACK, PROVES]


def page_html(one: Linked) -> Markup:
    """The link, its QR code and the text, to show or to send."""
    copied = tag(
        "textarea",
        one.text,
        cls="w2w-copy",
        readonly=True,
        rows=4,
        aria_label=f"Text of {one.title}, to copy",
    )
    return joined(
        tag("p", "The link:", tag("br"), tag("a", one.link, cls="w2w-save", href=one.link)),
        elsewhere(one.link, SCAN),
        tag("p", "Or this text, to paste on the page “From your trainer”:"),
        copied,
    )

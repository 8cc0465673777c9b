"""A QR code for a second device: a picture that its camera reads as a link or a text."""

import segno

from solver.render.svg import element

from .markup import Markup, joined, tag
from .static_site import link_to_page

__all__ = ["elsewhere", "page_elsewhere", "qr_svg"]

QUIET = 4  # modules of white around it, which the standard (ISO/IEC 18004) asks for
MOST = 800  # characters; with more, a camera can't tell the modules apart on a screen
SCANS = "Scan this with the camera of the other device, or open this link there:"
TOO_LONG = "Open this link on the other device:"


def qr_svg(text: str, says: str) -> str:
    """The code as SVG, black on white on any page; `says` is what it is for who cannot see it.

    >>> qr_svg("EX-1", "A code")[:48]
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox='
    """
    rows = segno.make(text, error="m", micro=False).matrix
    side = len(rows) + 2 * QUIET
    dark = "".join(
        f"M{x + QUIET},{y + QUIET}h1v1h-1z"
        for y, row in enumerate(rows)
        for x, on in enumerate(row)
        if on
    )
    return element(
        "svg",
        element("rect", width=side, height=side, fill="#fff"),
        element("path", d=dark, fill="#000"),
        xmlns="http://www.w3.org/2000/svg", viewBox=f"0 0 {side} {side}", role="img",
        aria_label=says, class_="w2w-qr",
    )  # fmt: skip


def elsewhere(link: str, says: str) -> Markup:
    """A fold with a link and its code; nothing without a link."""
    if not link:
        return Markup()
    short = len(link) <= MOST
    return tag(
        "details",
        tag("summary", says),
        tag("p", SCANS if short else TOO_LONG),
        Markup(qr_svg(link, f"QR code: {says}")) if short else None,
        tag("p", tag("a", link, cls="w2w-save", href=link)),
    )


def page_elsewhere(page: str, says: str, **words: str) -> Markup:
    """A fold that opens a page of this site on another device; nothing outside the static site."""
    return joined(elsewhere(link_to_page(page, **words) or "", says))

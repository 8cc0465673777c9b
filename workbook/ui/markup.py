"""HTML built from calls: text and attributes are always escaped, so nothing typed becomes a tag.

    tag("p", "Flow < 100 gpm", cls="w2w-about")      <p class="w2w-about">Flow &lt; 100 gpm</p>
    tag("ul", (tag("li", name) for name in names))   children: text, HTML, or any iterable of them
    tag("th", label, scope="row")                    attributes by name
    tag("div", tabindex=0, aria_label=title)         aria_label is aria-label; for_ is for
    tag("textarea", text, readonly=True)             True: the name alone; False, None: left out
    tag("br")                                        an element without an end
    joined(tag("h4", title), table)                  several beside each other, without an element
    Markup(", ").join(names)                         with something between them

What is built is `Markup`, a kind of `str` that is not escaped again: a widget's value, or a child
of another tag. HTML from elsewhere (of the solver's `render`, a picture) is marked where it comes in:
`Markup(step_html(...))`. Nothing else may be, least of all a text with something typed in it. Two
kinds added are safe too: `markup + text` escapes the text. An f-string is not: it gives a plain `str`,
which the next tag shows as text. So say what a function returns, `-> Markup`, and mypy sees that.
"""

import re
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import TypeAlias

from markupsafe import Markup, escape

__all__ = ["Child", "Markup", "joined", "style", "tag"]

Child: TypeAlias = str | int | Iterable["Child"] | None

NAME = re.compile(r"[a-z][a-z0-9-]*")
NO_END = {"br", "hr", "img", "input", "link", "meta"}
ADDRESSES = {"href", "src"}
# A browser runs what follows some schemes; it drops line ends and tabs within one.
OTHER_SCHEME = re.compile(r"(?!(?:https?|mailto|data):)[^/?#]*:", re.IGNORECASE)


def tag(name: str, *children: Child, cls: str = "", **attributes: str | int | None) -> Markup:
    """An element with its attributes and children. `cls` is its class, or several with blanks.

    Raises:
        ValueError: no element or attribute has such a name, or an address would run a script.

    >>> tag("p", "5 < 6 ", tag("b", "& more"), cls="w2w-about")
    Markup('<p class="w2w-about">5 &lt; 6 <b>&amp; more</b></p>')
    >>> tag("ol", [tag("li", each) for each in ("one", "two")], aria_label='"steps"', hidden=True)
    Markup('<ol aria-label="&#34;steps&#34;" hidden><li>one</li><li>two</li></ol>')
    """
    given = f' class="{escape(cls)}"' if cls else ""
    for each, value in attributes.items():
        given += _attribute(each, value)
    start = f"<{_name(name)}{given}>"
    return Markup(start if name in NO_END else f"{start}{_inside(children)}</{name}>")


def joined(*children: Child) -> Markup:
    """Children beside each other: text escaped, HTML as it is, nothing for None.

    >>> joined("5 < 6", [tag("br"), None, 7])
    Markup('5 &lt; 6<br>7')
    """
    return Markup(_inside(children))


@cache
def style(*paths: Path) -> Markup:
    """The rules of files of our own, as one element."""
    return tag("style", *(Markup(path.read_text(encoding="utf-8")) for path in paths))


def _inside(children: Iterable[Child]) -> str:
    return "".join(map(_safe, children))


def _safe(child: Child) -> str:
    if isinstance(child, Markup):
        return child
    if isinstance(child, str | int):
        return escape(child)
    return "" if child is None else _inside(child)


def _attribute(name: str, value: str | int | None) -> str:
    if value is None or value is False:
        return ""
    plain = _name(name.rstrip("_").replace("_", "-"))
    if value is True:
        return f" {plain}"
    if plain.startswith("on") or (plain in ADDRESSES and OTHER_SCHEME.match(str(value))):
        raise ValueError(f"{plain}={value!r} could run a script")
    return f' {plain}="{escape(value)}"'


@cache
def _name(name: str) -> str:
    if not NAME.fullmatch(name):
        raise ValueError(f"{name!r} names no element and no attribute")
    return name

"""Cautions: what to mind before going near a machine, in a box or in a line that opens.

Their texts are in cautions.toml.
"""

import tomllib
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import Any

from .markup import Markup, joined, tag
from .pieces import Shown, listed, state_line

__all__ = ["caution_box", "caution_line", "caution_lines", "topics"]


@cache
def _texts() -> dict[str, Any]:
    return tomllib.loads(Path(__file__).with_name("cautions.toml").read_text(encoding="utf-8"))


def topics() -> list[str]:
    """What there are cautions for."""
    return [name for name, value in _texts().items() if isinstance(value, dict)]


def caution_box(*wanted: str) -> Shown:
    """The cautions for these topics, and the line under all of them.

    Raises:
        LookupError: there are no cautions for a topic; it lists those there are.
    """
    html = joined(state_line("⚠", "Caution: each of these can kill"), _groups(wanted))
    return Shown(html, _as_text(wanted), "w2w-cautions")


def caution_line(*wanted: str) -> Shown:
    """The same in one line, which opens to all of it.

    Raises:
        LookupError: as for `caution_box`.
    """
    named = [_texts()[name]["title"].lower() for name in _known(wanted)]
    mark = tag("span", "⚠", cls="w2w-mark", aria_hidden="true")
    line = tag(
        "summary",
        mark,
        f"Caution: {listed(named or ['working on pumps'])} can kill. Read this first.",
    )
    return Shown(
        tag("details", line, _groups(wanted)), _as_text(wanted), "w2w-cautions", "w2w-brief"
    )


def _known(wanted: Sequence[str]) -> Sequence[str]:
    for name in wanted:
        if name not in topics():
            raise LookupError(f"No cautions for {name!r}; there are: {', '.join(topics())}.")
    return wanted


def _groups(wanted: Sequence[str]) -> Markup:
    texts = _texts()
    groups = (_group(texts[name]) for name in _known(wanted))
    return joined(tag("div", groups, cls="w2w-columns"), tag("p", tag("b", texts["always"])))


def _as_text(wanted: Sequence[str]) -> str:
    return "\n".join(["Caution", *caution_lines(*wanted)])


def caution_lines(*wanted: str) -> list[str]:
    """The cautions for these topics as sentences with their source, and the one under them all."""
    texts = _texts()
    lines = [f"{line} ({source})" for name in wanted for line, source in texts[name]["lines"]]
    return [*lines, texts["always"]]


def _group(topic: dict[str, Any]) -> Markup:
    lines = (tag("li", line, " ", tag("cite", source)) for line, source in topic["lines"])
    return tag("div", tag("p", topic["title"], cls="w2w-want"), tag("ul", lines))

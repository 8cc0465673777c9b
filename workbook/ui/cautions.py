"""The caution box: what to mind before going near a machine. Its texts are in cautions.toml."""

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from .markup import Markup, joined, tag
from .pieces import Shown, state_line

__all__ = ["caution_box", "caution_lines", "topics"]


@cache
def _texts() -> dict[str, Any]:
    return tomllib.loads(Path(__file__).with_name("cautions.toml").read_text(encoding="utf-8"))


def topics() -> list[str]:
    """What there are cautions for."""
    return [name for name, value in _texts().items() if isinstance(value, dict)]


def caution_box(*wanted: str) -> Shown:
    """The cautions for these topics, and the line that stands under all of them.

    Raises:
        LookupError: there are no cautions for a topic; it lists those there are.
    """
    for name in wanted:
        if name not in topics():
            raise LookupError(f"No cautions for {name!r}; there are: {', '.join(topics())}.")
    texts = _texts()
    html = joined(
        state_line("⚠", "Caution: each of these can kill"),
        tag("div", (_group(texts[name]) for name in wanted), cls="w2w-columns"),
        tag("p", tag("b", texts["always"])),
    )
    return Shown(html, "\n".join(["Caution", *caution_lines(*wanted)]), "w2w-cautions")


def caution_lines(*wanted: str) -> list[str]:
    """The cautions for these topics as sentences with their source, and the one under them all."""
    texts = _texts()
    lines = [f"{line} ({source})" for name in wanted for line, source in texts[name]["lines"]]
    return [*lines, texts["always"]]


def _group(topic: dict[str, Any]) -> Markup:
    lines = (tag("li", line, " ", tag("cite", source)) for line, source in topic["lines"])
    return tag("div", tag("p", topic["title"], cls="w2w-want"), tag("ul", lines))

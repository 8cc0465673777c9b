"""The caution box: what to mind before going near a machine. Its texts are in cautions.toml."""

import tomllib
from functools import cache
from html import escape
from pathlib import Path

from .shown import Shown

__all__ = ["caution_box", "caution_lines", "topics"]


@cache
def _texts() -> dict:
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
    mark = '<span class="w2w-mark" aria-hidden="true">⚠</span>'
    groups = "".join(_group(texts[name]) for name in wanted)
    html = (
        f'<p class="w2w-state">{mark}Caution: each of these can kill</p>'
        f'<div class="w2w-columns">{groups}</div><p><b>{escape(texts["always"])}</b></p>'
    )
    return Shown(html, "\n".join(["Caution", *caution_lines(*wanted)]), "w2w-cautions")


def caution_lines(*wanted: str) -> list[str]:
    """The cautions for these topics as sentences with their source, and the one under them all."""
    texts = _texts()
    lines = [f"{line} ({source})" for name in wanted for line, source in texts[name]["lines"]]
    return [*lines, texts["always"]]


def _group(topic: dict) -> str:
    lines = "".join(
        f"<li>{escape(line)} <cite>{escape(source)}</cite></li>" for line, source in topic["lines"]
    )
    return f'<div><p class="w2w-want">{escape(topic["title"])}</p><ul>{lines}</ul></div>'

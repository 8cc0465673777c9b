"""Something to read in a cell, in the workbook's look, that needs no running page."""

from functools import cache
from pathlib import Path

__all__ = ["Shown", "css"]


@cache
def css() -> str:
    """The look of everything the workbook shows."""
    look = Path(__file__).with_name("look.css").read_text(encoding="utf-8")
    return f"<style>{look}</style>"


class Shown:
    """HTML for a cell, and the same as plain text where HTML cannot be shown."""

    def __init__(self, html: str, text: str, *names: str):
        self.html, self.text = html, text
        self.names = " ".join(("w2w-panel", *names))

    def _repr_mimebundle_(self, include=None, exclude=None) -> dict[str, str]:
        html = f'{css()}<div class="{self.names}">{self.html}</div>'
        return {"text/html": html, "text/plain": self.text}

    def __repr__(self) -> str:
        return self.text

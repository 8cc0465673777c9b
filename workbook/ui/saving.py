"""Something to keep as a file: a link that holds all of it, so that no server is needed.

Such a link works in JupyterLab, and in a page that stands alone.
"""

from base64 import b64encode
from html import escape

__all__ = ["link"]


def link(says: str, name: str, kind: str, data: bytes) -> str:
    """A link that saves a file.

    >>> link("Save it", "a.txt", "text/plain", b"A")[:65]
    '<a class="w2w-save" download="a.txt" href="data:text/plain;base64'
    """
    held = f"data:{kind};base64,{b64encode(data).decode()}"
    return (
        f'<a class="w2w-save" download="{escape(name)}" href="{held}">{escape(says)}</a> '
        f'<span class="w2w-about">{escape(name)}</span>'
    )

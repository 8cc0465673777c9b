"""What is said of a state: a mark, a word, then sentences, in a region that a screen reader speaks."""

from html import escape

__all__ = ["STATES", "heard", "say"]

STATES = {
    "right": ("✓", "Right"),
    "mistake": ("↺", "Look again"),
    "close": ("≈", "Close"),
    "wrong": ("✗", "Not yet"),
    "unreadable": ("?", "Not read"),
    "worked": ("=", "Worked out"),
    "missing": ("+", "More is needed"),
    "contradiction": ("≠", "Readings disagree"),
    "notice": ("!", "Please check"),
    "note": ("›", "Note"),
    "fault": ("!", "Something went wrong"),
}


def heard(text: str) -> str:
    """A region that a screen reader speaks and nobody sees."""
    return f'<div class="w2w-heard" role="status">{escape(text)}</div>'


def say(state: str, *sentences: str, spoken: str = "", html: str = "", foot: str = "") -> str:
    """A region that a screen reader speaks: a mark, a word, then sentences, all escaped.

    `spoken` is heard but not seen; `html` follows as it is; `foot` comes last, in a softer colour.
    Without a state the region is empty.
    """
    if not state:
        return '<div class="w2w-say" role="status" aria-live="polite"></div>'
    mark, word = STATES[state]
    body = "".join(f"<p>{escape(sentence)}</p>" for sentence in sentences if sentence)
    unseen = f'<span class="w2w-heard">{escape(spoken)}</span>' if spoken else ""
    last = f'<p class="w2w-foot">{escape(foot)}</p>' if foot else ""
    return (
        f'<div class="w2w-say w2w-{state}" role="status" aria-live="polite">'
        f'<p class="w2w-state"><span class="w2w-mark" aria-hidden="true">{mark}</span>{word}</p>'
        f"{body}{unseen}{html}{last}</div>"
    )

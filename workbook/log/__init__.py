"""The attempt log: every graded answer, kept for good. One log serves candidate, class and group.

>>> import tempfile, pathlib
>>> log = Log(pathlib.Path(tempfile.mkdtemp()) / "attempts.jsonl")
>>> log.keep(made(code="BP-2U1-7-KMZ", family="brake_power", level=2, typed="9", status="wrong"))
>>> [(a.typed, a.status) for a in log.attempts]
[('9', 'wrong')]
"""

from .attempt import SHOWN, Attempt, NotAnAttempt, line_of, made, now, read_line
from .checked import NotALine, checked_line, fields_of
from .disk import NotKept, NotRead, add_lines
from .merging import merged
from .store import Log, Strange, default_path, parse

__all__ = [
    "SHOWN",
    "Attempt",
    "Log",
    "NotALine",
    "NotAnAttempt",
    "NotKept",
    "NotRead",
    "Strange",
    "add_lines",
    "checked_line",
    "default_path",
    "fields_of",
    "line_of",
    "made",
    "merged",
    "now",
    "parse",
    "read_line",
]

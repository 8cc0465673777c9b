"""The attempt log: every graded answer, kept for good. One log serves candidate, class and group.

- `attempt.py`: one graded answer, as a line of the log.
- `lines.py`: a file of lines that only grows, each with a check; kept through to the disk.
- `store.py`: the log, what has been read of it, logs of several machines made one.
- `journal.py`: the same lines in a browser's own database, for the static site.

>>> import tempfile, pathlib
>>> log = Log(pathlib.Path(tempfile.mkdtemp()) / "attempts.jsonl")
>>> log.keep(made(code="BP-2U1-7-KMZ", family="brake_power", level=2, typed="9", status="wrong"))
>>> [(a.typed, a.status) for a in log.attempts]
[('9', 'wrong')]
"""

from .attempt import SHOWN, Attempt, NotAnAttempt, line_of, made, now, read_line
from .journal import lasting
from .lines import NotALine, NotKept, NotRead, add_lines, checked_line, fields_of
from .store import KEPT, Log, Strange, default_path, merged, parse

__all__ = [
    "KEPT",
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
    "lasting",
    "line_of",
    "made",
    "merged",
    "now",
    "parse",
    "read_line",
]

"""Start another program and be sure that it ends with this one.

Only the standard library: this also runs before anything is installed.
"""

import contextlib
import os
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

__all__ = ["ROOT", "Say", "end_on_signals", "environment", "run", "started"]

ROOT = Path(__file__).resolve().parents[2]
Say = Callable[[str], object]  # what shows a sentence to whoever waits
PATIENCE = 10  # seconds a program gets to end by itself


def environment(python: str = sys.executable, **more: str) -> dict[str, str]:
    """Return this program's environment, for a program that the Python at `python` runs.

    In it Python finds the project beside this file, and programs that came with a package are
    found by their names, as nbgrader asks for one.
    """
    paths = {"PYTHONPATH": str(ROOT), "PATH": str(Path(python).parent)}
    before = {name: filter(None, [first, os.environ.get(name)]) for name, first in paths.items()}
    found = {name: os.pathsep.join(parts) for name, parts in before.items()}
    return {**os.environ, **found, **more}


@contextlib.contextmanager
def started(command: Sequence[str], **options: Any) -> Iterator[subprocess.Popen[str]]:
    """Start `command`; however the block is left, the program has ended after it."""
    with subprocess.Popen(command, **options) as process:
        try:
            yield process
        finally:
            _end(process)


def _end(process: subprocess.Popen) -> None:
    if process.poll() is None:
        process.terminate()
    try:
        process.wait(PATIENCE)
    except subprocess.TimeoutExpired:
        process.kill()


def run(command: Sequence[str], **options: Any) -> int:
    """Run `command` in this program's place and return its exit status.

    Ctrl+C reaches both programs: the other one decides what it means.
    """
    with started(command, **options) as process:
        while True:
            try:
                return process.wait()
            except KeyboardInterrupt:
                continue


def end_on_signals() -> None:
    """Leave in the ordinary way when told to stop, so that `started` can tidy up."""
    signal.signal(signal.SIGTERM, lambda number, frame: sys.exit(128 + number))

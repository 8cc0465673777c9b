"""nbgrader in a program of its own, which is kept: its start costs more than most of its commands."""

import os
import sys
import tempfile
import traceback
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from functools import cache
from multiprocessing import get_context
from pathlib import Path

from workbook.start import child

__all__ = ["run_nbgrader"]


def run_nbgrader(folder: Path, words: Sequence[str]) -> tuple[int, str]:
    """Run one command of nbgrader's in a folder; its exit status, and all that it said."""
    try:
        return _program().submit(_run, str(folder), list(words)).result()
    except BrokenProcessPool as fault:
        _program.cache_clear()
        return 1, f"nbgrader came to a sudden end. {fault}"


@cache
def _program() -> ProcessPoolExecutor:
    # A fresh program, for nbgrader changes folder and settings of the one it runs in.
    fresh = get_context("spawn")
    return ProcessPoolExecutor(1, fresh)


def _run(folder: str, words: list[str]) -> tuple[int, str]:
    """In the other program: run it, with all that it and its kernels say written to a file."""
    os.environ.update(child.environment())
    with tempfile.TemporaryFile() as file:
        before = [(stream, os.dup(stream)) for stream in (1, 2)]
        try:
            for stream, _ in before:
                os.dup2(file.fileno(), stream)
            status = _status(folder, words)
        finally:
            sys.stdout.flush()
            sys.stderr.flush()
            for stream, copy in before:
                os.dup2(copy, stream)
                os.close(copy)
        file.seek(0)
        return status, file.read().decode("utf-8", "replace")


def _status(folder: str, words: list[str]) -> int:
    from jupyter_core.application import NoStart
    from nbgrader.apps import NbGraderApp

    os.chdir(folder)
    program = NbGraderApp.instance()
    try:
        program.initialize(words)
        program.start()
    except NoStart:  # a command of a command has done it all
        return 0
    except SystemExit as end:
        return end.code if isinstance(end.code, int) else int(end.code is not None)
    except Exception:
        traceback.print_exc()
        return 1
    finally:
        program.reset()
    return 0

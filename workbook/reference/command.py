"""python3 -m workbook sheet: the formulas of some chapters as a PDF of one or two pages."""

import argparse
import sys
from pathlib import Path

from solver import SolverError

from .formulas import by_chapter
from .sheet import NoChapter, sheet_of

__all__ = ["run"]


def run(options: argparse.Namespace) -> int:
    """Write the sheet and say what it holds; return the exit status."""
    wanted = tuple(name.strip() for name in (options.chapters or "").split(",") if name.strip())
    if options.chapters is not None and not wanted:
        return _refuse(f"Type at least one chapter after --chapters: {', '.join(by_chapter())}.")
    try:
        sheet = sheet_of(wanted or tuple(by_chapter()), options.units)
        Path(options.pdf).write_bytes(sheet.pdf)
    except (NoChapter, SolverError) as refusal:
        return _refuse(str(refusal))
    except OSError as error:
        return _refuse(f"{options.pdf}: {error.strerror}. Check the name and the folder.")
    print(" ".join(filter(None, (f"{options.pdf} is written.", *sheet.says))))
    return 0


def _refuse(sentence: str) -> int:
    print(sentence, file=sys.stderr)
    return 2

"""python3 -m workbook course, set and mark: what can be typed after each.

Only the standard library is imported at the top, for options are read before all is installed.
"""

import argparse
import io
import shlex
import sys
from collections.abc import Sequence
from datetime import UTC, datetime

__all__ = [
    "course_option",
    "course_options",
    "line_of",
    "mark_options",
    "run",
    "say_in_utf8",
    "set_and_course",
    "set_options",
    "when",
]


def course_options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `course`."""
    parser.add_argument("folder", help="where the course is, or where to put it")
    parser.add_argument(
        "--people", metavar="CSV", help="the list of people; it needs a column called id"
    )
    parser.add_argument(
        "--name", default="", help="what nbgrader calls the course; the folder's name if left out"
    )
    parser.add_argument(
        "--exchange",
        metavar="FOLDER",
        default="",
        help="nbgrader's exchange: a folder everyone here shares",
    )


def set_options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `set`."""
    set_and_course(parser)
    parser.add_argument("--file", metavar="TOML", help="take the set from this file")
    parser.add_argument(
        "--chapters", metavar="A,B", default="", help="make a set from these chapters"
    )
    parser.add_argument(
        "--shares",
        metavar="TEXT",
        default="",
        help='or by a share of each chapter, such as "head 30, wet well 20", or the name of a mixture you keep',
    )
    parser.add_argument(
        "--families", metavar="A,B", default="", help="or from these kinds of problem"
    )
    parser.add_argument(
        "--exam", metavar="CODE", default="", help="or as the practice exam of this code is made"
    )
    parser.add_argument("--count", type=int, default=10, help="how many questions; 10 if left out")
    parser.add_argument("--level", type=int, default=0, help="1 is the easiest; 0 mixes all")
    parser.add_argument("--units", choices=("us", "si"), default="us", help="units of the problems")
    parser.add_argument(
        "--replace",
        action="store_true",
        help="replace the set that has this name; a copy of the old one is kept",
    )
    parser.add_argument("--release", action="store_true", help="give it out through the exchange")
    parser.add_argument(
        "--site",
        metavar="ADDRESS",
        default="",
        help="also print a link that opens the set on your website",
    )


def mark_options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `mark`."""
    set_and_course(parser)
    parser.add_argument(
        "--hand-in", metavar="FOLDER", help="first take in the zip files and folders in here"
    )
    times = parser.add_mutually_exclusive_group()
    times.add_argument("--when", type=when, help="when those were turned in, all of them")
    times.add_argument(
        "--received",
        dest="prefer",
        action="store_const",
        const="received",
        help="count the time each file was saved, which is the usual way",
    )
    times.add_argument(
        "--said",
        dest="prefer",
        action="store_const",
        const="said",
        help="count the time that each person's own file says",
    )
    parser.add_argument(
        "--as",
        dest="said_as",
        metavar="TYPED=ID",
        type=_said_as,
        action="append",
        default=[],
        help="whose work it is: maria=op01 for a mistyped name, or the name of a file and =op01",
    )
    parser.add_argument(
        "--collect",
        action="store_true",
        help="first take in what was turned in through the exchange",
    )
    parser.add_argument(
        "--nbgrader", action="store_true", help="let nbgrader do the grading, which is slow"
    )
    parser.add_argument(
        "--again",
        action="store_true",
        help="with --nbgrader: also grade again what is graded already",
    )
    parser.add_argument(
        "--feedback", action="store_true", help="make a feedback page for each person"
    )
    parser.add_argument(
        "--release", action="store_true", help="give those pages out through the exchange"
    )
    parser.add_argument("--grades", metavar="CSV", help="write the grades to this file")
    many = parser.add_mutually_exclusive_group()
    many.add_argument(
        "--workers",
        metavar="N",
        type=_workers,
        default=0,
        help="how many processes share the grading",
    )
    many.add_argument(
        "--scheduler",
        metavar="ADDRESS",
        default="",
        help="share the grading with other computers, through this dask scheduler",
    )


def set_and_course(parser: argparse.ArgumentParser) -> None:
    """The set, and the course it is in."""
    parser.add_argument("set", help="the name of the set, such as week-3")
    course_option(parser)


def course_option(parser: argparse.ArgumentParser) -> None:
    """Where the course is, for every command that works in one."""
    parser.add_argument(
        "--course",
        metavar="FOLDER",
        default=".",
        help="the folder of the course; this folder if left out",
    )


def _workers(text: str) -> int:
    if text.isdecimal() and 1 <= int(text) <= 64:
        return int(text)
    raise argparse.ArgumentTypeError(f"{text} isn't a number of workers; type 1 to 64")


def _said_as(text: str) -> tuple[str, str]:
    typed, equals, person = text.rpartition("=")
    if typed.strip() and equals and person.strip():
        return typed.strip(), person.strip()
    raise argparse.ArgumentTypeError(
        f"{text} doesn't say whose work it is; type what came, = and the id, such as maria=op01"
    )


def when(text: str) -> datetime:
    """A time that was typed, in UTC without an offset."""
    try:
        return datetime.fromisoformat(text).astimezone(UTC).replace(tzinfo=None)
    except (ValueError, OverflowError, OSError):
        raise argparse.ArgumentTypeError(
            f"{text} isn't a time; type one such as 2026-12-01T18:00"
        ) from None


def line_of(words: Sequence[str]) -> str:
    """The line that does the same in a terminal, from whatever folder that is in."""
    from workbook.start import child

    if sys.platform == "win32":
        typed = " ".join(f'"{word}"' if " " in word or not word else word for word in words)
        return f'cd /d "{child.ROOT}" && "{sys.executable}" -m workbook {typed}'
    root, python = shlex.quote(str(child.ROOT)), shlex.quote(sys.executable)
    return f"cd {root} && {python} -m workbook {shlex.join(words)}"


def say_in_utf8() -> None:
    """What is printed may have any letter: × and ≥ are in no code page of Windows' pipes."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8")


def run(options: argparse.Namespace) -> int:
    """Do what one of the three commands asks, and say each thing as it is done; the exit status."""
    from solver import SolverError
    from workbook.start.folder import CannotWrite

    from .steps import STEPS

    say_in_utf8()
    try:
        for sentence in STEPS[options.command](options):
            print(sentence, flush=True)
        return 0
    except (SolverError, CannotWrite) as fault:
        print(fault, file=sys.stderr)
    except OSError as error:
        why = f"{error.filename}: {error.strerror}" if error.filename else error
        print(f"{why}. Check the name and the folder.", file=sys.stderr)
    return 2

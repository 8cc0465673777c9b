"""The commands behind `python3 -m workbook`, and how their words are read.

To add one, write a function for its options and one that runs it, and list it in COMMANDS.
Only the standard library is imported at the top; a command imports what it needs when it runs,
by which time everything is installed.
"""

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from workbook.online import command as site
from workbook.online import links
from workbook.start import bootstrap, child
from workbook.trainer import command as trainer
from workbook.trainer import more_options as more
from workbook.trainer.on_paper import command as on_paper
from workbook.trainer.report import command as report

__all__ = ["COMMANDS", "Command", "main"]

SET_UP_FOR = "WIRE_TO_WATER_SET_UP_FOR"
QUICK = "--quick"
BY_FILE = ("--dist", "loadfile", "--no-loadscope-reorder")
HELP = "To see what you can type: python3 -m workbook --help"


@dataclass(frozen=True)
class Command:
    """One word after `python3 -m workbook`.

    `run` gets the options read, and the words left over when `takes_rest` is set; it returns the
    exit status. `needs` names the requirements file that must be installed before it runs.
    """

    help: str
    run: Callable[[argparse.Namespace], int]
    add_options: Callable[[argparse.ArgumentParser], None] = lambda parser: None
    needs: str = bootstrap.READER
    takes_rest: bool = False


class _Parser(argparse.ArgumentParser):
    def error(self, message):
        self.exit(2, f"{message[:1].upper()}{message[1:].rstrip('.')}. {HELP}\n")


def _port(text: str) -> int:
    if text.isdecimal() and 1024 <= int(text) <= 65535:
        return int(text)
    raise argparse.ArgumentTypeError(f"{text} isn't a port; type a number from 1024 to 65535")


def _open_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--folder", help="where your own pages are kept")
    _serving_options(parser)


def _serving_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--port", type=_port, help="use this port on the computer and no other")
    parser.add_argument(
        "--no-browser", action="store_true", help="don't open a browser; print the address instead"
    )


def _open(options: argparse.Namespace) -> int:
    from .start.launcher import open_workbook

    return open_workbook(options.folder, options.port, browser=not options.no_browser)


def _test(options: argparse.Namespace) -> int:
    # All of it, three files at a time, as browsers keep it waiting; a part of it by itself.
    words = options.rest or ["-n", "3", *BY_FILE, "--rerun-show-tracebacks"]
    if QUICK in words:
        lines = (child.ROOT / "tests" / "quick.txt").read_text(encoding="utf-8").splitlines()
        files = [line for line in lines if line and not line.startswith("#")]
        words = ["-n", "2", *BY_FILE, *(word for word in words if word != QUICK), *files]
    command = [sys.executable, "-m", "pytest", *words]
    return child.run(command, cwd=child.ROOT, env=child.environment())


def _record_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", nargs="?", help="a CSV file with a row for each pump and day")
    parser.add_argument(
        "--units", choices=("us", "si"), default="us", help="units of numbers typed without one"
    )
    parser.add_argument(
        "--template", action="store_true", help="print an empty CSV with every heading"
    )
    parser.add_argument("--demo", action="store_true", help="print the example plant as a CSV")
    parser.add_argument(
        "--csv", metavar="OUT", help="write the results to this file, a row for each one read"
    )
    parser.add_argument("--json", metavar="OUT", help="write everything to this file, for programs")
    parser.add_argument("--out", metavar="FOLDER", help="write a page of text for each pump")
    parser.add_argument("--pdf", metavar="OUT", help="make a PDF to print, of up to 100 pumps")


def _record(options: argparse.Namespace) -> int:
    from .record.command import run

    return run(options)


def _sheet_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--pdf", metavar="OUT", required=True, help="the file to write")
    parser.add_argument(
        "--units", choices=("us", "si"), default="us", help="us for letter paper, si for A4"
    )
    parser.add_argument(
        "--chapters", metavar="A,B", help="chapters to print; all of them if left out"
    )


def _sheet(options: argparse.Namespace) -> int:
    from .reference.sheet import run

    return run(options)


def _trainer_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "course", nargs="?", default=".", help="the folder of the course; this folder if left out"
    )
    _serving_options(parser)


def _trainer(options: argparse.Namespace) -> int:
    from .trainer.opening import open_course

    return open_course(options.course, options.port, browser=not options.no_browser)


COMMANDS = {
    "attend": Command(
        "keep the hours of a class meeting", trainer.run, more.attend_options, bootstrap.CLASS
    ),
    "class": Command(
        "report how a class did on a set", report.run, report.options, bootstrap.CLASS
    ),
    "backup": Command(
        "back up a course as one file", trainer.run, more.backup_options, bootstrap.CLASS
    ),
    "completion": Command(
        "print records of completion", trainer.run, more.completion_options, bootstrap.CLASS
    ),
    "course": Command(
        "set up a course for a class", trainer.run, trainer.course_options, bootstrap.CLASS
    ),
    "extend": Command(
        "give somebody more time for a set", trainer.run, more.extend_options, bootstrap.CLASS
    ),
    "grades": Command(
        "show or write everybody's grades over all sets",
        trainer.run,
        more.grades_options,
        bootstrap.CLASS,
    ),
    "links": Command("print the links that open it online", links.run, links.options),
    "mark": Command(
        "grade what a class turned in", trainer.run, trainer.mark_options, bootstrap.CLASS
    ),
    "open": Command("open the workbook; the same as no command", _open, _open_options),
    "override": Command(
        "give points for a question by hand",
        trainer.run,
        more.override_options,
        bootstrap.CLASS,
    ),
    "paper": Command("print a set on paper, and grade it", on_paper.run, on_paper.options),
    "record": Command("work out and check pump readings", _record, _record_options),
    "set": Command(
        "make a set of problems to give to a class",
        trainer.run,
        trainer.set_options,
        bootstrap.CLASS,
    ),
    "sheet": Command("print a formula sheet of one or two pages", _sheet, _sheet_options),
    "site": Command("build a website that anyone can open", site.run, site.options, bootstrap.SITE),
    "trainer": Command(
        "open the trainer's pages of a course", _trainer, _trainer_options, bootstrap.CLASS
    ),
    "test": Command(
        "run the tests; --quick runs only the everyday ones",
        _test,
        needs=bootstrap.TESTER,
        takes_rest=True,
    ),
}


def _read(words: Sequence[str]) -> argparse.Namespace:
    parser = _Parser(prog="python3 -m workbook", description="Wire to Water, a study workbook.")
    choices = parser.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    for name, command in COMMANDS.items():
        command.add_options(choices.add_parser(name, help=command.help))
    # Options alone mean the command a reader types most.
    if not words or (words[0].startswith("-") and words[0] not in ("-h", "--help")):
        words = ["open", *words]
    first = COMMANDS.get(words[0])
    if first is None and not words[0].startswith("-"):
        parser.error(f"There is no command {words[0]}")
    if first and first.takes_rest:
        return argparse.Namespace(command=words[0], rest=words[1:])
    return parser.parse_args(words)


def main(words: Sequence[str]) -> int:
    """Run the command that `words` ask for, setting up what it needs; return the exit status."""
    child.end_on_signals()
    options = _read(list(words))
    command = COMMANDS[options.command]
    try:
        # Set by the program that has just set everything up and started this one.
        if os.environ.get(SET_UP_FOR) == command.needs:
            return command.run(options)
        python = bootstrap.python_with(command.needs)
        again = [python, "-m", "workbook", *words]
        return child.run(again, env=child.environment(python, **{SET_UP_FOR: command.needs}))
    except bootstrap.SetupFailed as error:
        print(error, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("Stopped. Type the same command to go on.", file=sys.stderr)
        return 130

"""python3 -m workbook class: how a class did in a set, as text, and as files for a spreadsheet.

Only the standard library is imported at the top, for options are read before all is installed.
"""

import argparse
import sys
from pathlib import Path

from workbook.trainer.command import course_option, say_in_utf8

__all__ = ["options", "run"]


def options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `class`."""
    parser.add_argument("set", help="the name of the set, such as week-3")
    course_option(parser)
    parser.add_argument(
        "--no-names", action="store_true", help="show numbers in place of people's ids"
    )
    parser.add_argument(
        "--low",
        type=_percent,
        default=70,
        help="people below this percent of the points need help; 70 if left out",
    )
    for name in ("people", "questions", "mistakes", "cases"):
        parser.add_argument(f"--{name}", metavar="OUT", help=f"write the {name} to a CSV file")


def _percent(text: str) -> int:
    if text.isdecimal() and int(text) <= 100:
        return int(text)
    raise argparse.ArgumentTypeError(f"{text} isn't a percentage; type a number from 0 to 100")


def run(options: argparse.Namespace) -> int:
    """Do what the options of the command ask; return the exit status."""
    from solver import SolverError

    from .sections import report, report_text

    say_in_utf8()
    try:
        found = _marked(Path(options.course), options.set)
        written = _written(found, options)
    except SolverError as refusal:
        return _refuse(str(refusal))
    except OSError as error:
        return _refuse(f"{error.filename}: {error.strerror}. Check the name and the folder.")
    if not written:
        hidden, low = options.no_names, options.low / 100
        notes = found.notes(hidden)
        parts = report(found.facts, found.assigned.title, notes, hidden=hidden, low=low)
        sys.stdout.write(report_text(parts))
    return 0


def _refuse(sentence: str) -> int:
    print(sentence, file=sys.stderr)
    return 2


def _marked(course: Path, name: str):
    """The class, marked; a bar tells how far it is, where there is a screen to show it on."""
    from tqdm import tqdm

    from .gathered import gathered

    with tqdm(unit=" people", disable=None, leave=False) as bar:

        def step(done: int, of: int) -> None:
            bar.total = of
            bar.update()

        return gathered(course, name, step)


def _written(found, options: argparse.Namespace) -> int:
    """Write the files that are asked for; how many they were."""
    from solver import SolverError
    from workbook.ui.saving import whole_file

    from .files import FILES

    wanted = [(each, getattr(options, each.name)) for each in FILES if getattr(options, each.name)]
    if len({Path(out).resolve() for _, out in wanted}) < len(wanted):
        raise SolverError("Two files have the same name. Give each its own.")
    for each, out in wanted:
        with whole_file(Path(out)) as file:
            file.write(each.made(found.facts, options.no_names))
        print(f"Written: {out}", file=sys.stderr)
    return len(wanted)

"""The commands of `python -m solver`, and the options of each."""

import argparse
from typing import NoReturn

__all__ = ["parser"]

EXAMPLES = {
    "draw": "python -m solver draw water_power --seed 7",
    "show": "python -m solver show WP-1U2-7-DHA",
    "grade": 'python -m solver grade WP-1U2-7-DHA "31.6 hp"',
    "exam": 'python -m solver exam --shares "head 30, wet well 20" --count 50 --seed 7',
    "station": "python -m solver station --seed 7 --fault worn_rings",
    "fault": "python -m solver fault --level 1 --seed 7",
    "work": 'python -m solver work --given flow="450 gpm" --given head="62 ft" --find water_power',
}


class Parser(argparse.ArgumentParser):
    """An argument parser whose errors are one line that says what to type."""

    def error(self, message: str) -> NoReturn:
        command = self.prog.split()[-1]
        example = EXAMPLES.get(command, EXAMPLES["draw"])
        self.exit(2, f"{message[:1].upper()}{message[1:]}. For example, type: {example}\n")


def parser() -> Parser:
    """The commands and their options."""
    top = Parser(
        prog="python -m solver", description="Pump and motor problems with full solutions."
    )
    commands = top.add_subparsers(dest="command", required=True, metavar="command")

    def command(name: str, tells: str) -> argparse.ArgumentParser:
        one = commands.add_parser(name, help=tells, description=tells)
        one.add_argument("--json", action="store_true", help="full precision, for programs")
        return one

    command("families", "list the kinds of problem")
    one = command("draw", "draw a problem and show its solution")
    one.add_argument("family", help="the kind of problem, such as brake_power")
    one.add_argument(
        "--seed",
        type=int,
        required=True,
        help="any whole number, 0 or more; the same one gives the same problem",
    )
    one.add_argument("--units", choices=("us", "si"), default="us")
    one.add_argument("--level", type=int, default=1)
    command("show", "show the problem with this code").add_argument("code")
    one = command("grade", "grade an answer to the problem with this code")
    one.add_argument("code")
    one.add_argument("answer")
    _exam_command(
        command("exam", "what is in an exam: one by its code, or a new one by its shares")
    )
    one = command("station", "show one pump station: nameplates, readings, curves")
    one.add_argument(
        "--seed",
        type=int,
        required=True,
        help="any whole number; the same one gives the same station",
    )
    one.add_argument("--units", choices=("us", "si"), default="us")
    one.add_argument("--fault", default="", help="a fault, such as worn_rings")
    _fault_command(command("fault", "find the fault of a station: a case by its code"))
    one = command("work", "work out your own numbers")
    one.add_argument(
        "--given",
        action="append",
        default=[],
        metavar='NAME="VALUE UNIT"',
        help="something you know; repeat for each one",
    )
    one.add_argument("--find", required=True, metavar="NAME", help="what to calculate")
    one.add_argument("--units", choices=("us", "si"), default="us")
    return top


def _exam_command(one: argparse.ArgumentParser) -> None:
    one.add_argument("code", nargs="?", default="", help="an exam's code; else a new one is made")
    one.add_argument(
        "--shares",
        default="",
        metavar="TEXT",
        help='a share for each chapter, such as "head 30, wet well 20"; all alike if left out',
    )
    one.add_argument(
        "--mixtures",
        metavar="FILE",
        help='a file of mixtures, a line each: "Grade 2: head 30"; then --shares may name one of them',
    )
    one.add_argument("--count", type=int, default=20, help="how many questions")
    one.add_argument("--minutes", type=int, default=60)
    one.add_argument("--level", type=int, default=0, choices=range(4), help="0 mixes all levels")
    one.add_argument("--units", choices=("us", "si"), default="us")
    one.add_argument("--typed", action="store_true", help="typed answers in place of choices")
    one.add_argument("--seed", type=int, default=0, help="any whole number, 0 to 99999")


def _fault_command(one: argparse.ArgumentParser) -> None:
    one.add_argument("code", nargs="?", default="", help="a case's code; else --level and --seed")
    one.add_argument("--level", type=int, default=1, help="1 to 3")
    one.add_argument("--seed", type=int, default=0, help="any whole number, 0 or more")
    one.add_argument("--units", choices=("us", "si"), default="us")
    one.add_argument(
        "--take",
        action="append",
        default=[],
        metavar="READING",
        help="a reading to take, or a step before it such as tell or lock; repeat in order",
    )
    one.add_argument("--name", action="append", default=[], metavar="FAULT", help="what it is")
    one.add_argument("--do", default="", help="what to do next: run, watch, call or pull")
    one.add_argument("--review", action="store_true", help="end the case and show the review")

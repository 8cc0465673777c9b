"""python3 -m workbook record: work and judge every pump of a CSV file."""

import argparse
import contextlib
import io
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

from solver.own.record import Examined, examine
from solver.units.show import counted
from workbook.ui.saving import PART
from workbook.ui.spreadsheet import CODING

from .demo import demo_csv
from .findings import page_text
from .reading import Message, NoHeadings, Pump, PumpFile
from .results import CannotWrite, Write, csv_writer, json_writer, pages_writer, template

__all__ = ["run"]

ENOUGH = 100  # pumps from which a rate means something
MOST_SAID = 20  # messages printed; all of them stand on the pages and in the files


def run(options: argparse.Namespace) -> int:
    """Do what the options of the command ask; return the exit status."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8")  # × and ≥ are in no code page of Windows' pipes
    if options.template:
        sys.stdout.write(template(options.units).decode(CODING).replace("\r\n", "\n"))
        return 0
    if options.demo:
        sys.stdout.write(demo_csv())
        return 0
    if options.file is None:
        return _refuse(
            "Name the CSV file to read. Type --template for an empty one to fill in, or --demo for an example."
        )
    path = Path(options.file)
    if fault := _same(path, options):
        return _refuse(fault)
    try:
        with path.open("rb") as stream:
            return _through(stream, path.stat().st_size, options)
    except (NoHeadings, CannotWrite) as refusal:
        return _refuse(str(refusal))
    except OSError as error:
        name = str(error.filename or path).removesuffix(PART)
        return _refuse(f"{name}: {error.strerror}. Check the name and the folder.")


def _refuse(sentence: str) -> int:
    print(sentence, file=sys.stderr)
    return 2


def _same(path: Path, options: argparse.Namespace) -> str:
    """That a file would be written over what is read, or over another one."""
    files = (options.csv, options.json, options.pdf)
    names = [Path(name).resolve() for name in files if name]
    if path.resolve() in names:
        return "The result would overwrite the file you are reading. Give the result another name."
    if len(set(names)) < len(names):
        return "Two results have the same name. Give each its own."
    return ""


def _through(stream: BinaryIO, size: int, options: argparse.Namespace) -> int:
    pumps, told = PumpFile(stream, options.units), _Told()
    started = time.perf_counter()
    with _writers(pumps, options) as writers, _progress(stream, size) as step:
        for message in pumps.messages:
            told.say(message)
        if pumps.assumed:
            _print_beside_progress(pumps.assumed)
        for pump in pumps:
            examined = examine(pump.record)
            for write in writers:
                write(pump, examined)
            told.count(pump)
            step()
        seconds = time.perf_counter() - started
        if options.pdf:
            _print_beside_progress("Printing. 100 pumps take about a minute.")
    told.end(seconds)
    return 0


class _Told:
    """What has been said so far, and how much there was."""

    def __init__(self):
        self.pumps = self.faulty = self.messages = 0

    def say(self, message: Message) -> None:
        """Print a message, up to `MOST_SAID` of them."""
        self.messages += 1
        if self.messages <= MOST_SAID:
            _print_beside_progress(str(message))

    def count(self, pump: Pump) -> None:
        """One more row, and what is to be said of it."""
        self.pumps += 1
        self.faulty += bool(pump.messages)
        for message in pump.messages:
            self.say(message)

    def end(self, seconds: float) -> None:
        """Print how much there was, and the rate."""
        if self.messages > MOST_SAID:
            more = self.messages - MOST_SAID
            print(
                f"And {more:,} more notes; each one is with its pump in the files you asked for.",
                file=sys.stderr,
            )
        rate = (
            f", {self.pumps / seconds:,.0f} per second"
            if self.pumps >= ENOUGH and seconds > 0
            else ""
        )
        print(f"{counted(self.pumps, 'row')} worked{rate}. "
              f"{self.faulty:,} with a note.", file=sys.stderr)  # fmt: skip


@contextlib.contextmanager
def _writers(pumps: PumpFile, options: argparse.Namespace) -> Iterator[list[Write]]:
    """What is done with each pump; printed as a page where nothing else is asked for."""
    with contextlib.ExitStack() as stack:
        writers: list[Write] = []
        if options.csv:
            made = csv_writer(Path(options.csv), options.units, pumps.kept)
            writers.append(stack.enter_context(made))
        if options.json:
            made = json_writer(Path(options.json), pumps)
            writers.append(stack.enter_context(made))
        if options.out:
            writers.append(pages_writer(Path(options.out)))
        if options.pdf:
            from .printed import pdf_writer  # with typst and matplotlib behind it

            writers.append(stack.enter_context(pdf_writer(Path(options.pdf))))
        yield writers or [_print_page]


def _print_page(pump: Pump, examined: Examined) -> None:
    print(page_text(examined, pump.messages))


@contextlib.contextmanager
def _progress(stream: BinaryIO, size: int) -> Iterator:
    """A bar of how much of the file is read, where there is a screen to show it on."""
    from tqdm import tqdm  # only this command needs it

    with tqdm(total=size, unit="B", unit_scale=True, disable=None, leave=False) as bar:
        yield lambda: bar.update(min(stream.tell(), size) - bar.n)


def _print_beside_progress(sentence: str) -> None:
    from tqdm import tqdm

    tqdm.write(sentence, file=sys.stderr)

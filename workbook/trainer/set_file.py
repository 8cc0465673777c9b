"""A set of work as a file that a trainer writes: `set.toml` in the folder of the set.

`example.toml` beside this file shows every key, with what it means. The same file gives the same
problems on any machine; only a time without an offset means another moment in another place.

>>> week = parse_set_file('draw = 48213\\nchapters = ["head"]\\ncount = 5', "week-3")
>>> week.title, week.work.count, week.points, week.due
('week-3', 5, 1.0, None)
>>> parse_set_file('draw = 48213\\nchapters = ["haed"]', "week-3")
Traceback (most recent call last):
workbook.trainer.set_keys.SetFault: set.toml: chapters has “haed”, which is none. Did you mean “head”?
"""

import re
import tomllib
from pathlib import Path

from solver import SolverError
from solver.credit import Credit
from solver.own_plant import Plant, plant_of
from solver.work_set import WorkSet, set_of

from .assigned import Assigned
from .set_keys import CREDIT, EACH, PLAN, SET_FILE, SetFault, read_table
from .set_text import toml_of

__all__ = ["SET_FILE", "Assigned", "SetFault", "parse_set_file", "read_set_file", "toml_of"]

MOST = 200_000  # characters of a file


def read_set_file(path: Path) -> Assigned:
    """The set in a file; its name is that of the folder the file is in.

    Raises:
        SetFault: it cannot be read, or used; the sentence says what to write instead.
    """
    path = Path(path).absolute()
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        raise SetFault(f"There is no {path.name} in {path.parent}. Put it there.") from None
    except UnicodeDecodeError:
        raise SetFault(f"{path} is not plain text. Save it again as UTF-8.") from None
    except OSError as error:
        raise SetFault(f"{path} cannot be read: {error.strerror or error}.") from error
    return parse_set_file(text, path.parent.name)


def parse_set_file(text: str, name: str) -> Assigned:
    """The set that a file's text says, under this name; raises as `read_set_file` does."""
    found = read_table(_tables(text), PLAN)
    plan = {key: found.pop(key) for key in ("chapters", "families", "level", "units", "count")}
    if not plan["chapters"] and not plan["families"]:
        raise SetFault(f'{SET_FILE}: nothing is chosen. Write chapters = ["horsepower"].')
    plant, numbers, seed = found.pop("plant"), found.pop("numbers"), found.pop("draw")
    work = _work(plan, numbers == EACH, seed, _plant(plant, plan["units"]))
    credit = Credit(**read_table(found.pop("credit"), CREDIT, "credit"))
    return Assigned(name, found.pop("title") or name, work, credit=credit, **found)


def _tables(text: str) -> dict:
    """The text as data; its faults told by their line."""
    if len(text) > MOST:
        raise SetFault(f"{SET_FILE} is {len(text):,} characters long; no set needs {MOST:,}.")
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise SetFault(f"{SET_FILE} has too many brackets inside one another.") from None
    except ValueError as fault:
        raise SetFault(_where(text, str(fault))) from None


def _where(text: str, fault: str) -> str:
    lines = text.splitlines()
    at = re.search(r"line (\d+)", fault)
    number = min(int(at[1]), len(lines)) if at else 0
    if not number:
        return f"{SET_FILE} cannot be read to its end. Compare it with the example."
    line = lines[number - 1].strip()[:40]
    return (
        f"{SET_FILE}: line {number}, “{line}”, is not as TOML has it. Compare it with the example."
    )


def _plant(found: dict | None, units: str) -> Plant | None:
    """The plant, whose ranges are in the set's units unless it says other ones."""
    if found is None:
        return None
    try:
        return plant_of({"units": units, **found})
    except SolverError as fault:
        raise SetFault(f"{SET_FILE}: {fault}") from None


def _work(plan: dict, each: bool, seed: int, plant: Plant | None) -> WorkSet:
    try:
        return set_of(**plan, each=each, seed=seed, plant=plant)
    except SolverError as fault:
        raise SetFault(f"{SET_FILE}: {fault}") from None

"""The list of packages from which the browser's Python loads: our wheels, and the runtime's own.

Its form is that of the runtime's `pyodide-lock.json`, from which it is made.
"""

import hashlib
from collections.abc import Callable, Iterable
from email.message import Message
from email.parser import Parser
from pathlib import Path
from zipfile import ZipFile

from packaging.requirements import Requirement

from .refusal import NotBuilt
from .wheels import canonical

__all__ = ["FIGURES", "lock_of", "names_in"]

FIGURES = "matplotlib"  # what a page fetches later, if it can
BROWSER = {
    "extra": "",
    "implementation_name": "cpython",
    "os_name": "posix",
    "platform_system": "Emscripten",
    "python_full_version": "3.14.2",
    "python_version": "3.14",
    "sys_platform": "emscripten",
}
SPARED = {"jupyterlab-widgets"}  # that one is in the page itself


def lock_of(runtime: dict, wheels: Iterable[Path], where: Callable[[str], str | None]) -> dict:
    """The runtime's list with our wheels in place of its own packages.

    `where` says at which address a file of the runtime is to be had, or None where it is not;
    only matplotlib and what it needs are taken from there.

    Raises:
        NotBuilt: a wheel asks for a package that is not among them.
    """
    ours = dict(map(_entry, wheels))
    if missing := {need for _, needs in ours.values() for need in needs} - set(ours) - SPARED:
        raise NotBuilt(
            f"A page needs {', '.join(sorted(missing))}. Add that to workbook/online/browser.txt."
        )
    figures = _figures(runtime["packages"], set(ours), where)
    packages = {name: entry for name, (entry, _) in sorted(ours.items())} | figures
    return {**runtime, "packages": packages}


def names_in(lock: dict) -> tuple[list[str], list[str]]:
    """The names of our packages, which stand beside the list, and of those fetched later."""
    at = {name: entry["file_name"] for name, entry in lock["packages"].items()}
    ours = [name for name, file in at.items() if "/" not in file]
    return ours, [name for name in at if name not in ours]


def _entry(wheel: Path) -> tuple[str, tuple[dict, set[str]]]:
    """A wheel's name, its entry, and the names of what it asks for."""
    with ZipFile(wheel) as packed:
        names = packed.namelist()
        about = next(name for name in names if name.endswith(".dist-info/METADATA"))
        metadata = Parser().parsestr(packed.read(about).decode())
    name = canonical(metadata["Name"])
    tops = {each.split("/")[0].removesuffix(".py") for each in names if each.endswith(".py")}
    entry = {
        "name": name,
        "version": metadata["Version"],
        "file_name": wheel.name,
        "install_dir": "site",
        "sha256": hashlib.sha256(wheel.read_bytes()).hexdigest(),
        "package_type": "package",
        "imports": sorted(tops),
        "depends": [],  # all of them are loaded together, by name
        "unvendored_tests": False,
    }
    return name, (entry, set(_needs(metadata)))


def _needs(metadata: Message) -> Iterable[str]:
    for text in metadata.get_all("Requires-Dist") or []:
        need = Requirement(text)
        if need.marker is None or need.marker.evaluate(BROWSER):
            yield canonical(need.name)


def _figures(theirs: dict, ours: set[str], where: Callable[[str], str | None]) -> dict:
    """matplotlib with all it needs that is not ours; nothing where a file of it is not to be had."""
    found: dict[str, dict] = {}
    waiting = [FIGURES]
    while waiting:
        name = waiting.pop()
        if name in found or name in ours:
            continue
        address = where(theirs[name]["file_name"]) if name in theirs else None
        if address is None:
            return {}
        found[name] = {**theirs[name], "file_name": address}
        waiting += theirs[name]["depends"]
    return found

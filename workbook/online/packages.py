"""The packages that a page needs in the browser: as wheels that hold no more than it uses, and listed.

From the list the browser's Python loads our wheels, and the runtime's own. Its form is that of the
runtime's `pyodide-lock.json`, from which it is made.
"""

import hashlib
import re
import shutil
import subprocess
import sys
import tempfile
import tomllib
from collections.abc import Iterable, Iterator, Mapping
from email.message import Message
from email.parser import Parser
from fnmatch import fnmatch
from importlib.metadata import distribution
from pathlib import Path
from typing import Any
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from packaging.requirements import Requirement

from workbook.start.bootstrap import pins
from workbook.start.child import ROOT

from . import NotBuilt

__all__ = ["canonical", "fetch", "gather", "lighter", "lock_of", "wanted"]

LIST = Path(__file__).with_name("browser.txt")
PACKAGES = ("solver", "workbook")
# Data that pages read; what only a computer runs, shows or prints stays out.
READ = {".css", ".csv", ".ipynb", ".js", ".mplstyle", ".py", ".toml", ".txt"}
ONLY_HERE = tuple(
    f"workbook/{part}"
    for part in (
        "online/browser.txt",
        "online/switched_off.txt",
        "online/labextension/",
        "online/parts/",
        "start/settings/",
    )
)
# The kernel asks for these by name, and pages do without: 6 MB and a second, to complete typed code
# and to install packages. Of `piplite` it sets two names in a module.
EMPTY = {"jedi": (), "micropip": (), "piplite": ("piplite/__init__.py", "piplite/piplite.py")}
# Compiled where it can be, and for no browser; its plain Python does the same.
PLAIN = "MarkupSafe"
# Wheels are for the Python that the kernel brings, or for any.
PLATFORM = ["--implementation=cp", "--abi=cp314", "--abi=none", "--python-version=3.14"]
PLATFORM += ["--platform=pyemscripten_2026_0_wasm32", "--platform=any"]
# Tests, other languages, other terminals: no page uses them.
LEFT_OUT = (
    "*/tests/*",
    "*.dist-info/sboms/*",
    "pygments/lexers/*",
    "wcwidth/table_grapheme_overrides/_known*",
)
KEPT = tuple(f"pygments/lexers/{name}.py" for name in ("__init__", "_mapping", "python"))
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


def canonical(name: str) -> str:
    """A package's name as lists write it.

    >>> canonical("ipython_pygments.lexers")
    'ipython-pygments-lexers'
    """
    return re.sub(r"[-_.]+", "-", name).lower()


def wanted() -> dict[str, str]:
    """The exact version of each package to fetch, by its name."""
    here = {canonical(name): version for name, version in pins("requirements.txt").items()}
    lines = [line.split("#")[0].strip() for line in LIST.read_text(encoding="utf-8").splitlines()]
    named = [line.partition("==") for line in lines if line]
    return {canonical(name): version or here[canonical(name)] for name, _, version in named}


def gather(kernel: Path, folder: Path) -> list[Path]:
    """Put every wheel into `folder`: the fetched ones, those of the kernel's folder, our own.

    Raises:
        NotBuilt: one could not be fetched.
    """
    with tempfile.TemporaryDirectory() as first:
        fetched = Path(first)
        fetch(wanted(), fetched)
        for wheel in kernel.glob("*.whl"):
            if wheel.name.split("-")[0] not in EMPTY:
                shutil.copy(wheel, fetched)
        _own(fetched)
        _plain(fetched, PLAIN)
        for name, modules in EMPTY.items():
            _wheel(fetched, name, "0", dict.fromkeys(modules, b""))
        return [lighter(wheel, folder) for wheel in sorted(fetched.glob("*.whl"))]


def fetch(packages: Mapping[str, str], folder: Path) -> None:
    """Fetch the wheels of these packages, in these versions, for the browsers' Python.

    Raises:
        NotBuilt: one could not be fetched.
    """
    exact = [f"{name}=={version}" for name, version in packages.items()]
    command = [sys.executable, "-m", "pip", "download", "--quiet", "--disable-pip-version-check"]
    command += ["--no-deps", "--only-binary=:all:", *PLATFORM, f"--dest={folder}", *exact]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        why = [line for line in done.stderr.splitlines() if line.startswith("ERROR: ")]
        raise NotBuilt(
            "The packages for the browser couldn't be downloaded. Check that this computer is on "
            f"the internet, then type the same command again. In short: {(why or ['nothing'])[-1]}"
        )


def _own(folder: Path) -> None:
    """The solver and the workbook of this checkout."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    files = {path.relative_to(ROOT).as_posix(): path.read_bytes() for path in _ours()}
    _wheel(folder, project["name"], project["version"], files)


def _plain(folder: Path, name: str) -> None:
    """The Python and the license of a package that is installed here, and nothing compiled."""
    package = distribution(name)
    parts = [p for p in package.files or () if p.suffix == ".py" or "licenses" in p.parts]
    files = {path.as_posix(): path.read_binary() for path in parts}
    _wheel(folder, canonical(name), package.version, files)


def _wheel(folder: Path, name: str, version: str, files: Mapping[str, bytes]) -> None:
    stem = f"{name.replace('-', '_')}-{version}"
    about = f"Metadata-Version: 2.4\nName: {name}\nVersion: {version}\n"
    with ZipFile(folder / f"{stem}-py3-none-any.whl", "w") as wheel:
        for inside, data in files.items():
            wheel.writestr(inside, data)
        wheel.writestr(f"{stem}.dist-info/METADATA", about)


def _ours() -> Iterator[Path]:
    for package in PACKAGES:
        for path in sorted((ROOT / package).rglob("*")):
            inside = path.relative_to(ROOT).as_posix()
            if path.suffix in READ and not inside.startswith(ONLY_HERE):
                yield path


def lighter(wheel: Path, folder: Path) -> Path:
    """The wheel in `folder`, without what is left out."""
    folder.mkdir(exist_ok=True)
    made = folder / wheel.name
    with ZipFile(wheel) as whole, ZipFile(made, "w", ZIP_DEFLATED) as light:
        for name in whole.namelist():
            if name in KEPT or not any(fnmatch(name, pattern) for pattern in LEFT_OUT):
                # Without a date: the same packages make the same wheel.
                light.writestr(ZipInfo(name), whole.read(name), ZIP_DEFLATED)
    return made


def lock_of(runtime: dict[str, Any], wheels: Iterable[Path]) -> dict[str, Any]:
    """The runtime's list with our wheels in place of its own packages.

    Raises:
        NotBuilt: a wheel asks for a package that is not among them.
    """
    ours = dict(map(_entry, wheels))
    if missing := {need for _, needs in ours.values() for need in needs} - set(ours) - SPARED:
        raise NotBuilt(
            f"A page needs {', '.join(sorted(missing))}. Add that to workbook/online/browser.txt."
        )
    return {**runtime, "packages": {name: entry for name, (entry, _) in sorted(ours.items())}}


def _entry(wheel: Path) -> tuple[str, tuple[dict[str, Any], set[str]]]:
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

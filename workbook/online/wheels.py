"""The packages that a page needs in the browser, as wheels that hold no more than it uses."""

import re
import shutil
import subprocess
import sys
import tempfile
import tomllib
from collections.abc import Iterator, Mapping
from importlib.metadata import distribution
from pathlib import Path
from zipfile import ZipFile

from workbook.start.bootstrap import pins
from workbook.start.child import ROOT

from .lighter import lighter
from .refusal import NotBuilt

__all__ = ["canonical", "fetch", "gather", "wanted"]

LIST = Path(__file__).with_name("browser.txt")
PACKAGES = ("solver", "workbook")
# Data that pages read; what only a computer runs, shows or prints stays out.
READ = {".css", ".csv", ".ipynb", ".mplstyle", ".py", ".toml", ".txt"}
ONLY_HERE = ("workbook/online/browser.txt", "workbook/start/settings/")
# The kernel asks for these by name, and pages do without: 6 MB and a second, to complete typed code
# and to install packages. Of `piplite` it sets two names in a module.
EMPTY = {"jedi": (), "micropip": (), "piplite": ("piplite/__init__.py", "piplite/piplite.py")}
# Compiled where it can be, and for no browser; its plain Python does the same.
PLAIN = "MarkupSafe"
# Wheels are for the Python that the kernel brings, or for any.
PLATFORM = ["--implementation=cp", "--abi=cp314", "--abi=none", "--python-version=3.14"]
PLATFORM += ["--platform=pyemscripten_2026_0_wasm32", "--platform=any"]


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
        for inside, data in (*files.items(), (f"{stem}.dist-info/METADATA", about)):
            wheel.writestr(inside, data)


def _ours() -> Iterator[Path]:
    for package in PACKAGES:
        for path in sorted((ROOT / package).rglob("*")):
            inside = path.relative_to(ROOT).as_posix()
            if path.suffix in READ and not inside.startswith(ONLY_HERE):
                yield path

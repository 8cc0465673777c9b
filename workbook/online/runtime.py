"""The Python that browsers run: at its usual address, or a copy of it; and modules as its bytecode."""

import hashlib
import json
import shutil
import subprocess
import sys
import urllib.request
from pathlib import Path

from jupyterlite_pyodide_kernel.constants import (
    PYODIDE_CDN_URL,
    PYODIDE_PYTHON_VERSION,
    PYODIDE_VERSION,
)

from . import NotBuilt

__all__ = [
    "COPY",
    "LIBRARY",
    "LOCK",
    "MODULE",
    "STANDARD",
    "Brought",
    "Runtime",
    "Usual",
    "place",
    "to_bytecode",
]

PYTHON = tuple(map(int, PYODIDE_PYTHON_VERSION.split(".")))
LOCK = "pyodide-lock.json"
START = "pyodide.mjs"
STANDARD = "python_stdlib.zip"
CORE = (START, "pyodide.asm.mjs", "pyodide.asm.wasm", STANDARD)
COPY = Path("static/pyodide")  # in the site
OURS = Path(__file__).with_name("worker")
MODULE = Path("static/loading.mjs")
LIBRARY = "library.zip"  # beside our modules
SCRIPT = Path(__file__).with_name("to_bytecode.py")
IN_NODE = Path(__file__).with_name("in_node.mjs")
FETCH = f"npm pack pyodide@{PYODIDE_VERSION}"


class Usual:
    """The runtime at the address that the kernel knows by itself, or at another like it.

    `outside` is that address.
    """

    def __init__(self, address: str = PYODIDE_CDN_URL):
        self.outside = address.rstrip("/")

    def read(self, file: str) -> bytes:
        """One of its files.

        Raises:
            NotBuilt: it could not be fetched.
        """
        address = f"{self.outside}/{file}"
        try:
            with urllib.request.urlopen(address, timeout=60) as answer:
                return answer.read()
        except OSError as error:
            raise NotBuilt(
                f"{address} couldn't be downloaded: {error}. Check that this computer is on "
                "the internet, or type the folder of a copy of the runtime after --runtime."
            ) from error

    @property
    def places(self) -> list[str]:
        """Where browsers find it, the first to be tried first."""
        return [f"{self.outside}/"]

    def bring(self, site: Path) -> None:
        """Nothing of it is in the site."""


class Brought:
    """A copy of the runtime in a folder, which the site serves, so no reader needs the internet.

    With `first`, readers try that one's address first, and the copy where it can't be reached.

    Raises:
        NotBuilt: the folder lacks a file of it.
    """

    def __init__(self, folder: Path, first: Usual | None = None):
        self.folder, self._first = folder, first
        self.outside = first.outside if first else ""
        if lacking := [name for name in (*CORE, LOCK) if not (folder / name).is_file()]:
            raise NotBuilt(
                f"The folder {folder} has no {', '.join(lacking)}. Unpack the runtime there, "
                f"version {PYODIDE_VERSION}. To download it, type: {FETCH}"
            )

    def read(self, file: str) -> bytes:
        """One of its files."""
        return (self.folder / file).read_bytes()

    @property
    def places(self) -> list[str]:
        """Where browsers find it, the first to be tried first; the copy is as our module sees it."""
        return [*(self._first.places if self._first else ()), f"./{COPY.name}/"]

    def bring(self, site: Path) -> None:
        """Copy what browsers load of it into a site."""
        (site / COPY).mkdir(parents=True)
        for file in CORE:
            shutil.copy(self.folder / file, site / COPY)


Runtime = Usual | Brought


def place(runtime: Runtime, site: Path) -> list[str]:
    """Put the runtime into a site, our module that loads it, and the standard library as bytecode.

    Returns the addresses that browsers load first; a site has its own library where that can be made.

    Raises:
        NotBuilt: the library could not be fetched or made.
    """
    runtime.bring(site)
    folder = site / MODULE.parent
    folder.mkdir(exist_ok=True)
    library = folder / LIBRARY
    library.write_bytes(runtime.read(STANDARD))
    quick = to_bytecode(library, runtime)
    if not quick:
        library.unlink()
    _write_modules(folder, runtime.places, library)
    first = runtime.places[0]
    base = first if "://" in first else f"./{COPY.as_posix()}/"
    core = [f"{base}{file}" for file in CORE if not (quick and file == STANDARD)]
    return [f"./{MODULE.as_posix()}", *core, *[f"./{(MODULE.parent / LIBRARY).as_posix()}"] * quick]


def _write_modules(folder: Path, places: list[str], library: Path) -> None:
    """Our modules, with the places of the runtime and a mark of all that a kept Python has to fit."""
    texts = {path.name: path.read_text(encoding="utf-8") for path in sorted(OURS.glob("*.mjs"))}
    quick = library.exists()
    mark = hashlib.sha256("".join(texts.values()).encode())
    mark.update(library.read_bytes() if quick else b"")
    words = {
        "places": places,
        "library": f"./{LIBRARY}" if quick else "",
        "mark": mark.hexdigest()[:16],
    }
    for name, text in texts.items():
        for word, value in words.items():
            text = text.replace(f"{{{{{word}}}}}", json.dumps(value))
        (folder / name).write_text(text, encoding="utf-8")


def to_bytecode(packed: Path, runtime: Runtime) -> bool:
    """Put bytecode in place of the modules of a zip, or of all wheels in a folder; False where nothing can.

    Raises:
        NotBuilt: it failed.
    """
    node = shutil.which("node")
    if sys.version_info[:2] == PYTHON:
        command: list[str | Path] = [sys.executable, SCRIPT, packed]
    elif node and isinstance(runtime, Brought):
        command = [node, IN_NODE, runtime.folder, SCRIPT, packed]
    else:
        return False
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        raise NotBuilt(f"The modules couldn't be turned into bytecode: {done.stderr[-2000:]}")
    return True

"""The Python that browsers run: at its usual address, or a copy of it; and modules as its bytecode."""

import json
import shutil
import subprocess
import sys
import urllib.request
from pathlib import Path
from typing import Any

from jupyterlite_pyodide_kernel.constants import (
    PYODIDE_CDN_URL,
    PYODIDE_PYTHON_VERSION,
    PYODIDE_VERSION,
)

from . import NotBuilt

__all__ = ["LOCK", "Brought", "Usual", "to_bytecode"]

PYTHON = tuple(map(int, PYODIDE_PYTHON_VERSION.split(".")))
LOCK = "pyodide-lock.json"
START = "pyodide.mjs"
CORE = (START, "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip")
COPY = Path("static/pyodide")  # in the site
SCRIPT = Path(__file__).with_name("to_bytecode.py")
IN_NODE = Path(__file__).with_name("in_node.mjs")
FETCH = f"npm pack pyodide@{PYODIDE_VERSION}"


class Usual:
    """The runtime at the address that the kernel knows by itself, or at another like it.

    `outside` is that address.
    """

    def __init__(self, address: str = PYODIDE_CDN_URL):
        self.outside = address.rstrip("/")

    def lock(self) -> dict[str, Any]:
        """Its list of packages.

        Raises:
            NotBuilt: it could not be fetched.
        """
        try:
            with urllib.request.urlopen(self.where(LOCK), timeout=60) as answer:
                return json.load(answer)
        except (OSError, ValueError) as error:
            raise NotBuilt(
                f"{self.where(LOCK)} couldn't be downloaded: {error}. Check that this computer is on "
                "the internet, or type the folder of a copy of the runtime after --runtime."
            ) from error

    def where(self, file: str) -> str:
        """The address of one of its files."""
        return f"{self.outside}/{file}"

    def bring(self, site: Path) -> list[str]:
        """Nothing of it is in the site; the addresses of what browsers load first."""
        return [self.where(file) for file in CORE]


class Brought:
    """A copy of the runtime in a folder; the site serves it, and no reader needs the internet.

    Raises:
        NotBuilt: the folder lacks a file of it.
    """

    outside = ""  # nothing of the site comes from another address

    def __init__(self, folder: Path):
        self.folder = folder
        if lacking := [name for name in (*CORE, LOCK) if not (folder / name).is_file()]:
            raise NotBuilt(
                f"The folder {folder} has no {', '.join(lacking)}. Unpack the runtime there, "
                f"version {PYODIDE_VERSION}. To download it, type: {FETCH}"
            )

    def lock(self) -> dict[str, Any]:
        """Its list of packages."""
        return json.loads((self.folder / LOCK).read_text(encoding="utf-8"))

    def bring(self, site: Path) -> list[str]:
        """Copy its core; the addresses of what browsers load first."""
        (site / COPY).mkdir(parents=True)
        for file in CORE:
            shutil.copy(self.folder / file, site / COPY)
        return [f"./{(COPY / file).as_posix()}" for file in CORE]


def to_bytecode(wheels: Path, runtime: Brought | Usual) -> bool:
    """Put bytecode in place of the modules of all wheels in a folder; False where nothing can.

    Raises:
        NotBuilt: it failed.
    """
    node = shutil.which("node")
    if sys.version_info[:2] == PYTHON:
        command: list[str | Path] = [sys.executable, SCRIPT, wheels]
    elif node and isinstance(runtime, Brought):
        command = [node, IN_NODE, runtime.folder, SCRIPT, wheels]
    else:
        return False
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        raise NotBuilt(f"The modules couldn't be turned into bytecode: {done.stderr[-2000:]}")
    return True

"""A JupyterLite site of one notebook with one widget: what the workbook's own site is measured against.

It is built with the same runtime and the same packages in the same versions, with JupyterLite's own
settings. Its packages are whole, and it has what the kernel asks for to complete typed code.
"""

import json
import shutil
import subprocess
import sys
from pathlib import Path

import nbformat

from workbook.online.build import INSTALLED
from workbook.online.build import KERNEL as EXTENSION
from workbook.online.front import KERNEL
from workbook.online.packages import fetch, lock_of, wanted
from workbook.online.runtime import LOCK, Brought

__all__ = ["NOTEBOOK", "build_bare"]

NOTEBOOK = "bare.ipynb"
CELL = "import ipywidgets\nipywidgets.Text()"
FOR_THE_KERNEL = ("micropip", "jedi", "parso")  # in the versions that the runtime lists
PYTHON, WHEELS = "static/pyodide", "static/wheels"


def build_bare(runtime: Brought, out: Path, scratch: Path) -> None:
    """Build that site in `out`; `scratch` is a folder for what it is made of."""
    wheels, source = scratch / "wheels", scratch / "source"
    source.mkdir()
    cell = nbformat.v4.new_code_cell(CELL)
    named = {"kernelspec": {"name": "python", "display_name": "Python", "language": "python"}}
    nbformat.write(nbformat.v4.new_notebook(cells=[cell], metadata=named), source / NOTEBOOK)
    theirs = json.loads(runtime.read(LOCK))
    _gather(theirs["packages"], wheels)
    lock = lock_of(theirs, wheels.iterdir())
    _lite(source, out, sorted(lock["packages"]))
    runtime.bring(out)
    shutil.copytree(wheels, out / WHEELS)
    (out / WHEELS / LOCK).write_text(json.dumps(lock), encoding="utf-8")


def _gather(listed: dict, wheels: Path) -> None:
    """The packages, as they are published; `listed` are those of the runtime."""
    wheels.mkdir()
    fetch(wanted() | {name: listed[name]["version"] for name in FOR_THE_KERNEL}, wheels)
    for wheel in (INSTALLED / EXTENSION / "static" / "pypi").glob("*.whl"):
        if not wheel.name.startswith("widgetsnbextension-3"):  # for an edition of long ago
            shutil.copy(wheel, wheels)


def _lite(source: Path, out: Path, packages: list[str]) -> None:
    kernel = {
        "pyodideUrl": f"./{PYTHON}/pyodide.mjs",
        "loadPyodideOptions": {"lockFileURL": f"/{WHEELS}/{LOCK}", "packages": packages},
    }
    settings = {"jupyter-config-data": {"litePluginSettings": {KERNEL: kernel}}}
    (source / "jupyter-lite.json").write_text(json.dumps(settings), encoding="utf-8")
    command = [sys.executable, "-m", "jupyterlite_core", "build", "--no-libarchive"]
    command += [f"--lite-dir={source}", f"--output-dir={out}", f"--contents={source / NOTEBOOK}"]
    subprocess.run(command, cwd=source, capture_output=True, check=True)

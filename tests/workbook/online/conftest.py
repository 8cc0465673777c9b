"""The static site, built once and served on this computer, for the tests in this folder."""

import os
from pathlib import Path

import pytest
from filelock import FileLock

from workbook.online.build import Built, build
from workbook.online.runtime import Brought


@pytest.fixture(scope="session")
def runtime(root) -> Path:
    """The folder of the browsers' Python, as npm brings it: its core and no other packages."""
    folder = Path(os.environ.get("PYODIDE", root / "node_modules" / "pyodide"))
    if not folder.is_dir():
        absent = pytest.fail if os.environ.get("CI") == "true" else pytest.skip
        absent("Pyodide was not found in node_modules, nor through PYODIDE; see .ci/run")
    return folder


@pytest.fixture(scope="session")
def built(runtime, tmp_path_factory) -> Built:
    """The site of this checkout, which brings its own copy of Python; no test changes it.

    It is built once for all processes of a run, which share the folder above their own.
    """
    folder = tmp_path_factory.getbasetemp()
    if "PYTEST_XDIST_WORKER" in os.environ:
        folder = folder.parent
    site, done = folder / "site", folder / "site.txt"
    with FileLock(folder / "site.lock"):
        if not done.exists():
            done.write_text("quick" if build(site, Brought(runtime)).quick else "")
    return Built(site, done.read_text() == "quick")

"""The static site, built once and served on this computer, for the tests in this folder."""

import os
from pathlib import Path

import pytest

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
    """The site of this checkout, which brings its own copy of Python."""
    return build(tmp_path_factory.mktemp("online") / "site", Brought(runtime))

"""Builds the workbook as a static site: files that any web host can serve."""

import hashlib
import json
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any, NamedTuple

from workbook.ui.pages import shipped_pages

from . import NotBuilt
from .front import OVERRIDES, page_config, write_front
from .packages import gather, lock_of
from .runtime import LOCK, Runtime, place, to_bytecode

__all__ = ["Built", "build"]

INSTALLED = Path(sys.prefix) / "share" / "jupyter" / "labextensions"
KERNEL = "@jupyterlite/pyodide-kernel-extension"
WIDGETS = ("@jupyter-widgets/jupyterlab-manager", "anywidget")
OURS = (
    Path(__file__).parents[1] / "start" / "settings" / "labextensions",
    Path(__file__).with_name("labextension"),
)
WHEELS = Path("static/wheels")


class Built(NamedTuple):
    """A site: where it is, and whether it starts quickly."""

    out: Path
    quick: bool


def build(out: Path, runtime: Runtime) -> Built:
    """Build the site in `out`, a new folder or an earlier site.

    Raises:
        NotBuilt: what happened and what to do.
    """
    _check(out)
    with tempfile.TemporaryDirectory() as folder:
        parts, site, ours = (Path(folder) / name for name in ("parts", "site", "ours"))
        wheels = gather(INSTALLED / KERNEL / "static" / "pypi", ours)
        quick = to_bytecode(ours, runtime)
        lock = lock_of(json.loads(runtime.read(LOCK)), wheels)
        _lay_out(parts)
        _lite(parts, site)
        first = place(runtime, site)
        config = page_config(first[0], _place(wheels, lock, site), list(lock["packages"]))
        write_front(site, config, first, _sizes(first, runtime, site))
        shutil.rmtree(out, ignore_errors=True)
        shutil.copytree(site, out)
    return Built(out, quick)


def _sizes(first: list[str], runtime: Runtime, site: Path) -> dict[str, int]:
    """The bytes of each file that Python is loaded from, by its name."""
    files = [
        *(site / WHEELS).glob("*/*.whl"),
        *(path for address in first if (path := site / address).is_file()),
    ]
    outside = [address.rpartition("/")[2] for address in first if "://" in address]
    return {path.name: path.stat().st_size for path in files} | {
        name: len(runtime.read(name)) for name in outside
    }


def _check(out: Path) -> None:
    """A folder with anything but an earlier site in it is left alone."""
    if out.exists() and not (out.is_dir() and (not any(out.iterdir()) or (out / WHEELS).is_dir())):
        raise NotBuilt(f"{out} has other files in it. Type the name of a new folder after --out.")


def _lay_out(parts: Path) -> None:
    """The pages, and what is added to JupyterLab, laid out as the builder wants them."""
    pages = parts / "pages"
    pages.mkdir(parents=True)
    for page in shipped_pages():
        shutil.copy(page, pages)
    for name in (KERNEL, *WIDGETS):
        shutil.copytree(INSTALLED / name, parts / "labextensions" / name)
    for folder in OURS:
        shutil.copytree(folder, parts / "labextensions", dirs_exist_ok=True)
    shutil.copy(OVERRIDES, parts / "overrides.json")


def _lite(parts: Path, site: Path) -> None:
    command = [sys.executable, "-m", "jupyterlite_core", "build", "--apps=notebooks"]
    command += [f"--lite-dir={parts}", f"--output-dir={site}", f"--contents={parts / 'pages'}"]
    command += [f"--FederatedExtensionAddon.extra_labextensions_path={parts / 'labextensions'}"]
    command += ["--ignore-sys-prefix", "--no-libarchive"]
    command += ["--no-sourcemaps", "--no-unused-shared-packages"]
    done = subprocess.run(command, cwd=parts, capture_output=True, text=True, check=False)
    if done.returncode:
        raise NotBuilt(f"JupyterLite couldn't build the site. It said: {done.stderr[-2000:]}")


def _place(wheels: list[Path], lock: dict[str, Any], site: Path) -> str:
    """Put wheels and list into a folder that has its name from what is in it.

    A browser that still holds an earlier wheel of the same name cannot mix the two.
    """
    text = json.dumps(lock).encode()
    folder = site / WHEELS / hashlib.sha256(text).hexdigest()[:12]
    folder.mkdir(parents=True)
    listed = {entry["file_name"] for entry in lock["packages"].values()}
    for wheel in wheels:
        if wheel.name in listed:  # of two versions of one package, the list has the later
            shutil.copy(wheel, folder)
    (folder / LOCK).write_bytes(text)
    return f"./{(folder / LOCK).relative_to(site).as_posix()}"

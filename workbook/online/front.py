"""The site's own front: its first page, its name and icon, its list of pages, and what JupyterLab is told.

Pages are listed as ones that cannot be saved: a page that was saved would be a copy in the browser,
which hides every later edition.
"""

import hashlib
import json
import re
import shutil
from collections.abc import Collection
from pathlib import Path
from typing import Any

from workbook.reference import search_json
from workbook.ui.bar import SEARCH, bar_of
from workbook.ui.pages import OPENING, code_cells, shipped_pages
from workbook.ui.pieces import rules

from .runtime import COPY, LIBRARY, MODULE, STANDARD

__all__ = ["KERNEL", "OVERRIDES", "PARTS", "WORKER", "fill_worker", "page_config", "write_front"]

PARTS = Path(__file__).with_name("parts")
APP = "notebooks"
CONFIG = "jupyter-config-data"
BUNDLE = re.compile(r'href="\.\./(build/notebooks/bundle\.js[^"]*)"')
# Other views of JupyterLab, the builder's own files, and letters for browsers of long ago.
LEFT_OUT = (
    "bootstrap.js", "config-utils.js", "doc", "edit", "icon-*.png", "index.html",
    "jupyter-lite.*", "jupyterlite.schema*", "lab", "manifest.webmanifest", "notebooks",
    "overrides.json", "package.json", "rspack.config*", "service-worker.js", "tree",
    "build/lab", "build/service-worker.js", "build/*.eot", "build/*.ttf", "build/*.svg",
    "extensions/*/*/install.json", "extensions/*/*/static/pypi",
)  # fmt: skip
WORKER = "service-worker.js"  # JupyterLite asks for it by this name
LAB = Path(__file__).parents[1] / "start" / "settings" / "labconfig"
OVERRIDES = LAB / "default_setting_overrides.json"
KERNEL = "@jupyterlite/pyodide-kernel-extension:kernel"
KERNEL_WORKER = f"extensions/{KERNEL.partition(':')[0]}/static/comlink.worker.*.js"
# Also JupyterLite's own service worker, which shows files to Python: pages need none, and ours keeps the site.
OFF = Path(__file__).with_name("switched_off.txt")
LONG_AGO = "2000-01-01T00:00:00Z"  # the same site is the same files whenever it is built


def page_config(start: str, lock: str, packages: list[str]) -> dict[str, Any]:
    """The settings. `start` is the runtime's first file; `packages` of our list are loaded first."""
    off = json.loads((LAB / "page_config.json").read_text(encoding="utf-8"))["disabledExtensions"]
    kernel = {
        "pyodideUrl": start,
        "disablePyPIFallback": True,
        "loadPyodideOptions": {"lockFileURL": lock, "packages": packages},
    }
    return {
        "appName": "Wire to Water",
        "disabledExtensions": [*off, *_lines(OFF)],
        "litePluginSettings": {KERNEL: kernel},
        "wireToWaterPages": json.dumps({path.name: code_cells(path) for path in shipped_pages()}),
        "wireToWaterBars": json.dumps({"": bar_of()}),
        "wireToWaterLook": rules(),
        "wireToWaterSite": "yes",
    }


def _lines(path: Path) -> list[str]:
    lines = path.read_text(encoding="utf-8").splitlines()
    return [line for line in lines if not line.startswith("#")]


def write_front(
    site: Path, config: dict[str, Any], first: list[str], sizes: dict[str, int]
) -> None:
    """Put the first page into a site that JupyterLite has built, and take out what it never uses.

    `config` are settings for JupyterLab. `first` are the addresses of the runtime. `sizes` are the
    bytes of all that Python is loaded from.
    """
    settings = {**_config(site), **config}
    bundle = next(BUNDLE.finditer((site / APP / "index.html").read_text(encoding="utf-8")))[1]
    for pattern in LEFT_OUT:
        for path in site.glob(pattern):
            shutil.rmtree(path) if path.is_dir() else path.unlink()
    for part in PARTS.iterdir():
        shutil.copy(part, site)
    _write_listing(site / "api" / "contents" / "all.json")
    (site / SEARCH).parent.mkdir()
    (site / SEARCH).write_text(search_json(), encoding="utf-8")
    # Inside a script, "</" would end it.
    text = json.dumps(settings).replace("</", "<\\/")
    own = next(site.glob(KERNEL_WORKER)).relative_to(site).as_posix()
    _fill(site / "index.html", config=text, opening=OPENING, bundle=bundle, kernel=own)
    _fill(site / MODULE.with_name("early.mjs"), kernel=own, sizes=json.dumps(sizes))
    fill_worker(site, first)


def fill_worker(site: Path, first: Collection[str] = ()) -> None:
    """Tell the service worker of a site which files there are, and which come from elsewhere.

    What comes from elsewhere may have a copy in the site, for where it can't be reached; a standard
    library as bytecode stands for the runtime's own.
    """
    marks = _marks(site)
    copies = {
        address: (COPY / address.rpartition("/")[2]).as_posix()
        for address in first
        if "://" in address
    }
    spare = {address: copy for address, copy in copies.items() if copy in marks}
    unused = {
        *spare.values(),
        *[(COPY / STANDARD).as_posix()] * (site / MODULE.parent / LIBRARY).exists(),
    }
    files = {path: mark for path, mark in marks.items() if path not in unused}
    sizes = {path: (site / path).stat().st_size for path in files}
    words = {"files": files | dict.fromkeys(copies, ""), "sizes": sizes, "spare": spare}
    edition = _mark(json.dumps(words["files"]).encode())
    _fill(site / WORKER, edition=edition, **{name: json.dumps(of) for name, of in words.items()})


def _fill(path: Path, **words: str) -> None:
    """Put each word in the place that has its name."""
    text = path.read_text(encoding="utf-8")
    for name, value in words.items():
        text = text.replace(f"{{{{{name}}}}}", value)
    path.write_text(text, encoding="utf-8")


def _marks(site: Path) -> dict[str, str]:
    """Every file that a browser may ask for, with a mark of its content."""
    return {
        path.relative_to(site).as_posix(): _mark(path.read_bytes())
        for path in sorted(site.rglob("*"))
        if path.is_file() and path.name not in (WORKER, "third-party-licenses.json")
    }


def _mark(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:16]


def _config(site: Path) -> dict[str, Any]:
    """The settings of the site and of its one view, as JupyterLite would put them together."""
    both = [site / "jupyter-lite.json", site / APP / "jupyter-lite.json"]
    whole, view = (json.loads(path.read_text(encoding="utf-8"))[CONFIG] for path in both)
    here = {
        "appUrl": "./",
        "faviconUrl": "./icon.svg",
        "fullStaticUrl": "./build",
        "settingsUrl": "./build/schemas",
        "themesUrl": "./build/themes",
    }
    return {**whole, **view, **here}


def _write_listing(path: Path) -> None:
    """Write the list of pages, in the form of Jupyter's contents."""
    pages = [_entry(page.name, "notebook", page.stat().st_size) for page in shipped_pages()]
    path.write_text(json.dumps({**_entry("", "directory"), "content": pages}), encoding="utf-8")


def _entry(path: str, kind: str, size: int | None = None) -> dict[str, Any]:
    return {
        "name": path,
        "path": path,
        "type": kind,
        "writable": False,
        "created": LONG_AGO,
        "last_modified": LONG_AGO,
        "size": size,
        "content": None,
        "format": None,
        "mimetype": None,
        "hash": None,
        "hash_algorithm": None,
    }

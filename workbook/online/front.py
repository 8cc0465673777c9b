"""The site's own front: its first page, its name and icon, and what it leaves out."""

import hashlib
import json
import re
import shutil
from pathlib import Path

from workbook.ui.pages import OPENING

from .listing import write_listing

__all__ = ["PARTS", "WORKER", "fill_worker", "write_front"]

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


def write_front(site: Path, config: dict, first: list[str], later: list[str]) -> None:
    """Put the first page into a site that JupyterLite has built, and take out what it never uses.

    `config` are settings for JupyterLab. `first` are the addresses of the runtime, `later` those of
    what a page may fetch once it is ready.
    """
    settings = {**_config(site), **config}
    bundle = BUNDLE.search((site / APP / "index.html").read_text(encoding="utf-8"))[1]
    for pattern in LEFT_OUT:
        for path in site.glob(pattern):
            shutil.rmtree(path) if path.is_dir() else path.unlink()
    for part in PARTS.iterdir():
        shutil.copy(part, site)
    write_listing(site / "api" / "contents" / "all.json")
    # Inside a script, "</" would end it.
    text = json.dumps(settings).replace("</", "<\\/")
    _fill(site / "index.html", config=text, opening=OPENING, bundle=bundle, first=json.dumps(first))
    fill_worker(site, first, later)


def fill_worker(site: Path, first: list[str] = (), later: list[str] = ()) -> None:
    """Tell the service worker of a site which files there are, and which come from elsewhere."""
    files = _marks(site) | {address: "" for address in first if "://" in address}
    used = [address for address in later if "://" in address]
    used += [path for path in files if path.startswith("static/pyodide/") and path.endswith(".whl")]
    files = {path: mark for path, mark in files.items() if path not in used}
    edition = _mark(json.dumps(files).encode())
    _fill(site / WORKER, files=json.dumps(files), later=json.dumps(used), edition=edition)


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


def _config(site: Path) -> dict:
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

"""What the workbook adds to Jupyter's server: the list of pages that may run when opened.

Jupyter loads it by name, from settings/jupyter_server_config.json.
"""

import os
from pathlib import Path

from workbook.pages import CHAPTERS, code_cells, shipped_pages

__all__ = ["pages_under"]


def pages_under(root):
    """Map each page the server shows, by its path under `root`, to the code that ships in it.

    Two places count: `root` itself, which is the reader's own folder, and the shipped chapters
    where they lie under `root`, as they do in a checkout that is served whole.
    """
    pages = {path.name: code_cells(path) for path in shipped_pages()}
    chapters = Path(os.path.relpath(CHAPTERS, root)).as_posix() if _under(root) else None
    beside = {f"{chapters}/{name}": code for name, code in pages.items()} if chapters else {}
    return pages | beside


def _under(root):
    return CHAPTERS.is_relative_to(Path(root).resolve())


def _jupyter_server_extension_points():
    return [{"module": "workbook.server"}]


def _load_jupyter_server_extension(app):
    settings = app.web_app.settings.setdefault("page_config_data", {})
    settings["wireToWaterPages"] = pages_under(app.root_dir)

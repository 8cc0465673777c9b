"""What the workbook adds to Jupyter's server: the list of pages that may run when opened.

Jupyter loads it by name, from settings/jupyter_server_config.json.
"""

import os
from pathlib import Path

from workbook.ui.pages import CHAPTERS, TRAINERS, code_cells, shipped_pages

__all__ = ["pages_under"]


def pages_under(root):
    """Map each page the server shows, by its path under `root`, to the code that ships in it.

    Two places count: `root` itself, which is the reader's own folder or a trainer's course, and
    those where the pages ship, if they lie under `root`, as they do in a checkout served whole.
    """
    return {at: code for folder in (CHAPTERS, TRAINERS) for at, code in _pages(folder, root)}


def _pages(folder, root):
    shipped = os.path.relpath(folder, root) if folder.is_relative_to(Path(root).resolve()) else ""
    for path in shipped_pages(folder):
        yield path.name, code_cells(path)
        if shipped:
            yield (Path(shipped) / path.name).as_posix(), code_cells(path)


def _jupyter_server_extension_points():
    return [{"module": "workbook.start.server"}]


def _load_jupyter_server_extension(app):
    settings = app.web_app.settings.setdefault("page_config_data", {})
    settings["wireToWaterPages"] = pages_under(app.root_dir)

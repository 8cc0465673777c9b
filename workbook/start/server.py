"""What the workbook adds to Jupyter's server: which pages may run when opened, the bar, what it finds.

And what it puts off: the forms that a notebook can be exported to.

Jupyter loads it by name, from settings/jupyter_server_config.json.
"""

import asyncio
import importlib
import subprocess
import sys
from functools import cache
from typing import Any

from jupyter_server.base.handlers import APIHandler
from jupyter_server.services.nbconvert.handlers import NbconvertRootHandler
from jupyter_server.utils import url_path_join
from tornado.web import authenticated

from workbook.ui.bar import SEARCH
from workbook.ui.pieces import rules

from .own_pages import bars_under, opening_of, pages_under

EXPORTS = "nbconvert.exporters"
EXPORTS_AFTER = 10  # seconds; the first problem is there by then, on a slow laptop too


class ExportsHandler(NbconvertRootHandler):
    """Says for the menus of a notebook which forms it can be exported to.

    JupyterLab asks as soon as the first page opens. What these forms need takes long to load, and
    the page would wait for it; so it is loaded later, beside whatever else the server does.
    """

    @authenticated
    async def get(self) -> None:
        """Send the list; the first time, wait and load what it needs."""
        if EXPORTS not in sys.modules:
            await asyncio.sleep(EXPORTS_AFTER)
            await asyncio.to_thread(importlib.import_module, EXPORTS)
        await super().get()  # type: ignore[misc]  # a coroutine, under two decorators


class SearchHandler(APIHandler):
    """Answers with everything the search in the bar finds."""

    @authenticated
    async def get(self) -> None:
        """Send the list, made when it is first asked for, in a program of its own."""
        found = await asyncio.get_running_loop().run_in_executor(None, _search_list)
        self.set_header("Content-Type", "application/json; charset=UTF-8")
        await self.finish(found)


@cache
def _search_list() -> bytes:
    command = [sys.executable, "-m", "workbook.reference"]
    return subprocess.run(command, stdout=subprocess.PIPE, check=True).stdout


def _jupyter_server_extension_points() -> list[dict[str, str]]:
    return [{"module": "workbook.start.server"}]


def _load_jupyter_server_extension(app: Any) -> None:
    settings = app.web_app.settings.setdefault("page_config_data", {})
    settings["wireToWaterPages"] = pages_under(app.root_dir)
    settings["wireToWaterBars"] = bars_under(app.root_dir)
    settings["wireToWaterLook"] = rules()
    handlers = {SEARCH: SearchHandler, "api/nbconvert": ExportsHandler}
    added = [(url_path_join(app.base_url, at), handler) for at, handler in handlers.items()]
    app.web_app.add_handlers(".*$", added)


async def _start_jupyter_server_extension(app: Any) -> None:
    """Start the program behind the pages while the browser still loads."""
    if opening := opening_of(app.root_dir):
        await app.session_manager.create_session(
            path=opening, name=opening, type="notebook", kernel_name="python3"
        )

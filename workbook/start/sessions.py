"""One Python for all pages: a page that opens gets the program that runs already.

Whatever is not a page of the workbook, such as a set from a trainer or a reader's own notebook, has a
program of its own, as anywhere.
"""

import asyncio
import posixpath
from typing import Any

from jupyter_server.services.sessions.sessionmanager import SessionManager

from .own_pages import is_page

__all__ = ["Sessions"]


class Sessions(SessionManager):
    """Sessions of which those of the workbook's pages in one folder share a kernel."""

    def __init__(self, *args: Any, **kwargs: Any):
        super().__init__(*args, **kwargs)
        self._shared: dict[str, str] = {}  # the kernel of each folder's pages
        self._one_at_a_time = asyncio.Lock()

    async def start_kernel_for_session(
        self, session_id: str, path: str | None, *args: Any, **kwargs: Any
    ) -> str:
        """The kernel for a session: for a page that of the others, if one runs; else a new one."""
        if not path or not is_page(path, self.contents_manager.root_dir):
            return await super().start_kernel_for_session(session_id, path, *args, **kwargs)
        folder = posixpath.dirname(path.strip("/"))
        async with self._one_at_a_time:
            if self._shared.get(folder) not in self.kernel_manager:
                started = super().start_kernel_for_session(session_id, path, *args, **kwargs)
                self._shared[folder] = await started
        return self._shared[folder]

    async def delete_session(self, session_id: str) -> None:
        """End a session, and its kernel where no other page is on it."""
        kernel = (await self.get_session(session_id=session_id))["kernel"]["id"]
        others = "SELECT 1 FROM session WHERE kernel_id=? AND session_id<>?"
        if self.cursor.execute(others, (kernel, session_id)).fetchone():
            self.cursor.execute("DELETE FROM session WHERE session_id=?", (session_id,))
        else:
            await super().delete_session(session_id)

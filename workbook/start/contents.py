"""The files that the server gives out: the workbook's own pages are to be read, all others to be changed too."""

import posixpath
from typing import Any

from jupyter_server.services.contents.largefilemanager import AsyncLargeFileManager
from tornado.web import HTTPError

from .own_pages import is_page

__all__ = ["Contents"]

REFUSED = (
    "{name} is a page of the workbook and stays as it is. To change it, choose Open a copy of this page as a "
    "notebook, at the foot of the page, and change the copy."
)


class Contents(AsyncLargeFileManager):
    """Files of the folder that is served, of which the workbook's own pages cannot be changed."""

    def is_writable(self, path: str) -> bool:
        """Whether a path may be written to; a page that ships may not."""
        return super().is_writable(path) and not is_page(path, self.root_dir)

    async def save(self, model: dict[str, Any], path: str = "") -> dict[str, Any]:
        """Save a file that is not a page that ships.

        Raises:
            HTTPError: it is one; or it cannot be saved.
        """
        self._refuse_page(path)
        return await super().save(model, path)

    async def delete_file(self, path: str) -> None:
        """Delete a file that is not a page that ships.

        Raises:
            HTTPError: it is one; or it cannot be deleted.
        """
        self._refuse_page(path)
        await super().delete_file(path)

    async def rename_file(self, old_path: str, new_path: str) -> None:
        """Rename a file that neither is nor would replace a page that ships.

        Raises:
            HTTPError: it is one; or it cannot be renamed.
        """
        self._refuse_page(old_path)
        self._refuse_page(new_path)
        await super().rename_file(old_path, new_path)

    def _refuse_page(self, path: str) -> None:
        if is_page(path, self.root_dir):
            raise HTTPError(403, REFUSED.format(name=posixpath.basename(path)))

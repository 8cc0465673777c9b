"""What a reader did in the static site, kept in the browser.

A browser's Python has files in its memory alone. So each time lines are added to a file, they are
added to a journal in the browser's own database too, as a record that is never changed. A page that
opens writes its files again from the journal; pages that are open together tell each other.
"""

import asyncio
from pathlib import Path
from typing import Any

from workbook.ui.static_site import in_browser

__all__ = ["folder", "lasting", "note", "open_journal"]

FOLDER = Path("/kept")
STORE = "lines"
_open: list[Any] = []  # the database and the channel between pages, once they are there
_fault: list[str] = []  # why the browser refused to keep lines


def folder() -> Path | None:
    """Where a page of the static site writes; None elsewhere."""
    return FOLDER if in_browser() else None


def lasting() -> bool:
    """Whether what is written is still there when the page is opened again."""
    return not in_browser() or (bool(_open) and not _fault)


async def open_journal(name: str) -> None:
    """Bring back the files, before anything is read; once is enough for a running Python.

    Where the browser keeps nothing (some private windows), the files last as long as the page.
    """
    if _open:
        return
    from js import BroadcastChannel
    from pyodide.ffi import create_proxy

    try:
        database = await _database(name)
        channel = BroadcastChannel.new(name)
        channel.onmessage = create_proxy(lambda event: _write(*event.data.to_py()))
        for path, text in await _records(database):
            _write(path, text)
    except OSError as error:
        _fault.append(str(error))
        return
    _open.extend((database, channel))


def note(path: Path, data: bytes) -> None:
    """These lines were added to a file; keep them."""
    if not _open:
        return
    from js import Object
    from pyodide.ffi import create_once_callable, to_js

    database, channel = _open
    record = to_js([str(path), data.decode()])
    # Through to the disk, as elsewhere.
    strict = to_js({"durability": "strict"}, dict_converter=Object.fromEntries)
    kept = database.transaction(STORE, "readwrite", strict)
    kept.onabort = create_once_callable(lambda event: _fault.append(str(kept.error)))
    kept.objectStore(STORE).add(record)
    kept.commit()
    channel.postMessage(record)


def _write(path: str, text: str) -> None:
    file = Path(path)
    file.parent.mkdir(parents=True, exist_ok=True)
    with file.open("ab") as kept:
        kept.write(text.encode())


async def _database(name: str) -> Any:
    from js import Object, indexedDB
    from pyodide.ffi import create_once_callable, to_js

    def new(event: Any) -> None:
        counted = to_js({"autoIncrement": True}, dict_converter=Object.fromEntries)
        asked.result.createObjectStore(STORE, counted)

    asked = indexedDB.open(name, 1)
    asked.onupgradeneeded = create_once_callable(new)
    return await _answer(asked)


async def _records(database: Any) -> list[tuple[str, str]]:
    found = await _answer(database.transaction(STORE).objectStore(STORE).getAll())
    return [(path, text) for path, text in found.to_py()]


def _answer(request: Any) -> asyncio.Future[Any]:
    """What the database answers.

    Raises:
        OSError: it refuses; raised by who waits for the answer.
    """
    from pyodide.ffi import create_once_callable

    future: asyncio.Future[Any] = asyncio.get_running_loop().create_future()
    refused = lambda event: future.set_exception(OSError(str(request.error)))  # noqa: E731
    request.onsuccess = create_once_callable(lambda event: future.set_result(request.result))
    request.onerror = create_once_callable(refused)
    return future

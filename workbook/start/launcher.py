"""Open the workbook: the reader's folder, a free port, JupyterLab, and the browser."""

import os
import secrets
import socket
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
import webbrowser
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path

from workbook.ui.pages import OPENING

from .child import Say, environment, started
from .folder import (
    CannotWrite,
    bring_up_to_date,
    can_write,
    default_folders,
    environment_of,
    settings_of,
    settle,
)

__all__ = ["CannotOpen", "keep_open", "open_workbook", "served"]

SETTINGS = Path(__file__).resolve().parent / "settings"
HOST = "127.0.0.1"
PORTS = range(8790, 8890)
# These draw in the terminal: they would take its window over, and cannot run the pages.
TEXT_BROWSERS = {"www-browser", "links", "elinks", "lynx", "w3m"}
ASK_AGAIN = 0.03  # seconds
PATIENCE = 180  # seconds; the first start on an old laptop reads every file from a slow disk
LAST_RESORT = (
    "This was the only folder the workbook could write to, and the computer may empty it when it restarts. Before you stop, save "
    "a copy of your answers on the page Your study. It's safer to type the name of a folder of your own after --folder."
)
Serving = Iterator[tuple[subprocess.Popen[str], str]]


class CannotOpen(RuntimeError):
    """The workbook cannot be opened; the message says what to type instead."""


class PortTaken(CannotOpen):
    """Another program took the port before our server could."""


def open_workbook(
    folder: str | None, port: int | None, browser: bool = True, say: Say = print
) -> int:
    """Open the workbook and keep it open until Ctrl+C; return the exit status."""
    return keep_open(lambda: _prepare(folder, say), OPENING, port, browser, say)


def keep_open(
    prepare: Callable[[], Path], opening: str, port: int | None, browser: bool, say: Say
) -> int:
    """Keep the folder that `prepare()` gives open at the page `opening`; return the exit status."""
    try:
        own = prepare()
        settle(own, say)
        with _served_somewhere(own, port, say, opening) as (server, address):
            say(f"Your pages are in {own}")
            _show(address, browser, say)
            say("Keep this window open while you work. To stop, press Ctrl+C here.")
            server.wait()
        raise CannotOpen("The workbook stopped by itself. Type the same command to open it again.")
    except CannotOpen as error:
        print(error, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        say("The workbook is closed.")
        return 0


def _prepare(wanted: str | None, say: Say) -> Path:
    folders = [Path(wanted).expanduser().resolve()] if wanted else default_folders()
    for folder in folders:
        try:
            for sentence in bring_up_to_date(folder):
                say(sentence)
            if folder.parent == Path(tempfile.gettempdir()):
                say(LAST_RESORT)
            return folder
        except CannotWrite as error:
            say(f"The workbook can't write to this folder. {error}")
    works = next((folder for folder in default_folders() if can_write(folder.parent)), "FOLDER")
    raise CannotOpen(
        "Your pages need a folder you can write to. Type its name after --folder, like this: "
        f'python3 -m workbook --folder "{works}"'
    )


def _is_free(port: int) -> bool:
    with socket.socket() as trial:
        if os.name != "nt":  # there it would take a port that is in use
            trial.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        with suppress(OSError):
            trial.bind((HOST, port))
            return True
    return False


def _choose_port(wanted: int | None, say: Say) -> int:
    if wanted is not None and _is_free(wanted):
        return wanted
    free = next((port for port in PORTS if port != wanted and _is_free(port)), None)
    if wanted is not None:
        other = f" --port {free}" if free else ""
        raise CannotOpen(
            f"Port {wanted} is in use by another program. Type: python3 -m workbook{other}"
        )
    if free is None:
        raise CannotOpen(
            f"Ports {PORTS.start} to {PORTS.stop - 1} are all in use. Close other programs, or "
            "type another number: python3 -m workbook --port 9400"
        )
    if free != PORTS.start:
        say(f"Port {PORTS.start} is in use, so the workbook uses port {free}.")
    return free


@contextmanager
def _served_somewhere(
    folder: Path, wanted: int | None, say: Say, opening: str = OPENING
) -> Serving:
    """Serve `folder` on the port wanted, or on a free one that nobody takes meanwhile."""
    with ExitStack() as stack:
        for last in (wanted is not None, False, False, True):
            try:
                found = stack.enter_context(served(folder, _choose_port(wanted, say), opening))
                break
            except PortTaken:
                if last:
                    raise
        yield found


@contextmanager
def served(folder: Path, port: int, opening: str = OPENING) -> Serving:
    """Serve `folder`; give the server and the address of the page `opening`, with its key.

    Raises:
        CannotOpen: the server does not start.
    """
    token = secrets.token_urlsafe(24)
    command = [sys.executable, "-m", "workbook.start.serve", "--no-browser", f"--ip={HOST}"]
    command += [f"--port={port}", f"--ServerApp.root_dir={folder}"]
    command += ["--ServerApp.port_retries=0", "--ServerApp.answer_yes=True"]
    # Only this computer can reach the server, and only with the key: no account needs refusing.
    command += ["--ServerApp.allow_root=True"]
    settings = settings_of()
    with (
        open(settings / f"port-{port}.log", "w+", encoding="utf-8") as log,
        started(
            command,
            cwd=folder,
            stdin=subprocess.DEVNULL,
            stdout=log,
            stderr=log,
            env=_jupyter_environment(settings, token),
        ) as server,
    ):
        _wait_for(server, port, token, log.name)
        yield server, f"http://{HOST}:{port}/doc/workspaces/pages/tree/{opening}?token={token}"


def _jupyter_environment(settings: Path, token: str) -> dict[str, str]:
    return environment(
        JUPYTER_TOKEN=token,
        JUPYTER_CONFIG_DIR=str(settings),
        JUPYTER_CONFIG_PATH=str(SETTINGS),
        JUPYTER_PATH=str(SETTINGS),
        # A folder that somebody sent may hold a file called as a library is; it must not be taken.
        PYTHONSAFEPATH="1",
        **environment_of(),
    )


def _wait_for(server: subprocess.Popen, port: int, token: str, log: str) -> None:
    # Asked with the key: another program's server on this port would not know it.
    address = f"http://{HOST}:{port}/api/status?token={token}"
    # A proxy for the internet must not be asked for a page on this computer.
    direct = urllib.request.build_opener(urllib.request.ProxyHandler({}))
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        if server.poll() is not None:
            if not _is_free(port):
                raise PortTaken(f"Another program took port {port}. Type the same command again.")
            raise CannotOpen(f"The workbook couldn't start. The reason is in {log}")
        with suppress(OSError), direct.open(address, timeout=5):
            return
        time.sleep(ASK_AGAIN)
    raise CannotOpen(f"The workbook didn't start in {PATIENCE} seconds. The reason is in {log}")


def _show(address: str, browser: bool, say: Say) -> None:
    if browser and _open_browser(address):
        say(f"The workbook is opening in your browser. If it doesn't, open {address}")
    elif browser:
        say(f"No browser was found. Open one and type this address: {address}")
    else:
        say(f"Open this address in a browser: {address}")


def _open_browser(address: str) -> bool:
    try:
        browser = webbrowser.get()
        drawn_here = Path(getattr(browser, "name", "")).name in TEXT_BROWSERS
        return not drawn_here and browser.open(address)
    except webbrowser.Error:
        return False

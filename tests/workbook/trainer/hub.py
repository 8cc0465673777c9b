"""A real JupyterHub on this computer for a test, with the settings that a trainer starts it with.

Only what keeps it to the test is added: free ports, folders of its own, and people who need no
account of the computer.
"""

import contextlib
import json
import os
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import requests
from websocket import create_connection

__all__ = ["PROXY", "Person", "hub"]

PROXY = "configurable-http-proxy"
PATIENCE = 180  # seconds, on a busy machine


@contextlib.contextmanager
def hub(root: Path, folder: Path, exchange: Path) -> Iterator[str]:
    """The address of a hub that keeps its own files and everybody's in `folder`."""
    ports = [*_free_ports(3)]
    address = f"http://127.0.0.1:{ports[0]}"
    command = [
        *(sys.executable, "-m", "jupyterhub"),
        f"--config={root / 'workbook/trainer/hub/jupyterhub_config.py'}",
        "--JupyterHub.authenticator_class=dummy",
        "--JupyterHub.spawner_class=simple",
        "--Authenticator.admin_users=trainer",
        f"--SimpleLocalProcessSpawner.home_dir_template={folder}/{{username}}",
        f"--JupyterHub.bind_url={address}",
        f"--JupyterHub.hub_port={ports[1]}",
        f"--ConfigurableHTTPProxy.api_url=http://127.0.0.1:{ports[2]}",
        *(["--Spawner.args=--allow-root"] if os.geteuid() == 0 else []),
    ]
    programs = [str(Path(sys.executable).parent), str(root / "node_modules/.bin")]
    path = os.pathsep.join([*programs, os.environ["PATH"]])
    environment = {**os.environ, "PATH": path, "WIRE_TO_WATER_EXCHANGE": str(exchange)}
    with (
        open(folder / "hub.log", "wb") as log,
        subprocess.Popen(command, cwd=folder, env=environment, stdout=log, stderr=log) as process,
    ):
        try:
            _until(lambda: _answers(process, f"{address}/hub/health"), "the hub")
            yield address
        finally:
            process.terminate()


def _free_ports(many: int) -> Iterator[int]:
    with contextlib.ExitStack() as held:
        for _ in range(many):
            one = held.enter_context(socket.socket())
            one.bind(("127.0.0.1", 0))
            yield one.getsockname()[1]


def _answers(process: subprocess.Popen, address: str) -> bool:
    assert process.poll() is None, "the hub stopped by itself"
    with contextlib.suppress(requests.ConnectionError):
        return requests.get(address, timeout=PATIENCE).ok
    return False


def _until(so, what: str):
    end = time.monotonic() + PATIENCE
    while not (found := so()):
        assert time.monotonic() < end, f"{what} was not ready in {PATIENCE} seconds"
        time.sleep(0.1)
    return found


class Person:
    """Somebody at their browser, signed in by the hub's page, which starts a server of their own."""

    def __init__(self, address: str, name: str):
        self.base, self.browser = f"{address}/user/{name}/", requests.Session()
        self.browser.get(f"{address}/hub/login").raise_for_status()
        said = {"username": name, "password": "", "_xsrf": self._key("/hub/")}
        self.browser.post(f"{address}/hub/login", data=said).raise_for_status()

    def _key(self, path: str) -> str:
        """What a page of the hub, or of the person's server, shows with every change it asks for."""
        return self.browser.cookies.get("_xsrf", path=path, default="")

    def wait_for_server(self) -> None:
        """Look at one's own page until it is there."""
        _until(lambda: self.browser.get(self.base).url == f"{self.base}lab", self.base)

    def __call__(self, method: str, path: str, /, **data):
        """What one's own server answers, as data."""
        key = self._key(urlsplit(self.base).path)
        done = self.browser.request(
            method, self.base + path, json=data, headers={"X-XSRFToken": key}, timeout=PATIENCE
        )
        assert done.ok, f"{path}: {done.status_code} {done.text[:500]}"
        return done.json()

    def run(self, page: str, code: str) -> str:
        """Run code where the kernel of a page runs; what it printed."""
        kernel = {"name": "python3"}
        made = self("POST", "api/sessions", path=page, name=page, type="notebook", kernel=kernel)
        where = f"{self.base}api/kernels/{made['kernel']['id']}/channels"
        cookies = self.browser.cookies.get_dict(path=urlsplit(self.base).path)
        cookie = "; ".join(f"{name}={value}" for name, value in cookies.items())
        held = create_connection(
            where.replace("http", "ws", 1), cookie=cookie, origin=where, timeout=PATIENCE
        )
        with contextlib.closing(held):
            held.send(json.dumps(_request(code)))
            return "".join(_printed(held))


def _request(code: str) -> dict:
    header = {"msg_id": "one", "msg_type": "execute_request", "session": "test", "username": ""}
    content = {"code": code, "silent": False, "store_history": False, "allow_stdin": False}
    parts = {"parent_header": {}, "metadata": {}, "buffers": [], "channel": "shell"}
    return {"header": {**header, "version": "5.3", "date": ""}, "content": content, **parts}


def _printed(held) -> Iterator[str]:
    while True:
        message = json.loads(held.recv())
        kind, content = message["header"]["msg_type"], message["content"]
        if message["parent_header"].get("msg_id") != "one":
            continue
        assert kind != "error", "\n".join(content["traceback"])
        if kind == "stream":
            yield content["text"]
        if content.get("execution_state") == "idle":
            return

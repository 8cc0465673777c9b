"""Firefox without a window, spoken to by WebDriver BiDi over its own port; Playwright can't drive Debian's."""

import itertools
import json
import re
import subprocess
import time
from collections.abc import Iterable
from pathlib import Path

from websocket import create_connection

__all__ = ["Firefox"]

FLAGS = ("--headless", "--no-remote", "--remote-debugging-port=0")
SAYS = re.compile(r"WebDriver BiDi listening on (ws://\S+)")
KEEP_IT = "function () { document.body.append(window.asks = this); }"
PATIENCE = 240  # seconds; a busy machine starts Python slowly


class Firefox:
    """A running Firefox with its own profile, which stays; one tab of it."""

    def __init__(self, program: str, profile: Path):
        command = [program, *FLAGS, "--profile", str(profile)]
        self._run = subprocess.Popen(command, stderr=subprocess.PIPE, text=True)
        address = next(found[1] for line in self._run.stderr if (found := SAYS.search(line)))
        self._line = create_connection(f"{address}/session", timeout=PATIENCE, suppress_origin=True)
        self._numbers = itertools.count(1)
        self.ask("session.new", capabilities={})
        self._tab = self.ask("browsingContext.getTree")["contexts"][0]["context"]

    def ask(self, method: str, **params: object) -> dict:
        """What it answers to a command."""
        number = next(self._numbers)
        self._line.send(json.dumps({"id": number, "method": method, "params": params}))
        while (told := json.loads(self._line.recv())).get("id") != number:
            pass  # of something that happened meanwhile
        assert told["type"] == "success", told
        return told["result"]

    def open(self, address: str) -> None:
        """Open a page, and wait until its document is there."""
        self.ask("browsingContext.navigate", context=self._tab, url=address, wait="interactive")

    def run(self, script: str) -> object:
        """The value of an expression in the page."""
        target = {"context": self._tab}
        told = self.ask("script.evaluate", expression=script, target=target, awaitPromise=True)
        assert told["type"] == "success", told
        return told["result"].get("value")

    def wait(self, script: str) -> None:
        """Wait until an expression is true."""
        end = time.monotonic() + PATIENCE
        while not self.run(f"Boolean({script})"):
            assert time.monotonic() < end, f"{script}: {self.run('document.body.innerText')}"
            time.sleep(0.25)

    def choose(self, button: str, files: Iterable[Path]) -> None:
        """Press a button that asks for files, and give it these; this Firefox tells of no file dialog."""
        self.run(f"HTMLInputElement.prototype.click = {KEEP_IT}, {button}.click()")
        self.wait("window.asks")
        target = {"context": self._tab}
        told = self.ask(
            "script.evaluate", expression="window.asks", target=target, awaitPromise=False
        )
        element = {"sharedId": told["result"]["sharedId"]}
        self.ask("input.setFiles", context=self._tab, element=element, files=[*map(str, files)])

    def kill(self) -> None:
        """End it as a crash would."""
        self._run.kill()
        self._run.wait()
        self._line.shutdown()
        self._run.stderr.close()

"""Files served on a port of this computer, as any web host would."""

import threading
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path


class _Files(SimpleHTTPRequestHandler):
    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
    }

    def log_message(self, *words):
        """Nothing is said of single requests; `asked` has them."""

    def do_GET(self):
        self.server.asked.append(self.path)
        super().do_GET()

    def end_headers(self):
        self.send_header("Access-Control-Allow-Origin", "*")  # as the usual address does
        super().end_headers()


class Served:
    """A folder, served while the block lasts. `asked` are the paths that were asked for."""

    def __init__(self, folder: Path):
        self._files = partial(_Files, directory=str(folder))
        self._port = 0  # any; when it is started again, the same
        self.asked: list[str] = []

    @property
    def address(self) -> str:
        """Where it is served, without a slash at the end."""
        return f"http://127.0.0.1:{self._port}"

    def start(self) -> None:
        """Answer requests, on the port of before."""
        self._server = ThreadingHTTPServer(("127.0.0.1", self._port), self._files)
        self._server.asked, self._port = self.asked, self._server.server_port
        threading.Thread(target=self._server.serve_forever, daemon=True).start()

    def stop(self) -> None:
        """No request is answered any more."""
        self._server.shutdown()
        self._server.server_close()

    def __enter__(self):
        self.start()
        return self

    def __exit__(self, *_):
        self.stop()

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
    """A folder, served until `stop` is called or the block ends. `asked` are the paths asked for."""

    def __init__(self, folder: Path):
        self._server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Files, directory=str(folder)))
        self._server.asked = self.asked = []
        self.address = f"http://127.0.0.1:{self._server.server_port}"
        self._thread = threading.Thread(target=self._server.serve_forever, daemon=True)

    def __enter__(self):
        self._thread.start()
        return self

    def __exit__(self, *_):
        self.stop()

    def stop(self) -> None:
        """No request is answered any more."""
        if self._thread.is_alive():
            self._server.shutdown()
            self._server.server_close()
            self._thread.join()

"""Many readers open the static site at once, on this computer.

    python -m tests.benchmarks.readers SITE 500

SITE is a folder that `python3 -m workbook site` built with its own copy of the runtime. Chromium
opens it once, to learn what a browser asks for until the first page is ready. Then each reader asks
one server of one process for those files, one after another over one connection, as all others do.
Nothing is compressed; what gzip would leave is said beside it, as most web hosts use that.
"""

import asyncio
import gzip
import subprocess
import sys
import time
from pathlib import Path
from shutil import which
from urllib.parse import unquote, urlsplit

import psutil

from tests.conftest import FLAGS, PATIENCE

SERVER = """
import sys, tornado.httpserver, tornado.ioloop, tornado.netutil, tornado.web
files = {"path": sys.argv[1], "default_filename": "index.html"}
site = tornado.web.Application([("/(.*)", tornado.web.StaticFileHandler, files)])
[socket] = tornado.netutil.bind_sockets(0, "127.0.0.1", backlog=4096)
tornado.httpserver.HTTPServer(site).add_socket(socket)
print(socket.getsockname()[1], flush=True)
tornado.ioloop.IOLoop.current().start()
"""
QUIET = {"stderr": subprocess.DEVNULL, "stdout": subprocess.PIPE}


def asked_for(address: str) -> list[str]:
    """The paths that a browser asks for, from nothing until the first page is ready."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=which("chromium"), args=list(FLAGS))
        page = browser.new_page()
        found = []
        page.on("request", lambda request: found.append(urlsplit(request.url)))
        page.goto(address)
        page.locator('.wtw-page[data-state="ready"]').wait_for(timeout=PATIENCE)
        browser.close()
    here = urlsplit(address).netloc
    return list(dict.fromkeys(url.path for url in found if url.netloc == here))


def first_load(site: Path, address: str) -> dict[str, bytes]:
    """Those of them that are files of the site, with what is in each."""
    files = {path: site / (unquote(path[1:]) or "index.html") for path in asked_for(address)}
    return {path: file.read_bytes() for path, file in files.items() if file.is_file()}


async def _reader(port: int, files: dict[str, bytes]) -> float:
    """Ask for every file; the seconds it took. AssertionError where one did not come whole."""
    begun = time.perf_counter()
    back, out = await asyncio.open_connection("127.0.0.1", port)
    for path, whole in files.items():
        out.write(f"GET {path} HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n".encode())
        head = await back.readuntil(b"\r\n\r\n")
        assert head.startswith(b"HTTP/1.1 200 "), (path, head)
        left = len(whole)
        assert f"content-length: {left}\r\n" in head.decode().lower(), (path, head)
        while left:
            left -= len(await back.readexactly(min(left, 1 << 16)))
    out.close()
    return time.perf_counter() - begun


async def readers(port: int, files: dict[str, bytes], count: int) -> list[float]:
    """The seconds that each of `count` readers waited, shortest first."""
    return sorted(await asyncio.gather(*(_reader(port, files) for _ in range(count))))


def _told(files: dict[str, bytes], seconds: list[float]) -> str:
    count, size, whole = len(seconds), sum(map(len, files.values())), seconds[-1]
    packed = sum(len(gzip.compress(data, 6)) for data in files.values())
    return (
        f"first load: {len(files)} files, {size / 1e6:.1f} MB, {packed / 1e6:.1f} MB with gzip\n"
        f"{count} readers: {count * len(files) / whole:.0f} requests/s, "
        f"{count * size / whole / 1e6:.0f} MB/s, all in {whole:.1f} s, "
        f"half of them in {seconds[count // 2]:.1f} s"
    )


def main(site: Path, count: int) -> None:
    """Print what one reader loads, and how long `count` of them wait."""
    with subprocess.Popen([sys.executable, "-c", SERVER, str(site)], **QUIET) as server:
        try:
            port = int(server.stdout.readline())
            files = first_load(site, f"http://127.0.0.1:{port}/")
            for each in (1, count):
                before = sum(psutil.Process(server.pid).cpu_times()[:2])
                print(_told(files, asyncio.run(readers(port, files, each))))
                used = sum(psutil.Process(server.pid).cpu_times()[:2]) - before
                print(f"the server took {used / each:.3f} s of a processor for each", flush=True)
        finally:
            server.terminate()


if __name__ == "__main__":
    main(Path(sys.argv[1]).resolve(), int(sys.argv[2]) if sys.argv[2:] else 500)

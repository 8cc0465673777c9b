"""The workbook as a static site, built on any computer.

- `command.py`, `links.py`: the commands `site` and `links`.
- `build.py`: the site, from its parts; `front.py`: its first page, its list of pages, its settings,
  with `switched_off.txt`, the parts of JupyterLab that it leaves out.
- `packages.py`, `browser.txt`: what a page needs in the browser, fetched, made lighter, listed.
- `runtime.py`: the Python of browsers, and modules as its bytecode (`to_bytecode.py`, `in_node.mjs`);
  `worker/` loads it in a browser, and keeps one that has started.
- `parts/`, `labextension/`: the first page, the service worker, what is kept and shared, and what goes from
  page to page.
- `sharing.md`: three ways to share, measured and on paper.
"""

__all__ = ["NotBuilt"]


class NotBuilt(RuntimeError):
    """The site could not be built; the sentence says what to do."""

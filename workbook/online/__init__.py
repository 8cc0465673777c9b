"""The workbook as a static site, built on any computer.

- `command.py`, `links.py`: the commands `site` and `links`.
- `build.py`: the site, from its parts; `front.py`: its first page, its list of pages, its settings.
- `packages.py`, `browser.txt`: what a page needs in the browser, fetched, made lighter, listed.
- `runtime.py`: the Python of browsers, and modules as its bytecode (`to_bytecode.py`, `in_node.mjs`);
  `loading.mjs` loads it in a browser.
- `parts/`, `labextension/`: the first page, the service worker, what is kept and shared, and what goes from
  page to page.
- `sharing.md`: three ways to share, measured and on paper.
"""

__all__ = ["NotBuilt"]


class NotBuilt(RuntimeError):
    """The site could not be built; the sentence says what to do."""

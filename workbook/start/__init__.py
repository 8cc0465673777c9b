"""Setting up, the launcher, the folders of the reader's own.

Before anything is installed only the standard library is there. These run then, and use it alone:

- `bootstrap.py`: sets up what the lists in `binder/` name; `whole.py`: what lost a file since;
  `causes.py`: why setting up failed, and what to do.
- `child.py`: another program, which ends with this one.

These run once all is installed:

- `launcher.py`: the reader's folder, a free port, JupyterLab, the browser; `settings/`: its settings.
- `folder.py`: the reader's pages, answers and settings.
- `serve.py`, `server.py`: Jupyter's server, and what the workbook adds to it; `own_pages.py`: which pages are its own;
  `contents.py`: those stay as they are; `sessions.py`: they share one program; `kernels.py`: which kernels there are.
"""

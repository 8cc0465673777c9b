"""Setting up, starting JupyterLab, and the reader's own folder."""

"""What the site tells JupyterLab: which pages may run, what is switched off, where Python is."""

import json
from pathlib import Path

from workbook.ui.pages import code_cells, shipped_pages

__all__ = ["OVERRIDES", "page_config"]

LAB = Path(__file__).parents[1] / "start" / "settings" / "labconfig"
OVERRIDES = LAB / "default_setting_overrides.json"
KERNEL = "@jupyterlite/pyodide-kernel-extension:kernel"
# Bars and marks that pages do not show; what asks for parts that are switched off; JupyterLite's own
# service worker, which shows files to Python: pages need none, and ours keeps the site.
SWITCHED_OFF = (
    "@jupyterlite/notebook-application-extension:logo",
    "@jupyter-notebook/application-extension:top",
    "@jupyter-notebook/notebook-extension:kernel-logo",
    "@jupyter-notebook/notebook-extension:tab-icon",
    "@jupyterlite/application-extension:lsp-connection-manager",
    "@jupyterlite/application-extension:service-worker-manager",
)


def page_config(start: str, lock: str, packages: list[str]) -> dict:
    """The settings. `start` is the runtime's first file; `packages` of our list are loaded first."""
    off = json.loads((LAB / "page_config.json").read_text(encoding="utf-8"))["disabledExtensions"]
    kernel = {
        "pyodideUrl": start,
        "disablePyPIFallback": True,
        "loadPyodideOptions": {"lockFileURL": lock, "packages": packages},
    }
    return {
        "appName": "Wire to Water",
        "disabledExtensions": [*off, *SWITCHED_OFF],
        "litePluginSettings": {KERNEL: kernel},
        "wireToWaterPages": json.dumps({path.name: code_cells(path) for path in shipped_pages()}),
    }

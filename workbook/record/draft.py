"""What is typed into the form, kept at every entry, so that a page that closes loses none of it."""

import contextlib
import json
from collections.abc import Mapping
from pathlib import Path

from workbook.log import default_path
from workbook.ui.saving import whole_text

__all__ = ["Draft"]

VERSION = 1


class Draft:
    """One form's texts by the name of their field, and its units, in a file beside the log."""

    def __init__(self, path: Path | None = None):
        self.path = path or default_path().parent / "record-draft.json"

    def read(self) -> tuple[str, dict[str, str]]:
        """The units and the texts that were kept; none where there are none to be read."""
        with contextlib.suppress(OSError, ValueError, KeyError, TypeError, AttributeError):
            kept = json.loads(self.path.read_text(encoding="utf-8"))
            texts = {f"{name}": f"{text}" for name, text in kept["texts"].items() if text}
            if kept["units"] in ("us", "si"):
                return kept["units"], texts
        return "us", {}

    def keep(self, units: str, texts: Mapping[str, str]) -> None:
        """Put these in place of what was kept.

        Raises:
            OSError: they cannot be written there.
        """
        if not texts:
            self.path.unlink(missing_ok=True)
            return
        self.path.parent.mkdir(parents=True, exist_ok=True)
        with whole_text(self.path) as file:
            json.dump({"v": VERSION, "units": units, "texts": dict(texts)}, file)

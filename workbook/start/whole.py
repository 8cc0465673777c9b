"""Whether packages are whole where they were put: which of them lack a file.

Only the standard library: this is asked before anything of theirs is used.
"""

import os
import re
from collections.abc import Mapping
from pathlib import Path

__all__ = ["damaged"]


def damaged(site: Path, wanted: Mapping[str, str]) -> list[str]:
    """Those of the packages `wanted` that are not in the folder `site`, whole, in the version given.

    A package lists its files; each name is looked for, and nothing is opened, so that a start is
    not kept waiting.
    """
    lists = _lists(site)
    listed: dict[str, frozenset[str]] = {}
    return [
        name for name, version in wanted.items() if not _whole(site, lists, listed, name, version)
    ]


def _lists(site: Path) -> dict[tuple[str, str], Path]:
    """Where each package lists its files, by its plain name and version."""
    try:
        names = [name for name in os.listdir(site) if name.endswith(".dist-info")]
    except OSError:
        return {}
    return {_key(*name[: -len(".dist-info")].rsplit("-", 1)): site / name for name in names}


def _key(name: str, version: str = "") -> tuple[str, str]:
    return re.sub(r"[-_.]+", "-", name).lower(), version


def _whole(site, lists, listed, name, version) -> bool:
    try:
        record = (lists[_key(name, version)] / "RECORD").read_text(encoding="utf-8")
    except (KeyError, OSError, ValueError):
        return False
    for line in record.splitlines():
        if ".pyc," in line:
            continue  # Python makes these again by itself
        folder, _, file = line.rsplit(",", 2)[0].strip('"').rpartition("/")
        if folder not in listed:
            listed[folder] = _names(site / folder)
        if file not in listed[folder]:
            return False
    return True


def _names(folder: Path) -> frozenset[str]:
    try:
        return frozenset(os.listdir(folder))
    except OSError:
        return frozenset()

"""Names the files of the page's extensions after what is in them.

    python -m tests.workbook.name_extensions

JupyterLab lets a browser keep such a file for a year. So another version needs another name, and a
browser that has the old one fetches the new. Run this after a change; a test fails until it is done.
"""

import json
import re
from hashlib import sha256
from pathlib import Path

__all__ = ["EXTENSIONS", "name_files"]

WORKBOOK = Path(__file__).resolve().parents[2] / "workbook"
EXTENSIONS = sorted(
    package.parent
    for folder in (
        WORKBOOK / "start" / "settings" / "labextensions",
        WORKBOOK / "online" / "labextension",
    )
    for package in folder.glob("*/package.json")
)
FIRST = "remoteEntry."
NAME = re.compile(r"(?P<stem>\w+)(\.[0-9a-f]{12})?(?P<ending>\.\w+)")


def name_files(extension: Path) -> list[str]:
    """Give each file of an extension its name, wherever it is named; the new names that were given.

    The first script names the other files, so it comes after them, and package.json last.
    """
    static, package = extension / "static", extension / "package.json"
    given = []
    for path in sorted(static.iterdir(), key=lambda path: path.name.startswith(FIRST)):
        match = NAME.fullmatch(path.name)
        named = f"{match['stem']}.{sha256(path.read_bytes()).hexdigest()[:12]}{match['ending']}"
        if named == path.name:
            continue
        for other in (package, *static.glob("*.js")):
            text = other.read_text("utf-8")
            if path.name in text:
                other.write_text(text.replace(path.name, named), "utf-8", newline="\n")
        path.rename(path.with_name(named))
        given.append(named)
    load = json.loads(package.read_text("utf-8"))["jupyterlab"]["_build"]["load"]
    if not (extension / load).is_file():
        raise SystemExit(f"{package} loads {load}, which is not there. Write its script's name.")
    return given


if __name__ == "__main__":
    for each in EXTENSIONS:
        print(f"{each.name}: {', '.join(name_files(each)) or 'named already'}")

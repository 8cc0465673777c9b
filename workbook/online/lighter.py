"""A wheel without what no page uses: tests, other languages, other terminals."""

from fnmatch import fnmatch
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

__all__ = ["lighter"]

LEFT_OUT = (
    "*/tests/*",
    "*.dist-info/sboms/*",
    "pygments/lexers/*",
    "wcwidth/table_grapheme_overrides/_known*",
)
KEPT = tuple(f"pygments/lexers/{name}.py" for name in ("__init__", "_mapping", "python"))


def lighter(wheel: Path, folder: Path) -> Path:
    """The wheel in `folder`, without what is left out."""
    folder.mkdir(exist_ok=True)
    made = folder / wheel.name
    with ZipFile(wheel) as whole, ZipFile(made, "w", ZIP_DEFLATED) as light:
        for name in whole.namelist():
            if name in KEPT or not any(fnmatch(name, pattern) for pattern in LEFT_OUT):
                # Without a date: the same packages make the same wheel.
                light.writestr(ZipInfo(name), whole.read(name), ZIP_DEFLATED)
    return made

"""Turns the modules of wheels, or of the standard library, into bytecode, which saves a browser a third of its start.

It is run by a Python of the series that browsers run, for bytecode is of one series. It is given the
folder of the wheels, or the library as a zip, and needs the standard library alone.
"""

import marshal
import sys
from importlib.abc import InspectLoader
from importlib.util import MAGIC_NUMBER, source_hash
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

UNCHECKED = (1).to_bytes(4, "little")  # its source is known by a hash, and is not looked for


def bytecode(source: bytes, name: str) -> bytes:
    """What Python would have kept of a module, after reading it."""
    code = InspectLoader.source_to_code(source, name)
    return MAGIC_NUMBER + UNCHECKED + source_hash(source) + marshal.dumps(code)


def change(wheel: Path) -> None:
    """Put bytecode in place of each module of a wheel."""
    with ZipFile(wheel) as whole:
        parts = {name: whole.read(name) for name in whole.namelist()}
    with ZipFile(wheel, "w", ZIP_DEFLATED, compresslevel=9) as packed:
        for name, data in parts.items():
            if name.endswith(".py"):
                name, data = f"{name}c", bytecode(data, name)
            packed.writestr(ZipInfo(name), data, ZIP_DEFLATED)


def main(packed: str) -> None:
    path = Path(packed)
    for each in sorted(path.glob("*.whl")) if path.is_dir() else [path]:
        change(each)


if __name__ == "__main__":
    main(sys.argv[1])

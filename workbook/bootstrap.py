"""Set up everything the workbook needs, the first time it is started.

The exact versions stand in binder/requirements*.txt. If the Python at hand has them all, it is
used as it is; else they go to the folder .venv beside the project. Only the standard library may
be imported here: nothing else is installed yet.
"""

import hashlib
import importlib.util
import json
import os
import re
import subprocess
import sys
from importlib import metadata
from pathlib import Path

from workbook.child import ROOT, started

__all__ = ["CLASS", "READER", "SITE", "TESTER", "SetupFailed", "python_with", "unmet"]

READER = "requirements.txt"
CLASS = "requirements-class.txt"
SITE = "requirements-site.txt"
TESTER = "requirements-test.txt"
LISTS = (READER, CLASS, SITE, TESTER)  # each holds all that the one before it holds

BINDER = ROOT / "binder"
HOME = ROOT / ".venv"
STAMP = HOME / "wire-to-water.json"
LOG = HOME / "setting-up.log"
PIPED = {
    "stdout": subprocess.PIPE,
    "stderr": subprocess.STDOUT,
    "text": True,
    "encoding": "utf-8",
    "errors": "replace",
}
PIN = re.compile(r"(?P<name>[\w.-]+)==(?P<version>[\w.!+]+)( ; sys_platform == \"(?P<on>\w+)\")?")


class SetupFailed(RuntimeError):
    """Setting up could not be finished; the message says what to do."""


def python_with(needs: str, say=print) -> str:
    """Return the Python that has all that the file `needs` lists, setting it up where it lacks.

    Raises SetupFailed, with a sentence for the reader, when that cannot be done.
    """
    if not _is_ready(needs):
        if not _inside() and not unmet(needs):
            return sys.executable
        _set_up(needs, say)
    return sys.executable if _inside() else str(_python())


def pins(needs: str) -> dict[str, str]:
    """Read the exact versions this system needs from a requirements file, by name."""
    found: dict[str, str] = {}
    for line in (BINDER / needs).read_text(encoding="utf-8").splitlines():
        if line.startswith("-r "):
            found |= pins(line[3:])
        elif (pin := PIN.fullmatch(line)) and pin["on"] in (None, sys.platform):
            found[pin["name"]] = pin["version"]
    return found


def unmet(needs: str) -> list[str]:
    """List the packages which this Python lacks, or has in another version."""
    return [name for name, version in pins(needs).items() if _version(name) != version]


def _version(name: str) -> str | None:
    try:
        return metadata.version(name)
    except metadata.PackageNotFoundError:
        return None


def _python() -> Path:
    return HOME / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def _inside() -> bool:
    return Path(sys.prefix).resolve() == HOME.resolve()


def _series() -> str:
    return "{}.{}".format(*sys.version_info)


def _digest(needs: str) -> str:
    """Tell one state of the lists, in one place, from another."""
    held = LISTS[: LISTS.index(needs) + 1]
    texts = [(BINDER / name).read_bytes() for name in held]
    return hashlib.sha256(b"\n".join([*texts, str(ROOT).encode()])).hexdigest()


def _read_stamp() -> dict:
    try:
        stamp = json.loads(STAMP.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return stamp if isinstance(stamp, dict) else {}


def _is_ready(needs: str) -> bool:
    stamp = _read_stamp()
    return (
        any(stamp.get(name) == _digest(name) for name in LISTS[LISTS.index(needs) :])
        # A computer's Python may have become a newer one, whose packages lie elsewhere.
        and stamp.get("python") == _series()
        and _python().exists()
    )


def _set_up(needs: str, say) -> None:
    say("Setting up Wire to Water. This takes a few minutes and needs the internet.")
    before = _read_stamp()
    try:
        # No stamp, no trust: what an interrupted run left behind is made again from nothing.
        if not before or not _python().exists() or before.get("python") != _series():
            _make_home()
            before = {}
        STAMP.unlink(missing_ok=True)
        _install(needs, say)
    except OSError as error:
        raise SetupFailed(
            f"The folder {ROOT} cannot be written to: {error.strerror}. Copy the whole folder to a place of your "
            "own, such as Documents, and type the command there."
        ) from error
    except SetupFailed:
        if before:
            _write_stamp(before)
        raise
    _write_stamp({**before, needs: _digest(needs), "python": _series()})
    say("Everything is set up.")


def _write_stamp(stamp: dict) -> None:
    STAMP.write_text(json.dumps(stamp), encoding="utf-8")


def _make_home() -> None:
    if not (importlib.util.find_spec("venv") and importlib.util.find_spec("ensurepip")):
        raise SetupFailed(
            "This Python came without the part that sets up packages, called venv. On Debian, "
            "Ubuntu or Mint, type: sudo apt install python3-venv. Then type the same command again."
        )
    base = getattr(sys, "_base_executable", None) or sys.executable
    with started([base, "-m", "venv", "--clear", str(HOME)], **PIPED) as making:
        heard = making.stdout.read()
        making.wait()
    if making.returncode:
        raise SetupFailed(
            f"The folder {HOME} could not be made. Python said: {_last_line(heard)} "
            f"Delete the folder {HOME} if it is there, then type the same command again."
        )


def _pip_command(needs: str) -> list[str]:
    """Install the exact versions and nothing besides, and the project itself where it lies."""
    install = [str(_python()), "-m", "pip", "install", "--no-deps", "--disable-pip-version-check"]
    return [*install, "--requirement", str(BINDER / needs), "--editable", str(ROOT)]


def _install(needs: str, say) -> None:
    total, seen, lines = len(pins(needs)) + 1, 0, []
    with started(_pip_command(needs), env=_plain_environment(), **PIPED) as pip:
        for line in pip.stdout:
            lines.append(line)
            seen += line.startswith(("Collecting ", "Obtaining ", "Requirement already satisfied"))
            if seen % 20 == 0 and line.startswith("Collecting "):
                say(f"  {seen} of {total} parts are here.")
        pip.wait()
    LOG.write_text("".join(lines), encoding="utf-8")
    if pip.returncode:
        faults = [line for line in lines if line.startswith("ERROR: ")]
        raise SetupFailed(
            "The parts could not be fetched or put in place. Check that this computer is on the "
            "internet and has 1 GB free, then type the same command again. "
            f"The whole story is in {LOG}. In short: {_last_line(''.join(faults or lines))}"
        )


def _plain_environment() -> dict[str, str]:
    """Leave out what would turn pip away from the folder it is to fill."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    return {**kept, "PIP_USER": "0", "PYTHONUTF8": "1"}


def _last_line(text: str) -> str:
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    return lines[-1] if lines else "nothing."

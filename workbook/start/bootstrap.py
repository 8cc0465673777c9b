"""Set up everything the workbook needs, the first time it is started.

The exact versions stand in binder/requirements*.txt. If the Python at hand has them all, it is
used as it is; else they go to the folder .venv beside the project. What went missing there since is
put back at the next start. Only the standard library may be imported here: nothing else is
installed yet.
"""

import contextlib
import hashlib
import importlib.util
import json
import os
import re
import shutil
import subprocess
import sys
import sysconfig
from pathlib import Path

from .causes import SetupFailed, failure, in_words
from .child import ROOT, Say, started
from .whole import damaged

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
ROOM = 700_000_000  # bytes that a reader's packages take, and what they come in


def python_with(needs: str, say: Say = print) -> str:
    """Return the Python that has all that the file `needs` lists, setting it up where it lacks.

    Raises:
        SetupFailed: it cannot be done; a sentence for the reader.
    """
    if not _is_ready(needs):
        if not _inside() and not unmet(needs):
            return sys.executable
        _set_up(needs, say)
    elif lacking := damaged(_site(), pins(needs)):
        _put_back(needs, lacking, say)
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
    from importlib import metadata  # slow to load, and asked for only where .venv is not used

    try:
        return metadata.version(name)
    except metadata.PackageNotFoundError:
        return None


def _python() -> Path:
    return HOME / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def _site() -> Path:
    """The folder in .venv where the packages are."""
    base = {"base": str(HOME), "platbase": str(HOME)}
    return Path(sysconfig.get_path("purelib", "venv", vars=base))


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
        and (HOME / "pyvenv.cfg").exists()
    )


def _put_back(needs: str, lacking: list[str], say: Say) -> None:
    """Install again what lacks files; where that does not do, everything."""
    first, more = ", ".join(lacking[:3]), len(lacking) - 3
    say(
        f"Some parts of the workbook are missing or damaged: {first}{f' and {more} more' if more > 0 else ''}. "
        "They are being put back, which needs the internet."
    )
    have = pins(needs)
    wanted = [f"{name}=={have[name]}" for name in lacking]
    with in_words():
        try:
            _pip(["--force-reinstall", *wanted], len(wanted), say)
        except SetupFailed as failed:
            if failed.known:
                raise
        if damaged(_site(), have):
            STAMP.unlink(missing_ok=True)
            _fill(needs, say)
    say("They are back.")


def _set_up(needs: str, say: Say) -> None:
    if HOME.exists() and not STAMP.exists():
        say("Setting up didn't finish last time. It continues now and keeps what was downloaded.")
    else:
        say("Setting up Wire to Water. This takes a few minutes and needs the internet.")
    with in_words():
        _fill(needs, say)
    say("Everything is set up.")


def _fill(needs: str, say: Say) -> None:
    before = _read_stamp()
    # No stamp, no trust: what an interrupted run left behind is made again from nothing. What was
    # fetched is not fetched again, for pip keeps it.
    whole = _python().exists() and (HOME / "pyvenv.cfg").exists()
    if not (before and whole and before.get("python") == _series()):
        _make_home()
        before = {}
    STAMP.unlink(missing_ok=True)
    try:
        _install(needs, say)
    except SetupFailed:
        if before:
            _write_stamp(before)
        raise
    _write_stamp({**before, needs: _digest(needs), "python": _series()})


def _write_stamp(stamp: dict) -> None:
    STAMP.write_text(json.dumps(stamp), encoding="utf-8")


def _make_home() -> None:
    if not (importlib.util.find_spec("venv") and importlib.util.find_spec("ensurepip")):
        raise SetupFailed(
            "This Python came without venv, the part that sets up packages. On Debian, "
            "Ubuntu or Mint, type: sudo apt install python3-venv. Then type the same command again."
        )
    if (free := shutil.disk_usage(ROOT).free) < ROOM:
        raise SetupFailed(
            f"The disk has {free // 1_000_000} MB free, and setting up needs {ROOM // 1_000_000} MB. Empty the trash or "
            "delete large files, then type the same command again."
        )
    HOME.mkdir(exist_ok=True)
    base = getattr(sys, "_base_executable", None) or sys.executable
    with started([base, "-m", "venv", "--clear", str(HOME)], **PIPED) as making:
        heard, _ = making.communicate()
    if making.returncode:
        raise failure(
            heard,
            f"The folder {HOME} couldn't be made. Python said: {_last_line(heard)} "
            f"Delete the folder {HOME} if it is there, then type the same command again.",
        )


def _install(needs: str, say: Say) -> None:
    """Install the exact versions and nothing besides, and the project itself where it lies."""
    wanted = ["--requirement", str(BINDER / needs), "--editable", str(ROOT)]
    _pip(wanted, len(pins(needs)) + 1, say)


def _pip_command(words: list[str]) -> list[str]:
    install = [str(_python()), "-m", "pip", "install", "--no-deps", "--disable-pip-version-check"]
    return [*install, *words]


def _pip(words: list[str], total: int, say: Say) -> None:
    seen, lines = 0, []
    with started(_pip_command(words), env=_plain_environment(), **PIPED) as pip:
        for line in pip.stdout or ():
            lines.append(line)
            seen += line.startswith(("Collecting ", "Obtaining ", "Requirement already satisfied"))
            if seen % 20 == 0 and line.startswith("Collecting "):
                say(f"  {seen} of {total} parts are ready.")
        pip.wait()
    with contextlib.suppress(OSError):  # a full disk must not hide what pip said of it
        LOG.write_text("".join(lines), encoding="utf-8")
    if pip.returncode:
        faults = [line for line in lines if line.strip().startswith("ERROR: ")]
        raise failure(
            "".join(lines),
            "The parts couldn't be installed. Type the same command again. If it fails again, delete the "
            f"folder {HOME} and type it once more.",
            f" All the details are in {LOG}. In short: {_last_line(''.join(faults or lines))}",
        )


def _plain_environment() -> dict[str, str]:
    """Leave out what would turn pip away from the folder it is to fill."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    return {**kept, "PIP_USER": "0", "PYTHONUTF8": "1"}


def _last_line(text: str) -> str:
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    return lines[-1] if lines else "nothing."

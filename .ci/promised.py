"""Whether every exact version installs on every Python and system that the project promises.

The Pythons are the classifiers of pyproject.toml, each from its first release on, as a pin may want a
later one (one asked for 3.11.5). pip answers from what packages say of themselves and from the files
they come in; nothing is installed, and what has to be read is small. Later releases that a package leaves
out are found by tests/test_promised.py.
"""

import pathlib
import re
import subprocess
import tempfile
import tomllib

__all__ = ["SYSTEMS", "pins_on", "pythons", "refused"]

ROOT = pathlib.Path(__file__).resolve().parent.parent
PIN = re.compile(r'(?P<pin>[\w.-]+==[\w.!+]+)( ; sys_platform == "(?P<on>\w+)")?')
CLASSIFIER = re.compile(r"Programming Language :: Python :: (3\.\d+)")
LINUX = ("manylinux_2_34", "manylinux_2_28", "manylinux_2_17", "manylinux2014")
OLDER = ("manylinux2010", "manylinux_2_5", "manylinux1")
SYSTEMS = {
    "linux": tuple(f"{name}_x86_64" for name in LINUX + OLDER),
    "win32": ("win_amd64",),
    "darwin": ("macosx_12_0_arm64", "macosx_11_0_arm64"),
}
# Its makers give out the source alone. Tests need it, readers do not.
FROM_SOURCE = ("wntr",)


def pythons():
    """The promised Pythons as pyproject.toml lists them, the oldest first: 3.11 and so on."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    found = [CLASSIFIER.fullmatch(text) for text in project["classifiers"]]
    return [match[1] for match in found if match]


def pins_on(system, texts):
    """The pins that a system needs, of the lists with these texts."""
    matches = [PIN.fullmatch(line) for text in texts for line in text.splitlines()]
    return [match["pin"] for match in matches if match and match["on"] in (None, system)]


def refused(python, texts, say=print):
    """What pip cannot install, in a line for each Python and system; empty where all is well.

    `python` is one that has a recent pip.
    """
    found = []
    for version in pythons():
        for system in SYSTEMS:
            say(f"Python {version}.0 on {system}")
            if fault := _fault(python, f"{version}.0", system, pins_on(system, texts)):
                found.append(f"Python {version}.0 on {system}: {fault}")
    return found


def _fault(python, version, system, pins):
    """What pip says against these pins; nothing where it would install them."""
    where = ["--python-version", version]
    where += [word for name in SYSTEMS[system] for word in ("--platform", name)]
    for pin in pins:
        name, number = pin.split("==")
        if name in FROM_SOURCE:
            _, told = _pip(python, "index", "versions", name, "--python-version", version)
            if number not in re.split(r"[,\s]+", told):
                return f"{pin} does not admit it"
    ask = ["install", "--dry-run", "--no-deps", "--ignore-installed", "--only-binary", ":all:"]
    built = [pin for pin in pins if pin.split("==")[0] not in FROM_SOURCE]
    with tempfile.TemporaryDirectory() as nowhere:
        status, told = _pip(python, *ask, *where, "--target", nowhere, *built)
    lines = told.splitlines()
    said = [line for line in lines if line.startswith("ERROR: ")]
    return (said or lines or ["pip said nothing"])[-1] if status else ""


def _pip(python, *words):
    done = subprocess.run(
        [python, "-m", "pip", *words],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        check=False,
    )
    return done.returncode, done.stdout.decode(errors="replace")

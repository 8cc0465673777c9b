"""Links that open this project online, made from the address of anybody's own repository."""

import re
import subprocess
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from typing import NamedTuple
from urllib.parse import quote, urlsplit

from workbook.start.child import ROOT, Say
from workbook.ui.pages import CHAPTERS, OPENING

__all__ = ["Repository", "binder", "options", "repository", "run", "sentences", "site"]

SHORT = re.compile(r"(?:[^@/\s]+@)?(?P<host>[\w-]+(?:\.[\w-]+)+):(?P<path>[^/\s]\S*)")
SCHEMES = ("https", "http", "ssh", "git")
BINDER = "https://mybinder.org"
PAGE = f"doc/workspaces/pages/tree/{CHAPTERS.relative_to(ROOT).as_posix()}/{OPENING}"
EXAMPLE = "python3 -m workbook links https://github.com/OWNER/REPOSITORY"


class Repository(NamedTuple):
    """Where a repository is on the web: its host, and its path there without a leading slash."""

    host: str
    path: str

    @property
    def name(self) -> str:
        """Its path as the large hosts show it."""
        return self.path.removesuffix(".git")


def repository(address: str) -> Repository:
    """Read the address of a git remote; names and passwords in it are left out.

    Raises:
        ValueError: it names no host that others can reach.

    >>> repository("git@github.com:pumps/wire-to-water.git")
    Repository(host='github.com', path='pumps/wire-to-water.git')
    """
    if short := SHORT.fullmatch(address):
        return Repository(short["host"].lower(), short["path"].rstrip("/"))
    try:
        parts = urlsplit(address)
        host, port, path = parts.hostname, parts.port, parts.path.strip("/")
    except ValueError:  # brackets or a port that no address has
        host = None
    if not host or not path or parts.scheme not in SCHEMES:
        raise ValueError(
            f"“{address}” isn't the address of a repository that others can reach. "
            f"Type one, like this: {EXAMPLE}"
        )
    # The port of ssh says nothing of the port for browsers.
    shown = f":{port}" if port and parts.scheme.startswith("http") else ""
    return Repository(host + shown, path)


def binder(there: Repository) -> str:
    """The link that opens a repository's newest state on Binder, at the opening page."""
    if there.host == "github.com":
        spec = f"gh/{quote(there.name)}"
    elif there.host == "gitlab.com":
        spec = f"gl/{quote(there.name, safe='')}"
    else:
        spec = f"git/{quote(f'https://{there.host}/{there.path}', safe='')}"
    return f"{BINDER}/v2/{spec}/HEAD?urlpath={quote(PAGE, safe='')}"


def site(there: Repository) -> str | None:
    """Where the host of a repository usually serves its site; None where no host is known to."""
    ends = {"github.com": "github.io", "gitlab.com": "gitlab.io"}
    owner, _, rest = there.name.partition("/")
    if there.host not in ends or not rest:
        return None
    own = f"{owner.lower()}.{ends[there.host]}"
    return f"https://{own}/" if rest.lower() == own else f"https://{own}/{quote(rest)}/"


def sentences(there: Repository) -> Iterator[str]:
    """Everything to copy, a line for each."""
    yield "Binder opens what you pushed last, if your repository is public:"
    yield f"    {binder(there)}"
    yield "The same link as a badge, for a page in Markdown:"
    yield f"    [![Open on Binder]({BINDER}/badge_logo.svg)]({binder(there)})"
    if address := site(there):
        yield "The website, once you publish it there. Your host's settings show the exact address:"
        yield f"    {address}"
    else:
        yield "The website has the address of the web host you put it on."


def _remote() -> str:
    """The address of this checkout's own remote; empty where it has none."""
    ask = ["git", "-C", str(ROOT), "remote", "get-url", "origin"]
    try:
        done = subprocess.run(ask, capture_output=True, text=True, check=False)
    except OSError:  # git is not installed
        return ""
    return done.stdout.strip()


def options(parser: ArgumentParser) -> None:
    """What can be typed after `links`."""
    parser.add_argument(
        "address", nargs="?", help="the address of your repository; the remote origin if left out"
    )


def run(options: Namespace, say: Say = print) -> int:
    """Say the links of a repository; return the exit status."""
    address = options.address or _remote()
    try:
        if not address:
            raise ValueError(
                "This copy doesn't know your repository: it has no git remote “origin”. "
                f"Type the address of your repository, like this: {EXAMPLE}"
            )
        for sentence in sentences(repository(address)):
            say(sentence)
    except ValueError as fault:
        print(fault, file=sys.stderr)
        return 1
    return 0

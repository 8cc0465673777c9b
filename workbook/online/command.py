"""The command that builds the static site; what it needs is imported when it runs."""

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

from workbook.start.child import Say

from . import NotBuilt

if TYPE_CHECKING:
    from .build import Built
    from .runtime import Runtime

__all__ = ["options", "run"]


def options(parser: ArgumentParser) -> None:
    """What can be typed after `site`."""
    parser.add_argument(
        "--out", metavar="DIR", required=True, help="the folder to build the site in"
    )
    parser.add_argument(
        "--runtime", metavar="DIR", help="a copy of Pyodide for the site to bring along"
    )
    parser.add_argument(
        "--usual-first",
        action="store_true",
        help="with --runtime: readers load Python from its usual address where they can reach it",
    )


def run(options: Namespace, say: Say = print) -> int:
    """Build the site and say what readers will load, and from where; return the exit status."""
    from .build import build
    from .runtime import Brought, Usual

    out = Path(options.out).expanduser().resolve()
    try:
        usual = Usual()
        runtime: Runtime = usual
        if options.runtime:
            first = usual if options.usual_first else None
            runtime = Brought(Path(options.runtime).expanduser(), first)
        built = build(out, runtime)
    except NotBuilt as fault:
        print(fault, file=sys.stderr)
        return 1
    for sentence in sentences(built, runtime):
        say(sentence)
    return 0


def sentences(built: "Built", runtime: "Runtime") -> Iterator[str]:
    """What there is to know of a site that is built."""
    size = sum(path.stat().st_size for path in built.out.rglob("*") if path.is_file())
    yield f"The site is in {built.out}. It is {size / 1e6:.0f} MB; put all of it on a web host."
    if runtime.outside:
        yield f"Readers' browsers load Python from {runtime.outside}"
        yield f"{urlsplit(runtime.outside).netloc} sees each reader's internet address and your site's name, and nothing readers do."
    if len(runtime.places) > 1:
        yield "Where they can't reach that, they load your own host's copy of it instead."
    elif runtime.outside:
        yield "To serve that from your own host too, type the folder of a copy after --runtime."
    yield "Your own host sees each reader's internet address and which files are loaded."
    if runtime.outside:
        yield "Nothing else comes from outside, and nothing readers do is sent anywhere."
    else:
        yield "Readers' browsers load nothing from outside, and nothing readers do is sent anywhere."
    if not built.quick:
        yield "Pages open in two thirds of the time if you build with Python 3.14, or with Node and --runtime."

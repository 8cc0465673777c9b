"""The command that builds the static site."""

import sys
from argparse import Namespace
from pathlib import Path

from .build import build
from .refusal import NotBuilt
from .runtime import Brought, Usual

__all__ = ["run"]


def run(options: Namespace, say=print) -> int:
    """Build the site and say what readers will load, and from where; return the exit status."""
    out = Path(options.out).expanduser().resolve()
    try:
        runtime = Brought(Path(options.runtime).expanduser()) if options.runtime else Usual()
        figures = build(out, runtime)
    except NotBuilt as fault:
        print(fault, file=sys.stderr)
        return 1
    for sentence in sentences(out, runtime, figures):
        say(sentence)
    return 0


def sentences(out: Path, runtime: Brought | Usual, figures: bool) -> list[str]:
    """What there is to know of a site that is built."""
    size = sum(path.stat().st_size for path in out.rglob("*") if path.is_file())
    said = [f"The site is in {out}. It has {size / 1e6:.0f} MB; put all of it on a web host."]
    if isinstance(runtime, Usual):
        said.append(f"Readers' browsers load Python, numpy and matplotlib from {runtime.address}")
        said.append("Nothing else comes from outside, and nothing is sent.")
        said.append("To serve that from here too, give a copy of it after --runtime.")
    else:
        said.append("Readers' browsers load nothing from outside, and nothing is sent.")
    if not figures:
        said.append("The runtime has no matplotlib, so each figure shows its table alone.")
    return said

"""A PostgreSQL server of its own, for as long as a test wants it: no network, no account, no trace."""

import contextlib
import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from pathlib import Path

__all__ = ["postgres", "programs"]

ACCOUNT = "postgres"  # the server refuses to run as root; Debian's package makes this one
OPTIONS = "-c listen_addresses='' -c fsync=off -k {folder}"


def programs() -> Path | None:
    """The folder with the server's programs, the newest edition; None where there is none."""
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin/pg_ctl"), key=_edition)
    named = shutil.which("pg_ctl")
    return found[-1].parent if found else Path(named).resolve().parent if named else None


def _edition(path: Path) -> float:
    return float(path.parts[-3])


@contextlib.contextmanager
def postgres(bin_folder: Path) -> Iterator[str]:
    """The address of an empty database, as SQLAlchemy writes it."""
    as_whom = {"user": ACCOUNT, "group": ACCOUNT, "extra_groups": []} if os.geteuid() == 0 else {}

    def run(program: str, *words: str) -> None:
        command = [bin_folder / program, "-D", f"{folder}/data", *words]
        subprocess.run(command, check=True, cwd=folder, stdout=subprocess.DEVNULL, **as_whom)

    # A socket's name has room for about a hundred letters, and others may not enter pytest's folder.
    with tempfile.TemporaryDirectory(prefix="pg-", ignore_cleanup_errors=True) as folder:
        if as_whom:
            shutil.chown(folder, ACCOUNT, ACCOUNT)
        run("initdb", "--auth=trust", "--username=trainer", "--encoding=UTF8", "--no-sync")
        log = f"--log={folder}/log"
        run("pg_ctl", "start", "--wait", log, "--options", OPTIONS.format(folder=folder))
        try:
            yield f"postgresql+psycopg://trainer@/postgres?host={folder}"
        finally:
            run("pg_ctl", "stop", "--wait", "--mode=immediate")

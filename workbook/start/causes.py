"""Why setting up failed, told from what the system and pip say, and what to do about each cause.

Only the standard library: this runs before anything is installed.
"""

import contextlib
import errno
import re
import sys
from dataclasses import dataclass

from .child import ROOT

__all__ = ["SetupFailed", "failure", "in_words"]


@dataclass(frozen=True)
class Cause:
    """One cause: what pip says of it, the system's numbers for it, and a sentence with advice."""

    name: str
    said: re.Pattern
    numbers: tuple[int, ...]
    advice: str


def _any(*words: str) -> re.Pattern:
    return re.compile("|".join(words), re.IGNORECASE)


AGAIN = "then type the same command again. What was downloaded is kept."
# The first that fits counts: without a network pip also says that it found no version.
CAUSES = (
    Cause(
        "space",
        _any("No space left", "not enough space", "Disk quota exceeded", "Errno 28", "WinError 112"),
        (errno.ENOSPC, errno.EDQUOT),
        "The disk is full. Setting up needs about 1 GB. Empty the trash or delete large files, "
        + AGAIN,
    ),
    Cause(
        "in use",
        _any("used by another process", "WinError 32"),
        (errno.EBUSY, getattr(errno, "ETXTBSY", errno.EBUSY)),
        "Another program is using the workbook's files. Close every other window the workbook is running in, "
        + AGAIN,
    ),
    Cause(
        "permission",
        _any("Permission denied", "Access is denied", "Read-only file system", r"Errno (1|13|30)\]"),
        (errno.EACCES, errno.EPERM, errno.EROFS),
        "The workbook can't write to the folder {root}. Copy the whole folder to a place of your own, such as "
        "Documents, and type the command there.",
    ),
    Cause(
        "not trusted",
        _any("CERTIFICATE_VERIFY_FAILED", "SSLError", "certificate verify failed"),
        (),
        "This computer doesn't trust its connection to the internet. Check the date and time on it. On a network at work, "
        "ask the people who run it to let Python download packages, " + AGAIN,
    ),
    Cause(
        "cut off",
        _any(
            "IncompleteRead", "Connection broken: ", "Connection reset", "not enough bytes were received",
            r"incomplete.download", r"Wheel .* is invalid", "DO NOT MATCH THE HASHES", "Read timed out",
            "ReadTimeoutError",
        ),
        (),
        "The download was cut off. Check that this computer is still on the internet, " + AGAIN,
    ),
    Cause(
        "network",
        _any(
            "NewConnectionError", "ConnectTimeout", "ProxyError", "Max retries exceeded", "name resolution",
            "Failed to establish a new connection", "getaddrinfo", "Network is unreachable",
            "No route to host", r"from versions: none\)",
        ),
        (errno.ENETUNREACH, errno.EHOSTUNREACH),
        "This computer couldn't reach the internet, and setting up needs it. Connect it, " + AGAIN,
    ),
    Cause(
        "version",
        _any(
            "No matching distribution", "Could not find a version", "requires a different Python",
            "Failed (building|to build)", "metadata-generation-failed", "not a supported wheel",
        ),
        (),
        "A part of the workbook isn't available for Python {python} on this computer. Install Python 3.13 "
        "(64-bit), then type the same command with it.",
    ),
)  # fmt: skip


class SetupFailed(RuntimeError):
    """Setting up could not be finished; the message says what to do.

    `known` is set where the cause is outside of the folder, so that making it anew would not help.
    """

    def __init__(self, message: str, known: bool = True):
        super().__init__(message)
        self.known = known


def failure(heard: str, otherwise: str, more: str = "") -> SetupFailed:
    """What to say of a program that failed: the known cause, or else these words; then `more`."""
    cause = next((cause for cause in CAUSES if cause.said.search(heard)), None)
    return SetupFailed((_told(cause) if cause else otherwise) + more, known=cause is not None)


@contextlib.contextmanager
def in_words():
    """Say in words what the system refuses while the block lasts.

    Raises:
        SetupFailed: in the place of an OSError.
    """
    try:
        yield
    except OSError as error:
        if cause := next((cause for cause in CAUSES if error.errno in cause.numbers), None):
            raise SetupFailed(_told(cause)) from error
        raise SetupFailed(
            f"Setting up stopped. The system says: {error.strerror or error}. Copy the whole folder {ROOT} to another "
            "place of your own, such as Documents, and type the command there."
        ) from error


def _told(cause: Cause) -> str:
    return cause.advice.format(root=ROOT, python="{}.{}.{}".format(*sys.version_info))

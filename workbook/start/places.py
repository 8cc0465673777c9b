"""Where a reader's answers and settings are kept: the usual folders, or one beside their pages.

In a home folder that cannot be written to the usual ones do not work. All then goes to a folder of
its own in the reader's folder, and into the usual log once that can be written again.
"""

import os
import shutil
from contextlib import suppress
from pathlib import Path

from platformdirs import user_config_path

from workbook.log import KEPT, Log, NotKept, NotRead, default_path, parse

from .folder import try_writing

__all__ = ["can_write", "environment_of", "settings_of", "settle"]

BESIDE = ".kept"


def can_write(folder: Path) -> bool:
    """Whether files can be made in a folder, which is made where it is not there."""
    try:
        try_writing(folder)
    except OSError:
        return False
    return True


def settle(own: Path, say) -> None:
    """See to it that answers given in the reader's folder `own` can be kept, and say where.

    Raises:
        OSError: not even that folder can be written to.
    """
    os.environ.pop(KEPT, None)
    usual, beside = default_path().parent, own / BESIDE
    if can_write(usual) and can_write(_usual_settings()):
        if (beside / "attempts.jsonl").exists():
            _bring_home(beside, say)
        return
    if not beside.exists() and usual.exists():
        with suppress(OSError):  # what cannot even be read is not there to be kept
            shutil.copytree(usual, beside)
    try_writing(beside)
    os.environ[KEPT] = str(beside)
    say(
        f"The workbook can't write to your home folder, so your answers are kept with your pages, in {beside}"
    )


def _bring_home(beside: Path, say) -> None:
    """Take into the usual log what was answered while it could not be written."""
    log, answers = Log(default_path()), beside / "attempts.jsonl"
    try:
        count = log.merge(parse(answers.read_bytes())[0])
        for exam in (beside / "exams").glob("*"):
            if not (to := log.path.parent / "exams" / exam.name).exists():
                to.parent.mkdir(exist_ok=True)
                shutil.copy(exam, to)
        answers.rename(beside / "attempts-in-your-log.jsonl")
    except (OSError, NotKept, NotRead):
        return  # they stay where they are until the next start
    if count:
        answers_in_words = "1 answer" if count == 1 else f"{count} answers"
        say(
            f"The workbook can write to your home folder again. It added {answers_in_words} from {beside} to your log."
        )


def _usual_settings() -> Path:
    return user_config_path("wire-to-water", appauthor=False)


def settings_of() -> Path:
    """The folder for what a reader sets in JupyterLab, apart from any other JupyterLab."""
    kept = os.environ.get(KEPT)
    settings = Path(kept) / "settings" if kept else _usual_settings()
    settings.mkdir(parents=True, exist_ok=True)
    return settings


def environment_of() -> dict[str, str]:
    """Where other programs keep their own things, when a home folder does not let them."""
    if not (kept := os.environ.get(KEPT)):
        return {}
    names = {
        "IPYTHONDIR": "ipython",
        "JUPYTER_DATA_DIR": "jupyter",
        "JUPYTER_RUNTIME_DIR": "runtime",
        "MPLCONFIGDIR": "matplotlib",
    }
    return {name: str(Path(kept) / folder) for name, folder in names.items()}

"""Which of its steps nbgrader runs a notebook for, as it tells by a variable of the environment."""

import os

__all__ = ["AUTOGRADE", "VALIDATE", "nbgrader_step"]

AUTOGRADE, VALIDATE = "autograde", "validate"


def nbgrader_step() -> str:
    """The step, or "" where a person runs the notebook."""
    return os.environ.get("NBGRADER_EXECUTION", "")

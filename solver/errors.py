"""The errors of the solver: one base, and each subclass is also the builtin it resembles.

Every message says what happened, what was got, and what to do instead.
"""

__all__ = ["BadCode", "BadDefinition", "NotSolvable", "SolverError", "Unfit", "Unreadable"]


class SolverError(Exception):
    """Anything the solver refuses, with a sentence a reader can act on."""


class BadDefinition(SolverError, TypeError):
    """A formula, quantity or family is not well formed; raised when it is defined."""


class Unreadable(SolverError, ValueError):
    """Text that cannot be read as one number with a fitting unit."""


class BadCode(SolverError, ValueError):
    """A code that cannot be read, or whose problem is not here any more."""


class NotSolvable(SolverError, LookupError):
    """No chain of formulas leads from what is known to what is asked."""


class Unfit(SolverError, ValueError):
    """Values of which no fair problem can be made; the sentence says why."""

"""Why a site could not be built."""

__all__ = ["NotBuilt"]


class NotBuilt(RuntimeError):
    """The site could not be built; the sentence says what to do."""

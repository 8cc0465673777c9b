"""How much of the time of a sitting is used: it counts while the page is open in a browser."""

from collections.abc import Callable

__all__ = ["TimeUsed"]

SILENCE = 120  # seconds that count without a pulse; a browser slows an unseen page to one a minute


class TimeUsed:
    """The seconds of a sitting. They count from `go_on` to `stop`, as long as `count` comes now and then."""

    def __init__(self, clock: Callable[[], float]):
        self._clock = clock
        self._before = 0.0
        self._since: float | None = None

    @property
    def seconds(self) -> float:
        """Those used so far."""
        running = 0 if self._since is None else min(self._clock() - self._since, SILENCE)
        return self._before + running

    @property
    def running(self) -> bool:
        """Whether the time counts."""
        return self._since is not None

    def go_on(self) -> None:
        """The time counts from now."""
        if self._since is None:
            self._since = self._clock()

    def stop(self) -> None:
        """The time stands still; what was not counted yet is left out."""
        self._since = None

    def count(self) -> None:
        """The page is open: the time up to now counts."""
        if self.running:
            self._before, self._since = self.seconds, self._clock()

    def was(self, seconds: float) -> None:
        """So many were used when a line was written, by this page or by another."""
        self._before = max(self._before, seconds)

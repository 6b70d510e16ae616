"""Long work that can be watched and stopped: the terminal and the page show it alike."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Generic, TypeVar

from fairhand.errors import FairhandError

T = TypeVar("T")


class Job(Generic[T]):
    """One piece of long work, from when it is made until its outcome is asked for.

    >>> job = Job(lambda job: sum(job.count(part) for part in (1, 2, 3)), total=6)
    >>> job.run(), job.told
    (6, '6 of 6')
    """

    def __init__(self, work: Callable[[Job[T]], T], total: int = 0) -> None:
        """The work is not begun yet.

        Args:
            work: Does it, counting in the job what is done and stopping where the job says so.
            total: How much there is to do, where that is known already.
        """
        self._work = work
        self.total = total
        self.done = 0
        self._stopped = threading.Event()
        self._ended = threading.Event()
        self._came: list[T] = []
        self.fault: FairhandError | None = None
        """What it could not go on for."""

    @property
    def told(self) -> str:
        """How far it is, in words."""
        return f"{self.done:,} of {self.total:,}"

    def count(self, done: int = 1) -> int:
        """So much more is done."""
        self.done += done
        return done

    def cancel(self) -> None:
        """It stops after the piece that it is at; what is done stays done."""
        self._stopped.set()

    @property
    def cancelled(self) -> bool:
        """Whether it was asked to stop."""
        return self._stopped.is_set()

    @property
    def ended(self) -> bool:
        """Whether it is over."""
        return self._ended.is_set()

    def run(self) -> T:
        """The work is done, here and now.

        Raises:
            FairhandError: It could not go on.
        """
        self._run()
        if self.fault is not None:
            raise self.fault
        return self._came[0]

    def begin(self) -> None:
        """The work is under way in a thread of its own."""
        threading.Thread(target=self._run, daemon=True).start()

    def wait(self, seconds: float) -> T | None:
        """What came of it, once it is over; None where it is not over in that time, or could not go on."""
        self._ended.wait(seconds)
        return self._came[0] if self._came else None

    def _run(self) -> None:
        try:
            self._came.append(self._work(self))
        except FairhandError as error:
            self.fault = error
        except BaseException:
            self.fault = FairhandError(
                "A fault in Fairhand itself; the terminal tells of it. What was saved stays saved."
            )
            raise
        finally:
            self._ended.set()

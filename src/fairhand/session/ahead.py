"""Work begun before anybody waits for it."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Generic, TypeVar

T = TypeVar("T")


class Ahead(Generic[T]):
    """A value worked out once, in a thread of its own from when it is begun; whoever asks for it waits for it.

    >>> answer = Ahead(lambda: 6 * 7)
    >>> answer.begin()
    >>> answer.result()
    42
    """

    def __init__(self, work: Callable[[], T]) -> None:
        """The work is not begun yet."""
        self._work = work
        self._thread: threading.Thread | None = None
        self._done: list[T] = []
        self._failed: BaseException | None = None

    def begin(self) -> None:
        """The work is under way."""
        if self._thread is None:
            self._thread = threading.Thread(target=self._run)
            self._thread.start()

    def result(self) -> T:
        """What came of it, or the exception that it ended in; begun now where it was not."""
        self.begin()
        if self._thread is not None:
            self._thread.join()
        if self._failed is not None:
            raise self._failed
        return self._done[0]

    def _run(self) -> None:
        try:
            self._done.append(self._work())
        except BaseException as error:  # noqa: BLE001 - it is raised again where the result is asked for
            self._failed = error

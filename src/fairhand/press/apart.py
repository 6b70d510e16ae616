"""Work done in processes apart, each piece within its time and memory: what a hostile file kills is not this program.

Each lane is one process with its own pool, so that when a process dies it is known which piece killed it, and the other
lanes go on. A process ends itself at its limits: memory by the system's own bound, time by an alarm that no library can
hold off. It ends too when the program that began it is gone.
"""

from __future__ import annotations

import contextlib
import itertools
import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, ThreadPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass, field
from queue import SimpleQueue
from typing import Generic, TypeVar

I_ = TypeVar("I_")
R_ = TypeVar("R_")
_GRACE_SECONDS = 20.0
"""How long after its time a process is waited for, where the system has no alarm."""


@dataclass(frozen=True, slots=True)
class Limits:
    """What one piece of work may take."""

    seconds: float = 60.0
    most_bytes: int = 2 * 2**30
    """Address space of the process, where the system bounds it."""


class WorkKilled(Exception):
    """The process that did the work died: it took too long, too much memory, or crashed."""


@dataclass
class _Lane(Generic[I_, R_]):
    """One process, begun again after each death."""

    work: Callable[[I_], R_]
    limits: Limits
    pool: ProcessPoolExecutor | None = field(default=None)

    def do(self, item: I_) -> R_ | Exception:
        """What comes of the item; an exception where it failed."""
        if self.pool is None:
            self.pool = ProcessPoolExecutor(
                1, multiprocessing.get_context("spawn"), initializer=_bound, initargs=(self.limits.most_bytes,)
            )
        try:
            future = self.pool.submit(_do_in_time, self.work, item, self.limits.seconds)
            return future.result(self.limits.seconds + _GRACE_SECONDS)
        except (BrokenProcessPool, TimeoutError):
            self.close()
            return WorkKilled()
        except Exception as error:  # noqa: BLE001 - whatever the work raised is its outcome
            return error

    def close(self) -> None:
        """The process ends."""
        if self.pool is not None:
            self.pool.shutdown(wait=False, cancel_futures=True)
            self.pool = None


def do_apart(
    work: Callable[[I_], R_],
    items: Iterable[I_],
    *,
    lanes: int = 0,
    limits: Limits | None = None,
    stopped: Callable[[], bool] = lambda: False,
) -> Iterator[tuple[I_, R_ | Exception]]:
    """Each item with what came of it, as each is done; items are taken from the iterable only as lanes come free.

    Args:
        work: A function of a module, as another process must find it.
        items: What it is done on; each can be pickled.
        lanes: Processes at once; as many as there are processors, where it is 0.
        limits: What each piece may take.
        stopped: Asked between the pieces: once it says so no further one is begun.
    """
    count = lanes or os.cpu_count() or 1
    waiting = iter(items)
    free: SimpleQueue[_Lane[I_, R_]] = SimpleQueue()
    for _ in range(count):
        free.put(_Lane(work, limits or Limits()))

    def do(item: I_) -> R_ | Exception:
        lane = free.get()
        try:
            return lane.do(item)
        finally:
            free.put(lane)

    under_way: dict[Future[R_ | Exception], I_] = {}
    with ThreadPoolExecutor(count) as threads:
        try:
            while True:
                # One more for each lane stands ready, so that none is idle while its last outcome is being dealt with.
                while len(under_way) < 2 * count and not stopped():
                    taken = list(itertools.islice(waiting, 1))
                    if not taken:
                        break
                    under_way[threads.submit(do, taken[0])] = taken[0]
                if not under_way:
                    return
                done, _ = wait(under_way, return_when=FIRST_COMPLETED)
                for future in done:
                    yield under_way.pop(future), future.result()
        finally:
            for future in under_way:
                future.cancel()
            for _ in range(count):
                free.get().close()


def _bound(most_bytes: int) -> None:
    """The process that this runs in cannot take more memory, and does not outlive its parent."""
    with contextlib.suppress(ImportError, ValueError, OSError):
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (most_bytes, most_bytes))
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the program itself is asked to stop, and tells this process
    threading.Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def _do_in_time(work: Callable[[I_], R_], item: I_, seconds: float) -> R_:
    """The work done; the process is ended by the system's alarm when it takes too long."""
    timed = hasattr(signal, "setitimer")
    if timed:
        signal.setitimer(signal.ITIMER_REAL, seconds)
    try:
        return work(item)
    finally:
        if timed:
            signal.setitimer(signal.ITIMER_REAL, 0)

"""What another program changes on the desk shows in the page: one watch over it, told to every page that is open."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, suppress
from pathlib import Path

from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response, StreamingResponse
from starlette.routing import Route
from watchfiles import Change, awatch

from fairhand.desk.cache import fingerprint
from fairhand.web.papers import Papers

OURS = ("/.fairhand/", "/record.sqlite", "/fair/")
"""What the program itself writes; no page shows it from the disk."""
QUIET_MS = 100
"""Milliseconds of quiet after which changes are told together."""
ALIVE_SECONDS = 20.0
"""How often a page that nothing is told hears that somebody is there."""


class Watch:
    """Tells whoever waits that something on the desk has changed."""

    def __init__(self, desk: Path) -> None:
        """Nothing has changed yet."""
        self.desk = desk
        self._changed = asyncio.Condition()
        self._count = 0

    async def run(self) -> None:
        """Watches until it is cancelled; where the system cannot tell of changes, the desk is looked at in turns."""
        try:
            await self._look(polling=None)
        except OSError:
            await self._look(polling=True)

    async def wait(self, count: int) -> int:
        """The number of changes so far, once it is another than ``count``, or after a while."""
        with suppress(TimeoutError):
            async with asyncio.timeout(ALIVE_SECONDS), self._changed:
                await self._changed.wait_for(lambda: self._count != count)
        return self._count

    async def _look(self, *, polling: bool | None) -> None:
        async for _ in awatch(self.desk, watch_filter=_is_theirs, debounce=QUIET_MS * 4, step=QUIET_MS // 2,
                              force_polling=polling):  # fmt: skip
            async with self._changed:
                self._count += 1
                self._changed.notify_all()


def _is_theirs(change: Change, path: str) -> bool:  # noqa: ARG001 - the signature is watchfiles'
    plain = path.replace("\\", "/")
    return not any(ours in plain for ours in OURS)


@asynccontextmanager
async def watched(app: Starlette) -> AsyncIterator[None]:
    """The desk is watched for as long as the application runs."""
    watch = app.state.watch = Watch(app.state.papers.desk)
    task = asyncio.create_task(watch.run())
    try:
        yield
    finally:
        task.cancel()
        with suppress(asyncio.CancelledError):
            await task


async def tell_changes(request: Request) -> Response:
    """The states of the desk, or of one paper, as server-sent events: the present one at once, each other as it comes.

    Raises:
        NoPaperHere: There is no paper of that name.
    """
    papers: Papers = request.app.state.papers
    slug = request.path_params.get("slug")
    folder = (await run_in_threadpool(papers.find, slug)).folder if slug else None

    async def states() -> AsyncIterator[str]:
        told, count = "", 0
        while True:
            state = await run_in_threadpool(fingerprint, folder) if folder else await run_in_threadpool(papers.state)
            yield ": here\n\n" if state == told else f"data: {state}\n\n"
            told = state
            count = await request.app.state.watch.wait(count)

    return StreamingResponse(states(), media_type="text/event-stream", headers={"cache-control": "no-store"})


ROUTES = (Route("/changes", tell_changes), Route("/paper/{slug}/changes", tell_changes))

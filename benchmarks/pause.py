"""What a pause in the draft costs the server: 5,000 words against 50,000, in one run.

At a pause the page sends the whole text with the hash that it was made from; the server keeps it, and its state in the
record. What can be asked for beside the draft, its citations as they were understood and its counts, is measured too,
each after a change of one paragraph. The time is that between the request's arrival at the application and the end of
its answer, in the process of the server.
"""

from __future__ import annotations

import random
import statistics
import tempfile
import time
from pathlib import Path

from measuring import tell
from starlette.testclient import TestClient
from starlette.types import Message, Receive, Scope, Send

from fairhand.session.demo import lay_out_demo
from fairhand.web.app import Guard, make_app

HERE = "http://127.0.0.1"
PAUSES = 25
GOAL_MS, GOAL_GROWTH = 60, 3


class Timed:
    """An application whose every answer is timed."""

    def __init__(self, app: Guard) -> None:
        """Nothing is asked yet."""
        self.app = app
        self.seconds: list[float] = []

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answers, and keeps the time that it took."""
        messages = [await receive()]  # the text is at hand before the time begins

        async def at_hand() -> Message:
            return messages.pop() if messages else await receive()

        begun = time.perf_counter()
        await self.app(scope, at_hand, send)
        self.seconds.append(time.perf_counter() - begun)


def write_draft(words: int) -> list[str]:
    """Paragraphs of invented prose with a citation in each, by a seeded generator."""
    chance = random.Random(8)  # noqa: S311 -- the same text in each run
    letters = "eeeeeetttttaaaaoooniiinssshhhrrrdddlllccuummwwffggyyppbbvk"
    lexicon = ["".join(chance.choices(letters, k=chance.randint(2, 11))) for _ in range(6000)]
    paragraphs = []
    for number in range(words // 125):
        sentences = [" ".join(chance.choices(lexicon, k=25)).capitalize() for _ in range(5)]
        paragraphs.append(f"{'. '.join(sentences)} (Haldane, 2008, p. {number % 9 + 1}).")
    return paragraphs


def pauses(words: int, see: str = "") -> float:
    """Milliseconds of the server's time at a pause, at the median; with ``see``, until what is asked for is there."""
    with tempfile.TemporaryDirectory(prefix="fairhand-bench-") as name:
        desk = Path(name) / "desk"
        paper = lay_out_demo(desk)
        app = Timed(make_app(desk, "key"))
        client = TestClient(app, base_url=HERE, headers={"origin": HERE}, follow_redirects=False)
        client.get("/?key=key")
        where = f"/paper/{paper.name}/draft"
        paragraphs, seen = write_draft(words), ""
        (paper / "draft.md").unlink()
        taken = []
        for number in range(PAUSES + 3):
            at = number * 7 % len(paragraphs)
            paragraphs[at] = f"Again {number}, {paragraphs[at]}"
            app.seconds.clear()
            answer = client.post(
                where, data={"text": "\n\n".join(paragraphs), "seen": seen}, headers={"hx-request": "true"}
            )
            answer.raise_for_status()
            seen = answer.text.split('value="')[1].split('"')[0]
            if see:
                app.seconds.clear()
                client.get(where, params={"see": see}).raise_for_status()
            taken.append(sum(app.seconds))
        return statistics.median(taken[3:]) * 1000


def main() -> None:
    """Measures and prints."""
    for see, what in (("", "a pause"), ("citations", "the citations, asked for"), ("asides", "asides and TKs")):
        short, long = pauses(5_000, see), pauses(50_000, see)
        goal = f"under {GOAL_MS} ms" if not see else "told"
        tell(f"ms of server time: {what}, 5,000 words", short, goal)
        tell(f"times that at 50,000 words ({long:.1f} ms)", long / short, f"at most {GOAL_GROWTH}" if not see else goal)


if __name__ == "__main__":
    main()

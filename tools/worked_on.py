"""The demo's paper as it stands when somebody has worked at it: its pages then have something to show."""

from __future__ import annotations

import datetime as dt
import re
from pathlib import Path
from typing import Any

from starlette.testclient import TestClient

from fairhand.session.demo import PAPER
from fairhand.web.app import make_app

HERE = "http://127.0.0.1"
SECRET = "worked-on"  # noqa: S105 - of this run alone, on this machine alone
FOCUS = "Why the tram libraries of Velden ended, though they were read to the last."
QUESTIONS = ("Who read on the trams, and who was standing?", "Why did borrowing fall, and on which line?")
NOTES = (
    ("haldane-2008", "1", "quotation", "because a lock would have cost more than the books", "The manager. Dry.", "p1"),
    ("osei-2014", "119", "paraphrase", "", "Borrowing elsewhere went on rising until the boxes came down.", "p3"),
    ("lund-1999", "61", "quotation", "she missed the being out", "This is the ending, perhaps.", "p4"),
    ("brandvold-2016", "", "summary", "", "Market women paid for no seat, so they stood, and read.", "p2"),
)
ROUGH = """everybody says the novelty wore off. well it did not wear off on the garden line did it

start with the boxes. forty books in varnished pine. no lock!! a lock would have cost more than the books, that is good,
put it early

then who is standing. the fishwife who was four mornings over the same chapter
"""
MARKS = """1.17 "very" delete
2.5 "and and" / and
1.10 "taken down" query by whom?
"""


def work_on(desk: Path, at: dt.datetime, paper: str = PAPER) -> None:
    """The demo's paper has focus, notes, a search, a rough draft, an offcut, a reader and a marked proof."""
    client = TestClient(make_app(desk, SECRET, at=at), base_url=HERE, headers={"origin": HERE}, follow_redirects=False)
    client.get(f"/?key={SECRET}")

    def send(leaf: str, **fields: Any) -> None:
        answer = client.post(f"/paper/{paper}/{leaf}", data=fields)
        if answer.status_code != 303:
            message = f"{leaf}: {answer.status_code}"
            raise RuntimeError(message)

    seen = re.search(r'name="was" value="([^"]*)"', client.get(f"/paper/{paper}/focus").text)
    send("focus", focus=FOCUS, audience="fellow students", was=seen.group(1) if seen else "")
    for question in QUESTIONS:
        send("focus", question=question)
    for source, page, kind, words, remark, point in NOTES:
        send("notes", source=source, page=page, kind=kind, quotation=words, remark=remark, point=point)
    send(
        "support",
        words="tram libraries Velden",
        place="the college library",
        hits="14",
        kept=["osei-2014", "haldane-2008"],
    )
    send("rough", text=ROUGH)
    draft = (desk / paper / "draft.md").read_text("utf-8")
    passage = "What the passengers lost"
    start = draft.index(passage)
    send(
        "offcuts",
        do="cut",
        place=f"{start}-{draft.index(chr(10), start)}-",
        why="It is a page of its own; perhaps at the end.",
    )
    send("proof/begin", medium="screen", by="", lapse="")
    send("proof/mark", written=MARKS)
    send("readers", name="Ottilie Brask", stage="argument", questions="Where did you lose the thread?", kind="docx")

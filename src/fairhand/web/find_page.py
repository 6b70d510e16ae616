"""What the sources say of some words, or in answer to a question; for each open question what may answer it."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from fairhand.model.focus import Question
from fairhand.reading.passages import Passage
from fairhand.session.searching import Found, list_open_questions, open_search
from fairhand.web.asked import Asked, get

FEW = 3
"""Passages that are shown for each of several questions."""


@dataclass(frozen=True, slots=True)
class Answered:
    """A question with what may answer it."""

    question: Question
    found: Found


def show(asked: Asked) -> Response:
    """The passages with the words that were asked for; without any, those for each open question."""
    opened = asked.paper.opened
    known = opened.look()
    questions = list_open_questions(asked.paper.folder)
    chosen = [one for one in questions if one.id == asked.query("question")]
    words = asked.query("words").strip()
    asks = asked.query("do") == "ask"
    found: Found | None = None
    answered: list[Answered] = []
    with open_search(opened.source_texts) as search:
        if words:
            found = search.answer(words) if asks else search.find(words)
        elif chosen:
            answered = [Answered(one, search.answer(one.text)) for one in chosen]
        else:
            answered = [Answered(one, search.answer(one.text, FEW)) for one in questions]
        search.begin_reading()
    return asked.page(
        "find_page.html",
        title="Find",
        step=_step(asked, questions),
        words=words,
        asks=asks,
        found=found,
        answered=answered,
        chosen=bool(chosen),
        names=known.names,
        to=lambda passage, at: _address(asked, passage, at),
        texts=len(known.paper.texts),
    )


def _step(asked: Asked, questions: tuple[Question, ...]) -> str:
    if not asked.paper.opened.look().paper.texts:
        return "No source has a text at hand yet: give its file under Sources, and it can be searched."
    if not questions:
        return "Look for words in all texts at hand; what you ask under Focus is looked for by itself."
    return "Read the likeliest pages for your questions first, and note what answers them."


def _address(asked: Asked, passage: Passage, at: str) -> str:
    """The page of a passage with its sentence marked; ``at`` is the place on it."""
    page: dict[str, str | int] = {"page": passage.label} if passage.label else {}
    place = {"part": passage.page + 1, "from": passage.span.start, "to": passage.span.end}
    return asked.to("sources", passage.source, "text", at=at, **(page | place))


ROUTES = (get("/paper/{slug}/find", show),)

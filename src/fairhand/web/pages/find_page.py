"""What the sources say of some words, or in answer to a question; for each open question what may answer it."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from fairhand.model.focus import Question
from fairhand.reading.passages import Passage
from fairhand.session.job import Job
from fairhand.session.research.indexing import MANY, index_sources
from fairhand.session.research.searching import Found, count_unindexed, list_open_questions, open_search
from fairhand.web.asked import Asked, get

SOON_SECONDS = 1.5
"""How long an answer waits for the texts to be ready before it shows how far they are."""
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
    job = _index_first(asked)
    if job is not None:
        return asked.page("indexing_page.html", title="Find", step="", job=job, again=_same(asked))
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


def _index_first(asked: Asked) -> Job[int] | None:
    """The work of making many new texts ready to be searched, while it goes on; None once there is none to wait for."""
    jobs, name = asked.request.app.state.jobs, ("find", asked.paper.slug)
    job: Job[int] | None = jobs.get(name)
    if job is None or job.ended:
        if count_unindexed(asked.paper.opened.source_texts) < MANY:
            return None
        if job is not None and job.fault is not None:
            jobs.pop(name)
            raise job.fault
        folder = asked.paper.folder
        job = jobs[name] = Job(lambda job: index_sources(folder, job))
        job.begin()
    job.wait(SOON_SECONDS)
    return None if job.ended and not job.fault else job


def _same(asked: Asked) -> str:
    """The address that was asked for, to be asked for again."""
    query = {name: asked.query(name) for name in ("words", "do", "question") if asked.query(name)}
    return asked.to("find", **query)


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

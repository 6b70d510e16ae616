"""The draft: a quiet page to write on; its counts, and how it was understood, only when they are asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from starlette.responses import Response

from fairhand.readiness.analysis import Analysis
from fairhand.session.drafting.cast_off import CastOff, cast_off, tell_section
from fairhand.web.asked import Asked, get, post
from fairhand.web.pages.plain_page import PlainPage

PAGE = PlainPage(
    leaf="draft",
    file="draft.md",
    title="Draft",
    empty="Write the first sentence that comes; order comes at the revision, and language after it.",
    step="Write on; cite as one does by hand, put a remark to yourself as [NB: …], and what is to come as TK.",
    template="draft_page.html",
)
VIEWS: Mapping[str, str] = {"counts": "Count", "citations": "Citations", "asides": "Asides and TKs"}
"""What can be asked for, by the name that its address has, with the words to ask for it."""


@dataclass(frozen=True, slots=True)
class Understood:
    """One citation, and what was understood by it."""

    written: str
    why: str
    trouble: bool


def show(asked: Asked) -> Response:
    """The draft, and below it what was asked for."""
    see = asked.query("see")
    see = see if see in VIEWS else ""
    known = asked.paper.opened.look() if see else None
    return PAGE.show(
        asked,
        views=VIEWS,
        see=see,
        cut=bool(asked.query("cut")),
        counts=_count(asked) if see == "counts" else None,
        tell_section=tell_section,
        cites=tuple(_cites(known)) if known and see == "citations" else (),
        left=tuple(_left(known)) if known and see == "asides" else (),
    )


def _count(asked: Asked) -> CastOff:
    """The words by the sheet's rule, and the pages as they would be printed now, section by section."""
    return cast_off(asked.paper.opened)


def _cites(known: Analysis) -> Iterator[Understood]:
    """Each work cited, in the order of the draft."""
    text = known.manuscript.text
    for one in known.resolved:
        written = " ".join(known.mentions[one.mention].span.of(text).split())
        yield Understood(written, one.why, trouble=one.trouble is not None)


def _left(known: Analysis) -> Iterator[str]:
    """What is never printed, in the order of the draft."""
    return (" ".join(span.of(known.manuscript.text).split()) for span in known.manuscript.left_matter)


ROUTES = (get("/paper/{slug}/draft", show), post("/paper/{slug}/draft", PAGE.save))

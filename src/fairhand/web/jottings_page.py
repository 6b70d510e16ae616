"""The jottings: whatever comes to mind, on a plain page."""

from __future__ import annotations

from fairhand.web.asked import get, post
from fairhand.web.plain_page import PlainPage

PAGE = PlainPage(
    leaf="jottings",
    file="jottings.md",
    title="Jottings",
    empty="Write down whatever comes to mind about the subject, for ten minutes, without stopping to put it right.",
    step="Write down what else comes to mind; nothing here is read by anybody, or marked.",
)

ROUTES = (get("/paper/{slug}/jottings", PAGE.show), post("/paper/{slug}/jottings", PAGE.save))

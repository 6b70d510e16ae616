"""The copy-edit: the second pass over the draft, for its quotations, its citations and its language."""

from __future__ import annotations

from fairhand.web.marked_text import ProofPage

ROUTES = ProofPage(
    "copy-edit",
    "Copy-edit",
    {
        "empty": "There is no draft yet: write it first, revise it, and copy-edit it last.",
        "clear": "Nothing is left to correct that a check could find: read the fair copy once from start to end.",
    },
).routes

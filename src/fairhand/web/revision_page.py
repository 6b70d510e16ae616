"""The revision: the first pass over the draft, for its argument, its support and its length."""

from __future__ import annotations

from fairhand.web.marked_text import ProofPage

ROUTES = ProofPage(
    "revision",
    "Revision",
    {
        "empty": "There is no draft yet: write it first, and revise it when it is whole.",
        "clear": "No check has anything to say of the argument: read the paper as a stranger would, then copy-edit it.",
    },
).routes

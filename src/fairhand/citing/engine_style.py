"""A CSL style as the engine gets it: the file's own text, with the few things changed that no record can say.

The file stays as it was shipped; what is changed here is changed for one run.
"""

from __future__ import annotations

import re
from functools import lru_cache

from fairhand.citing.style_rules import StyleRules

SORT = re.compile(r"<sort\b.*?</sort>\s*", re.DOTALL)
RANK = "annote"
"""The variable that holds a record's rank in our own order: no style prints it."""

MLA_TERMS = "".join(
    f'<term name="{name}">{words}</term>'
    for name, words in (
        ("page-range-delimiter", "-"),
        ("season-01", "spring"),
        ("season-02", "summer"),
        ("season-03", "fall"),
        ("season-04", "winter"),
    )
)
"""A hyphen in ranges of pages, and seasons in lower case. **Source**: MLA 9, 5.71 and 5.89."""


@lru_cache(maxsize=8)
def style_for_engine(csl: str, rules: StyleRules) -> str:
    """The style's text with the list in our order where the rules name one, and the manual's own terms."""
    head, bibliography, rest = csl.partition("<bibliography")
    if rules.list_order:
        ranked = f'<sort><key variable="{RANK}"/></sort>'
        layout = re.search(r"<layout\b", rest)
        if layout:
            before = SORT.sub("", rest[: layout.start()])
            rest = before + ranked + rest[layout.start() :]
    if rules.sorts_parenthesis:
        before, citation, after = head.partition("<citation")
        head = before + citation + SORT.sub("", after, count=1)
    if rules.manual == "mla":
        head = head.replace("<terms>", f"<terms>{MLA_TERMS}", 1)
    return head + bibliography + rest

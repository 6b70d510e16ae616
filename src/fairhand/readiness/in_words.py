"""What the terminal and the page say alike of a verdict told as plain values; light enough to load at once."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from fairhand.language.counts import count_of

CAUTION = (
    "Nothing here says that the paper is good; and the sheet, then the department, then the style manual have the "
    "last word."
)
"""Stands under every verdict."""
UNNAMED = frozenset({"common practice", "the sheet"})
"""What a finding may rest on that is no manual: said once, at the end."""
TOLD_ABOVE = frozenset({"length", "section-missing"})
"""Checks that say of the whole paper what an unmet requirement, shown above them, has said already."""


def findings_to_show(findings: Sequence[Mapping[str, Any]]) -> list[Mapping[str, Any]]:
    """The findings that no requirement has told of already."""
    return [finding for finding in findings if finding["check"] not in TOLD_ABOVE]


def name_ground(rule: str) -> str:
    """The manual that a finding rests on, as a short sentence; nothing where it is none.

    >>> name_ground("MLA Handbook, 9th ed."), name_ground("common practice")
    ('By MLA Handbook, 9th ed.', '')
    """
    return "" if rule in UNNAMED or rule.endswith("common practice") else f"By {rule.rstrip('.')}."


def say_grounds(findings: Sequence[Mapping[str, Any]]) -> str:
    """What the findings rest on, said once for all.

    >>> say_grounds([{"source": "common practice"}, {"source": "MLA Handbook, 9th ed."}])
    'What is found rests on MLA Handbook, 9th ed.; where no manual rules, on the sheet or on common practice.'
    """
    sources = (one["source"] for one in findings if name_ground(one["source"]))
    manuals = dict.fromkeys(one if one.endswith("ed.") else one.rstrip(".") for one in sources)
    if not manuals:
        return "What is found rests on the sheet or on common practice."
    named = " and ".join(manuals)
    return f"What is found rests on {named}; where no manual rules, on the sheet or on common practice."


def say_extent(told: Mapping[str, Any]) -> str:
    """How long the paper is, and by what rule it was counted.

    >>> say_extent({"pages": 1, "words": {"counted": 980, "by": "the sheet", "excluded": {"block-quotations": 40}}})
    '1 page printed; 980 words counted, by the sheet; not counted: 40 of block quotations.'
    """
    words = told["words"]
    left_out = [f"{number:,} of {part.replace('-', ' ')}" for part, number in words["excluded"].items() if number]
    counted = f"{count_of(words['counted'], 'word')} counted, by {words['by']}"
    if left_out:
        counted += f"; not counted: {', '.join(left_out)}"
    return f"{count_of(told['pages'], 'page')} printed; {counted}." if told["pages"] else f"{counted}."


def quote_shortly(quote: str, most: int = 160) -> str:
    """The words of a finding on one line, the middle left out where they are long.

    >>> quote_shortly("> Where the tide has turned, nobody rows against it for long.", 40)
    'Where the tide has … it for long.'
    """
    plain = " ".join(re.sub(r"(?m)^\s{0,3}>\s?", "", quote).split())
    if len(plain) <= most:
        return plain
    return f"{plain[: most * 2 // 3].rsplit(' ', 1)[0]} … {plain[-most // 3 :].split(' ', 1)[-1]}"

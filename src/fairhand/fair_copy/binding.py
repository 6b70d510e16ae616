"""Spaces at which a line is not to end."""

from __future__ import annotations

import re

_KEPT_WHOLE = re.compile(
    r"\b(?:pp?|paras?|vols?|nos?|chs?|figs?|ll?|vv?|secs?|arts?|cols?|fols?)\. (?=[\divxlc])"
    r"|\b(?:Table|Figure|Chapter|Appendix) (?=[A-Z]?\d)"
    r"|(?<=\.) (?=\.)"
    r"|(?:^|(?<=[\w”’\"])) (?=\d{1,3}(?:[-–]\d{1,3})?[;)])"
    r"|(?<![^\W_])[^\W\d_]{1,2} [=<>≤≥≈] (?=[−\d.-])"
    r"|\b\d{1,2} (?=(?:January|February|March|April|May|June|July|August|September|October|November|December)\b)",
    re.IGNORECASE,
)


def bind(text: str) -> str:
    """``text`` with spaces that do not break between label and number, name and page, the points of an ellipsis.

    **Source**: common practice of typesetting.

    >>> bind("(Lind, pp. 4–5) . . . r = .08 (Moss 9)").replace(chr(160), "~")
    '(Lind, pp.~4–5) .~.~. r~=~.08 (Moss~9)'
    """
    return _KEPT_WHOLE.sub(lambda found: found[0].replace(" ", "\u00a0"), text)

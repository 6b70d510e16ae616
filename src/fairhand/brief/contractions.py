"""Whether a sheet forbids contractions."""

from __future__ import annotations

import re
from collections.abc import Iterable

_FORBIDDEN = re.compile(
    r"\b(?:no|avoid(?:ing)?|without|do not use|don[’']t use|never use|not use|not to use|refrain from(?: using)?"
    r"|free of|leave out|spell out)\s(?:any\s|all\s|using\s)?"
    r"(?:[\w“”\"’'-]+,?\s(?:(?:and|or|nor)\s)?){0,5}contractions?\b"
    r"|\bcontractions?\b[^.;!?]{0,60}\b(?:are|is|should|must|may)\s(?:not|to be avoided|be avoided|forbidden"
    r"|out of place|never|unacceptable|inappropriate|spelled out)\b",
    re.IGNORECASE,
)
_NOT_MEANT = re.compile(r"\b(?:muscle|muscular|economic|uterine|labou?r|ventricular)\b", re.IGNORECASE)


def contractions_forbidden(texts: Iterable[str]) -> str:
    """The words of a sheet that forbid contractions; empty where none does.

    >>> contractions_forbidden(["Avoid slang and contractions.", "Type it."])
    'Avoid slang and contractions'
    """
    for text in texts:
        for found in _FORBIDDEN.finditer(" ".join(text.split())):
            if not _NOT_MEANT.search(found[0]):
                return found[0]
    return ""

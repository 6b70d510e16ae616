"""Words made into the name of a file that every system holds and shows."""

from __future__ import annotations

import unicodedata
from pathlib import PurePosixPath

MOST_BYTES = 120
"""Of a name, or of a part of one; systems hold 255 in all."""
_REFUSED = str.maketrans(dict.fromkeys('<>:"/\\|?*', "_"))


def name_file(words: str, otherwise: str) -> str:
    r"""Some words as the name of a file, or a part of one; a long one loses its middle and keeps its ending.

    Args:
        words: Any words, as a person's name or a title.
        otherwise: The name where nothing of them can be kept.

    >>> name_file('Paper 2: "ports"/final.', "sheet"), name_file("..", "file"), name_file("a\x00b\u202egnp.exe", "file")
    ('Paper 2_ _ports__final', 'file', 'abgnp.exe')
    """
    shown = "".join(one for one in words if unicodedata.category(one)[0] != "C")
    kept = shown.translate(_REFUSED).strip(". ")
    suffix = PurePosixPath(kept).suffix
    if len(kept.encode()) > MOST_BYTES:
        suffix = suffix if len(suffix) <= len(".markdown") else ""
        kept = kept.encode()[: MOST_BYTES - len(suffix.encode())].decode(errors="ignore").rstrip(". ") + suffix
    return kept or otherwise

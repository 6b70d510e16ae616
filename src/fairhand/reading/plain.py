"""The leaves of a plain text, Markdown too: form feeds part them."""

from __future__ import annotations

from fairhand.errors import FileTooLarge
from fairhand.reading.decoding import read_text_file
from fairhand.reading.leaves import Leaves

_MOST_LEAVES = 20_000


def read_plain(data: bytes, file: str) -> Leaves:
    """The leaves of a plain text; a form feed at its end begins no leaf.

    Raises:
        FileTooLarge: It is longer than any text that we read.
        FileUnreadable: It is empty, or it is no text.
    """
    text, problems = read_text_file(data, file)
    leaves = text.split("\f")
    if len(leaves) > _MOST_LEAVES:
        raise FileTooLarge(f"{file}: {len(leaves)} form feeds part it into more pages than any book has; take them out")
    while len(leaves) > 1 and not leaves[-1].strip():
        leaves.pop()
    return Leaves(tuple(leaf.strip("\n") for leaf in leaves), leaved=len(leaves) > 1, problems=problems)

"""Whether a PDF is packed so that it may expand without end, told before anything in it is opened.

What is suspected is only read apart, within bounds; so a wrong suspicion costs a moment, and no file is refused for it.
"""

from __future__ import annotations

import re
import zlib

_STREAM = re.compile(rb"stream\r?\n")
_TWICE = re.compile(
    rb"/F(?:ilter)?\s*\[\s*/(?:FlateDecode|Fl|LZWDecode|LZW|RunLengthDecode|RL)\s*/(?:FlateDecode|Fl|LZWDecode|LZW|"
    rb"RunLengthDecode|RL)\b|/Filter\s*\[?\s*\d+\s+\d+\s+R"  # a bare /F with a number names a file, as of an attachment
)
"""Packed twice; or how it is packed is told elsewhere, out of sight."""
_LOCKED = b"/Encrypt"
HEAD = 1024
"""Bytes of each stream that are unpacked to see."""
WIDE = 250
"""So many times their length they may take up; prose and drawing take up five or ten."""


def may_expand(data: bytes) -> bool:
    r"""Whether some stream of a PDF is packed twice, or takes up hundreds of times its length.

    >>> packed = zlib.compress(b"q Q " * 2**20, 9)
    >>> may_expand(b"%PDF-1.4 1 0 obj<</Filter/FlateDecode>>stream\n" + packed + b"\nendstream")
    True
    >>> may_expand(b"%PDF-1.4 1 0 obj<<>>stream\nq Q\nendstream")
    False
    """
    if _LOCKED in data or _TWICE.search(data):
        return True
    for stream in _STREAM.finditer(data):
        if data[stream.start() - 3 : stream.start()] == b"end":
            continue
        head = data[stream.end() : stream.end() + HEAD]
        if head[:1] and head[0] & 0x0F == zlib.DEFLATED and _takes_up(head) > WIDE * len(head):
            return True
    return False


def _takes_up(head: bytes) -> int:
    """The bytes that the beginning of a stream takes up once unpacked, as far as it matters."""
    try:
        return len(zlib.decompressobj().decompress(head, WIDE * HEAD + HEAD))
    except zlib.error:
        return 0

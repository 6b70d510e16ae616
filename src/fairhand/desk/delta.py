"""A file's state as what it adds to an earlier one.

States of one file come in runs of 64. The first of a run stands alone; each other one is compressed against an earlier
one of its run: the one whose place in the run is its own with the lowest binary one struck out. So a state lies at most
six steps from one that stands alone, and most lean on a neighbour, whose text is nearly their own (the steps of a
binary indexed tree; P. Fenwick, Software: Practice and Experience 24, 1994).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import zstandard

RUN = 64
"""States to a run: the most that a fault in one could take with it."""

_LEVEL = 3


def base_place(place: int) -> int | None:
    """The place in its run of the state that a state is compressed against, or None where it stands alone.

    >>> [base_place(place) for place in range(9)]
    [None, 0, 0, 2, 0, 4, 4, 6, 0]
    """
    return place & (place - 1) if place else None


def compress_state(data: bytes, base: bytes | None) -> bytes:
    """The bytes of a state, given those that it is compressed against."""
    import zstandard

    prefix = _as_dictionary(base)
    return zstandard.ZstdCompressor(level=_LEVEL, dict_data=prefix, write_checksum=False).compress(data)


def expand_state(blob: bytes, base: bytes | None, size: int) -> bytes:
    """The bytes that were compressed.

    Args:
        blob: What ``compress_state`` gave.
        base: The bytes that it was compressed against.
        size: How many bytes come out.

    Raises:
        ValueError: The blob is damaged, or would grow to another size.
    """
    import zstandard

    try:
        if zstandard.frame_content_size(blob) != size:
            message = "its size is another"
            raise ValueError(message)
        return zstandard.ZstdDecompressor(dict_data=_as_dictionary(base)).decompress(blob)
    except (zstandard.ZstdError, MemoryError) as error:
        raise ValueError(str(error)) from error


def _as_dictionary(base: bytes | None) -> zstandard.ZstdCompressionDict | None:
    import zstandard

    return zstandard.ZstdCompressionDict(base, dict_type=zstandard.DICT_TYPE_RAWCONTENT) if base else None

"""The meanings of the pieces that questions lead to, read in the background where an encoder is installed, and kept."""

from __future__ import annotations

import threading
from collections.abc import Callable, Sequence
from contextlib import closing

from fairhand.desk.search_index import SearchIndex
from fairhand.language.meaning import Meanings, find_meanings
from fairhand.model.piece import Piece

_AT_ONCE = 8
"""Pieces that are read before what was found is kept."""
_READING = threading.Lock()
"""Held while pieces are read: it is the work of one processor for some seconds."""


def liken_to(question: str, vectors: Sequence[bytes], meanings: Meanings) -> list[float]:
    """How like a question in meaning the pieces are whose vectors these are: from −1 to 1."""
    import numpy as np

    asked = meanings.read([question])[0]
    rows = np.stack([np.frombuffer(vector, np.float16, len(asked)) for vector in vectors])
    found: list[float] = (rows.astype(np.float32) @ asked).tolist()
    return found


def read_meanings(index: SearchIndex, pieces: Sequence[Piece], meanings: Meanings) -> None:
    """The vectors of the pieces are kept in the index, a few at a time, so that whatever ends it loses little."""
    import numpy as np

    for at in range(0, len(pieces), _AT_ONCE):
        some = pieces[at : at + _AT_ONCE]
        vectors = meanings.read([f"{piece.title}. {piece.text}" for piece in some]).astype(np.float16)
        index.keep_meanings([(piece, vector.tobytes()) for piece, vector in zip(some, vectors, strict=True)])


def begin_reading(open_index: Callable[[], SearchIndex], pieces: Sequence[Piece]) -> threading.Thread | None:
    """The pieces are being read, in a thread of its own; None where none are wanted, or others are being read.

    What is not read now is asked for again with the next question.

    Args:
        open_index: Opens the index that they are in.
        pieces: The pieces.
    """
    if not pieces or not _READING.acquire(blocking=False):
        return None
    thread = threading.Thread(target=_read, args=(open_index, pieces), daemon=True)
    thread.start()
    return thread


def _read(open_index: Callable[[], SearchIndex], pieces: Sequence[Piece]) -> None:
    try:
        meanings = find_meanings()
        if meanings is not None:
            with closing(open_index()) as index:
                read_meanings(index, pieces, meanings)
    finally:
        _READING.release()

"""The parsed sentences of a paper: kept in its cache, and worked out in a process apart while the rest is read."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from pathlib import Path

from fairhand.copyedit.grammar.joining.splice import halves_wanted
from fairhand.desk.cache import keep_cached, read_cached
from fairhand.language.parsing import (
    Parsed,
    Sentence,
    is_loaded,
    parse_sentences,
    remember_sentences,
    unknown_sentences,
)
from fairhand.model.span import Span
from fairhand.session.ahead import Ahead

_KEY = "parsed sentences and halves of them, en_core_web_sm 3.8.0"


class Parses:
    """What is parsed of one paper.

    Args:
        folder: The paper's folder, in whose cache it outlives the process.
    """

    def __init__(self, folder: Path) -> None:
        """Nothing is parsed yet."""
        self._folder = folder
        self._read = False
        self._ahead: Ahead[Mapping[str, Sentence]] | None = None
        self._asked = False

    def begin(self, sentences: Sequence[str]) -> None:
        """Those that are not known are being parsed by a process apart; once in this one, which may end soon.

        Where the same paper is asked for again, the parser is loaded here, and each change costs little from then on.
        """
        self._read_kept()
        new = unknown_sentences(sentences)
        if new and not is_loaded() and not self._asked:
            self._asked = True
            self._ahead = Ahead(lambda: _parse_apart(new))
            self._ahead.begin()

    def parse(self, sentences: Sequence[str]) -> tuple[Sentence, ...]:
        """Each sentence parsed, what was begun waited for, the whole kept for the next process."""
        self._read_kept()
        new = unknown_sentences(sentences)
        if new and self._ahead is not None:
            remember_sentences(self._ahead.result())
            self._ahead = None
        parsed = parse_sentences(sentences)
        if new:
            keep_cached(self._folder, _KEY, _write(_parse_all(sentences)))
        return parsed

    def _read_kept(self) -> None:
        if not self._read:
            self._read = True
            kept = read_cached(self._folder, _KEY)
            if kept is not None:
                remember_sentences(_read(kept))


def _parse_apart(sentences: tuple[str, ...]) -> Mapping[str, Sentence]:
    """What a process apart makes of them; nothing where it died, and they are parsed here then."""
    from fairhand.press.apart import do_apart

    for _, parsed in do_apart(_parse_all, [sentences], lanes=1):
        if not isinstance(parsed, Exception):
            return parsed
    return {}


def _parse_all(sentences: Sequence[str]) -> Mapping[str, Sentence]:
    """Each sentence parsed, and the halves of those that may be two, so that nothing is left to parse afterwards."""
    parsed = dict(zip(sentences, parse_sentences(sentences), strict=True))
    halves = halves_wanted(parsed)
    return parsed | dict(zip(halves, parse_sentences(halves), strict=True))


def _write(parsed: Mapping[str, Sentence]) -> bytes:
    """As JSON: by sentence, each word with its start, tag, role and head."""
    rows = {text: [(w.text, w.span.start, w.tag, w.role, w.head) for w in words] for text, words in parsed.items()}
    return json.dumps(rows, ensure_ascii=False, separators=(",", ":")).encode()


def _read(kept: bytes) -> dict[str, Sentence]:
    """The same, read back; nothing where somebody else wrote it."""
    try:
        return {
            text: tuple(Parsed(word, Span(at, at + len(word)), tag, role, head) for word, at, tag, role, head in rows)
            for text, rows in json.loads(kept).items()
        }
    except (ValueError, TypeError, AttributeError):
        return {}

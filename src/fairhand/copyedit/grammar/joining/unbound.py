"""The finite verbs of a sentence that no word binds into a clause of another: where there is none, it is no sentence.

This is read off the words and their parts of speech, and holds where the parser hangs a clause on the wrong word.

**Source**: handbooks of usage on dependent clauses; the words from memory.
"""

from __future__ import annotations

from itertools import pairwise

from fairhand.copyedit.grammar.clauses import WH, Clause

BINDING = frozenset("because although though whereas if unless while when that than".split())
"""Words that bind the verb after them into a clause of another."""
_WITHIN = BINDING | frozenset("since until before after once as where whether lest till".split())
"""Those that do so in the middle of a sentence."""
_PHRASE_TAGS = frozenset({"VBG", "VBN", "IN", "JJ", "JJR", "RBR", "CD"})


def unbound_verbs(clause: Clause, first: int = 0, last: int | None = None) -> list[int]:
    """The finite verbs with no binding word between them and the finite verb before.

    Args:
        clause: The sentence.
        first: The first word looked at.
        last: One beyond the last.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "Because the mill had closed they left."
    >>> sentence = Clause(text, 0, parse_sentences([text])[0])
    >>> [sentence.words[each].text for each in unbound_verbs(sentence)]
    ['left']
    """
    words = clause.words
    out = []
    bound = False
    for n in range(first, len(words) if last is None else last):
        word = words[n]
        if word.text == "," and not _binds(clause, n + 1):
            bound = False
        if word.tag in WH or (word.key in _WITHIN and (n > first or word.key in BINDING)):
            bound = bound or not heads_phrase(clause, n)
        if clause.is_finite(n):
            if not bound:
                out.append(n)
            bound = False
    return out


def parts_go_on(clause: Clause, first: int) -> bool:
    """Whether one clause with its verb opens the sentence, and each part after a comma only carries it on.

    *Because it rose, and because it was cold*; *if it failed, and there was nothing to sell*; *because it is safer,
    which is good*.

    Args:
        clause: The sentence.
        first: The word that binds the first part.
    """
    words = clause.words
    ends = [n for n, each in enumerate(words) if each.text == ","] + [len(words)]
    if len(unbound_verbs(clause, first + 1, ends[0])) != 1:
        return False
    for at, end in pairwise(ends):
        joined = words[at + 1].key in ("and", "or", "but")
        start = at + 2 if joined else at + 1
        if start < end and _binds(clause, start) and not heads_phrase(clause, start):
            if unbound_verbs(clause, start, end):
                return False
        elif not joined or end != len(words) or len(unbound_verbs(clause, start, end)) != 1:
            return False
    return True


def _binds(clause: Clause, at: int) -> bool:
    """Whether a word binds what follows it."""
    word = clause.words[at] if at < len(clause.words) else None
    if word is None or (word.key == "that" and word.tag == "DT"):
        return False
    return word.tag in WH or word.key in _WITHIN


def heads_phrase(clause: Clause, binding: int) -> bool:
    """Whether a binding word has no clause after it: *while driving*, *although small*, *if in doubt*."""
    words = clause.words
    at = binding + 1
    while at < len(words) and words[at].tag == "RB":
        at += 1
    if at >= len(words) or words[binding].tag in WH:
        return False
    if words[binding].key in ("that", "than", "as"):
        return words[binding].key == "than" and not any(clause.is_finite(n) for n in range(at, min(at + 4, len(words))))
    return words[at].tag in _PHRASE_TAGS or words[at].text == ","

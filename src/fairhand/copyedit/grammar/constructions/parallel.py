"""Pairs and series whose members have not the same form: *praying, copying, and to tend*.

**Source**: "parallelism" in handbooks of usage. Only verbs in *-ing* and with *to*, whose forms are plain,
are looked at.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from fairhand.copyedit.grammar.clauses import WH, Clause
from fairhand.copyedit.grammar.slip import Slip
from fairhand.language.lexicon import find_word

Form = Literal["to", "ing", "finite", "bare"]
_ENDS = frozenset(".;:?!()—")
_NO_DEEDS = frozenset(
    "thing king ring wing string morning evening wedding nothing something anything everything during".split()
)


def find_unparallel(clause: Clause) -> Iterator[Slip]:
    """The last member of each pair or series of a sentence that has another form than the others.

    Args:
        clause: The sentence.

    >>> from fairhand.language.parsing import parse_sentences
    >>> said = "She liked walking, reading, and to sketch the harbour."
    >>> [one.kind for one in find_unparallel(Clause(said, 0, parse_sentences([said])[0]))]
    ['series']
    """
    keys = {word.key for word in clause.words}
    if keys & {"to", "only"} and any(key.endswith("ing") for key in keys):
        yield from _mixed_forms(clause)


def _form_at(clause: Clause, at: int) -> Form | None:
    """The form of the member that begins here, by its words: the tagger errs where a series does not match."""
    words = clause.words
    if at + 1 >= len(words):
        return None
    if words[at].key == "to":
        verb = words[at + 1]
        return "to" if verb.tag == "VB" or ("v" in _kinds(verb.key) and verb.tag not in ("NNP", "NNS", "DT")) else None
    if clause.is_finite(at) or (words[at - 1].key == "only" and "s" in _kinds(words[at].key)):
        return "finite"
    if words[at].key.endswith("ing") and "g" in _kinds(words[at].key) and words[at].role != "amod":
        return "ing" if words[at].key not in _NO_DEEDS else None
    return None


def _kinds(word: str) -> str:
    known = find_word(word)
    return known.kinds if known else ""


def _mixed_forms(clause: Clause) -> Iterator[Slip]:
    """*Praying, copying, and to tend*; *not only to build but opening*; *to write or reading*."""
    words = clause.words
    for link, word in enumerate(words[:-2]):
        if word.key not in ("and", "or", "but") or link < 2:
            continue
        at = link + 1
        if words[at].key in ("also", "even", "then"):
            at += 1
        form = _form_at(clause, at)
        if form not in ("to", "ing"):
            continue
        first = _correlative(clause, link)
        other = _form_at(clause, first + 1) if first is not None else None
        if first is not None and words[first + 1].tag == "VB":
            other = "bare"
        if (
            other is not None
            and other != form
            and (other not in ("finite", "bare") or form == "ing")
            and _ends_soon(clause, at)
        ):
            yield Slip(clause.place(at, at + (form == "to")), words[at].text, "", "pair")
        if first is not None or words[link - 1].text != "," or word.key == "but":
            continue
        if _series_before(clause, link) not in (None, form) and _ends_soon(clause, at):
            yield Slip(clause.place(at, at + (form == "to")), words[at].text, "", "series")


def _ends_soon(clause: Clause, at: int) -> bool:
    """Whether the member that begins here runs to the end of the sentence's part without a finite verb."""
    words = clause.words
    for n in range(at, min(len(words), at + 14)):
        if words[n].text in _ENDS:
            return True
        if clause.is_finite(n) or words[n].tag in WH or words[n].text == ",":
            return False
    return False


def _correlative(clause: Clause, link: int) -> int | None:
    """The first word of the pair that this joining word closes; the last word of *not only*."""
    words = clause.words
    partner = {"and": "both", "or": "either", "but": "only"}[words[link].key]
    for n in range(link - 2, max(-1, link - 14), -1):
        if words[n].text in _ENDS:
            return None
        if words[n].key == partner and (partner != "only" or words[n - 1].key == "not"):
            return n
    return None


def _series_before(clause: Clause, link: int) -> Form | None:
    """The form that the two members before *, and* both have, where they are short and alike."""
    words = clause.words
    commas = [n for n in range(max(0, link - 16), link) if words[n].text == ","]
    if len(commas) < 2 or commas[-1] != link - 1:
        return None
    second = commas[-2] + 1
    bare = words[second].tag == "VB" and words[second].role == "conj"  # to read, write, and drawing
    form = "to" if bare else _form_at(clause, second)
    if form not in ("to", "ing") or any(clause.is_finite(n) for n in range(second, link)):
        return None
    for first in range(commas[-2] - 1, max(-1, commas[-2] - 8), -1):
        if words[first].text in _ENDS or words[first].text == "," or clause.is_finite(first):
            return None
        if _form_at(clause, first) == form:
            return form
    return None

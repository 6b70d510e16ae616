"""Words that go in pairs, with the wrong partner: *neither … or*, *both … as well as*, *between 1914–1918*.

**Source**: "correlative conjunctions" in handbooks of usage; *between … and* with numbers: Chicago Manual, 17th ed.,
6.78 (from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.copyedit.grammar.clauses import NOUNS, Clause
from fairhand.copyedit.grammar.slip import Slip, slip_at
from fairhand.model.span import Span

_NUMBER = re.compile(r"[$£€]?\d[\d,.]*(?:%|st|nd|rd|th|s)?\Z")
_RANGE = re.compile(r"(?<![\w.–-])[Bb]etween (\d{1,4})(\s?[–-]\s?)(\d{1,4})(?![\w–-]|[.,]\d|\s?[–-]\s?\d)")
_UNITS = frozenset(
    "percent per cent years days weeks months hours minutes dollars pounds degrees miles km kg m cm".split()
)
_ENDS = frozenset(".;:?!()—")
_FEWEST = 5
"""Words and marks of the shortest sentence that is looked at."""


def find_wrong_partners(clause: Clause) -> Iterator[Slip]:
    """Each pair of words in a sentence whose second does not go with the first, which is the slip's kind.

    Args:
        clause: The sentence.

    >>> from fairhand.language.parsing import parse_sentences
    >>> said = "Neither the mayor or the bishop signed."
    >>> [one.instead for one in find_wrong_partners(Clause(said, 0, parse_sentences([said])[0]))]
    ['nor']
    """
    if len(clause.words) < _FEWEST:
        return
    keys = {word.key for word in clause.words}
    if "neither" in keys:
        yield from _neither_or(clause)
    if "both" in keys:
        yield from _both_or(clause)
    if "between" in keys:
        yield from _between_to(clause)
    if "either" in keys:
        yield from _either_and(clause)


def _neither_or(clause: Clause) -> Iterator[Slip]:
    """*Neither the mayor or the bishop*."""
    words = clause.words
    for at, word in enumerate(words):
        if word.key != "neither" or any(each.key == "nor" for each in words):
            continue
        link = next((n for n in range(at + 2, len(words)) if words[n].key == "or"), None)
        if link is None or words[at + 1].key in ("of", "in", "is", "was", "do", "does", "did"):
            continue
        between = range(at + 1, link)
        if any(clause.is_finite(n) or words[n].text in _ENDS or words[n].text == "," for n in between):
            continue
        paired = word.role in ("preconj", "cc", "det", "advmod") and _same_form(clause, at + 1, link + 1)
        if paired:
            yield slip_at(clause, link, "nor", "neither")


def _same_form(clause: Clause, one: int, other: int) -> bool:
    """Whether two words open parts of the same kind."""
    words = clause.words
    if other >= len(words):
        return False
    a, b = words[one], words[other]
    return a.tag == b.tag or a.key == b.key or {a.tag, b.tag} <= NOUNS | {"DT", "PRP$", "PRP", "JJ"}


def _both_or(clause: Clause) -> Iterator[Slip]:
    """*Both the valley or the hills*, *both the tenants as well as the owners*."""
    words = clause.words
    for at, word in enumerate(words[:-3]):
        if word.key != "both" or words[at + 1].key in ("of", ",", "were", "are", "is", "have"):
            continue
        stop = next(
            (n for n in range(at + 1, len(words)) if words[n].text in _ENDS or words[n].text == ","), len(words)
        )
        inside = range(at + 2, stop)
        if any(words[n].key in ("and", "&") for n in inside) or any(
            clause.is_finite(n) for n in range(at + 1, stop - 1) if n < _link(clause, inside)
        ):
            continue
        link = _link(clause, inside)
        if link >= stop - 1:
            continue
        last = link + 2 if words[link].key == "as" else link
        if words[link - 1].tag == "NNS" and words[at + 1].tag != "IN":
            continue  # both the companies, as well as the unions
        apart = words[at + 1].tag == "IN" and words[last + 1].key == words[at + 1].key  # both in … or in
        if not apart and not (
            word.role in ("preconj", "cc", "det")
            and words[at + 1].tag != "NNS"
            and _same_form(clause, at + 1, last + 1)
        ):
            continue
        if words[at + 1].tag == "NNP" or words[last + 1].key in ("so", "not", "more", "rather"):
            continue
        span = clause.place(link, last)
        yield Slip(span, "as well as" if last > link else words[link].text, "and", "both")


def _link(clause: Clause, inside: range) -> int:
    words = clause.words
    for n in inside:
        if words[n].key == "or":
            return n
        if (
            words[n].key == "as"
            and n + 2 < len(words)
            and [each.key for each in words[n : n + 3]] == ["as", "well", "as"]
        ):
            return n
    return 10_000


def _between_to(clause: Clause) -> Iterator[Slip]:
    """*Between 1920 to 1930*, *between 1914–1918*."""
    words = clause.words
    for at, word in enumerate(words[:-3]):
        if word.key != "between" or not _NUMBER.match(words[at + 1].text):
            continue
        link = at + 2
        while link < len(words) - 1 and (words[link].key in _UNITS or words[link].text == "%"):
            link += 1
        if (
            words[link].key == "to"
            and _NUMBER.match(words[link + 1].text)
            and not any(each.key == "and" for each in words[link + 1 : link + 6])
        ):
            yield slip_at(clause, link, "and", "between")
    for found in _RANGE.finditer(clause.text):
        if "and" in clause.text[found.end() : found.end() + 30].split():
            continue
        yield Slip(Span(*found.span(2)).shifted(clause.start), found[2], " and ", "between")


def _either_and(clause: Clause) -> Iterator[Slip]:
    """*Either the ledger is wrong and the clerk lied*: where *either* opens the sentence and two sentences follow."""
    words = clause.words
    if words[0].key != "either" or words[1].tag not in ("DT", "PRP", "PRP$") or any(each.key == "or" for each in words):
        return
    links = [n for n, each in enumerate(words) if each.key == "and"]
    if len(links) != 1:
        return
    link = links[0]
    halves = (range(1, link), range(link + 1, len(words)))
    whole = all(any(clause.is_finite(n) for n in half) for half in halves)
    if whole and words[link + 1].tag in ("DT", "PRP", "PRP$"):
        yield slip_at(clause, link, "or", "either")

"""A plain plural with an apostrophe: *the idea's were*, *many book's*, *the 1990's*; and *their's*.

**Source**: MLA 9, 2.83–2.85; APA 7, 6.39 (decades); Chicago 17, 7.5 and 9.33 (from memory): none of the three has it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.copyedit.grammar.clauses import Clause
from fairhand.copyedit.grammar.signs.possessive import WrongApostrophe
from fairhand.language.lexicon import find_word
from fairhand.model.span import Span

_PRONOUNS = {"her": "hers", "their": "theirs", "our": "ours", "your": "yours"}
_COUNTS = frozenset("many several few these those both two three four five six seven eight nine ten some all".split())
_MANY_VERBS = frozenset("are were have".split())
_DECADE = re.compile(r"(?<=\bthe )((?:early |late |mid-? ?)?)((?:1[0-9]|20)?\d0)(['’])s\b")


def plural_of(noun: str) -> str:
    """The plain plural of a noun in the regular way.

    >>> plural_of("study"), plural_of("church"), plural_of("idea")
    ('studies', 'churches', 'ideas')
    """
    if re.search(r"[^aeiou]y\Z", noun):
        return f"{noun[:-1]}ies"
    return f"{noun}es" if re.search(r"(?:s|x|z|ch|sh)\Z", noun) else f"{noun}s"


def find_plurals_with_apostrophe(clause: Clause) -> Iterator[WrongApostrophe]:
    """The words of a sentence that are plurals, or pronouns, and have an apostrophe."""
    words = clause.words
    for at in range(1, len(words)):
        if words[at].text not in ("'s", "’s") or words[at].span.start != words[at - 1].span.end:
            continue
        noun, after = words[at - 1], words[at + 1] if at + 1 < len(words) else None
        if clause.hides((at - 1,)) or (after is not None and clause.hides((at + 1,))):
            continue
        if noun.key in _PRONOUNS and (noun.key != "her" or words[at].tag == "POS"):
            yield WrongApostrophe(clause.place(at - 1, at), _PRONOUNS[noun.key])
        elif noun.text.islower() and len(noun.text) > 2 and _is_noun(noun.key) and _is_plural(clause, at):
            yield WrongApostrophe(clause.place(at - 1, at), plural_of(noun.text))


def _is_noun(word: str) -> bool:
    known = find_word(word)
    return known is not None and "n" in known.kinds and "s" not in known.kinds


def _is_plural(clause: Clause, at: int) -> bool:
    """Whether a noun with an apostrophe can only be a plain plural."""
    words = clause.words
    first = at - 2
    while (
        first >= 0 and words[first].tag in ("JJ", "CD", "JJR", "JJS", "VBN", "VBG") and words[first].key not in _COUNTS
    ):
        first -= 1
    asks = words[first].key if first >= 0 else ""
    before = words[first - 1].key if first > 0 else ""
    after = words[at + 1] if at + 1 < len(words) else None
    if asks not in _COUNTS and before in ("of", "than", "as", "like", "and", "from", "not", "but"):
        return False  # a friend of the author's
    if after is None or after.tag in (".", ","):
        return asks in _COUNTS and asks not in ("some", "all")
    if after.key in _MANY_VERBS:
        return (asks in _COUNTS | {"the", "their", "his", "her", "its", "our"}) and _alone(clause, first)
    if asks in _COUNTS and asks not in ("some", "all"):
        return after.tag in ("IN", "TO", "WDT", "WP", "MD", "VBP", "VBD") or after.key in ("and", "or", "that", "who")
    return asks == "the" and after.key == "of" and _alone(clause, first)


def _alone(clause: Clause, first: int) -> bool:
    """Whether the phrase opens its clause."""
    return first <= 0 or clause.words[first - 1].tag in (",", "IN", "CC", "VBD", "VBZ", "VBP", "VB", "``", ":")


def find_decades(text: str) -> Iterator[tuple[Span, str]]:
    """The decades of a paragraph with an apostrophe before their *s*: the place, and the decade as it should be.

    >>> [(span.start, decade) for span, decade in find_decades("In the 1990's, and in 1984's best film.")]
    [(7, '1990s')]
    """
    for found in _DECADE.finditer(text):
        yield Span(found.start(2), found.end()), f"{found[2]}s"

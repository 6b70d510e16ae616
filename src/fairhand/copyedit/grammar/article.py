"""*A* where *an* belongs, and the other way about, by the sound that follows.

**Source**: handbooks of usage on articles; words that are said both ways (*historic*, *hotel*) are let be, and so are
abbreviations, letters and figures, which each reader may say otherwise.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.language.lexicon import find_word
from fairhand.model.span import Span

_ARTICLE = re.compile(r"(?<![\w.'’/&-])([Aa]n?)[ \n]+([A-Za-z][a-z]{2,})(?=[\s,.;:?!)'’-]|\Z)")
_CONSONANT = re.compile(r"(?:un[ia](?!n|m)|u[bfkrst](?![bfkpst])|eu|ewe|on(?:e|ce)(?![a-z])|one-|oui)", re.IGNORECASE)
"""Words that begin with a vowel's letter and a consonant's sound, or may do so."""
_AS_YOU = re.compile(
    r"(?:universit|universal|unique|uniform|union|unit(?:s|ed|y)?\Z|useful|user|usual|european|utopian|ubiquit|eulog|one\Z)",
    re.IGNORECASE,
)
"""Those that do so in every mouth."""
_SILENT = re.compile(
    r"(?:hour|heir|honest|hono|hon\Z|herb|hist|hote|hypo|habit|hallu|hila|horr|here|hero|hyst|homa)", re.IGNORECASE
)
"""Words whose *h* is silent, or was."""
_NO_NOUN = frozenset(
    "and are as at if in into is it of off on only or our out over under until unless upon us up".split()
)
"""After a letter that stands for something: *a and b*."""


@dataclass(frozen=True, slots=True)
class WrongArticle:
    """An article that does not go with the sound after it."""

    span: Span
    """Its place in the draft."""
    article: str
    word: str
    instead: str


def find_wrong_articles(paragraphs: Iterator[OwnParagraph] | tuple[OwnParagraph, ...]) -> Iterator[WrongArticle]:
    """Each *a* and *an* of the writer's own prose that does not go with the word after it.

    >>> own = OwnParagraph("It was a old house, an hour from a university and an harbour.", 0, ())
    >>> [(found.article, found.word, found.instead) for found in find_wrong_articles((own,))]
    [('a', 'old', 'an'), ('an', 'harbour', 'a')]
    """
    for paragraph in paragraphs:
        for found in _ARTICLE.finditer(paragraph.text):
            article, word = found[1], found[2]
            if article == "A" and not re.search(r"(?:\A|[.!?]\W*\s)\Z", paragraph.text[: found.start()][-6:]):
                continue  # vitamin A
            instead = _other(article, word)
            if instead:
                yield WrongArticle(Span(*found.span(1)).shifted(paragraph.start), article, word, instead)


def _other(article: str, word: str) -> str:
    """The article that belongs before the word, where the one that stands there does not."""
    key = word.casefold()
    if find_word(key) is None or key in _NO_NOUN:
        return ""
    vowel = key[0] in "aeiou"
    if article.casefold() == "a":
        silent = re.match(r"(?:hour|heir|honest|honou?r)", key)
        return f"{article}n" if (vowel and not _CONSONANT.match(key)) or silent else ""
    wrong = _AS_YOU.match(key) if vowel else not _SILENT.match(key)
    return article[0] if wrong else ""

"""The words of a jotting that say what it is about, without those that only hold it together or ask and doubt."""

from __future__ import annotations

from functools import lru_cache

from fairhand.language.content_words import JOINING
from fairhand.language.stems import stem
from fairhand.language.words import words

IDLE = JOINING | frozenset(
    "look find check ask remember read see get gets got let make makes made know think seem seems seemed say says said "
    "maybe perhaps probably actually really surely sure somewhere anything anyone everyone everybody someone something "
    "nobody nothing less least first last way thing things case kind sort lot bit quite rather almost enough idea dont "
    "cant isnt still up down out off yes ok etc eg ie vs two like any doing".split()
)
"""Words that a jotting on any subject may have."""


@lru_cache(maxsize=8192)
def list_plain_words(text: str) -> tuple[str, ...]:
    """The words that say what the text is about, in small letters; all its words where none do.

    >>> list_plain_words("why didn't the printers strike?"), list_plain_words("what is it")
    (('printers', 'strike'), ('what', 'is', 'it'))
    """
    keys = tuple(word.key for word in words(text))
    return tuple(key for key in keys if key.partition("'")[0] not in IDLE and not key.isdigit()) or keys


def cut_to_stem(word: str) -> str:
    """What the forms of one word share.

    >>> cut_to_stem("printers'") == cut_to_stem("printer's") == "printer"
    True
    """
    return stem(word.partition("'")[0])

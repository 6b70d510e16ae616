"""The words of a text that say what it is about, as they are compared in a search.

They are folded and stemmed, and those that merely join others are left out.
"""

from __future__ import annotations

import re

from fairhand.language.folding import fold
from fairhand.language.stems import stem

_WORD = re.compile(r"[^\W_]+")
JOINING = frozenset(
    # articles and determiners, pronouns, prepositions, conjunctions, auxiliaries, adverbs of degree, words that ask
    """a an the this that these those each every either neither any some no such another other all both few more most
    much many several own same enough
    i me my mine we us our ours you your yours he him his she her hers it its they them their theirs one ones oneself
    itself himself herself themselves ourselves myself yourself who whom whose which what whatever whichever
    about above across after against along among amongst around as at before behind below beneath beside besides
    between beyond by concerning despite down during except for from in into like near of off on onto out over past per
    since through throughout till to toward towards under until unto up upon via with within without
    and but or nor so yet if then than because although though while whilst whereas unless whether
    am is are was were be been being do does did doing done have has had having can could may might must shall should
    will would ought need
    also even just only very too not never there here when where why how however therefore thus hence else again ever
    s t don didn doesn isn wasn aren weren won ll ve re""".split()
)
"""**Source**: the closed classes of English as grammars list them; common practice."""


def list_words(text: str) -> list[str]:
    """Every word in small letters without accents; what an apostrophe or a hyphen joins is apart.

    >>> list_words("The workers’ half-days, Orléans 1,912")
    ['the', 'workers', 'half', 'days', 'orleans', '1', '912']
    """
    text = text.lower()
    return [word if word.isascii() else fold(word) for word in _WORD.findall(text)]


def list_stems(text: str) -> list[str]:
    """The stems of the words that say what a text is about, in order.

    >>> list_stems("How were the moorings paid for?")
    ['moor', 'paid']
    """
    return [stem(word) for word in list_words(text) if word not in JOINING]

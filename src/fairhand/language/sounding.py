"""How a word sounds, roughly, so that *fisical* and *physical* are found together.

It imports nothing: the build runs it too, and writes each word's sound beside it.

**Source**: rules of English spelling as primers give them, in the manner of L. Philips 1990 (*Hanging on the
Metaphone*, Computer Language 7(12)), from memory; ours keeps a vowel at the start alone.
"""

from __future__ import annotations

import re

_RULES = tuple(
    (re.compile(pattern), sound)
    for pattern, sound in (
        (r"[^a-z]", ""),
        (r"^(?:kn|gn|pn|mn)", "n"),
        (r"^wr", "r"),
        (r"^psych", "sik"),
        (r"^ps", "s"),
        (r"ch(?=[lr])", "k"),
        (r"^x", "z"),
        (r"^gh", "g"),
        (r"mb$", "m"),
        (r"mn$", "m"),
        (r"gn(?=$|s$|ed$|ing$)", "n"),
        (r"sch", "sk"),
        (r"sc(?=[eiy])", "s"),
        (r"(?:ti|si|ci|ssi|xi|sci|shi|chi)(?=o[nu]|a[lnr]|en[ct])", "S"),
        (r"tch|ch", "C"),
        (r"tu(?=r|al|ous)", "C"),
        (r"sh", "S"),
        (r"th", "T"),
        (r"ph", "f"),
        (r"dge?|g(?=[eiy])", "j"),
        (r"ght", "t"),
        (r"gh|gu(?=[eiy])", "g"),
        (r"c(?=[eiy])", "s"),
        (r"qu", "kw"),
        (r"ck|c|q", "k"),
        (r"x", "ks"),
        (r"z", "s"),
        (r"wh", "w"),
        (r"(?<=[aeiou])[hw](?![aeiou])", ""),
        (r"h(?![aeiouy])", ""),
        (r"^[aeiouy]+", "A"),
        (r"[aeiouy]", ""),
        (r"(.)\1+", r"\1"),
    )
)


def sound_of(word: str) -> str:
    """The consonants that one hears, and whether a vowel opens it.

    >>> sound_of("fisical") == sound_of("physical"), sound_of("nolege") == sound_of("knowledge")
    (True, True)
    """
    sound = word.casefold()
    for pattern, instead in _RULES:
        sound = pattern.sub(instead, sound)
    return sound

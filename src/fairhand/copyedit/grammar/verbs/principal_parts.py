"""The principal parts of verbs: what an auxiliary takes in place of the form that stands there.

**Source**: irregular verbs as ``language/irregular.py`` has them; regular ones by the list of words.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from fairhand.language.irregular import VERBS
from fairhand.language.lexicon import find_word

_BARE = {past: bare for bare, past, _ in VERBS if past != "found"} | {
    "has": "have", "does": "do", "goes": "go", "is": "be", "are": "be", "were": "be",
}  # fmt: skip
_PARTICIPLES = {past: done for _, past, done in VERBS if past != done}
_DONE = {bare: done for bare, _, done in VERBS if bare != done}
_NO_VERBS = frozenset("need used left means news found shed bound felt cost type bred fed sped bled embed".split())
"""Forms whose look tells too little."""


def participle_of_past(form: str) -> str | None:
    """The participle of a past form that is none itself.

    >>> participle_of_past("wrote"), participle_of_past("told")
    ('written', None)
    """
    return _PARTICIPLES.get(form)


def is_irregular(verb: str) -> bool:
    """Whether the participle of a bare verb is made by no ending.

    >>> is_irregular("build"), is_irregular("carry")
    (True, False)
    """
    return verb in _DONE


@lru_cache(maxsize=4096)
def bare_of(form: str) -> str | None:
    """The bare verb of a past or a third person; None for a form that is bare itself, or no verb's.

    >>> [bare_of(each) for each in ("went", "stopped", "carried", "shows", "put", "go")]
    ['go', 'stop', 'carry', 'show', None, None]
    """
    if form in _BARE:
        return _BARE[form]
    known = find_word(form)
    if known is None or form in _NO_VERBS:
        return None
    if form.endswith("ed"):
        stem = form[:-2]
        doubled = stem[:-1] if stem[-1:] == stem[-2:-1] else ""
        return _best(each for each in (stem + "e", stem, doubled, form[:-3] + "y") if _makes(each, "d", form))
    if form.endswith("s") and not form.endswith("ss"):
        return _best(each for each in (form[:-1], form[:-2], form[:-3] + "y") if _makes(each, "s", form))
    return None


@lru_cache(maxsize=4096)
def participle_of_bare(verb: str) -> str | None:
    """The participle of a bare verb that differs from it.

    >>> [participle_of_bare(each) for each in ("intend", "expose", "build", "put")]
    ['intended', 'exposed', 'built', None]
    """
    if verb in _DONE:
        return _DONE[verb]
    known = find_word(verb)
    if known is None or "v" not in known.kinds or verb.endswith("ed") or verb in _NO_VERBS:
        return None
    return _best(each for each in _regular(verb) if (word := find_word(each)) and "d" in word.kinds)


def _best(forms: Iterable[str]) -> str | None:
    """The form that is met most often: *program*, not *programme*."""
    return max(forms, key=lambda each: word.weight if (word := find_word(each)) else 0, default=None)


def _makes(bare: str, kind: str, form: str) -> bool:
    """Whether a verb of the list has this past or third person."""
    known = find_word(bare)
    if known is None or len(bare) < 2 or not ("v" in known.kinds or _doubles(bare)):
        return False
    return form in (_regular(bare) if kind == "d" else _thirds(bare))


def _doubles(bare: str) -> bool:
    """Whether it is a verb that doubles its last letter, which the list of words does not call one."""
    known = find_word(bare + bare[-1:] + "ed") if bare[-1:] not in "aeiouys" else None
    return known is not None and bool(known.countries)


def _regular(verb: str) -> tuple[str, ...]:
    if verb.endswith("e"):
        return (verb + "d",)
    if verb.endswith("y") and verb[-2:-1] not in "aeiou":
        return (verb[:-1] + "ied",)
    return verb + "ed", verb + verb[-1:] + "ed"


def _thirds(verb: str) -> tuple[str, ...]:
    if verb.endswith("y") and verb[-2:-1] not in "aeiou":
        return (verb[:-1] + "ies",)
    return (verb + "es",) if verb.endswith(("s", "x", "z", "ch", "sh", "o")) else (verb + "s",)

"""A verb in a form that the word before it does not take: *could has*, *did not went*, *had wrote*.

**Source**: "Wrong or missing verb form" in handbooks of usage.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fairhand.copyedit.grammar.clauses import FINITE, NOUNS, Clause
from fairhand.copyedit.grammar.verbs.principal_parts import (
    bare_of,
    is_irregular,
    participle_of_bare,
    participle_of_past,
)
from fairhand.language.lexicon import find_word
from fairhand.model.span import Span

_MODALS = frozenset("can could will would should may might must cannot ca wo shall".split())
_NOUNS_TOO = frozenset("can will might must may".split())
_STANDS_ALONE = frozenset("this that these those".split())
_DO = frozenset("do does did".split())
_HAVE = frozenset("have has had 've having".split())
_BE = frozenset("is are was were be been being".split())
_BETWEEN = frozenset("not n't n’t never also often always still even just only really ever already all both".split())
_TAKES_TO = frozenset(
    "seem seems seemed appear appears appeared try tries tried trying want wants wanted wish wishes wished hope hopes"
    " hoped attempt attempts attempted begin begins began start starts started continue continues continued fail"
    " fails failed tend tends tended manage manages managed decide decides decided plan plans planned agree agrees"
    " agreed refuse refuses refused able unable likely unlikely willing unwilling ready forced asked allowed told"
    " expected required supposed obliged encouraged important necessary difficult easy possible impossible hard"
    " going enough too have has had having ought need needs needed order afford promise promised choose chose learn"
    " learned ability".split()
)
"""Words after which *to* takes a verb."""
_HANGS = frozenset("what whatever all everything than as those ones".split())
"""Words after which an auxiliary may end its clause: *what it did changed little*, *those who could left*."""
_MAY_HANG = frozenset("who that which if when where whether how".split())
"""The same where there is no other finite verb."""
_OF_BE = frozenset("by to from in with on into for within as".split())
_LOOSE_PAST = frozenset({"bore", "broke", "rose", "saw", "was", "strove", "wove", "got", "bit", "struck", "showed"})
"""Past forms that are something else as well: told only where a preposition or an article follows."""


_ADJECTIVES = frozenset("exempt extinct content intent extant corrupt strict distinct absent perfect bent".split())
"""Adjectives that the list of words has as verbs alone, or that are like them."""


@dataclass(frozen=True, slots=True)
class WrongForm:
    """A verb in the wrong form."""

    span: Span
    """Its place in the draft."""
    verb: str
    after: str
    """The auxiliary before it."""
    instead: str


def find_wrong_forms(clause: Clause) -> Iterator[WrongForm]:
    """The verbs of a sentence whose form their auxiliary does not take."""
    words = clause.words
    for at, word in enumerate(words):
        if at == 0 or not word.text.islower() or not word.text.isalpha():
            continue
        before = at - 1
        while before > 0 and words[before].key in _BETWEEN:
            before -= 1
        if words[before].text[0].isupper() or clause.hides(range(before, at)):
            continue
        instead = _instead(clause, before, at)
        if instead is not None:
            yield WrongForm(clause.place(at), word.text, words[before].text, instead)


def _instead(clause: Clause, before: int, at: int) -> str | None:
    """The form that the auxiliary takes, where that is another."""
    words = clause.words
    auxiliary, word = words[before], words[at]
    negated = words[at - 1].key in ("not", "n't", "n’t", "never")
    noun = before and words[before - 1].tag in ("DT", "PRP$", "JJ") and words[before - 1].key not in _STANDS_ALONE
    if auxiliary.key in _NOUNS_TOO and noun:
        return None  # the can made sense
    if auxiliary.key == "to":
        fits = before > 0 and words[before - 1].key in _TAKES_TO and _follows_verb(clause, at)
        return bare_of(word.key) if fits and at == before + 1 else None
    if not auxiliary.tag.startswith(("MD", "VB")):
        return None
    if words[at].key in _BE and any(each.key in ("do", "does", "did", "done") for each in words[before - 1 : at]):
        return None  # the last thing that they want to do is wait
    does = auxiliary.key in _DO and auxiliary.tag in FINITE and (negated or auxiliary.head == at)
    if does or auxiliary.key in _MODALS:
        modal = auxiliary.tag == "MD" or auxiliary.key in _DO
        return bare_of(word.key) if modal and not _may_hang(clause, before, at) else None
    if auxiliary.key in _HAVE:
        return _participle(clause, before, at)
    wanted = any(each.key in ("do", "does", "did", "done") for each in words[max(0, before - 3) : before])
    if auxiliary.key in _BE and before == at - 1 and not wanted:
        return _passive(clause, before, at)
    return None


def _participle(clause: Clause, before: int, at: int) -> str | None:
    """What *have* takes in place of a past form."""
    words = clause.words
    if words[before].head != at or words[at].tag not in ("VBD", "VBN"):
        return None
    if words[at].key in ("came", "ran") and _may_hang(clause, before, at):
        return None  # all that we had came from them
    if words[at].key in ("was", "showed") or (words[at].key == "rose" and words[at + 1].tag in NOUNS):
        return None  # the dam has rose beds
    return participle_of_past(words[at].key)


def _passive(clause: Clause, before: int, at: int) -> str | None:
    """What *be* takes in place of a past form or a bare verb: *was stole*, *are expose to*."""
    words = clause.words
    after = words[at + 1].key if at + 1 < len(words) else "."
    if _may_hang(clause, before, at):
        return None
    past = participle_of_past(words[at].key)
    if past is not None and at + 1 < len(words) and words[at + 1].tag not in NOUNS:
        return past if words[at].key not in _LOOSE_PAST or after in _OF_BE else None
    known = find_word(words[at].key)
    if (
        words[at].key in _ADJECTIVES
        or known is None
        or "v" not in known.kinds
        or words[at].tag not in ("VB", "VBP", "VBN", "JJ")
        or len(known.text) < 3
    ):
        return None
    adjective = words[at].tag == "JJ" and known.kinds != "v"
    participle = words[at].tag == "VBN" and not is_irregular(known.text)
    sure = known.kinds == "v" or (after in _OF_BE and not participle)
    return participle_of_bare(words[at].key) if sure and not adjective else None


def _follows_verb(clause: Clause, at: int) -> bool:
    """Whether what follows *to* is a verb and no participle before its noun."""
    words = clause.words
    return at + 1 >= len(words) or words[at + 1].tag not in NOUNS | {"JJ"}


def _may_hang(clause: Clause, before: int, at: int) -> bool:
    """Whether the auxiliary may end a clause of its own, so that the verb belongs to another."""
    words = clause.words
    if before == 0 or words[before - 1].text == ",":
        return True
    if words[before].key in _DO and words[before - 1].key in ("who", "which", "that", "as", "than"):
        return True  # one who did not waited
    negated = words[at - 1].key in ("not", "n't", "n’t")
    if (
        words[at].tag in NOUNS
        and not negated
        and words[before].head != at
        and words[at].role not in ("ROOT", "conj", "ccomp")
    ):
        return True
    near = range(next((n + 1 for n in range(before - 1, -1, -1) if clause.is_finite(n)), 0), before)
    if words[at].key in ("has", "had") or (
        words[at].role == words[before].role == "aux" and words[at].head == words[before].head
    ):
        return False
    opens = {words[n].key for n in near[-6:]}
    if opens & _HANGS:
        return True
    if not opens & _MAY_HANG:
        return False
    together = words[before].head in (at, words[at].head)
    return not together or not any(clause.is_finite(n) and n not in (before, at) for n in range(len(words)))

"""A verb in a form that the word before it does not take: *could has*, *did not went*, *had wrote*.

**Source**: "Wrong or missing verb form" in handbooks of usage.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fairhand.copyedit.grammar.clauses import Clause
from fairhand.model.span import Span

_BARE = {
    "has": "have", "had": "have", "went": "go", "came": "come", "took": "take", "gave": "give", "saw": "see",
    "knew": "know", "became": "become", "began": "begin", "wrote": "write", "spoke": "speak", "chose": "choose",
    "broke": "break", "drove": "drive", "grew": "grow", "threw": "throw", "drew": "draw", "flew": "fly", "ate": "eat",
    "fell": "fall", "rose": "rise", "froze": "freeze", "stole": "steal", "forgot": "forget", "hid": "hide",
    "does": "do", "goes": "go", "makes": "make", "takes": "take", "gives": "give", "shows": "show", "means": "mean",
    "thought": "think", "brought": "bring", "bought": "buy", "taught": "teach", "sold": "sell",
    "told": "tell", "said": "say", "kept": "keep", "felt": "feel", "left": "leave", "made": "make", "lost": "lose",
}  # fmt: skip
"""Forms that no auxiliary takes, with the bare verb; those that are nouns or adjectives too are not here."""
_PERFECT = {
    "went": "gone", "took": "taken", "gave": "given", "saw": "seen", "knew": "known", "began": "begun",
    "wrote": "written", "spoke": "spoken", "chose": "chosen", "broke": "broken", "drove": "driven", "grew": "grown",
    "threw": "thrown", "drew": "drawn", "flew": "flown", "ate": "eaten", "fell": "fallen", "rose": "risen",
    "froze": "frozen", "stole": "stolen", "forgot": "forgotten", "shook": "shaken",
    "did": "done", "sang": "sung", "drank": "drunk", "swam": "swum", "rang": "rung", "tore": "torn", "wore": "worn",
}  # fmt: skip
_MODALS = frozenset("can could will would should may might must cannot can't couldn't won't wouldn't shouldn't".split())
_DO = frozenset("do does did don't doesn't didn't".split())
_HAVE = frozenset("have has had haven't hasn't hadn't having".split())
_BETWEEN = frozenset("not n't never also often always still even just only really ever already".split())
_PAST_PARTICIPLE_TOO = frozenset("thought brought bought taught sold told said kept felt left made lost".split())


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
        if word.key not in _BARE and word.key not in _PERFECT:
            continue
        before = at - 1
        while before >= 0 and words[before].key in _BETWEEN:
            before -= 1
        if before < 0 or not words[before].tag.startswith(("MD", "VB")) or clause.hides(range(before, at)):
            continue
        auxiliary = words[before]
        if before and words[before - 1].tag in ("DT", "PRP$", "JJ"):
            continue  # the can made sense
        instead = None
        negated = words[at - 1].key in ("not", "n't", "never")
        if (auxiliary.tag == "MD" and auxiliary.key in _MODALS | {"ca"}) or (auxiliary.key in _DO and negated):
            instead = _BARE.get(word.key)
        elif auxiliary.key in _HAVE and auxiliary.head == at and word.tag in ("VBD", "VBN"):
            instead = _PERFECT.get(word.key)
        if instead is None or (word.key in ("left", "felt", "means", "shows") and word.tag not in ("VBD", "VBZ")):
            continue
        if word.key in _PAST_PARTICIPLE_TOO and before != at - 1 and words[at - 1].key not in ("not", "n't"):
            continue
        yield WrongForm(clause.place(at), word.text, auxiliary.text, instead)

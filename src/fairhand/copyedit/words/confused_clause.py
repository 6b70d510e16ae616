"""What a word's clause and sentence show beyond its neighbours, as the scorer of confused words sees it.

Whether the clause has its verb already (*where the looms where driven*), in what tense the sentence is told (*these
tensions lead the workers*), what the clause is about so far, and which words of content stand near (*the crew served
desert*). **Source**: the words of content within a reach are a feature of A. Golding and D. Roth 1999 (see
``confused_model.py``); the others are ours.
"""

from __future__ import annotations

from functools import lru_cache

from fairhand.copyedit.around import GROUPS, is_small
from fairhand.copyedit.words.confused_features import Seen

NEAR = 12
"""Words on either side within which words of content and the clause's verb are looked for."""
_LONG = 4
"""Letters that a word of content has, at least."""
_STOPS = frozenset(",;:()—–.?!")
_OPENS = GROUPS["WH"] | frozenset("because if although though since while as when until".split())
"""Words that open a clause."""
_PAST = frozenset("was were had did wasn't weren't hadn't didn't".split())
_NOW = frozenset("is are has does isn't aren't hasn't doesn't it's they're don't".split())
_FINITE = _PAST | _NOW | GROUPS["MODAL"] | frozenset("am have do haven't you're".split())
_NOUNS = frozenset({"NN", "NNS"})
_ENDS = _NOUNS | {"9"}
"""What a phrase that a preposition opens may end on."""


def clause_at(seen: Seen, at: int) -> list[str]:
    """What the clause and the sentence show around the word at an index.

    >>> from fairhand.copyedit.around import read_tokens
    >>> from fairhand.copyedit.words.confused_features import see
    >>> clause_at(see(read_tokens("The looms where driven by steam."), {"looms": "NNS", "driven": "VBN"}), 2)[:3]
    ['v00', 'v00<NNS', 'v00>VBN']
    """
    verbs = f"v{_verb(seen, at, -1)}{_verb(seen, at, 1)}"
    tense, head = _tense(seen, at), _head(seen, at)
    before, after = seen.class_at(at - 1), seen.class_at(at + 1)
    out = [verbs, f"{verbs}<{before}", f"{verbs}>{after}", tense, f"{tense}<{before}"]
    return [*out, head, f"{head}{verbs}", f"{head}{tense}", f"{head}<{before}", *_near(seen, at)]


def _near(seen: Seen, at: int) -> list[str]:
    """The words of content in reach, each once."""
    words = {*seen.words[max(0, at - NEAR) : at], *seen.words[at + 1 : at + NEAR + 1]}
    return [f"~{word}" for word in sorted(words) if len(word) >= _LONG and word[0].isalpha() and not is_small(word)]


def _verb(seen: Seen, at: int, step: int) -> int:
    """Whether there is a finite verb on one side of the place within its clause: 2, or there may be one: 1."""
    best = 0
    for passed in range(NEAR):
        index = at + step * (passed + 1)
        if not 0 <= index < len(seen.words) or seen.words[index] in _STOPS:
            break
        if seen.words[index] in _OPENS and (step < 0 or (passed and best)):
            break
        best = max(best, _is_finite(seen.words[index], seen.classes[index]))
        if best > 1:
            break
    return best


@lru_cache(maxsize=16384)
def _is_finite(word: str, of: str) -> int:
    if word in _FINITE:
        return 2
    if is_small(word) or not word[0].isalpha():
        return 0
    kinds = set(of.partition("?")[0].split("/")) if "?" not in of else set()
    if kinds and kinds <= {"VBD", "VBZ"}:
        return 2
    return 1 if kinds & {"VBD", "VBZ"} or (of.startswith(("d", "s", "v")) and "?" in of) else 0


def _tense(seen: Seen, at: int) -> str:
    """Whether other words of the sentence tell of the past, of now, or of both."""
    past = now = False
    for index, (word, of) in enumerate(zip(seen.words, seen.classes, strict=True)):
        if index != at:
            past = past or word in _PAST or of == "VBD"
            now = now or word in _NOW or of == "VBZ"
    return f"t{past:d}{now:d}"


def _head(seen: Seen, at: int) -> str:
    """What the clause is about before the place: a pronoun, or a noun that hangs on no preposition."""
    start = at - 1
    while start >= 0 and seen.words[start] not in _STOPS and seen.words[start] not in _OPENS:
        start -= 1
    head, hangs = "-", False
    for index in range(start + 1, at):
        word = seen.words[index]
        kinds = set(seen.classes[index].split("/"))
        if word in GROUPS["PREP"]:
            if head != "-":
                break
            hangs = True
        elif hangs:
            following = set(seen.class_at(index + 1).split("/")) if index + 1 < at else set()
            hangs = not kinds & _ENDS or bool(following & _NOUNS)
        elif word in GROUPS["SUBJ"]:
            head = word
        elif kinds & _NOUNS:
            head = "NN" if "NNS" not in kinds else "NNS" if kinds <= {"NNS", "VBZ"} else "?"
        elif head != "-" and word[0].isalpha() and not is_small(word):
            break
    return f"h{head}"

"""What was revised between two drafts, sentence by sentence: the argument, the wording, or only the order."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.language.content_words import list_stems, list_words
from fairhand.language.counts import count_of
from fairhand.manuscript.matching import Fate, ParagraphMatch, match_paragraphs, match_texts
from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span

Kind = Literal["argument", "wording", "order"]
"""What a revision touches: what is said, how it is said, or where."""

_ELSEWHERE = 0.6
"""Likeness from which two sentences are one where their paragraphs are not; within one, two fifths are enough."""
_SAME_WORD = 0.7
"""Likeness of letters from which a word that came is one that went, respelt or in another form."""
_MORE = 2
_SHARE = 0.2
"""By so many words, and by so great a share, a sentence says more or less than it did."""
_CURLS = str.maketrans("‘’“”", "''\"\"")
_TURNS = frozenset("not never no nor neither none cannot t".split())
"""Words that turn a sentence round; the ``t`` is that of *don't*."""
_FIGURE = re.compile(
    r"\d+(?:[.,]\d+)*|\b(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|(?:thir|four|fif|six|seven|eigh|nine)teen"
    r"|(?:twen|thir|for|fif|six|seven|eigh|nine)ty|hundred|thousand|million|billion|dozen|half)\b",
    re.IGNORECASE,
)
"""Figures, and numbers in words but *one*, which is a pronoun as well."""


@dataclass(frozen=True, slots=True)
class Revision:
    """One sentence, or several that became one or were one, revised."""

    fate: Fate
    """What became of it; never ``kept``."""
    kind: Kind
    then: tuple[Span, ...]
    """Its places in the older draft."""
    now: tuple[Span, ...]
    """Its places in the newer draft."""
    why: str
    """What was gone by, in plain words."""


def match_sentences(old: Manuscript, new: Manuscript) -> tuple[ParagraphMatch, ...]:
    r"""What became of each sentence, as ``match_paragraphs`` tells it, by its number in ``sentences_of``.

    Two that are no more than alike are one only where their paragraphs are one too.

    **Source**: the matcher of paragraphs; the threshold is our own, measured in ``tests/outside/test_two_drafts.py``.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> first, second = read_manuscript("Rain fell. The mill stood."), read_manuscript("The mill stood still. Why?")
    >>> [(one.fate, one.old, one.new) for one in match_sentences(first, second)]
    [('edited', (1,), (0,)), ('new', (), (1,)), ('gone', (0,), ())]
    """
    ours, theirs = sentences_of(old), sentences_of(new)
    together = {(a, b) for one in match_paragraphs(old, new) for a in one.old for b in one.new}
    matches: list[ParagraphMatch] = []
    parted: list[ParagraphMatch] = []
    for one in match_texts([span.of(old.text) for _, span in ours], [span.of(new.text) for _, span in theirs]):
        near = {(ours[a][0], theirs[b][0]) for a in one.old for b in one.new} & together
        if near or not one.old or not one.new or one.likeness >= _ELSEWHERE:
            matches.append(one)
            continue
        matches.extend(ParagraphMatch("new", (), (index,), 0.0) for index in one.new)
        parted.extend(ParagraphMatch("gone", (index,), (), 0.0) for index in one.old)
    return tuple(sorted([*matches, *parted], key=lambda one: (not one.new, one.new or one.old)))


def sentences_of(manuscript: Manuscript) -> list[tuple[int, Span]]:
    """Every sentence in order, with the number of its paragraph."""
    return [(paragraph.index, span) for paragraph in manuscript.paragraphs for span in paragraph.sentences]


def list_revisions(old: Manuscript, new: Manuscript) -> tuple[Revision, ...]:
    r"""Every sentence that is not what it was, in the order of the newer draft, those gone at the end.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> was, now = read_manuscript("The mill stood. It was old."), read_manuscript("The mill stood. It was very old.")
    >>> [(one.fate, one.kind) for one in list_revisions(was, now)]
    [('edited', 'wording')]
    """
    ours, theirs = sentences_of(old), sentences_of(new)
    out = []
    for one in match_sentences(old, new):
        then, now = tuple(ours[a][1] for a in one.old), tuple(theirs[b][1] for b in one.new)
        before, after = (" ".join(span.of(draft.text) for span in spans) for draft, spans in ((old, then), (new, now)))
        same = is_same(before, after)
        if same and one.fate != "moved":
            continue
        kind: Kind = "order"
        why = "it stands elsewhere"
        if not same:
            kind, why = tell_revision(before, after)
        out.append(Revision("edited" if one.fate == "kept" else one.fate, kind, then, now, why))
    return tuple(out)


def is_same(one: str, other: str) -> bool:
    """Whether two wordings are the same but for the blanks in them and the curl of quotation marks.

    >>> is_same("Lund's  “tram”", 'Lund’s "tram"'), is_same("a tram", "a tram,")
    (True, False)
    """
    return one.translate(_CURLS).split() == other.translate(_CURLS).split()


def tell_revision(then: str, now: str) -> tuple[Kind, str]:
    """Whether a sentence that reads otherwise says something else, and what was gone by.

    It does where it is new or gone, where a figure came or went, where it is denied or no longer denied while nearly
    all else stands, and where by two of its words that say something, and by a fifth of them, it became longer or
    shorter; words respelt are not counted.

    **Source**: the two kinds are those of Faigley & Witte 1981 (text-base and surface changes); the signs are our own.

    >>> tell_revision("Fares rose.", "Fares rose by 12 percent.")[0], tell_revision("It rise.", "It rose quickly.")[0]
    ('argument', 'wording')
    """
    if not then or not now:
        return "argument", "the sentence is gone" if then else "the sentence is new"
    if figures := _odd(_FIGURE.findall(then.casefold()), _FIGURE.findall(now.casefold())):
        return "argument", f"a figure came or went: {', '.join(figures)}"
    before, after = list_stems(then), list_stems(now)
    came, went = _unlike(before, after)
    turns = [sum(word in _TURNS for word in list_words(text)) for text in (then, now)]
    if turns[0] != turns[1] and came + went <= _MORE:
        return "argument", f"a word that denies {'came in' if turns[0] < turns[1] else 'went out'}"
    more = came - went
    if abs(more) >= _MORE and abs(more) >= _SHARE * max(len(before), len(after)):
        return "argument", f"{count_of(abs(more), 'word')} {'more' if more > 0 else 'fewer'} that say something"
    return "wording", "it says about as much as it did"


def _odd(then: Sequence[str], now: Sequence[str]) -> list[str]:
    """What stands in one of the two oftener than in the other."""
    before, after = Counter(then), Counter(now)
    return sorted((before - after) + (after - before))


def _unlike(before: Sequence[str], after: Sequence[str]) -> tuple[int, int]:
    """How many words came, and how many went, those that are alike in letters set off against each other."""
    from rapidfuzz.distance import Indel

    one, other = Counter(before), Counter(after)
    came, went = sorted((other - one).elements()), sorted((one - other).elements())
    for word in tuple(came):
        likest = max(went, key=lambda each: Indel.normalized_similarity(each, word), default=None)
        if likest is not None and Indel.normalized_similarity(likest, word) >= _SAME_WORD:
            came.remove(word)
            went.remove(likest)
    return len(came), len(went)

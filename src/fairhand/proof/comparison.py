"""Two states of one text held side by side: the passages that differ, and the words in them that do.

**Source**: the passages are matched by ``manuscript.matching``; the words by the fewest changes (Levenshtein 1966).
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from fairhand.language.words import words
from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.matching import Fate, ParagraphMatch, match_texts
from fairhand.manuscript.revising import Revision, is_same, list_revisions
from fairhand.model.span import Span
from fairhand.proof.passages import list_passages

MOST_WORDS = 2000
"""Words of a passage beyond which only the passage, and not each word, is held against the other."""

_WORD = re.compile(r"\S+")


@dataclass(frozen=True, slots=True)
class Difference:
    """One passage, or several that became one, that does not stand in both as it is."""

    fate: Fate
    """What became of it: ``edited``, ``moved``, ``split``, ``joined``, ``new`` or ``gone``."""
    then: str
    """As it stood in the earlier state; empty where it is new."""
    now: str
    """As it stands in the later one; empty where it is gone."""
    then_differs: tuple[Span, ...] = ()
    """The words that differ, as half-open intervals of ``then``."""
    now_differs: tuple[Span, ...] = ()
    """The words that differ, as half-open intervals of ``now``."""
    revisions: tuple[Revision, ...] = ()
    """Of prose, each of its sentences that was revised, with what that touches."""


@dataclass(frozen=True, slots=True)
class Change:
    """How much came in between two states, and how much went out; what was only moved is neither."""

    came: int
    went: int
    unit: str
    """What is counted: ``word``, or ``line`` in a file that is no prose."""


def is_prose(name: str) -> bool:
    """Whether a file of that name is read in words and passages, and no list of settings or records.

    >>> is_prose("draft.md"), is_prose("sources.json")
    (True, False)
    """
    return name.endswith((".md", ".txt"))


def measure_change(name: str, then: str, now: str) -> Change:
    """How many words, or lines, the later state has that the earlier had not, and the other way round.

    >>> measure_change("draft.md", "Rain fell all day.", "All day rain fell, and hail.")
    Change(came=2, went=0, unit='word')
    """
    before, after = Counter(then.split("\n")), Counter(now.split("\n"))
    only_then, only_now = before - after, after - before  # the lines that both have count for nothing
    unit = "word" if is_prose(name) else "line"
    lost, won = _count(only_then, unit), _count(only_now, unit)
    return Change((won - lost).total(), (lost - won).total(), unit)


def _count(lines: Counter[str], unit: str) -> Counter[str]:
    """The words, or the lines without the space around them, by how often they stand in some lines."""
    out: Counter[str] = Counter()
    for line, times in lines.items():
        units = [word.key for word in words(line)] if unit == "word" else [line.strip()] if line.strip() else []
        for one in units:
            out[one] += times
    return out


def compare_states(name: str, then: str, now: str) -> tuple[Difference, ...]:
    r"""The passages in which two states of a file differ, in the order of the later one, those gone at the end.

    >>> [one.fate for one in compare_states("draft.md", "# Tides\n\nIt ebbs.", "# Tides\n\nIt ebbs, twice.\n\nSo.")]
    ['edited', 'new']
    """
    if not is_prose(name):
        return tuple(_tell(_lines(then), _lines(now)))
    old, new = read_manuscript(then), read_manuscript(now)
    olds, news = list_passages(old), list_passages(new)
    return tuple(
        _tell([span.of(then) for span in olds], [span.of(now) for span in news], olds, news, list_revisions(old, new))
    )


def _tell(
    old: Sequence[str],
    new: Sequence[str],
    olds: Sequence[Span] = (),
    news: Sequence[Span] = (),
    revisions: Sequence[Revision] = (),
) -> Iterator[Difference]:
    """The differences in order, each with the revisions that stand in it, now or, where they are gone, then."""
    for match in match_parts(old, new):
        before, after = "\n\n".join(old[n] for n in match.old), "\n\n".join(new[n] for n in match.new)
        if match.fate == "kept" and is_same(before, after):
            continue
        fate: Fate = "edited" if match.fate == "kept" else match.fate
        own = tuple(
            one
            for one in revisions
            if any(news[n].contains(span) for n in match.new for span in one.now)
            or (not one.now and any(olds[n].contains(span) for n in match.old for span in one.then))
        )
        yield Difference(fate, before, after, *_differing(before, after), own)


def match_parts(old: Sequence[str], new: Sequence[str]) -> list[ParagraphMatch]:
    """The matches of headings with headings, and of the rest with the rest: a heading is never joined to its text."""
    matches = []
    for wanted in (True, False):
        olds, news = ([n for n, part in enumerate(parts) if part.startswith("#") is wanted] for parts in (old, new))
        for match in match_texts([old[n] for n in olds], [new[n] for n in news]):
            before, after = tuple(olds[n] for n in match.old), tuple(news[n] for n in match.new)
            matches.append(replace(match, old=before, new=after))
    return sorted(matches, key=lambda match: (not match.new, match.new or match.old))


def _lines(text: str) -> list[str]:
    return [line.strip() for line in text.split("\n") if line.strip()]


def _differing(then: str, now: str) -> tuple[tuple[Span, ...], tuple[Span, ...]]:
    """The words in which two passages differ, those that follow each other as one; none where one is missing."""
    from rapidfuzz.distance import Levenshtein

    before, after = ([Span(*found.span()) for found in _WORD.finditer(text)] for text in (then, now))
    if not before or not after or max(len(before), len(after)) > MOST_WORDS:
        return (), ()
    changes = [
        change
        for change in Levenshtein.opcodes([s.of(then) for s in before], [s.of(now) for s in after])
        if change.tag != "equal"
    ]
    return (
        tuple(_stretches(before, [(change.src_start, change.src_end) for change in changes])),
        tuple(_stretches(after, [(change.dest_start, change.dest_end) for change in changes])),
    )


def _stretches(at: Sequence[Span], runs: Sequence[tuple[int, int]]) -> Iterator[Span]:
    """The stretches of text that some runs of words cover; runs that touch are one."""
    first, last = 0, 0
    for start, end in (*runs, (len(at) + 1, len(at) + 1)):
        if start == last:
            last = max(last, end)
            continue
        if first < last:
            yield Span(at[first].start, at[last - 1].end)
        first, last = start, end
